package site

import (
	"baybook/site/check/rule"
	"baybook/site/finding"
)

// Rules describes every rule, for reports.
func Rules() []finding.RuleInfo { return rule.Infos() }

// Explain is the text of one rule: why it is there, with a bad and a good
// example; false where there is no such rule.
func Explain(name string) (string, bool) { return rule.Explain(name) }
