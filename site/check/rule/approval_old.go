package rule

import (
	"time"

	"baybook/site/check"
)

var approvalOld = &check.Rule{
	Name: "approval-old",
	Doc: `An approval is not older than what it approves

An approval given before the sheet's date, or before its newest change where
the history is known, was given to another text.`,
	Check: func(p *check.Pass) {
		front := &p.Sheet.Front
		if front.Approved.Date.IsZero() {
			return
		}
		given := front.Approved.Date
		if given.Before(front.Date) {
			p.Report(front.Place("approved"), "approved on "+given.Format(time.DateOnly)+", before the sheet's date "+front.Date.Format(time.DateOnly), "have it approved again, and write that day")
			return
		}
		issue, ok := p.History.Sheets[p.Sheet.File]
		newest := issue.Newest
		if ok && given.Format(time.DateOnly) < newest.Format(time.DateOnly) {
			p.Report(front.Place("approved"), "approved on "+given.Format(time.DateOnly)+", and changed since, on "+newest.Format(time.DateOnly), "have it approved again, and write that day")
		}
	},
}
