package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var drop = Rule{Name: "drop", judge: judgeDrop}

var dropManual = Manual{
	Rule:  "drop",
	Title: "What a load loses on the way there and back stays within the limit",
	Why: `In every named state, from the terminals of the source. The limit is that of
the drawing (3 % where none is written), or the load's own; either may be given in volts. A load may also say the least voltage that it works at.`,
	Good: lampCircuit,
	Mistake: []string{
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
`,
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 24 m, colour: RD}
`,
	},
}

// judgeDrop compares the voltage of each load with that of the source, in
// every named state.
func judgeDrop(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for state, sol := range s.Solutions {
		if !sol.Solved() {
			continue
		}
		for i := range n.Branches {
			b := &n.Branches[i]
			e := n.Of(b).Basics()
			if !n.Draws(b) || e.Vehicle || sol.Flows[i].Open || !sol.On(n, i) {
				continue
			}
			supply := terminal(s, state, i)
			if math.IsInf(supply, 0) {
				continue // behind a resistor, which is there to lose
			}
			at := sol.Flows[i].Drop
			demand, limit := circuit.DemandOf(n.Of(b)), n.Limits.Drop
			if !demand.Drop.IsZero() {
				limit = demand.Drop
			}
			j := Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name}
			in := " in the state " + n.States[state].Name
			switch lost := supply - at; {
			case calc.Over(lost, limit.Of(supply)):
				j.Message = e.Name + " gets " + format.Volts(at) + " of " + format.Volts(supply) + in + ": " + format.Volts(lost) + " or " +
					calc.FormatUnit(100*lost/supply, 3, "%") + " is lost, over the limit of " + limit.String()
				j.Do = "use a thicker or shorter wire; most is lost in " + worstOnTheWay(s, state, i)
				say(j)
			case calc.Under(at, demand.Least):
				j.Message = e.Name + " gets " + format.Volts(at) + in + " and needs " + format.Volts(demand.Least)
				j.Do = "use a thicker or shorter wire; most is lost in " + worstOnTheWay(s, state, i)
				say(j)
			}
		}
	}
}

// terminal is the voltage of the source that feeds a load in a state: from
// the highest positive terminal that metal joins with its feed to the lowest
// negative one that metal joins with its return.
func terminal(s *solve.Study, state, load int) float64 {
	n, sol := s.Network, s.Solutions[state]
	metal := func(k int) bool { return !sol.Flows[k].Open && s.Graph.Metal(k) }
	feed, ret := s.Graph.Reach([]int{n.Branches[load].From}, metal), s.Graph.Reach([]int{n.Branches[load].To}, metal)
	highest, lowest := math.Inf(-1), math.Inf(1)
	for _, i := range n.SourceBranches() {
		if b := &n.Branches[i]; feed[b.To] {
			highest = math.Max(highest, sol.Volts[b.To])
		}
		if b := &n.Branches[i]; ret[b.From] {
			lowest = math.Min(lowest, sol.Volts[b.From])
		}
	}
	return highest - lowest
}

// worstOnTheWay names the part that loses most between the source and a load.
func worstOnTheWay(s *solve.Study, state, load int) string {
	n := s.Network
	sol := s.Solutions[state]
	pass := func(k int) bool { return !sol.Flows[k].Open && s.Graph.Metal(k) }
	feed, ret := s.Graph.Hops(n.Plus(), pass), s.Graph.Hops(n.Minus(), pass)
	name, most := "the source", 0.0
	for _, way := range [...]struct {
		from  int
		depth []int
	}{{n.Branches[load].From, feed}, {n.Branches[load].To, ret}} {
		for node := way.from; way.depth[node] > 0; {
			next := node
			for _, k := range s.Graph.At[node] {
				if to := s.Graph.Other(k, node); pass(k) && way.depth[to] == way.depth[node]-1 {
					if d := math.Abs(sol.Flows[k].Drop); d > most {
						name, most = n.NameOf(&n.Branches[k]), d
					}
					next = to
					break
				}
			}
			if next == node {
				break
			}
			node = next
		}
	}
	return name + " (" + format.Volts(most) + ")"
}
