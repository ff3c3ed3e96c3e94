package check

import (
	"slices"

	"baybook/site/check/english"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

// StepWork is what the steps of a sheet do, and the vehicle on the way through
// them. Its lists go with the sheet's Steps; they are empty where the book has
// no lists of work.
type StepWork struct {
	Steps []work.Step
	// Own are the passages that the steps' own sentences stand in; nil for a
	// step without words.
	Own     []*Passage
	Moments []work.Moment
	// End is the state that the sheet leaves.
	End []string
	// Faults are what is wrong with the links that declare work.
	Faults []DoFault
}

// A DoFault is something wrong with a link that declares work.
type DoFault struct {
	Link *sheet.Do
	work.Fault
}

// followWork reads the work of every step and follows the vehicle through it.
func (f *SheetFacts) followWork() {
	lists := f.Book.Book.Work.Lists
	if lists.Empty() {
		return
	}
	w := &f.Work
	own := make(map[*sheet.Step]*Passage)
	for _, p := range f.Passages {
		if p.Step != nil && p.First && p.Message == nil && p.Kind == StepText {
			own[p.Step] = p
		}
	}
	about := &f.Sheet.Front.Work
	for _, s := range f.Sheet.Steps {
		p := own[s]
		w.Own = append(w.Own, p)
		step := work.Step{None: true}
		if p != nil {
			sentences := f.Book.WorkWords.ReadText(p.Text)
			step = work.Resolve(sentences, f.linked(s, p, sentences))
		}
		for i := range step.Does {
			if d := &step.Does[i]; len(d.At) == 0 {
				d.At = about.At
			}
		}
		w.Steps = append(w.Steps, step)
	}
	w.Moments, w.End = lists.Run(w.Steps, about.State)
	for i := range w.Steps {
		f.Causes = append(f.Causes, CausesOf(f.Book.Book, w.Steps[i].Does, w.Moments[i].State))
	}
}

// linked are the links of a step that declare work, with their places in the
// passage's text.
func (f *SheetFacts) linked(s *sheet.Step, p *Passage, sentences []work.Understood) []work.Linked {
	var list []work.Linked
	for _, do := range f.Sheet.Does {
		if do.Step != s {
			continue
		}
		d, faults := f.Book.Book.Work.Parse(do.Dest)
		for _, fault := range faults {
			f.Work.Faults = append(f.Work.Faults, DoFault{do, fault})
		}
		i := slices.IndexFunc(p.Words, func(w english.Word) bool { return p.Prose.Span(w.Start, w.End).Start >= do.Span.Start })
		if len(faults) > 0 || i < 0 {
			continue
		}
		last := i
		for last+1 < len(p.Words) && p.Prose.Span(p.Words[last+1].Start, p.Words[last+1].End).End <= do.Span.End {
			last++
		}
		list = append(list, work.Linked{Start: p.Words[i].Start, End: p.Words[last].End, Declaration: d})
	}
	return list
}

// NeverPhrases are the phrases of orders that no sheet gives.
type NeverPhrases struct {
	Says *english.Set
	// Owners are the rules of the phrases, by their place in the lists.
	Owners []int
	unless []*english.Set
	nevers []work.Never
}

func readNever(l *work.Lists, stems *english.Stems) *NeverPhrases {
	n := &NeverPhrases{nevers: l.Nevers}
	var all []english.Pattern
	for i, rule := range l.Nevers {
		for _, s := range rule.Says {
			if p, msg := english.Parse(s, stems); msg == "" {
				all, n.Owners = append(all, p), append(n.Owners, i)
			}
		}
		var unless []english.Pattern
		for _, s := range rule.Unless {
			if p, msg := english.Parse(s, stems); msg == "" {
				unless = append(unless, p)
			}
		}
		n.unless = append(n.unless, english.NewSet(unless))
	}
	n.Says = english.NewSet(all)
	return n
}

// Find gives the first rule whose order a sentence gives, and the words that
// give it; nil where it gives none.
func (n *NeverPhrases) Find(t *english.Text, s english.Sentence) (*work.Never, english.Hit) {
	for _, hit := range n.Says.Find(t, s, english.Shown) {
		i := n.Owners[hit.Pattern]
		if !n.unless[i].Has(t, s, english.Said) {
			return &n.nevers[i], hit
		}
	}
	return nil, english.Hit{}
}
