package rule

import (
	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// circuitRead is kept by the loader, which reads the drawing.
var circuitRead = &check.Rule{Name: "circuit", Firm: true, Doc: `A circuit is sections of named parts, each with known keys and real ends

A wire from: one part to: another names its terminals: battery+, lamp-, F1,
R1.87. Every key that is not known, every size without a unit and every end
that is nowhere is refused, for a drawing that is half read would be half
checked.`}

// judged passes on what is judged of the sheet's circuits by one rule. A
// mistake that a drawing shows on purpose is none.
func judged(p *check.Pass, rule string) {
	for _, c := range circuitsOf(p.Sheet) {
		study := c.Study()
		for i := range study.Judgements {
			j := &study.Judgements[i]
			if j.Rule != rule || study.Meant(j) {
				continue
			}
			p.Report(c.Place(j), j.Message, j.Do, weighed(j.Verdict))
		}
	}
}

// weighed makes a finding a warning where the judgement is only to be thought
// about.
func weighed(v calc.Verdict) func(*finding.Finding) {
	return func(f *finding.Finding) {
		f.Severity = finding.Error
		if v == calc.Check {
			f.Severity = finding.Warning
		}
	}
}

// circuitsOf are the circuits of a sheet that can be solved.
func circuitsOf(s *sheet.Sheet) []*sheet.Circuit {
	var list []*sheet.Circuit
	for _, f := range s.Fences {
		if f.Circuit != nil && f.Circuit.Network != nil {
			list = append(list, f.Circuit)
		}
	}
	return list
}
