package rule

import (
	"cmp"
	"math"
	"slices"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var numbersDisagree = &check.Rule{
	Name: "numbers-disagree",
	Doc: `The same quantity has the same number wherever a sheet gives it

A torque in step 3 and another one for the same bolt in the proof: one of them
is wrong, and the reader on the floor picks either. Numbers are held together
that have the same kind of unit and speak of the same thing: the 10 A fuse, a
fuse of 10 A, the fuse is 10 A. Two things are told apart by their names (the
lamp fuse, the heater fuse), by what they are for, or by one sentence that gives
both. Lists of tools and materials count as the sheet's words do.`,
	Check: func(p *check.Pass) {
		mentions := mentions(p)
		// What is computed is right, and what is typed is held against it.
		slices.SortStableFunc(mentions, func(a, b mention) int { return cmp.Compare(rank(&a), rank(&b)) })
		computed := p.Facts.ComputedNumbers()
		for i := range mentions {
			if m := &mentions[i]; !m.computed && !m.repeats(computed) {
				disagrees(p, mentions[:i], m)
			}
		}
	},
}

// A mention is a number that the sheet gives for something.
type mention struct {
	english.Quantity
	english.Subject
	passage  *check.Passage
	sentence english.Sentence
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
func mentions(p *check.Pass) []mention {
	var list []mention
	ofList := func(key string, texts []*english.Text) {
		for _, t := range texts {
			found := mentionsIn(p, &check.Passage{Text: t}, p.Sheet.Front.Place(key))
			for i := range found {
				found[i].list = key
			}
			list = append(list, found...)
		}
	}
	ofList("tools", p.Facts.Front.Tools)
	ofList("materials", p.Facts.Front.Materials)
	for _, t := range p.Facts.Passages {
		if !givesNumbers(t) || saysExample(t.Source) && t.Step == nil && !t.Under(sheet.ProveIt) {
			continue
		}
		list = append(list, mentionsIn(p, t, sheet.Span{})...)
	}
	return list
}

// givesNumbers reports a passage whose numbers are those of this work.
func givesNumbers(t *check.Passage) bool {
	switch t.Kind {
	case check.AnswerText:
		return t.Right
	case check.Explanation:
		return true
	case check.QuestionText, check.Cell, check.Heading:
		return false
	}
	return t.Kind == check.Opening || t.TellsWork()
}

// mentionsIn lists those of one passage. Where at is set, they stand there.
func mentionsIn(p *check.Pass, t *check.Passage, at sheet.Span) []mention {
	var list []mention
	numbers := t.Quantities()
	if len(numbers) == 0 {
		return nil
	}
	for _, s := range t.Sentences {
		if english.TellsFault(t.In(s)) {
			break
		}
		words := t.In(s)
		r := english.SubjectReader{Sentence: words, Source: t.Source, Lexicon: p.Shared.Lexicon}
		for i := range numbers {
			q := &numbers[i]
			if len(words) == 0 || q.Start < words[0].Start || q.Start >= words[len(words)-1].End {
				continue
			}
			if q.Bare || q.Unit.Dim == calc.None || q.IsGauge() || isNominal(t.Source, q) || i > 0 && english.Restates(t.Source, &numbers[i-1], q) {
				continue
			}
			if list, _ := p.Facts.Parts().Of(t.Source, q); list != nil && !list.Has(q) {
				continue // the rule on parts says it
			}
			what, ok := r.Of(q)
			if !ok {
				continue
			}
			m := mention{Quantity: *q, Subject: what, passage: t, sentence: s, span: at}
			if at == (sheet.Span{}) {
				m.span, m.computed = t.Prose.Span(q.Start, q.End), t.Computes(q)
			}
			list = append(list, m)
		}
	}
	return list
}

// disagrees reports a number where the sheet gave other values for the same
// thing before, and never this one.
func disagrees(p *check.Pass, before []mention, m *mention) {
	var other *mention
	for i := range before {
		b := &before[i]
		if b.Unit.Dim != m.Unit.Dim || !b.Fits(&m.Subject) {
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
		"write the same number, or name the two things apart", check.WithNote(p.Sheet.Source, other.span.Start, "given here"))
}

// beside reports two numbers that one sentence or one list gives: they are
// meant to differ.
func (m *mention) beside(o *mention) bool {
	if m.list != "" {
		return m.list == o.list
	}
	return m.passage == o.passage && m.sentence == o.sentence
}

// repeats reports whether repeated-number already compares a number with the
// computed ones.
func (m *mention) repeats(computed []check.ComputedNumber) bool {
	if m.list != "" || m.passage.Kind == check.AnswerText || m.passage.Kind == check.Explanation || !m.passage.TellsWork() {
		return false
	}
	return slices.ContainsFunc(computed, func(c check.ComputedNumber) bool {
		return c.Quantity.Unit.Dim == m.Unit.Dim && english.SpeaksOf(m.passage.Source, &m.Quantity, c.Noun)
	})
}

// agrees reports whether two numbers are the same at the digits that either
// shows, in whatever unit. Rounding goes no further than a twentieth: 3 mm is
// not 3.5 mm.
func (m *mention) agrees(o *mention) bool {
	a, ok := english.Within(m.Value, m.Unit, o.Unit)
	b, _ := english.Within(o.Value, o.Unit, m.Unit)
	return ok && (o.Tolerates(a) || m.Tolerates(b)) && math.Abs(a-o.Value) <= 0.05*math.Abs(o.Value)
}
