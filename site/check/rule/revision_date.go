package rule

import (
	"time"

	"baybook/site/check"
	"baybook/site/finding"
)

var revisionDate = &check.Rule{
	Name: "revision-date",
	Doc: `Revision and date move together

Where the history of the sheets is known: a new revision letter has a new date,
a new date has a new letter, neither goes back, and a text that was changed has
both. A second issue on one day has a letter of its own and that day. A reader
on the bench can only tell two issues apart by them.`,
	Check: func(p *check.Pass) {
		issue, ok := p.History.Sheets[p.Sheet.File]
		front := &p.Sheet.Front
		if !ok || front.Date.IsZero() || front.Revision == "" {
			return
		}
		newLetter, newDate := front.Revision != issue.Revision, !front.Date.Equal(issue.Date)
		switch {
		case newLetter && older(front.Revision, issue.Revision):
			p.Report(front.Place("revision"), "revision "+front.Revision+" comes before "+issue.Revision+", which was issued already", "write the letter that follows "+issue.Revision)
		case newDate && front.Date.Before(issue.Date):
			p.Report(front.Place("date"), "the date lies before that of the issue before, "+issue.Date.Format(time.DateOnly), "write the day of the last change")
		case newLetter && !newDate && front.Date.Format(time.DateOnly) != p.History.Today.Format(time.DateOnly): // else it is the second issue of the day
			p.Report(front.Place("date"), "the revision went from "+issue.Revision+" to "+front.Revision+", and the date stayed", "write the day of the change")
		case newDate && !newLetter:
			p.Report(front.Place("revision"), "the date moved, and the revision stayed "+issue.Revision, "write the letter that follows "+issue.Revision)
		case issue.Changed && !newLetter:
			p.Report(front.Place("revision"), "the sheet has changed since revision "+issue.Revision+" of "+issue.Date.Format(time.DateOnly), "write the next letter and the day of the change",
				func(f *finding.Finding) { f.Severity = finding.Warning })
		}
	},
}

// older reports whether revision a comes before b: A to Z, then AA to ZZ.
func older(a, b string) bool {
	if len(a) != len(b) {
		return len(a) < len(b)
	}
	return a < b
}
