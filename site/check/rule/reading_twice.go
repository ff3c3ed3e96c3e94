package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

var readingTwice = &check.Rule{
	Name: "reading-twice",
	Firm: true,
	Doc: `A reading that two sheets name alike is judged by the same limits

A job gathers the readings of its sheets by name. The same name with 200 mV in
one sheet and 300 mV in another is one limit too many, or one name too few.`,
	CheckBook: func(p *check.Pass) {
		type place struct {
			sheet   *sheet.Sheet
			reading *sheet.Reading
		}
		first := make(map[string]place)
		for _, s := range p.Book.Sheets {
			for _, r := range s.Readings {
				f, met := first[r.ID]
				if !met {
					first[r.ID] = place{s, r}
					continue
				}
				if got, want := r.Limit.String(), f.reading.Limit.String(); got != want {
					p.ReportIn(s.Source, r.Span, "the reading "+r.ID+" is judged by “"+got+"” here, and by “"+want+"” in "+f.sheet.File,
						"use the same limits, or name the two readings apart", check.WithNote(f.sheet.Source, f.reading.Span.Start, "the other one"))
				}
			}
		}
	},
}
