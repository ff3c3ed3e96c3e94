package list

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
)

// A Wire is one line of the wire list.
type Wire struct {
	// Number is its name in the drawing, From and To the terminals at its ends.
	Number, From, To string
	// Size, Color and Conductor are those of the reel that it comes off.
	Size, Color, Conductor string
	// Length is that of the drawing in m, Cut the length to cut it to.
	Length, Cut float64
	Function    string
	// Vehicle is true for a wire that is there already.
	Vehicle bool
}

// Wires lists the wires in the order of the drawing.
func Wires(n *circuit.Network) []Wire {
	var list []Wire
	for _, p := range n.Parts {
		w, ok := p.(*circuit.Wire)
		if !ok {
			continue
		}
		list = append(list, Wire{Number: w.Name, From: n.EndName(w.Ends[0]), To: n.EndName(w.Ends[1]), Size: w.Size, Color: w.Color,
			Conductor: w.Conductor, Length: w.Length, Cut: cutLength(n, w), Function: w.Function, Vehicle: w.Vehicle})
	}
	return list
}

// cutLength is the length in m to cut a wire to: with its allowance and what
// is spare at each end, up to the next centimeter.
func cutLength(n *circuit.Network, w *circuit.Wire) float64 {
	length := w.Length*(1+n.Limits.Allowance) + 2*n.Limits.Spare
	return math.Ceil(100*length-1e-6) / 100
}

// A Reel is what is cut off one reel, the longest first.
type Reel struct {
	Name  string
	Cuts  []Wire
	Total float64 // m
}

// Cuts groups the wires to cut by reel, the thickest first.
func Cuts(n *circuit.Network) []Reel {
	var list []Reel
	for _, wires := range reels(n) {
		reel := Reel{Name: reelName(n.Parts[wires[0]].(*circuit.Wire))}
		var cuts []Wire
		for _, w := range Wires(n) {
			for _, i := range wires {
				if n.Name(i) == w.Number {
					cuts = append(cuts, w)
					reel.Total += w.Cut
				}
			}
		}
		for _, i := range calc.Sorted(len(cuts), func(a, b int) bool { return cuts[a].Cut > cuts[b].Cut }) {
			reel.Cuts = append(reel.Cuts, cuts[i])
		}
		list = append(list, reel)
	}
	return list
}
