package list

import (
	"math"
	"unicode/utf8"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
)

// A Label goes around one end of a wire.
type Label struct {
	// Wire and End say where it goes: "W3", "lamp+".
	Wire, End string
	// Text is what stands on it: the wire, where this end goes, and where the
	// other end is.
	Text string
	// Length is how long a label with that text is, in mm.
	Length float64
}

// A label's letters are 2.5 mm high and so about 1.7 mm wide; 3 mm stay free
// at each end, and labels are cut to steps of 5 mm (our own choice).
const (
	letterWide = 1.7
	labelFree  = 3.0
	labelStep  = 5.0
)

// Labels are those for both ends of every wire that is not there already,
// sorted by their length, so that labels of one length are printed together.
func Labels(n *circuit.Network) []Label {
	var list []Label
	for _, w := range Wires(n) {
		if !w.Vehicle {
			list = append(list, newLabel(w.Number, w.From, w.To), newLabel(w.Number, w.To, w.From))
		}
	}
	var sorted []Label
	for _, i := range calc.Sorted(len(list), func(a, b int) bool { return list[a].Length < list[b].Length }) {
		sorted = append(sorted, list[i])
	}
	return sorted
}

func newLabel(wire, end, other string) Label {
	text := wire + " " + end + " / " + other
	length := float64(utf8.RuneCountInString(text))*letterWide + 2*labelFree
	return Label{wire, end, text, labelStep * math.Ceil(length/labelStep)}
}
