package check

import (
	"baybook/calculators/calc"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// Waivable reports whether a waiver can set a rule aside.
func Waivable(r *Rule) bool { return r != nil && !r.Firm && r.Check != nil }

func RuleNames(rules []*Rule) []string {
	var list []string
	for _, r := range rules {
		list = append(list, r.Name)
	}
	return list
}

// waive takes out what the sheet's waivers of rules set aside, and reports the
// waivers that set nothing aside.
func waive(s *sheet.Sheet, rules []*Rule, list finding.List) finding.List {
	if len(s.Front.Waivers) == 0 {
		return list
	}
	used := make(map[string]bool)
	kept := list[:0]
	for _, f := range list {
		waived := false
		for _, w := range s.Front.Waivers {
			if w.Rule != "" && w.Rule == f.Rule && Waivable(Named(rules, f.Rule)) {
				waived, used[w.Rule] = true, true
			}
		}
		if !waived {
			kept = append(kept, f)
		}
	}
	for _, w := range s.Front.Waivers {
		if w.Rule == "" || used[w.Rule] || !Waivable(Named(rules, w.Rule)) {
			continue
		}
		f := s.Source.At(w.Span.Start, w.Span.End)
		f.Rule, f.Message, f.Do = "waiver", "the rule "+w.Rule+" finds nothing in the sheet, so there is nothing to waive", "take the waiver out"
		kept = append(kept, f)
	}
	return kept
}

// Suggest gives the nearest name that is known, or the other advice.
func Suggest(given string, known []string, otherwise string) string {
	if near := calc.Nearest(given, known); near != "" {
		return "did you mean " + near + "?"
	}
	return otherwise
}
