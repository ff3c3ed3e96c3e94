package check

import (
	"slices"
	"strings"

	"baybook/site/check/work"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// CertainWork gives, as findings with a fix, the links that would declare the
// work of a sheet's steps where the plain words leave no doubt. A step that has
// a link of its own already, or a verb that means several things, is left to
// its author. What the steps do stays the same.
func CertainWork(book *sheet.Book, s *sheet.Sheet) finding.List {
	return newBookFacts(nil, book).factsOf(s).certainWork()
}

func (f *SheetFacts) certainWork() finding.List {
	var list finding.List
	for i, step := range f.Sheet.Steps {
		own := (*Passage)(nil)
		if i < len(f.Work.Own) {
			own = f.Work.Own[i]
		}
		if own == nil || slices.ContainsFunc(f.Sheet.Does, func(d *sheet.Do) bool { return d.Step == step }) {
			continue
		}
		list = append(list, f.linksOf(own)...)
	}
	return list
}

// linksOf are the links for the verbs of a step's own sentences; none where one
// of them is in doubt or stands in another link.
func (f *SheetFacts) linksOf(own *Passage) finding.List {
	var list finding.List
	for _, u := range f.Book.WorkWords.ReadText(own.Text) {
		var acts []string
		for _, d := range u.Doings {
			at := own.Prose.Span(d.Start, d.End)
			plain := string(f.Sheet.Source.Text()[at.Start:at.End]) == d.Word && !strings.ContainsAny(d.Word, "[]()")
			if len(d.Acts) != 1 || !plain || f.inLink(at) || slices.Contains(acts, d.Acts[0]) {
				return nil
			}
			acts = append(acts, d.Acts[0])
			declared := work.Declaration{Act: d.Acts[0], At: u.Things, With: u.Tools, State: u.State}
			one := f.Sheet.Source.At(at.Start, at.End)
			one.Rule, one.Message = "work-link", "“"+d.Word+"” is "+declared.String()
			one.Fix = &finding.Fix{Message: "declare it", Edits: []finding.Edit{{Start: at.Start, End: at.End, New: "[" + d.Word + "](" + work.Scheme + declared.String() + ")"}}}
			list = append(list, one)
		}
	}
	return list
}

// inLink reports a stretch of the sheet that stands in a link.
func (f *SheetFacts) inLink(at sheet.Span) bool {
	text := f.Sheet.Source.Text()
	if at.Start > 0 && text[at.Start-1] == '[' {
		return true
	}
	return slices.ContainsFunc(f.Sheet.Links, func(l *sheet.Link) bool { return l.Span.Start <= at.Start && at.End <= l.Span.End })
}
