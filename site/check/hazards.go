package check

import (
	"baybook/site/check/english"
	"baybook/site/sheet"
)

// A ShownHazard is a hazard that a sheet shows.
//
// A hazard is shown by the words of the steps and of "Prove it", their
// captions, the orders in the free sections of procedures and guides, the
// title, the tools and materials, and by the front matter's own list. Where the
// words stand decides which messages come in time. For words of the work it is a
// message in a section before the place, or in the same or an earlier step; for
// the others it is a message anywhere.
type ShownHazard struct {
	Hazard *sheet.Hazard
	// Words are what shows it, At their place.
	Words string
	At    sheet.Span
	// Step is the step that shows it, nil elsewhere.
	Step *sheet.Step
	// Whole is true where it goes for the sheet as a whole: its title, tools,
	// materials or front matter show it.
	Whole bool
	// Least is the least word that the message may carry here.
	Least sheet.Word
	// block is the number of the passage that they stand in, own whether that is
	// the step's own sentence.
	block int
	own   bool
}

// look works out what the sheet shows.
func (f *SheetFacts) look() {
	f.HazardFacts = &HazardFacts{sheet: f.Sheet, book: f.Book, includes: make(map[*sheet.Step]inclusion)}
	f.ofFront()
	for _, p := range f.Passages {
		if f.isWork(p) {
			f.ofPassage(p)
		} else if f.mayOrder(p) {
			f.ofOrders(p)
		}
		f.include(p)
	}
	f.followWork()
}

// isWork reports whether a passage tells of work that is done.
func (f *SheetFacts) isWork(p *Passage) bool {
	if p.Message != nil {
		return false
	}
	return p.Step != nil || p.Under(sheet.ProveIt)
}

// mayOrder reports whether a passage stands in a free section, in which an
// order is work too.
func (f *SheetFacts) mayOrder(p *Passage) bool {
	if p.Message != nil || p.Section == nil || p.Kind != Body || f.Sheet.Front.Kind == sheet.Job || f.Sheet.Front.Kind == sheet.Reference {
		return false
	}
	return !p.Under(sheet.Sources, sheet.CheckYourself, sheet.BeforeYouStart, sheet.HandOver)
}

// ofFront finds what the front matter shows.
func (f *SheetFacts) ofFront() {
	reg, front := f.Book.Register, &f.Sheet.Front
	for _, id := range front.Hazards {
		if h := f.Book.Book.Register.Named(id); h != nil {
			f.whole(h, "hazards: "+id, front.Place("hazards"))
		}
	}
	if front.Kind != sheet.Procedure && front.Kind != sheet.Job {
		return
	}
	f.ofText(reg.steps, reg.stepOwners, f.Front.Title, front.Place("title"))
	for _, t := range f.Front.Tools {
		f.ofText(reg.tools, reg.toolOwners, t, front.Place("tools"))
	}
	for _, m := range f.Front.Materials {
		f.ofText(reg.tools, reg.toolOwners, m, front.Place("materials"))
	}
}

// ofText finds what one text of the front matter shows.
func (f *SheetFacts) ofText(set *english.Set, owners []int, t *english.Text, at sheet.Span) {
	all := english.Sentence{Last: len(t.Words)}
	for _, hit := range set.Find(t, all, english.Shown) {
		if i := owners[hit.Pattern]; !f.takenBack(i, t, all, hit) {
			f.whole(f.Book.Register.Hazards[i], t.Source, at)
		}
	}
}

// whole notes a hazard of the sheet as a whole, once.
func (f *SheetFacts) whole(h *sheet.Hazard, words string, at sheet.Span) {
	for _, p := range f.Present {
		if p.Hazard == h {
			return
		}
	}
	f.Present = append(f.Present, ShownHazard{Hazard: h, Words: words, At: at, Whole: true, Least: h.Least})
}

// ofPassage finds what the sentences of a passage show.
func (f *SheetFacts) ofPassage(p *Passage) {
	reg := f.Book.Register
	for _, s := range p.Sentences {
		if english.TellsFault(p.In(s)) {
			return // what people do wrong, to the end of the paragraph
		}
		for _, hit := range reg.steps.Find(p.Text, s, english.Shown) {
			f.hit(p, s, hit)
		}
	}
}

// hit notes what a phrase found in a passage shows, where nothing takes it
// back.
func (f *SheetFacts) hit(p *Passage, s english.Sentence, hit english.Hit) {
	reg := f.Book.Register
	i := reg.stepOwners[hit.Pattern]
	if f.takenBack(i, p.Text, s, hit) {
		return
	}
	at := p.Span(hit.First, hit.Last)
	if fig, ok := p.Node.(*sheet.Figure); ok {
		at = fig.Span
	}
	f.note(ShownHazard{
		Hazard: reg.Hazards[i], Words: p.Source[p.Words[hit.First].Start:p.Words[hit.Last-1].End],
		At: at, Step: p.Step, Least: f.least(i, p), block: p.Number, own: p.First,
	})
}

// ofOrders finds what can injure in the orders of a free section: there, only
// the order's own verb shows it, for much is spoken of that nobody does.
func (f *SheetFacts) ofOrders(p *Passage) {
	reg := f.Book.Register
	for _, s := range p.Sentences {
		if english.TellsFault(p.In(s)) {
			return
		}
		verb, ok := english.Action(p.In(s))
		if !ok || !f.Book.Lexicon.Orders(p.In(s)[verb:]) {
			continue
		}
		for _, hit := range reg.steps.Find(p.Text, s, english.Shown) {
			if hit.First == s.First+verb && reg.Hazards[reg.stepOwners[hit.Pattern]].Injury {
				f.hit(p, s, hit)
			}
		}
	}
}

// note adds a hazard, once for each step and once for each other passage.
func (f *SheetFacts) note(n ShownHazard) {
	for k := range f.Present {
		old := &f.Present[k]
		if old.Hazard == n.Hazard && !old.Whole && old.Step == n.Step && (n.Step != nil || old.block == n.block) {
			old.Least = max(old.Least, n.Least)
			return
		}
	}
	f.Present = append(f.Present, n)
}

// least is the least word for a hazard met in a passage: that of the register,
// or a more serious one where the passage says so.
func (f *SheetFacts) least(hazard int, p *Passage) sheet.Word {
	reg := f.Book.Register
	word := reg.Hazards[hazard].Least
	for k, u := range reg.Hazards[hazard].Under {
		for _, s := range p.Sentences {
			if len(reg.under[hazard][k].Find(p.Text, s, english.Shown)) > 0 {
				word = max(word, u.Least)
			}
		}
	}
	return word
}

// takenBack reports whether an unless phrase stands in the same clause as the
// hit.
func (f *SheetFacts) takenBack(hazard int, t *english.Text, s english.Sentence, hit english.Hit) bool {
	clause := english.Sentence{First: hit.First, Last: hit.Last}
	for clause.First > s.First && t.Words[clause.First].Break < english.Comma {
		clause.First--
	}
	for clause.Last < s.Last && t.Words[clause.Last].Break < english.Comma {
		clause.Last++
	}
	return len(f.Book.Register.unless[hazard].Find(t, clause, english.Said)) > 0
}
