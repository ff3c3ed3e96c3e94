package rule

import (
	"time"

	"baybook/site/check"
)

var dateFuture = &check.Rule{
	Name: "date-future",
	Firm: true,
	Doc:  `No date of the title block lies in the future`,
	Check: func(p *check.Pass) {
		if p.History.Today.IsZero() {
			return
		}
		today := p.History.Today.Format(time.DateOnly)
		front := &p.Sheet.Front
		if day := front.Date.Format(time.DateOnly); !front.Date.IsZero() && day > today {
			p.Report(front.Place("date"), "the date "+day+" lies in the future; today is "+today, "write the day of the last change")
		}
		if day := front.Approved.Date.Format(time.DateOnly); !front.Approved.Date.IsZero() && day > today {
			p.Report(front.Place("approved"), "the approval of "+day+" lies in the future; today is "+today, "write the day on which it was approved")
		}
	},
}
