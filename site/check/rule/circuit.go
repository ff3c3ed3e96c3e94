package rule

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/judge"
	"baybook/site/check"
	"baybook/site/finding"
)

// circuitRead is kept by the loader, which reads the drawing.
var circuitRead = &check.Rule{Name: "circuit", Firm: true, Doc: `A circuit is sections of named parts, each with known keys and real ends

A wire from: one part to: another names its terminals: battery+, lamp-, F1,
R1.87. Every key that is not known, every size without a unit and every end
that is nowhere is refused, for a drawing that is half read would be half
checked.`}

// circuitRules are the rules by which circuits are judged, as their own room
// has them.
func circuitRules() []*check.Rule {
	var list []*check.Rule
	for _, m := range judge.Manuals() {
		severity := finding.Error
		if m.Warns {
			severity = finding.Warning
		}
		list = append(list, &check.Rule{Name: circuitPrefix + m.Rule, Firm: m.Firm, Severity: severity, Doc: m.Title + "\n\n" + m.Why,
			Check: func(p *check.Pass) { judged(p, m.Rule) }})
	}
	return list
}

// circuitPrefix stands before the name of every rule of circuits.
const circuitPrefix = "circuit-"

// circuitExample is the example of a rule of circuits, empty where there is no
// such rule: its circuit in a sheet, with its mistake.
func circuitExample(rule string) Example {
	for _, m := range judge.Manuals() {
		if circuitPrefix+m.Rule == rule {
			text := marked(m.Good, ' ')
			for i := 0; i+1 < len(m.Mistake); i += 2 {
				text = strings.Replace(text, marked(m.Mistake[i], ' '), difference(m.Mistake[i], m.Mistake[i+1]), 1)
			}
			return Example(" ## Prove it\n\n - The lamp lights.\n\n ~~~circuit\n" + text + " ~~~\n")
		}
	}
	return ""
}

// marked puts a mark before each line.
func marked(text string, mark byte) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		b.WriteByte(mark)
		b.WriteString(line)
	}
	return b.String()
}

// difference writes two texts as one, with the lines at their beginning that
// both have written once.
func difference(good, bad string) string {
	same := 0
	for i := range min(len(good), len(bad)) {
		if good[i] != bad[i] {
			break
		}
		if good[i] == '\n' {
			same = i + 1
		}
	}
	return marked(good[:same], ' ') + marked(bad[same:], '-') + marked(good[same:], '+')
}

// judged passes on what is judged of the sheet's circuits by one rule. A
// mistake that a drawing shows on purpose is none.
func judged(p *check.Pass, rule string) {
	for _, c := range check.CircuitsOf(p.Sheet) {
		assessed := c.Assessment()
		for i := range assessed.Judgments {
			j := &assessed.Judgments[i]
			if j.Rule != rule || assessed.Meant(j) {
				continue
			}
			p.Report(c.Place(j), j.Message, j.Do, weighed(j.Verdict))
		}
	}
}

// weighed makes a finding a warning where the judgment is only to be thought
// about.
func weighed(v calc.Verdict) func(*finding.Finding) {
	return func(f *finding.Finding) {
		f.Severity = finding.Error
		if v == calc.Check {
			f.Severity = finding.Warning
		}
	}
}
