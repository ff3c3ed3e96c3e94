package circuit

import (
	"strconv"

	"baybook/calculators/calc"
)

// A Purchase is one line of the parts list.
type Purchase struct {
	// What is bought, how much of it, and which parts of the drawing it is for.
	What, Amount, For string
}

// Parts lists what the circuit needs that the vehicle does not have: wire by
// colour and size with its whole length, fuses, what stands in the drawing by
// name, and the terminals on the ends of the wires.
func (n *Network) Parts() []Purchase {
	list := n.wireParts()
	list = append(list, n.fuseParts()...)
	list = append(list, n.namedParts()...)
	return append(list, n.terminals()...)
}

// wireParts adds up wire by colour, size and conductor.
func (n *Network) wireParts() []Purchase {
	var reels [][]int // the wires of each
	for i := range n.Elements {
		e := &n.Elements[i]
		if e.Kind != Wire || e.Vehicle {
			continue
		}
		at := 0
		for at < len(reels) && !n.Elements[reels[at][0]].sameReel(e) {
			at++
		}
		if at == len(reels) {
			reels = append(reels, nil)
		}
		reels[at] = with(reels[at], i)
	}
	for i := range reels { // the thickest first, few as they are
		for k := i; k > 0 && n.Elements[reels[k][0]].Area > n.Elements[reels[k-1][0]].Area; k-- {
			reels[k], reels[k-1] = reels[k-1], reels[k]
		}
	}
	var list []Purchase
	for _, wires := range reels {
		e := &n.Elements[wires[0]]
		what := "wire " + e.Size + ", " + e.Colour + " (" + colourName(e.Colour) + ")"
		if e.Conductor != "copper" {
			what += ", " + e.Conductor
		}
		metres := 0.0
		for _, w := range wires {
			metres += n.Elements[w].Length
		}
		list = append(list, Purchase{what, calc.FormatUnit(metres, 3, "m"), n.names(wires)})
	}
	return list
}

// sameReel reports wires that come off one reel.
func (e *Element) sameReel(o *Element) bool {
	return e.Colour == o.Colour && e.Size == o.Size && e.Conductor == o.Conductor
}

// fuseParts counts fuses by rating and type.
func (n *Network) fuseParts() []Purchase {
	return n.counted(func(e *Element) string {
		if e.Kind != Fuse {
			return ""
		}
		what := "fuse " + amps(e.Rating) + ", " + typeWord(e)
		if colour := fuseColour(e); colour != "" {
			what += ", " + colour
		}
		if e.Taps != "" {
			return what + ", with fuse tap"
		}
		return what + ", with holder"
	})
}

// acrossCoil says what is across a relay's coil.
func acrossCoil(e *Element) string {
	if e.Suppression == "none" {
		return "nothing"
	}
	return e.Suppression
}

// namedParts counts the rest of what the drawing names.
func (n *Network) namedParts() []Purchase {
	return n.counted(func(e *Element) string {
		switch e.Kind {
		case Switch:
			return "switch"
		case Relay:
			return "relay, coil " + ohms(e.Coil) + ", " + acrossCoil(e) + " across it, with socket"
		case Connector:
			return "connector, " + strconv.Itoa(e.Count) + "-way"
		case Splice:
			return "splice"
		case Speaker:
			return "speaker, " + ohms(e.Ohms)
		case LEDs:
			return "LED strings, " + strconv.Itoa(e.Strings) + " of " + strconv.Itoa(e.Count) + ", each with " + ohms(e.Ohms)
		case Load:
			if e.Type == "resistor" {
				return "resistor, " + ohms(e.Ohms)
			}
			return e.Name
		case Amplifier:
			return e.Name
		case Link:
			return e.Carries + " cable, " + e.From + " to " + e.To
		}
		return ""
	})
}

// counted counts the elements for which what gives the same words.
func (n *Network) counted(what func(e *Element) string) []Purchase {
	var list []Purchase
	var groups [][]int
	for i := range n.Elements {
		e := &n.Elements[i]
		words := ""
		if !e.Vehicle {
			words = what(e)
		}
		if words == "" {
			continue
		}
		at := 0
		for at < len(list) && list[at].What != words {
			at++
		}
		if at == len(list) {
			list, groups = append(list, Purchase{What: words}), append(groups, nil)
		}
		groups[at] = with(groups[at], i)
	}
	for i := range list {
		list[i].Amount = strconv.Itoa(len(groups[i]))
		list[i].For = n.names(groups[i])
	}
	return list
}

// sleeves are the colours of insulated crimp terminals by the largest area
// in mm2 that each takes: red to 16 AWG, blue to 14 AWG, yellow to 10 AWG
// (terminal practice, from memory).
var sleeves = []struct {
	gauge  int
	colour string
}{{16, "red"}, {14, "blue"}, {10, "yellow"}}

// terminals counts the terminals on the ends of the wires by what they go on
// and by the wire.
func (n *Network) terminals() []Purchase {
	var list []Purchase
	var counts []int
	add := func(what string) {
		at := 0
		for at < len(list) && list[at].What != what {
			at++
		}
		if at == len(list) {
			list, counts = append(list, Purchase{What: what}), append(counts, 0)
		}
		counts[at]++
	}
	for i := range n.Elements {
		e := &n.Elements[i]
		if e.Kind != Wire || e.Vehicle {
			continue
		}
		for _, pin := range e.Pins {
			if kind := n.terminalAt(pin.Node); kind != "" {
				add(kind + " terminal for " + e.Size + sleeve(e))
			}
		}
	}
	for i := range list {
		list[i].Amount = strconv.Itoa(counts[i])
	}
	return list
}

// sleeve names the colour of an insulated terminal for a wire.
func sleeve(e *Element) string {
	for _, s := range sleeves {
		if !calc.Over(e.Area*1e6, calc.AWGArea(s.gauge)) && e.Area*1e6 > 0.9*calc.AWGArea(22) {
			return " (" + s.colour + ")"
		}
	}
	return ""
}

// terminalKinds are the terminals that a wire gets by what is at its end, in
// the order in which one is chosen.
var terminalKinds = []struct {
	kind Kind
	what string
}{{Ground, "ring"}, {Source, "ring"}, {Splice, ""}, {Connector, "connector"}, {Relay, "6.3 mm push-on"}, {Fuse, "fuse holder"},
	{Switch, "push-on"}, {Load, "push-on"}, {LEDs, "push-on"}, {Amplifier, "device"}, {Speaker, "speaker"}}

func (n *Network) terminalAt(node int) string {
	for _, t := range terminalKinds {
		for i := range n.Elements {
			e := &n.Elements[i]
			if e.Kind != t.kind {
				continue
			}
			for _, p := range e.Pins {
				if p.Node == node {
					return t.what
				}
			}
		}
	}
	return ""
}
