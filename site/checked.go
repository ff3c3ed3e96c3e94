package site

import (
	"baybook/site/finding"
	"baybook/site/sheet"
)

// checked runs the rules over a book.
func checked(*sheet.Book) finding.List { return nil }

// Rules describes every rule, for reports.
func Rules() []finding.RuleInfo { return nil }

// Explain is the text of one rule: why it is there, with a bad and a good
// example; false where there is no such rule.
func Explain(string) (string, bool) { return "", false }
