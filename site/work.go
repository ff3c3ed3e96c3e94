package site

import (
	"fmt"
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// Work says, for each step of a sheet, what the build takes it to do and the
// hazards that follow; with trace also what is so at the vehicle before it.
// name is the sheet's path or file in the content folder. ok is false where
// the book has no such sheet.
func Work(o Options, name string, trace bool) (text string, ok bool, err error) {
	book, _, err := Check(o)
	if err != nil {
		return "", false, err
	}
	s := book.Sheet(strings.TrimSuffix(name, ".md"))
	if s == nil {
		return "", false, nil
	}
	w := check.WorkOf(book, s)
	if len(w.Steps) == 0 {
		return s.File + " has no steps, or the book has no lists of work.\n", true, nil
	}
	var b strings.Builder
	for i := range w.Steps {
		writeStep(&b, book, s, &w, i, trace)
	}
	if trace {
		fmt.Fprintf(&b, "end: %s\n", listed(w.End))
	}
	return b.String(), true, nil
}

// writeStep says what one step does.
func writeStep(b *strings.Builder, book *sheet.Book, s *sheet.Sheet, w *check.StepWork, i int, trace bool) {
	step, moment := &w.Steps[i], &w.Moments[i]
	if trace {
		fmt.Fprintf(b, "before: %s\n", listed(moment.State))
	}
	sentence := ""
	if own := w.Own[i]; own != nil && len(own.Sentences) > 0 {
		sentence = own.String(own.Sentences[0])
	}
	fmt.Fprintf(b, "%d. %s\n", s.Steps[i].Number, sentence)
	for _, d := range step.Does {
		fmt.Fprintf(b, "   does    %s\n", d.String())
	}
	if step.Doubt != nil {
		fmt.Fprintf(b, "   unclear “%s” can mean %s\n", step.Doubt.Word, strings.Join(step.Doubt.Acts, " or "))
	}
	for _, c := range check.CausesOf(book, step.Does, moment.State) {
		fmt.Fprintf(b, "   hazard  %s %s, by %s\n", c.Hazard.Least, c.Hazard.ID, c.By.String())
	}
	for _, m := range moment.Misses {
		fmt.Fprintf(b, "   needs   %s: %s\n", m.Need.ID, m.Need.Do)
	}
	for _, m := range moment.Broken {
		fmt.Fprintf(b, "   never   %s: %s\n", m.Never.ID, m.Never.Instead)
	}
}

func listed(state []string) string {
	if len(state) == 0 {
		return "nothing special"
	}
	return strings.Join(state, ", ")
}

// CertainWork gives, as findings with a fix, the links that declare the work of
// a sheet's steps where its words leave no doubt. ok is false where the book has
// no such sheet.
func CertainWork(o Options, name string) (list finding.List, ok bool, err error) {
	book, _, err := Check(o)
	if err != nil {
		return nil, false, err
	}
	s := book.Sheet(strings.TrimSuffix(name, ".md"))
	if s == nil {
		return nil, false, nil
	}
	return check.CertainWork(book, s), true, nil
}
