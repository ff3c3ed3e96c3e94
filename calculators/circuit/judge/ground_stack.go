package judge

import (
	"strconv"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var groundStack = Rule{Name: "ground-stack", judge: judgeStack}

var groundStackManual = Manual{
	Rule:  "ground-stack",
	Warns: true,
	Title: "At most four wires stand on one ground",
	Why:   `More do not hold one another down for long (CASA AC 21-99).`,
	Good:  lampCircuit,
	Mistake: []string{
		`loads:
`,
		`loads:
  clock 4: {current: 10 mA}
  clock 3: {current: 10 mA}
  clock 2: {current: 10 mA}
  clock 1: {current: 10 mA}
`,
		`  W4: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}
`,
		`  W4: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}
  A1: {from: F1, to: clock 1, size: 18 AWG, length: 1 m, colour: RD}
  B1: {from: clock 1, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
  A2: {from: F1, to: clock 2, size: 18 AWG, length: 1 m, colour: RD}
  B2: {from: clock 2, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
  A3: {from: F1, to: clock 3, size: 18 AWG, length: 1 m, colour: RD}
  B3: {from: clock 3, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
  A4: {from: F1, to: clock 4, size: 18 AWG, length: 1 m, colour: RD}
  B4: {from: clock 4, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
`,
	},
}

// judgeStack counts the wires on each ground.
func judgeStack(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Parts {
		e, ok := n.Parts[i].(*circuit.Ground)
		if !ok {
			continue
		}
		if earlierAt(n, i, e.Point) {
			continue // counted with the first ground of its point
		}
		lugs := 0
		for k := range n.Parts {
			if w, ok := n.Parts[k].(*circuit.Wire); ok {
				lugs += lugsAt(n, w, e.Point)
			}
		}
		if lugs > 4 {
			say(Judgment{Verdict: calc.Check, Part: i, Message: strconv.Itoa(lugs) + " lugs stand on " + e.Point + " with " + e.Name + "; at most four hold (CASA AC 21-99)",
				Do: "give some of them a ground of their own"})
		}
	}
}

// earlierAt reports whether a ground of the point comes before a part.
func earlierAt(n *circuit.Network, part int, point string) bool {
	for _, p := range n.Parts[:part] {
		if g, ok := p.(*circuit.Ground); ok && g.Point == point {
			return true
		}
	}
	return false
}

// lugsAt counts the ends of a wire that are bolted to a point, under whatever
// name its grounds have.
func lugsAt(n *circuit.Network, w *circuit.Wire, point string) int {
	lugs := 0
	for _, pin := range w.Pins {
		for _, p := range n.Parts {
			if g, ok := p.(*circuit.Ground); ok && g.Point == point && g.Node("lug") == pin.Node {
				lugs++
				break
			}
		}
	}
	return lugs
}
