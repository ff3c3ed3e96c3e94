// Package judge says what is wrong with a circuit. A rule is a value in a
// file of its own, beside the manual page that explains it and shows a mistake.
package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
	"baybook/calculators/circuit/solve"
)

// A Judgment is one thing wrong with a circuit.
type Judgment struct {
	// Rule is the name of the rule that was broken.
	Rule    string
	Verdict calc.Verdict
	// Part is the index of the part that is wrong, -1 for the circuit as a
	// whole, Entry its place in the draft.
	Part, Entry int
	// State names the state in which it is so, "" where it is so in all.
	State string
	// Message says what is wrong, with its numbers; Do what to do about it.
	Message, Do string
}

// An Assessment is a study with what is judged of it. Nothing changes it, so
// goroutines may share it.
type Assessment struct {
	*solve.Study
	Judgments []Judgment
}

// Assess solves a network and runs every rule over it. A rule says one thing
// about one part once: the first state in which it is so stands for the others.
func Assess(n *circuit.Network) *Assessment {
	a := &Assessment{Study: solve.Analyze(n)}
	for i := range rules {
		r := &rules[i]
		if r.judge == nil {
			continue
		}
		var said intset.Set
		r.judge(a.Study, func(j Judgment) {
			if !said.Add(j.Part) {
				return
			}
			j.Rule, j.Entry = r.Name, -1
			if j.Part >= 0 {
				j.Entry = n.Parts[j.Part].Basics().Entry
			}
			a.Judgments = append(a.Judgments, j)
		})
	}
	a.judgeWrong()
	return a
}

// judgeWrong refuses a drawing that does not show the mistake that it says it
// shows.
func (a *Assessment) judgeWrong() {
	for _, name := range a.Network.Wrong {
		shown := false
		for i := range a.Judgments {
			shown = shown || a.Judgments[i].Rule == name
		}
		if !shown {
			a.Judgments = append(a.Judgments, Judgment{Rule: wrong.Name, Verdict: calc.Stop, Part: -1, Entry: -1,
				Message: "the drawing is to show the mistake " + name + ", and that judgement is not made of it",
				Do:      "make the mistake, or take " + name + " out of wrong"})
		}
	}
}

// Meant reports whether a judgment is about a mistake that the drawing shows
// on purpose.
func (a *Assessment) Meant(j *Judgment) bool {
	for _, name := range a.Network.Wrong {
		if name == j.Rule {
			return true
		}
	}
	return false
}

// Verdict is the most serious judgment that is not meant.
func (a *Assessment) Verdict() calc.Verdict {
	worst := calc.OK
	for i := range a.Judgments {
		if j := &a.Judgments[i]; !a.Meant(j) {
			worst = max(worst, j.Verdict)
		}
	}
	return worst
}

// Judges reports whether anything is judged of a part.
func (a *Assessment) Judges(part int) bool {
	for i := range a.Judgments {
		if a.Judgments[i].Part == part {
			return true
		}
	}
	return false
}
