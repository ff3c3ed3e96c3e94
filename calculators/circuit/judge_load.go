package circuit

import (
	"math"
	"strconv"

	"baybook/calculators/calc"
)

// draws reports a branch that uses the supply, and should have a way to it
// and back.
func (n *Network) draws(b *Branch) bool {
	return n.of(b).isLoad() && b.Law != Drives && b.Part != "rem"
}

// judgeDrop compares the voltage of each load with that of the source, in
// every named state.
func judgeDrop(s *Study, say func(Judgement)) {
	n := s.Network
	for state, sol := range s.Solutions {
		for i := range n.Branches {
			b := &n.Branches[i]
			e := n.of(b)
			if !n.draws(b) || e.Vehicle || sol.Flows[i].Open || !sol.On(n, i) {
				continue
			}
			supply := s.terminal(state, i)
			if math.IsInf(supply, 0) {
				continue // behind a resistor, which is there to lose
			}
			at := sol.Flows[i].Drop
			limit := n.Limits.Drop
			if e.Drop > 0 {
				limit = e.Drop
			}
			j := Judgement{Verdict: calc.Stop, Element: b.Element, State: n.States[state].Name}
			in := " in the state " + n.States[state].Name
			switch lost := supply - at; {
			case calc.Over(lost, limit*supply):
				j.Message = e.Name + " gets " + volts(at) + " of " + volts(supply) + in + ": " + volts(lost) + " or " +
					calc.FormatUnit(100*lost/supply, 3, "%") + " is lost, over the limit of " + calc.FormatUnit(100*limit, 3, "%")
				j.Do = "use a thicker or shorter wire; most is lost in " + s.worstOnTheWay(state, i)
				say(j)
			case calc.Under(at, e.Least):
				j.Message = e.Name + " gets " + volts(at) + in + " and needs " + volts(e.Least)
				j.Do = "use a thicker or shorter wire; most is lost in " + s.worstOnTheWay(state, i)
				say(j)
			}
		}
	}
}

// terminal is the voltage of the source that feeds a load in a state: from
// the highest positive terminal that metal joins with its feed to the lowest
// negative one that metal joins with its return.
func (s *Study) terminal(state, load int) float64 {
	n, sol := s.Network, s.Solutions[state]
	metal := func(k int) bool { return !sol.Flows[k].Open && s.graph.metal(k) }
	feed, ret := s.graph.reach([]int{n.Branches[load].From}, metal), s.graph.reach([]int{n.Branches[load].To}, metal)
	highest, lowest := math.Inf(-1), math.Inf(1)
	for _, i := range n.sourceBranches() {
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
func (s *Study) worstOnTheWay(state, load int) string {
	n := s.Network
	sol := s.Solutions[state]
	pass := func(k int) bool { return !sol.Flows[k].Open && s.graph.metal(k) }
	feed, ret := s.graph.hops(n.plus(), pass), s.graph.hops(n.minus(), pass)
	name, most := "the source", 0.0
	for _, way := range [...]struct {
		from  int
		depth []int
	}{{n.Branches[load].From, feed}, {n.Branches[load].To, ret}} {
		for node := way.from; way.depth[node] > 0; {
			next := node
			for _, k := range s.graph.at[node] {
				if to := s.graph.other(k, node); pass(k) && way.depth[to] == way.depth[node]-1 {
					if d := math.Abs(sol.Flows[k].Drop); d > most {
						name, most = n.of(&n.Branches[k]).Name, d
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
	return name + " (" + volts(most) + ")"
}

// judgeReturn finds what can get no supply in any setting.
func judgeReturn(s *Study, say func(Judgement)) {
	n := s.Network
	feeds, returns := make([]bool, n.Nodes), make([]bool, n.Nodes)
	for _, set := range s.sets {
		pass := func(k int) bool { return !set.open[k] && n.passes(&n.Branches[k]) }
		for node, ok := range s.graph.reach(n.plus(), pass) {
			feeds[node] = feeds[node] || ok
		}
		for node, ok := range s.graph.reach(n.minus(), pass) {
			returns[node] = returns[node] || ok
		}
	}
	for i := range n.Branches {
		b := &n.Branches[i]
		e := n.of(b)
		if !n.draws(b) && b.Part != "coil" && e.Kind != Speaker {
			continue
		}
		if e.Kind == Speaker {
			judgeSpeakerLoop(s, i, say)
			continue
		}
		fed, back := feeds[b.From], returns[b.To]
		switch {
		case feeds[b.To] && returns[b.From]: // connected, if the wrong way round
		case !fed:
			say(Judgement{Verdict: calc.Stop, Element: b.Element, Message: e.Name + " has no way from a source",
				Do: "lead a wire to " + e.Name + ", through its fuse"})
		case !back:
			say(Judgement{Verdict: calc.Stop, Element: b.Element, Message: e.Name + " has no return to the source",
				Do: "lead a wire from " + e.Name + " to a ground, or back to the source"})
		}
	}
}

// judgeSpeakerLoop judges a speaker by its way to an output and back.
func judgeSpeakerLoop(s *Study, i int, say func(Judgement)) {
	n := s.Network
	b := &n.Branches[i]
	metal := func(k int) bool { return s.graph.metal(k) || n.of(&n.Branches[k]).Kind == Speaker && k != i }
	for k := range n.Branches {
		if out := &n.Branches[k]; out.Law == Drives && n.of(out).Kind == Amplifier {
			if s.graph.reach([]int{out.To}, metal)[b.From] && s.graph.reach([]int{out.From}, metal)[b.To] {
				return
			}
		}
	}
	e := n.of(b)
	say(Judgement{Verdict: calc.Stop, Element: b.Element, Message: e.Name + " is not between the two terminals of an amplifier's output",
		Do: "lead " + e.Name + "+ and " + e.Name + "- each to its own terminal of one output"})
}

// judgeReversed finds loads whose voltage is below zero.
func judgeReversed(s *Study, say func(Judgement)) {
	n := s.Network
	for state, sol := range s.Solutions {
		for i := range n.Branches {
			b := &n.Branches[i]
			if e := n.of(b); n.draws(b) && e.Type != "heater" && e.Type != "lamp" && e.Type != "motor" && sol.Flows[i].Drop < -0.01*n.supply() {
				say(Judgement{Verdict: calc.Stop, Element: b.Element, State: n.States[state].Name,
					Message: e.Name + " has " + volts(sol.Flows[i].Drop) + " in the state " + n.States[state].Name + ": it is connected the wrong way round",
					Do:      "exchange its two wires"})
			}
		}
	}
}

// judgeSolution says where there is none.
func judgeSolution(s *Study, say func(Judgement)) {
	n := s.Network
	for state, sol := range s.Solutions {
		in := "in the state " + n.States[state].Name + " "
		for _, e := range sol.Restless {
			say(Judgement{Verdict: calc.Stop, Element: e, State: n.States[state].Name,
				Message: in + n.Elements[e].Name + " finds no rest: pulled in, it takes its own supply away",
				Do:      "feed its coil from before its own contact"})
		}
		for _, i := range sol.Starved {
			b := &n.Branches[i]
			say(Judgement{Verdict: calc.Stop, Element: b.Element, State: n.States[state].Name,
				Message: in + n.of(b).Name + " has no solution: the wiring cannot give it what it asks for, and it is left with " + volts(sol.Flows[i].Drop),
				Do:      "use a thicker or shorter wire"})
		}
		if !sol.Settled && len(sol.Restless) == 0 {
			say(Judgement{Verdict: calc.Stop, Element: -1, State: n.States[state].Name,
				Message: in + "no voltages satisfy every part", Do: "check the loads of constant power and the resistances before them"})
		}
	}
}

// judgeStandby passes on what the calculator says of the parked state.
func judgeStandby(s *Study, say func(Judgement)) {
	if s.Standby.Verdict == calc.OK {
		return
	}
	for i, reason := range s.Standby.Reasons {
		if i == 0 {
			say(Judgement{Verdict: s.Standby.Verdict, Element: s.Network.first(Source), State: s.Network.States[s.Standby.State].Name,
				Message: "parked, with " + show(s.Standby.Added, "A") + " added, " + reason, Do: "switch more of it off with the key"})
		}
	}
}

// judgeStack counts the wires on each ground.
func judgeStack(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range n.Elements {
		e := &n.Elements[i]
		if e.Kind != Ground {
			continue
		}
		lugs := 0
		for k := range n.Elements {
			if w := &n.Elements[k]; w.Kind == Wire && (w.Pins[0].Node == e.node("lug") || w.Pins[1].Node == e.node("lug")) {
				lugs++
			}
		}
		if lugs > 4 {
			say(Judgement{Verdict: calc.Check, Element: i, Message: strconv.Itoa(lugs) + " wires stand on " + e.Name + "; at most four hold (CASA AC 21-99)",
				Do: "give some of them a ground of their own"})
		}
	}
}
