package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var speakerLoad = Rule{Name: "speaker-load", judge: judgeSpeakers}

var speakerLoadManual = Manual{
	Rule:  "speaker-load",
	Title: "The speakers on an output are a load that it bears",
	Why: `Two speakers side by side halve the ohms, and an amplifier under its least load
dies hot. A speaker that is given more than it bears is warned of.`,
	Good: speakerCircuit,
	Mistake: []string{
		`  amp: {current: 6 A, output: 50 W, into: 4 ohm, least_load: 2 ohm, channels: 1}
`,
		`  amp: {current: 6 A, output: 50 W, into: 4 ohm, least_load: 4.5 ohm, channels: 1}
`,
	},
}

// judgeSpeakers judges the load on each output and the power in each speaker.
func judgeSpeakers(s *solve.Study, say func(Judgment)) {
	for _, sol := range s.Solutions {
		if !sol.Solved() {
			continue
		}
		judgeOutputs(s, sol, say)
	}
}

func judgeOutputs(s *solve.Study, sol *solve.Solution, say func(Judgment)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		f := sol.Flows[i]
		switch e := n.Of(b).(type) {
		case *circuit.Amplifier:
			if b.Role != circuit.Output || f.Current <= 1e-9 {
				continue
			}
			sees := math.Abs(f.Drop / f.Current)
			if calc.Under(sees, e.LeastLoad) {
				say(Judgment{Verdict: calc.Stop, Part: b.Part,
					Message: b.Label() + " of " + e.Name + " sees " + format.Ohms(sees) + " and bears no less than " + format.Ohms(e.LeastLoad),
					Do:      "connect the speakers in series, or take speakers of more ohms"})
			}
		case *circuit.Speaker:
			if e.Power > 0 && calc.Over(f.Heat, e.Power) {
				say(Judgment{Verdict: calc.Check, Part: b.Part,
					Message: e.Name + " is given " + format.Watts(f.Heat) + " at the output's full power and bears " + format.Watts(e.Power),
					Do:      "set the gain lower, or take a speaker that bears more"})
			}
		}
	}
}
