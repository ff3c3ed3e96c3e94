package sheet

import "strings"

// The titles of the sections that checks, pages and styles know. This is the
// only place that has them: a page marks each section with its part, by which
// scripts and styles find it.
const (
	BeforeYouStart = "Before you start"
	StepsTitle     = "Steps"
	ProveIt        = "Prove it"
	HandOver       = "Hand over"
	CheckYourself  = "Check yourself"
	Sources        = "Sources"
	WorkTitle      = "Work"
	// NotSettled lists what a draft made from old notes leaves to a person.
	NotSettled = "Not settled"
)

// sectionParts are the names by which scripts and styles find a section: the
// value of data-part in the page.
var sectionParts = []struct{ title, part string }{
	{BeforeYouStart, "preparation"},
	{StepsTitle, "steps"},
	{ProveIt, "proof"},
	{HandOver, "hand-over"},
}

// Is reports whether the section has the title, in any case of its letters.
func (s *Section) Is(title string) bool { return strings.EqualFold(s.Title, title) }

// Part is the name by which scripts and styles find the section, "" for one
// that they do not treat in any way of its own.
func (s *Section) Part() string {
	for _, p := range sectionParts {
		if s.Is(p.title) {
			return p.part
		}
	}
	return ""
}
