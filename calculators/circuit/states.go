package circuit

import (
	"strings"

	"baybook/calculators/calc"
)

// stateKeys are the keys of a state, with the kinds of part that each may name.
var stateKeys = []struct {
	name  string
	kinds []Kind
	what  string
	help  string
}{
	{"closed", []Kind{SwitchKind}, "switch", "The switches that are closed; all others are open. Of a switch with several ways, the way: selector.2."},
	{"running", []Kind{AlternatorKind}, "alternator", "The alternators that run; the others give nothing."},
	{"open", []Kind{FuseKind}, "fuse", "Fuses that are out, and circuit breakers that are open."},
	{"draws", []Kind{LoadKind, AmplifierKind}, "load", "Loads that draw another current, power or resistance in this state: winch 40 A, pump 60 W."},
	{"energised", []Kind{RelayKind}, "relay", "Relays that are held pulled in, whatever their coil has."},
	{"released", []Kind{RelayKind}, "relay", "Relays that are held at rest, whatever their coil has."},
	{"off", []Kind{LoadKind, AmplifierKind, LEDsKind, ConverterKind}, "load", "Loads that are switched off."},
	{"parked", nil, "", "yes: the state in which the vehicle stands and sleeps."},
	{"lasts", nil, "", stateLasts.Help},
}

// StateKeys are the keys of a state, for those who explain them; ListsParts
// reports one that takes a list of names.
func StateKeys() []StateKey {
	var list []StateKey
	for _, k := range stateKeys {
		list = append(list, StateKey{k.name, k.help, k.kinds != nil})
	}
	return list
}

// A StateKey is a key of a state.
type StateKey struct {
	Name, Help string
	ListsParts bool
}

// stateLasts reads how long a state lasts.
var stateLasts = calc.Input{Name: "lasts", Unit: "s", Min: 0.001, Max: 600, Help: "How long the state lasts at most, as cranking or a stall does: heat is then judged for that time."}

func stateKeyNames() []string {
	var names []string
	for _, k := range stateKeys {
		names = append(names, k.name)
	}
	return names
}

// states reads the states. Where none is written there is one, with every
// switch closed.
func (b *builder) states() {
	for i, s := range b.draft.States {
		state := State{Name: s.Name}
		if msg := badName(s.Name); msg != "" {
			b.refuse(Problem{In: InState, Index: i, OnKey: true, Message: strings.ReplaceAll(msg, "part", "state"), Do: "name it as a tech says it: key off, key on, reverse"})
		}
		for _, other := range b.n.States {
			if other.Name == s.Name {
				b.refuse(Problem{In: InState, Index: i, OnKey: true, Message: "two states are named " + s.Name, Do: "give one of them another name"})
			}
		}
		state.Parked = s.Name == "key off"
		for _, k := range s.Keys {
			b.stateKey(i, &state, k)
		}
		b.n.States = append(b.n.States, state)
	}
	if len(b.n.States) > 0 {
		return
	}
	on := State{Name: "on"}
	for i := range b.n.Parts {
		if b.n.Parts[i].Basics().Kind == SwitchKind {
			on.Closed.Add(i)
		}
		if b.n.Parts[i].Basics().Kind == AlternatorKind {
			on.Running.Add(i)
		}
		if s, ok := b.n.Parts[i].(*Switch); ok && s.Ways > 1 {
			on.Positions = append(on.Positions, Contact{i, 1})
		}
	}
	b.n.States = []State{on}
}

// stateKey reads one key of a state.
func (b *builder) stateKey(i int, s *State, k Key) {
	at := Problem{In: InState, Index: i, Key: k.Name}
	for _, known := range stateKeys {
		if known.name != k.Name {
			continue
		}
		if known.kinds == nil {
			b.stateSays(s, k, at)
			return
		}
		for _, name := range List(k.Value) {
			b.statePart(s, k, name, known.kinds, known.what, at)
		}
		return
	}
	b.unknownKey(at, "a state", stateKeyNames())
}

// stateSays reads a key that names no parts. Problems are told at the place
// that is given, here and in statePart.
func (b *builder) stateSays(s *State, k Key, at Problem) {
	if k.Name == "parked" {
		if k.Value != "yes" && k.Value != "no" {
			at.Message, at.Do = "parked: “"+k.Value+"” is not yes or no", "write parked: yes for the state in which the vehicle stands and sleeps"
			b.refuse(at)
		}
		s.Parked = k.Value == "yes"
		return
	}
	v, msg := stateLasts.Read(k.Value)
	if msg != "" {
		at.Message, at.Do = "lasts: "+msg, "give "+asAdvice(stateLasts.Help)
		b.refuse(at)
	}
	s.Lasts = v.Num
}

// statePart reads one of the parts that a key lists: its name, and what the
// key takes with it, a way of a switch or what a load draws.
func (b *builder) statePart(s *State, k Key, name string, kinds []Kind, what string, at Problem) {
	draw, way := Draw{}, 0
	switch k.Name {
	case "draws":
		name, draw = b.draw(name)
	case "closed":
		name, way = b.position(name)
	}
	e, ok := b.stateNames(name, kinds)
	if !ok {
		at.Message = k.Name + ": there is no " + what + " named “" + name + "”"
		at.Do = "name one of this drawing"
		if near := calc.Nearest(name, b.namesOf(kinds)); near != "" {
			at.Do = "did you mean " + near + "?"
		}
		b.refuse(at)
		return
	}
	draw.Load = e
	switch k.Name {
	case "closed":
		if msg := b.close(s, e, way); msg != "" {
			at.Message, at.Do = "closed: "+msg, sayEnds(b.n.Parts[e])
			b.refuse(at)
		}
	case "running":
		s.Running.Add(e)
	case "open":
		s.Open.Add(e)
	case "draws":
		if draw.Amps+draw.Watts+draw.Ohms == 0 || DemandOf(b.n.Parts[e]) == nil {
			at.Message, at.Do = "draws: “"+k.Value+"” does not say what "+name+" draws", "write the load and what it draws there: draws: ["+name+" 4 A]"
			b.refuse(at)
		}
		s.Draws = append(s.Draws, draw)
	case "off":
		s.Off.Add(e)
	default:
		s.Forced = append(s.Forced, Forced{e, k.Name == "energised"})
	}
}

func (b *builder) stateNames(name string, kinds []Kind) (int, bool) {
	i := b.n.Index(name)
	if i < 0 {
		return 0, false
	}
	for _, k := range kinds {
		if b.n.Parts[i].Basics().Kind == k {
			return i, true
		}
	}
	return 0, false
}

func (b *builder) namesOf(kinds []Kind) []string {
	var names []string
	for i := range b.n.Parts {
		for _, k := range kinds {
			if b.n.Parts[i].Basics().Kind == k {
				names = append(names, b.n.Name(i))
			}
		}
	}
	return names
}
