package check

import (
	"baybook/site/check/phrase"
	"baybook/site/sheet"
)

// A Present is a hazard that a sheet shows.
//
// A hazard is shown by the words of the steps and of "Prove it", their
// captions, the orders in the free sections of procedures and guides, the
// title, the tools and materials, and by the front matter's own list. Where the words come from decides which messages are in time: one in
// a section before the place or in the same or an earlier step for words of
// the work, one anywhere for the others.
type Present struct {
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
func (f *facts) look() {
	f.shows = &shows{sheet: f.sheet, reader: f.reader, includes: make(map[*sheet.Step]inclusion)}
	f.ofFront()
	for _, p := range f.passages {
		if f.isWork(p) {
			f.ofPassage(p)
		} else if f.mayOrder(p) {
			f.ofOrders(p)
		}
		f.include(p)
	}
}

// isWork reports whether a passage tells of work that is done.
func (f *facts) isWork(p *passage) bool {
	if p.message != nil {
		return false
	}
	return p.step != nil || p.in("Prove it")
}

// mayOrder reports a passage of a free section, in which an order is work too.
func (f *facts) mayOrder(p *passage) bool {
	if p.message != nil || p.section == nil || p.kind != body || f.sheet.Front.Kind == sheet.Job || f.sheet.Front.Kind == sheet.Reference {
		return false
	}
	return !p.in("Sources") && !p.in("Check yourself") && !p.in("Before you start") && !p.in("Hand over")
}

// ofFront finds what the front matter shows.
func (f *facts) ofFront() {
	reg, front := f.reader.register, &f.sheet.Front
	for _, id := range front.Hazards {
		if h := f.reader.book.Register.Named(id); h != nil {
			f.whole(h, "hazards: "+id, front.Place("hazards"))
		}
	}
	if front.Kind != sheet.Procedure && front.Kind != sheet.Job {
		return
	}
	f.ofText(reg.steps, reg.stepOwners, f.front.title, front.Place("title"))
	for _, t := range f.front.tools {
		f.ofText(reg.tools, reg.toolOwners, t, front.Place("tools"))
	}
	for _, m := range f.front.materials {
		f.ofText(reg.tools, reg.toolOwners, m, front.Place("materials"))
	}
}

// ofText finds what one text of the front matter shows.
func (f *facts) ofText(set *phrase.Set, owners []int, t *phrase.Text, at sheet.Span) {
	all := phrase.Sentence{Last: len(t.Words)}
	for _, hit := range set.Find(t, all, phrase.Shown) {
		if i := owners[hit.Pattern]; !f.takenBack(i, t, all, hit) {
			f.whole(f.reader.register.hazards[i], t.Source, at)
		}
	}
}

// whole notes a hazard of the sheet as a whole, once.
func (f *facts) whole(h *sheet.Hazard, words string, at sheet.Span) {
	for _, p := range f.present {
		if p.Hazard == h {
			return
		}
	}
	f.present = append(f.present, Present{Hazard: h, Words: words, At: at, Whole: true, Least: h.Least})
}

// ofPassage finds what the sentences of a passage show.
func (f *facts) ofPassage(p *passage) {
	reg := f.reader.register
	for _, s := range p.Sentences {
		if tellsFault(p.In(s)) {
			return // what people do wrong, to the end of the paragraph
		}
		for _, hit := range reg.steps.Find(p.Text, s, phrase.Shown) {
			f.hit(p, s, hit)
		}
	}
}

// hit notes what a phrase found in a passage shows, where nothing takes it
// back.
func (f *facts) hit(p *passage, s phrase.Sentence, hit phrase.Hit) {
	reg := f.reader.register
	i := reg.stepOwners[hit.Pattern]
	if f.takenBack(i, p.Text, s, hit) {
		return
	}
	at := p.span(hit.First, hit.Last)
	if fig, ok := p.node.(*sheet.Figure); ok {
		at = fig.Span
	}
	f.note(Present{
		Hazard: reg.hazards[i], Words: p.Source[p.Words[hit.First].Start:p.Words[hit.Last-1].End],
		At: at, Step: p.step, Least: f.least(i, p), block: p.number, own: p.first,
	})
}

// ofOrders finds what can injure in the orders of a free section: there, only
// the order's own verb shows it, for much is spoken of that nobody does.
func (f *facts) ofOrders(p *passage) {
	reg := f.reader.register
	for _, s := range p.Sentences {
		if tellsFault(p.In(s)) {
			return
		}
		verb, ok := action(p.In(s))
		if !ok || !f.reader.lexicon.orders(p.In(s)[verb:]) {
			continue
		}
		for _, hit := range reg.steps.Find(p.Text, s, phrase.Shown) {
			if hit.First == s.First+verb && reg.hazards[reg.stepOwners[hit.Pattern]].Injury {
				f.hit(p, s, hit)
			}
		}
	}
}

// note adds a hazard, once for each step and once for each other passage.
func (f *facts) note(n Present) {
	for k := range f.present {
		old := &f.present[k]
		if old.Hazard == n.Hazard && !old.Whole && old.Step == n.Step && (n.Step != nil || old.block == n.block) {
			old.Least = max(old.Least, n.Least)
			return
		}
	}
	f.present = append(f.present, n)
}

// least is the least word for a hazard met in a passage: that of the
// register, or a graver one where the passage says so.
func (f *facts) least(hazard int, p *passage) sheet.Word {
	reg := f.reader.register
	word := reg.hazards[hazard].Least
	for k, u := range reg.hazards[hazard].Under {
		for _, s := range p.Sentences {
			if len(reg.under[hazard][k].Find(p.Text, s, phrase.Shown)) > 0 {
				word = max(word, u.Least)
			}
		}
	}
	return word
}

// takenBack reports whether an unless phrase stands in the same clause as the
// hit.
func (f *facts) takenBack(hazard int, t *phrase.Text, s phrase.Sentence, hit phrase.Hit) bool {
	clause := phrase.Sentence{First: hit.First, Last: hit.Last}
	for clause.First > s.First && t.Words[clause.First].Break < phrase.Comma {
		clause.First--
	}
	for clause.Last < s.Last && t.Words[clause.Last].Break < phrase.Comma {
		clause.Last++
	}
	return len(f.reader.register.unless[hazard].Find(t, clause, phrase.Said)) > 0
}

// tellsFault reports a sentence about what people do wrong.
func tellsFault(words []phrase.Word) bool {
	return len(words) > 1 && (words[0].Lower == "usual" || words[0].Lower == "common") &&
		(words[1].Lower == "fault" || words[1].Lower == "mistake" || words[1].Lower == "faults" || words[1].Lower == "mistakes")
}
