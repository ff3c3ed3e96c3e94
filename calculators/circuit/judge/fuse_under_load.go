package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
	"baybook/calculators/electrical"
)

var fuseUnderLoad = Rule{Name: "fuse-under-load", judge: judgeFuseUnderLoad}

var fuseUnderLoadManual = Manual{
	Rule:  "fuse-under-load",
	Title: "A fuse carries at most four fifths of its rating for good",
	Why: `Over its rating it opens at once or one warm day, and somebody fits a larger
one. From four fifths on, and where a surge may open it, this warns.`,
	Good: lampCircuit,
	Mistake: []string{
		`  lamp: {current: 2 A, type: lamp}
`,
		`  lamp: {current: 6 A, type: lamp}
`,
	},
}

// judgeFuseUnderLoad compares the current of every state with the fuse.
func judgeFuseUnderLoad(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e, ok := n.Of(b).(*circuit.Fuse)
		if !ok || b.Role != circuit.Through {
			continue
		}
		judgeBriefly(s, i, e, say)
		carries, state := s.Peak(i)
		j := Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name, Do: "divide the load"}
		if rating, ok := electrical.FuseFor(carries); ok {
			j.Do = "take a fuse of " + format.Amps(rating) + " if the wire behind it may carry that, or divide the load"
		}
		of := e.Name + " carries " + format.Amps(carries) + " in the state " + n.States[state].Name
		switch {
		case calc.Over(carries, e.Rating):
			j.Message = of + ", " + format.Amps(carries-e.Rating) + " more than its rating of " + format.Amps(e.Rating)
			say(j)
		case calc.Over(carries, electrical.FuseLoading*e.Rating):
			j.Verdict = calc.Check
			j.Message = of + ", over four fifths of its " + format.Amps(e.Rating) + "; it will open one warm day"
			say(j)
		default:
			judgeSurge(s, i, carries, say)
		}
	}
}

// judgeSurge adds to a fuse's current what its loads take when they start.
func judgeSurge(s *solve.Study, i int, carries float64, say func(Judgment)) {
	n := s.Network
	fuse := n.Of(&n.Branches[i]).(*circuit.Fuse)
	for k := range n.Branches {
		b := &n.Branches[k]
		e := circuit.DemandOf(n.Of(b))
		if !n.Draws(b) || e.Inrush == 0 {
			continue
		}
		steady, state := s.Peak(k)
		if e.Inrush <= steady || !behind(s, i, k, state) {
			continue
		}
		total := carries - steady + e.Inrush
		if opens := fuse.FastestOpening(total); opens < e.Surge {
			say(Judgment{Verdict: calc.Check, Part: n.Branches[i].Part,
				Message: fuse.Name + " may open after " + format.Seconds(opens) + " when " + n.NameOf(b) + " starts: " + format.Amps(total) + " for " + format.Seconds(e.Surge),
				Do:      "take the next fuse that the wire bears, or a slower type"})
		}
	}
}

// behind reports whether a load loses its feed when a branch is opened.
func behind(s *solve.Study, branch, load, state int) bool {
	open := s.Settings[state].Open
	pass := func(k int) bool { return k != branch && !open[k] && s.Network.Passes(&s.Network.Branches[k]) }
	return !s.Graph.Reach(s.Network.Plus(), pass)[s.Network.Branches[load].From]
}

// judgeBriefly judges a fuse in the states that last for a time only.
func judgeBriefly(s *solve.Study, i int, fuse *circuit.Fuse, say func(Judgment)) {
	n := s.Network
	for state := range n.States {
		lasts := n.States[state].Lasts
		if lasts == 0 || s.Unusable[state] {
			continue
		}
		carries := math.Abs(s.Solutions[state].Flows[i].Current)
		if opens := fuse.FastestOpening(carries); opens < lasts {
			say(Judgment{Verdict: calc.Check, Part: n.Branches[i].Part, State: n.States[state].Name,
				Message: fuse.Name + " may open after " + format.Seconds(opens) + " in the state " + n.States[state].Name + ": " + format.Amps(carries) + " for " + format.Seconds(lasts),
				Do:      "take the next fuse that the wire bears, or a slower type"})
		}
	}
}
