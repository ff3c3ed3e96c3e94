package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/intset"
	"baybook/calculators/circuit/solve"
)

var sharedGround = Rule{Name: "shared-ground", judge: judgeSharedGround}

var sharedGroundManual = Manual{
	Rule:  "shared-ground",
	Title: "A device at sensor level shares no ground wire with a load of power",
	Why: `The load lifts the ground of a camera or a radio by its own drop, and the drop
stands in the picture or the sound. Several wires on one point are right; one
wire for several is not. Devices say signal: yes.`,
	Good: `sources:
  battery: {volts: 13.8, internal: 8 mohm}
fuses:
  F1: {rating: 30 A, type: E, from: battery+}
  F2: {rating: 2 A, from: battery+}
splices: [S1]
loads:
  amplifier: {current: 20 A}
  camera: {current: 150 mA, signal: yes}
grounds:
  G0: {point: tray}
  G1: {point: rear rail}
  G2: {point: rear rail}
wires:
  W1: {from: F1, to: amplifier, size: 8 AWG, length: 4 m, colour: RD}
  W2: {from: F2, to: camera, size: 20 AWG, length: 6 m, colour: RDWH}
  W3: {from: amplifier, to: S1, size: 8 AWG, length: 30 cm, colour: BK}
  W4: {from: camera, to: G2, size: 20 AWG, length: 30 cm, colour: BK}
  W5: {from: S1, to: G1, size: 8 AWG, length: 2 m, colour: BK}
  W6: {from: battery-, to: G0, size: 2 AWG, length: 40 cm, colour: BK, vehicle: yes}
`,
	Mistake: []string{
		`  G2: {point: rear rail}
`,
		"",
		`  W4: {from: camera, to: G2, size: 20 AWG, length: 30 cm, colour: BK}
`,
		`  W4: {from: camera, to: S1, size: 20 AWG, length: 30 cm, colour: BK}
`,
	},
}

// powerLoad is the current in A from which a load is one of power, common
// practice.
const powerLoad = 1.0

// leastLift is the lift of a ground in V under which no device at sensor level
// notices; a tenth of the drop limit counts as little. Common practice.
const leastLift = 1e-3

// judgeSharedGround finds the wires and joints through which both a device at
// sensor level and a load of power must return.
func judgeSharedGround(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for state, sol := range s.Solutions {
		if !sol.Solved() {
			continue
		}
		var quiet, loud []int
		for i := range n.Branches {
			b := &n.Branches[i]
			switch load, ok := n.Of(b).(*circuit.Load); {
			case !n.Draws(b) || sol.Flows[i].Open:
			case ok && load.Signal:
				quiet = intset.Append(quiet, i)
			case sol.Flows[i].Current >= powerLoad:
				loud = intset.Append(loud, i)
			}
		}
		for _, q := range quiet {
			if len(loud) > 0 {
				sharedWith(s, state, q, loud, say)
			}
		}
	}
}

// sharedWith judges one quiet device against all loud loads. A part is shared
// where neither gets back without it; what the load drops in all the shared
// parts together lifts the device.
func sharedWith(s *solve.Study, state, quiet int, loud []int, say func(Judgment)) {
	n := s.Network
	sol := s.Solutions[state]
	first, lift := make([]int, len(n.Branches)), make([]float64, len(n.Branches))
	for _, k := range wayBack(s, sol, n.Branches[quiet].To) {
		if e := n.Of(&n.Branches[k]).Basics(); e.Vehicle || e.Kind == circuit.BodyKind || sourceLead(s, k) {
			continue
		}
		left := s.Graph.Reach(n.Minus(), func(b int) bool { return b != k && !sol.Flows[b].Open && s.Graph.Metal(b) })
		if left[n.Branches[quiet].To] {
			continue
		}
		for _, l := range loud {
			if !left[n.Branches[l].To] {
				if lift[l] == 0 {
					first[l] = n.Branches[k].Part
				}
				lift[l] += sol.Flows[l].Current * n.Branches[k].Ohms
			}
		}
	}
	for _, l := range loud {
		if threshold := math.Max(leastLift, n.Limits.Drop.Of(n.Supply().Volts)/10); !calc.Over(lift[l], threshold) {
			continue
		}
		q, p := n.NameOf(&n.Branches[quiet]), n.NameOf(&n.Branches[l])
		say(Judgment{Verdict: calc.Stop, Part: first[l], State: n.States[state].Name,
			Message: q + " returns through " + n.Name(first[l]) + " together with " + p + ", whose " + format.Amps(sol.Flows[l].Current) + " lifts its ground by " + format.Volts(lift[l]),
			Do:      "give " + q + " a ground wire of its own to the point"})
	}
}

// wayBack lists the branches of a shortest way from a node to a source.
func wayBack(s *solve.Study, sol *solve.Solution, node int) []int {
	pass := func(k int) bool { return !sol.Flows[k].Open && s.Graph.Metal(k) }
	depth := s.Graph.Hops(s.Network.Minus(), pass)
	var way []int
	for depth[node] > 0 {
		for _, k := range s.Graph.At[node] {
			if next := s.Graph.Other(k, node); pass(k) && depth[next] == depth[node]-1 {
				way = intset.Append(way, k)
				node = next
				break
			}
		}
	}
	return way
}

// sourceLead reports whether a branch is the source's own ground: a wire from
// its negative terminal to a ground, or that ground. Everything returns
// through it.
func sourceLead(s *solve.Study, branch int) bool {
	n := s.Network
	b := &n.Branches[branch]
	var lugs intset.Set
	for i := range n.Parts {
		if ground, ok := n.Parts[i].(*circuit.Ground); ok {
			lugs.Add(ground.Node("lug"))
		}
	}
	lead := func(w *circuit.Branch) bool {
		for _, m := range n.Minus() {
			if w.From == m && lugs.Has(w.To) || w.To == m && lugs.Has(w.From) {
				return true
			}
		}
		return false
	}
	switch b.Kind {
	case circuit.WireKind:
		return lead(b)
	case circuit.GroundKind:
		for i := range n.Branches {
			if w := &n.Branches[i]; w.Kind == circuit.WireKind && (w.From == b.From || w.To == b.From) && lead(w) {
				return true
			}
		}
	}
	return false
}
