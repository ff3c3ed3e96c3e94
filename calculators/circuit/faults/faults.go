// Package faults computes what a circuit does with one thing broken: what each
// load gets and what each test point reads, in every state. It also goes the
// other way: which single faults explain what somebody reads.
package faults

import (
	"math"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
	"baybook/calculators/circuit/solve"
)

// A Kind is a way to break.
type Kind uint8

const (
	None        Kind = iota // nothing is broken
	WireOpen                // a wire is cut
	WireToBody              // a wire is chafed through on the body at its far end
	FuseOut                 // a fuse is blown or pulled
	GroundLost              // a ring terminal has come off
	StuckOpen               // a relay does not pull in
	StuckClosed             // a relay does not let go
)

// words say each kind after the name of the part.
var words = [...]string{None: "nothing broken", WireOpen: "open", WireToBody: "shorted to the body", FuseOut: "out", GroundLost: "lost",
	StuckOpen: "stuck open", StuckClosed: "stuck closed"}

// A Fault is one thing that is broken, with what it does.
type Fault struct {
	Kind Kind
	// Part is the index of the part, -1 for None.
	Part int
	Name string // "W3 open"
	// States are what it does in each state of the network.
	States []State
}

// A State is a circuit at rest in one state with a fault in it.
type State struct {
	// Solved is false where there is no solution, and no numbers then.
	Solved bool
	// Opened are the fuses, by index of the part, that the fault has blown.
	Opened []int
	// Loads are the volts across the loads of [Table.Loads], Points those of
	// [Table.Points] against the negative terminal of the first source. A meter
	// on what hangs on nothing reads 0 V.
	Loads, Points []float64
}

// A Table is every single fault of a circuit; the first one is none. Nothing
// changes it once it is made, so goroutines may share it.
type Table struct {
	Network *circuit.Network
	// Loads are the branches by which loads get their supply.
	Loads []int
	// Points are the places where a meter can be held.
	Points []Point
	Faults []Fault
	wanted func(state int) bool
}

// A Point is a place where a meter can be held: a terminal and its node.
type Point struct {
	Name string
	Node int
}

// bodyOhms is the resistance in ohm of a chafed wire on the body (our own
// choice: what opens the fuse does not depend on it).
const bodyOhms = 1e-3

// New computes the table of a study in all its states.
func New(s *solve.Study) *Table {
	return newTable(s, func(int) bool { return true })
}

// ForState computes it for one state only; the others are left unsolved.
func ForState(s *solve.Study, state int) *Table {
	return newTable(s, func(of int) bool { return of == state })
}

func newTable(s *solve.Study, wanted func(state int) bool) *Table {
	n := s.Network
	t := &Table{Network: n, Points: Points(n), wanted: wanted}
	for i := range n.Branches {
		if n.Draws(&n.Branches[i]) {
			t.Loads = intset.Append(t.Loads, i)
		}
	}
	t.add(s, None, -1)
	for i := range n.Parts {
		switch n.Parts[i].(type) {
		case *circuit.Wire:
			t.add(s, WireOpen, i)
			t.add(s, WireToBody, i)
		case *circuit.Fuse:
			t.add(s, FuseOut, i)
		case *circuit.Ground:
			t.add(s, GroundLost, i)
		case *circuit.Relay:
			t.add(s, StuckOpen, i)
			t.add(s, StuckClosed, i)
		}
	}
	return t
}

// add computes one fault.
func (t *Table) add(s *solve.Study, kind Kind, part int) {
	f := Fault{Kind: kind, Part: part, Name: words[kind]}
	if part >= 0 {
		f.Name = t.Network.Name(part) + " " + words[kind]
	}
	for state := range t.Network.States {
		var at State
		if t.wanted(state) {
			at = t.state(s, kind, part, state)
		}
		f.States = append(f.States, at)
	}
	t.Faults = append(t.Faults, f)
}

// state computes one fault in one state: the fuses that it blows are out.
func (t *Table) state(s *solve.Study, kind Kind, part, state int) State {
	broken := Inject(s, kind, part, state)
	var out State
	sol := solve.State(broken, state)
	for kind == WireToBody && sol.Settled {
		fuse := firstToOpen(broken, sol)
		if fuse < 0 {
			break
		}
		out.Opened = intset.Append(out.Opened, broken.Branches[fuse].Part)
		cut(&broken.Branches[fuse])
		sol = solve.State(broken, state)
	}
	if out.Solved = sol.Solved(); !out.Solved {
		return out
	}
	for _, load := range t.Loads {
		out.Loads = append(out.Loads, sol.Flows[load].Drop)
	}
	for _, p := range t.Points {
		out.Points = append(out.Points, sol.Volts[p.Node])
	}
	return out
}

// firstToOpen is the branch of the fuse that must open soonest, -1 for none.
func firstToOpen(n *circuit.Network, sol *solve.Solution) int {
	best, soonest := -1, math.Inf(1)
	for i := range n.Branches {
		if fuse, ok := n.Of(&n.Branches[i]).(*circuit.Fuse); ok && n.Branches[i].Role == circuit.Through {
			if t := fuse.SlowestOpening(sol.Flows[i].Current); t < soonest {
				best, soonest = i, t
			}
		}
	}
	return best
}

// Inject makes a network with one thing broken, to be solved or written as a
// deck in one of its states. The fuses that it blows are still in.
func Inject(s *solve.Study, kind Kind, part, state int) *circuit.Network {
	broken := *s.Network
	broken.Branches = append([]circuit.Branch(nil), s.Network.Branches...)
	switch kind {
	case WireOpen, FuseOut, GroundLost:
		for i := range broken.Branches {
			if b := &broken.Branches[i]; b.Part == part && b.Role == circuit.Through {
				cut(b)
			}
		}
	case WireToBody:
		set := &s.Settings[state]
		broken.Branches = append(broken.Branches, circuit.Branch{Part: part, Kind: circuit.WireKind, From: farEnd(s, part, set), To: s.BodyNode(set.Open), Ohms: bodyOhms})
	case StuckOpen, StuckClosed:
		broken.States = append([]circuit.State(nil), s.Network.States...)
		st := &broken.States[state]
		st.Forced = append([]circuit.Forced{{Relay: part, Energized: kind == StuckClosed}}, without(st.Forced, part)...)
	}
	return &broken
}

// cut makes a branch one that nothing passes through.
func cut(b *circuit.Branch) { b.Law, b.Amps = circuit.CurrentLoad, 0 }

func without(list []circuit.Forced, relay int) []circuit.Forced {
	var rest []circuit.Forced
	for _, f := range list {
		if f.Relay != relay {
			rest = append(rest, f)
		}
	}
	return rest
}

// farEnd is the end of a wire that is further from the sources.
func farEnd(s *solve.Study, wire int, set *solve.Setting) int {
	pins := s.Network.Parts[wire].Basics().Pins
	depth := s.Graph.Hops(s.Network.Plus(), func(b int) bool { return !set.Open[b] && s.Graph.Metal(b) })
	if depth[pins[0].Node] > depth[pins[1].Node] {
		return pins[0].Node
	}
	return pins[1].Node
}

// Points lists the terminals of a network, one for each node.
func Points(n *circuit.Network) []Point {
	var list []Point
	var seen intset.Set
	for i, p := range n.Parts {
		base := p.Basics()
		switch base.Kind {
		case circuit.WireKind, circuit.BodyKind, circuit.LinkKind:
			continue
		}
		for _, pin := range base.Pins {
			if !seen.Add(pin.Node) {
				continue
			}
			name := n.EndName(circuit.End{Part: i, Pin: pin.Name})
			if ground, ok := p.(*circuit.Ground); ok && pin.Name == "point" {
				name = "body at " + ground.Point
			}
			list = append(list, Point{name, pin.Node})
		}
	}
	return list
}
