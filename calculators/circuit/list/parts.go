// Package list says what a shop cuts, labels and orders for a circuit. Its
// functions only read the network, so goroutines may call them at the same time.
package list

import (
	"strconv"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/intset"
)

// A Purchase is one line of the parts list.
type Purchase struct {
	// What is bought, how much of it, and which parts of the drawing it is for.
	What, Amount, For string
}

// Parts lists what the circuit needs that the vehicle does not have: wire by
// color and size with its whole length, fuses, what stands in the drawing by
// name, and the terminals on the ends of the wires.
func Parts(n *circuit.Network) []Purchase {
	list := wireParts(n)
	list = append(list, fuseParts(n)...)
	list = append(list, namedParts(n)...)
	return append(list, terminals(n)...)
}

// reels groups the wires that are not there already by the reel that they come
// off, the thickest first; each is the indices of its wires.
func reels(n *circuit.Network) [][]int {
	var list [][]int
	wire := func(i int) *circuit.Wire { return n.Parts[i].(*circuit.Wire) }
	for i := range n.Parts {
		w, ok := n.Parts[i].(*circuit.Wire)
		if !ok || w.Vehicle {
			continue
		}
		at := 0
		for at < len(list) && !sameReel(wire(list[at][0]), w) {
			at++
		}
		if at == len(list) {
			list = append(list, nil)
		}
		list[at] = intset.Append(list[at], i)
	}
	for i := range list { // few as they are
		for k := i; k > 0 && wire(list[k][0]).Area > wire(list[k-1][0]).Area; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
	return list
}

// wireParts adds up the wire to buy by reel, as it is cut.
func wireParts(n *circuit.Network) []Purchase {
	var list []Purchase
	for _, wires := range reels(n) {
		meters := 0.0
		for _, w := range wires {
			meters += cutLength(n, n.Parts[w].(*circuit.Wire))
		}
		list = append(list, Purchase{"wire " + reelName(n.Parts[wires[0]].(*circuit.Wire)), calc.FormatUnit(meters, 3, "m"), n.Names(wires)})
	}
	return list
}

// reelName says what is on a reel: "14 AWG, RD (red)".
func reelName(w *circuit.Wire) string {
	name := w.Size + ", " + w.Color + " (" + circuit.ColorName(w.Color) + ")"
	if w.Conductor != "copper" {
		name += ", " + w.Conductor
	}
	return name
}

// sameReel reports whether two wires come off one reel.
func sameReel(w, o *circuit.Wire) bool {
	return w.Color == o.Color && w.Size == o.Size && w.Conductor == o.Conductor
}

// fuseParts counts fuses by rating and type.
func fuseParts(n *circuit.Network) []Purchase {
	return counted(n, func(p circuit.Part) string {
		f, ok := p.(*circuit.Fuse)
		if !ok {
			return ""
		}
		what := "fuse " + format.Amps(f.Rating) + ", " + f.TypeName()
		if color := f.Color(); color != "" {
			what += ", " + color
		}
		if f.Taps != "" {
			return what + ", with fuse tap"
		}
		if f.Type == "breaker" {
			return "circuit breaker " + format.Amps(f.Rating)
		}
		return what + ", with holder"
	})
}

// acrossCoil says what is across a relay's coil.
func acrossCoil(r *circuit.Relay) string {
	if r.Suppression == "none" {
		return "nothing"
	}
	return r.Suppression
}

// namedParts counts the rest of what the drawing names.
func namedParts(n *circuit.Network) []Purchase {
	return counted(n, func(p circuit.Part) string {
		switch p := p.(type) {
		case *circuit.Switch:
			what := p.Type
			if p.Ways > 1 {
				what += ", " + strconv.Itoa(p.Ways) + " ways"
			}
			if p.Rating > 0 {
				what += ", " + format.Amps(p.Rating)
			}
			return what
		case *circuit.Diode:
			what := "diode, " + format.Volts(p.Forward)
			if p.Rating > 0 {
				what += ", " + format.Amps(p.Rating)
			}
			return what
		case *circuit.Alternator:
			return "alternator, " + format.Amps(p.Amps)
		case *circuit.Converter:
			return "converter to " + format.Volts(p.Volts) + ", " + format.Amps(p.Amps)
		case *circuit.Relay:
			return "relay, coil " + format.Ohms(p.Coil) + ", " + acrossCoil(p) + " across it, with socket"
		case *circuit.Connector:
			what := "connector, " + strconv.Itoa(p.Ways) + "-way"
			if p.Model != "" {
				what += ", " + p.Model
			}
			return what
		case *circuit.Splice:
			return "splice"
		case *circuit.Speaker:
			return "speaker, " + format.Ohms(p.Ohms)
		case *circuit.LEDs:
			return "LED strings, " + strconv.Itoa(p.Strings) + " of " + strconv.Itoa(p.Count) + ", each with " + format.Ohms(p.Ohms)
		case *circuit.Load:
			if p.Type == "resistor" {
				return "resistor, " + format.Ohms(p.Ohms)
			}
			return p.Name
		case *circuit.Amplifier:
			return p.Name
		case *circuit.Link:
			return p.Carries + " cable, " + p.From + " to " + p.To
		}
		return ""
	})
}

// counted counts the parts for which what gives the same words.
func counted(n *circuit.Network, what func(p circuit.Part) string) []Purchase {
	var list []Purchase
	var groups [][]int
	for i, p := range n.Parts {
		words := ""
		if !p.Basics().Vehicle {
			words = what(p)
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
		groups[at] = intset.Append(groups[at], i)
	}
	for i := range list {
		amount := 0
		for _, part := range groups[i] {
			amount++
			if load, ok := n.Parts[part].(*circuit.Load); ok {
				amount += load.Count - 1
			}
		}
		list[i].Amount = strconv.Itoa(amount)
		list[i].For = n.Names(groups[i])
	}
	return list
}

// sleeves are the colors of insulated crimp terminals by the largest area
// in mm2 that each takes: red to 16 AWG, blue to 14 AWG, yellow to 10 AWG
// (terminal practice, from memory).
var sleeves = []struct {
	gauge int
	color string
}{{16, "red"}, {14, "blue"}, {10, "yellow"}}

// terminals counts the terminals on the ends of the wires by what they go on
// and by the wire.
func terminals(n *circuit.Network) []Purchase {
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
	for i := range n.Parts {
		w, ok := n.Parts[i].(*circuit.Wire)
		if !ok || w.Vehicle {
			continue
		}
		for _, pin := range w.Pins {
			if kind := terminalAt(n, pin.Node); kind != "" {
				add(kind + " terminal for " + w.Size + sleeve(w))
			}
		}
	}
	for i := range list {
		list[i].Amount = strconv.Itoa(counts[i])
	}
	return list
}

// sleeve names the color of an insulated terminal for a wire.
func sleeve(w *circuit.Wire) string {
	for _, s := range sleeves {
		if !calc.Over(w.Area*1e6, calc.AWGArea(s.gauge)) && w.Area*1e6 > 0.9*calc.AWGArea(22) {
			return " (" + s.color + ")"
		}
	}
	return ""
}

// terminalKinds are the terminals that a wire gets by what is at its end, in
// the order in which one is chosen.
var terminalKinds = []struct {
	kind circuit.Kind
	what string
}{{circuit.GroundKind, "ring"}, {circuit.SourceKind, "ring"}, {circuit.AlternatorKind, "ring"}, {circuit.SpliceKind, ""}, {circuit.ConnectorKind, "connector"},
	{circuit.RelayKind, "6.3 mm push-on"}, {circuit.FuseKind, "fuse holder"}, {circuit.SwitchKind, "push-on"}, {circuit.LoadKind, "push-on"},
	{circuit.LEDsKind, "push-on"}, {circuit.ConverterKind, "push-on"}, {circuit.DiodeKind, "push-on"}, {circuit.AmplifierKind, "device"}, {circuit.SpeakerKind, "speaker"}}

// terminalAt names the terminal that a wire gets at a node, "" for none.
func terminalAt(n *circuit.Network, node int) string {
	for _, t := range terminalKinds {
		for _, p := range n.Parts {
			base := p.Basics()
			if base.Kind != t.kind {
				continue
			}
			for _, pin := range base.Pins {
				if pin.Node == node {
					return t.what
				}
			}
		}
	}
	return ""
}
