package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var noReturn = Rule{Name: "no-return", judge: judgeReturn}

var noReturnManual = Manual{
	Rule:  "no-return",
	Title: "Every load has a way from a source and a way back",
	Why:   `A load without a return does nothing, or finds a way that nobody meant.`,
	Good:  lampCircuit,
	Mistake: []string{
		`  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
		"",
	},
}

// judgeReturn finds what can get no supply in any setting.
func judgeReturn(s *solve.Study, say func(Judgment)) {
	n := s.Network
	feeds, returns := make([]bool, n.Nodes), make([]bool, n.Nodes)
	for _, set := range s.Settings {
		pass := func(k int) bool { return !set.Open[k] && n.Passes(&n.Branches[k]) }
		for node, ok := range s.Graph.Reach(n.Plus(), pass) {
			feeds[node] = feeds[node] || ok
		}
		for node, ok := range s.Graph.ReachBack(n.Minus(), pass) {
			returns[node] = returns[node] || ok
		}
	}
	if used := n.Attachments(); used[n.Supply().Node("-")] < 2 {
		name := n.Supply().Name
		say(Judgment{Verdict: calc.Stop, Part: n.First(circuit.SourceKind), Message: "nothing hangs on " + name + "-, so that no current flows",
			Do: "lead a wire from " + name + "- to a ground, with a point of its own under grounds:"})
		return
	}
	for i := range n.Branches {
		b := &n.Branches[i]
		e := n.Of(b).Basics()
		if !n.Draws(b) && b.Role != circuit.Coil && e.Kind != circuit.SpeakerKind {
			continue
		}
		if e.Kind == circuit.SpeakerKind {
			judgeSpeakerLoop(s, i, say)
			continue
		}
		fed, back := feeds[b.From], returns[b.To]
		switch {
		case feeds[b.To] && returns[b.From]: // connected, if the wrong way round
		case !fed:
			say(Judgment{Verdict: calc.Stop, Part: b.Part, Message: e.Name + " has no way from a source",
				Do: "lead a wire to " + e.Name + ", through its fuse"})
		case !back:
			say(Judgment{Verdict: calc.Stop, Part: b.Part, Message: e.Name + " has no return to the source",
				Do: "lead a wire from " + e.Name + " to a ground, or back to the source"})
		}
	}
}

// judgeSpeakerLoop judges a speaker by its way to an output and back.
func judgeSpeakerLoop(s *solve.Study, i int, say func(Judgment)) {
	n := s.Network
	b := &n.Branches[i]
	metal := func(k int) bool { return s.Graph.Metal(k) || n.Branches[k].Kind == circuit.SpeakerKind && k != i }
	for k := range n.Branches {
		if out := &n.Branches[k]; out.Role == circuit.Output {
			if s.Graph.Reach([]int{out.To}, metal)[b.From] && s.Graph.Reach([]int{out.From}, metal)[b.To] {
				return
			}
		}
	}
	e := n.Of(b).Basics()
	say(Judgment{Verdict: calc.Stop, Part: b.Part, Message: e.Name + " is not between the two terminals of an amplifier's output",
		Do: "lead " + e.Name + "+ and " + e.Name + "- each to its own terminal of one output"})
}
