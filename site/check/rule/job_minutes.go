package rule

import (
	"strconv"

	"baybook/site/check"
	"baybook/site/sheet"
)

var jobMinutes = &check.Rule{
	Name: "job-minutes",
	Firm: true,
	Doc: `The minutes of a job are those of its sheets

They are a sum, and a sum that is typed is wrong after the next change of a
sheet. The fix writes it.`,
	Check: func(p *check.Pass) {
		if p.Sheet.Front.Kind != sheet.Job || len(p.Sheet.Work) == 0 {
			return
		}
		sum := 0
		for _, l := range p.Sheet.Work {
			target := p.Book.Linked(p.Sheet, l)
			if target == nil || check.Unread(target) {
				return // the rules on links say it
			}
			sum += target.Front.Minutes
		}
		if p.Sheet.Front.Minutes == sum {
			return
		}
		at, text := p.Sheet.Front.Place("minutes"), strconv.Itoa(sum)
		message := "the minutes are " + strconv.Itoa(p.Sheet.Front.Minutes) + ", and those of the job's sheets together are " + text
		if string(p.Sheet.Source.Text()[at.Start:at.End]) == strconv.Itoa(p.Sheet.Front.Minutes) {
			p.Report(at, message, "write "+text, check.WithFix("write "+text, at, text))
			return
		}
		p.Report(at, message, "write "+text)
	},
}
