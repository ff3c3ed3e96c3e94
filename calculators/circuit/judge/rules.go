package judge

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

// A Rule is one thing that a circuit is judged by. What explains it is its
// Manual, kept apart so that the browser need not fetch it.
type Rule struct {
	Name string
	// judge finds what breaks the rule; nil for a rule about the judgments.
	judge func(s *solve.Study, say func(Judgment))
}

// rules are all the rules, the most dangerous first.
var rules = [...]Rule{
	short, unfused, fuseOverWire, wireBurns, wireOverloaded, fuseUnderLoad, fuseMade,
	drop, noReturn, reversed, wireTurned, twoSources, liveBehind, tap, tapTurned,
	coilBare, coilTurned, contactOver, sourceLimit, sharedGround, groundStack, colourTwice,
	speakerLoad, speakerGround, noSolution, standby, unused, wrong,
}

// A Manual explains a rule to a person.
type Manual struct {
	Rule string
	// Firm is true for a rule that no sheet may waive.
	Firm bool
	// Warns is true where a broken rule does not keep a sheet from being
	// published.
	Warns bool
	// Title says in one line what must hold, Why gives the reasons.
	Title, Why string
	// Good is a circuit that keeps the rule, as YAML. Mistake turns it into one
	// that breaks it: pairs of what to replace and by what.
	Good    string
	Mistake []string
}

// Bad is the circuit that breaks the rule.
func (m *Manual) Bad() string {
	text := m.Good
	for i := 0; i+1 < len(m.Mistake); i += 2 {
		text = strings.Replace(text, m.Mistake[i], m.Mistake[i+1], 1)
	}
	return text
}

// Manuals are the manual pages of all rules, in the order of the rules.
func Manuals() []Manual {
	return []Manual{
		shortManual, unfusedManual, fuseOverWireManual, wireBurnsManual, wireOverloadedManual, fuseUnderLoadManual, fuseMadeManual,
		dropManual, noReturnManual, reversedManual, wireTurnedManual, twoSourcesManual, liveBehindManual, tapManual, tapTurnedManual,
		coilBareManual, coilTurnedManual, contactOverManual, sourceLimitManual, sharedGroundManual, groundStackManual, colourTwiceManual,
		speakerLoadManual, speakerGroundManual, noSolutionManual, standbyManual, unusedManual, wrongManual,
	}
}

// RuleNames lists the names of the rules.
func RuleNames() []string {
	var names []string
	for i := range rules {
		names = append(names, rules[i].Name)
	}
	return names
}

// Build turns a draft into a network, as the draft's own Build does, and
// refuses too the names under wrong that are no rules.
func Build(d *circuit.Draft) (*circuit.Network, []circuit.Problem) {
	n, problems := d.Build()
	names := RuleNames()
	for i, name := range d.Wrong {
		if isRule(name) {
			continue
		}
		p := circuit.Problem{In: circuit.InWrong, Index: i, Message: "“" + name + "” is not a judgement of circuits", Do: "use one of " + strings.Join(names, ", ")}
		if near := calc.Nearest(name, names); near != "" {
			p.Do = "did you mean " + near + "?"
		}
		problems = append(problems, p)
	}
	if len(problems) > 0 {
		return nil, problems
	}
	return n, nil
}

func isRule(name string) bool {
	for i := range rules {
		if rules[i].Name == name {
			return true
		}
	}
	return false
}
