package check

import (
	"cmp"
	"math"
	"slices"

	"baybook/calculators/calc"
	"baybook/site/check/phrase"
	"baybook/site/sheet"
)

var numbersDisagree = &Rule{
	Name: "numbers-disagree",
	Doc: `The same quantity has the same number wherever a sheet gives it

A torque in step 3 and another one for the same bolt in the proof: one of them
is wrong, and the reader on the floor picks either. Numbers are held together
that have the same kind of unit and speak of the same thing: the 10 A fuse, a
fuse of 10 A, the fuse is 10 A. Two things are told apart by their names (the
lamp fuse, the heater fuse), by what they are for, or by one sentence that gives
both. Lists of tools and materials count as the sheet's words do.

Bad:

	## Steps

	1. Torque the bolt to 9 N·m (example).

	## Prove it

	- The bolt holds at 12 N·m (example).

Good:

	## Steps

	1. Torque the lid bolt to 9 N·m (example).

	## Prove it

	- The foot bolt holds at 12 N·m (example).
`,
	Check: func(p *Pass) {
		mentions := p.mentions()
		// What is computed is right, and what is typed is held against it.
		slices.SortStableFunc(mentions, func(a, b mention) int { return cmp.Compare(rank(&a), rank(&b)) })
		computed := p.computedBy()
		for i := range mentions {
			if m := &mentions[i]; !m.computed && !m.repeats(computed) {
				p.disagrees(mentions[:i], m)
			}
		}
	},
}

// A mention is a number that the sheet gives for something.
type mention struct {
	quantity
	numbered
	passage  *passage
	sentence phrase.Sentence
	// list is tools or materials where it stands in one of them.
	list string
	span sheet.Span
	// computed is true for a computed number and for the limit of a reading:
	// other rules judge these.
	computed bool
}

func rank(m *mention) int {
	if m.computed {
		return 0
	}
	return 1
}

// mentions lists the numbers of the sheet whose subject is plain, in its order.
func (p *Pass) mentions() []mention {
	var list []mention
	ofList := func(key string, texts []*phrase.Text) {
		for _, t := range texts {
			found := p.mentionsIn(&passage{Text: t}, p.Sheet.Front.Place(key))
			for i := range found {
				found[i].list = key
			}
			list = append(list, found...)
		}
	}
	ofList("tools", p.facts.front.tools)
	ofList("materials", p.facts.front.materials)
	for _, t := range p.facts.passages {
		if !t.givesNumbers() || saysExample(t.Source) && t.step == nil && !t.in("Prove it") {
			continue
		}
		list = append(list, p.mentionsIn(t, sheet.Span{})...)
	}
	return list
}

// givesNumbers reports a passage whose numbers are those of this work.
func (t *passage) givesNumbers() bool {
	switch t.kind {
	case option:
		return t.right
	case why:
		return true
	case question, cell, heading:
		return false
	}
	return t.kind == opening || t.worksHere()
}

// mentionsIn lists those of one passage. Where at is set, they stand there.
func (p *Pass) mentionsIn(t *passage, at sheet.Span) []mention {
	var list []mention
	numbers := t.quantities()
	if len(numbers) == 0 {
		return nil
	}
	for _, s := range t.Sentences {
		if tellsFault(t.In(s)) {
			break
		}
		words := t.In(s)
		r := subjectReader{words: words, text: t.Source, lexicon: p.reader.lexicon}
		for i := range numbers {
			q := &numbers[i]
			if len(words) == 0 || q.number.Start < words[0].Start || q.number.Start >= words[len(words)-1].End {
				continue
			}
			if q.Bare || q.Unit.Dim == calc.None || isGauge(q) || isNominal(t.Source, q) || i > 0 && restates(t.Source, &numbers[i-1], q) {
				continue
			}
			what, ok := r.of(q)
			if !ok {
				continue
			}
			m := mention{quantity: *q, numbered: what, passage: t, sentence: s, span: at}
			if at == (sheet.Span{}) {
				m.span, m.computed = t.prose.Span(q.all.Start, q.all.End), isLink(t, q.number)
			}
			list = append(list, m)
		}
	}
	return list
}

// disagrees reports a number of which the sheet gave others before, and never
// this one.
func (p *Pass) disagrees(before []mention, m *mention) {
	var other *mention
	for i := range before {
		b := &before[i]
		if b.Unit.Dim != m.Unit.Dim || !b.fits(&m.numbered) {
			continue
		}
		if b.agrees(m) {
			return
		}
		if other == nil && !b.beside(m) {
			other = b
		}
	}
	if other == nil {
		return
	}
	p.Report(m.span, "this is "+m.String()+", and for the same thing the sheet gives "+other.String()+" elsewhere",
		"write the same number, or name the two things apart", withNote(p.Sheet.Source, other.span.Start, "given here"))
}

// beside reports two numbers that one sentence or one list gives: they are
// meant to differ.
func (m *mention) beside(o *mention) bool {
	if m.list != "" {
		return m.list == o.list
	}
	return m.passage == o.passage && m.sentence == o.sentence
}

// repeats reports a number that is held against the computed ones by
// repeated-number already.
func (m *mention) repeats(computed []computedOf) bool {
	if m.list != "" || m.passage.kind == option || m.passage.kind == why || !m.passage.worksHere() {
		return false
	}
	return slices.ContainsFunc(computed, func(c computedOf) bool {
		return c.at.Unit.Dim == m.Unit.Dim && speaksOf(m.passage.Source, &m.quantity, c.noun)
	})
}

// agrees reports whether two numbers are the same at the digits that either
// shows, in whatever unit. Rounding goes no further than a twentieth: 3 mm is
// not 3.5 mm.
func (m *mention) agrees(o *mention) bool {
	a, ok := within(m.Value, m.Unit, o.Unit)
	b, _ := within(o.Value, o.Unit, m.Unit)
	return ok && (o.tolerates(a) || m.tolerates(b)) && math.Abs(a-o.Value) <= 0.05*math.Abs(o.Value)
}
