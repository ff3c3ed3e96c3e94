package check

import (
	"slices"

	"baybook/site/check/english"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

// A Glimpse is a hazard that words show and the declared work does not give.
type Glimpse struct {
	Hazard *sheet.Hazard
	// Words are what shows it, At their place.
	Words string
	At    sheet.Span
	// Step is where they stand, nil outside the steps.
	Step *sheet.Step
}

// eyes go over a sheet's words as a second pair of eyes.
type eyes struct {
	*SheetFacts
	// given are the hazards that the work of each step and of those before it
	// brings; all are those of the whole sheet.
	given []map[*sheet.Hazard]bool
	all   map[*sheet.Hazard]bool
	seen  map[glimpsed]bool
	list  []Glimpse
	// waived are those that a waiver takes back.
	waived []Glimpse
}

type glimpsed struct {
	hazard *sheet.Hazard
	step   *sheet.Step
}

// Glimpses lists the hazards that the sheet's words show and that neither the
// declared work, the head of the sheet nor a message of its own gives in time:
// what the register's phrases see, and what the words of the lists of work
// would declare.
func (f *SheetFacts) Glimpses() []Glimpse { return f.lookAround().list }

// WaivedGlimpses lists those that would be there without the sheet's waivers.
func (f *SheetFacts) WaivedGlimpses() []Glimpse { return f.lookAround().waived }

// lookAround goes over the words once.
func (f *SheetFacts) lookAround() *eyes {
	if f.eyes != nil {
		return f.eyes
	}
	e := &eyes{SheetFacts: f, all: make(map[*sheet.Hazard]bool), seen: make(map[glimpsed]bool)}
	f.eyes = e
	if f.Book.Book.Work.Empty() {
		return e
	}
	e.declared()
	for _, p := range f.Passages {
		e.passage(p)
	}
	f.UnboundTexts(func(t *english.Text, at sheet.Span) {
		for _, s := range t.Sentences {
			e.order(t, s, nil, func(english.Hit) sheet.Span { return at })
		}
	})
	return e
}

// declared gathers what the declared work gives, step by step.
func (e *eyes) declared() {
	book := e.Book.Book
	for _, id := range e.Sheet.Front.Hazards {
		e.all[book.Register.Named(id)] = true
	}
	before := make(map[*sheet.Hazard]bool)
	for i := range e.Work.Steps {
		given := make(map[*sheet.Hazard]bool)
		for h := range before {
			given[h] = true
		}
		for _, c := range CausesOf(book, e.Work.Steps[i].Does, e.Work.Moments[i].State) {
			given[c.Hazard] = true
		}
		if target, _ := e.Included(e.Sheet.Steps[i]); target != nil {
			e.brought(target, given)
		}
		e.given = append(e.given, given)
		before = given
		for h := range given {
			e.all[h] = true
		}
	}
	for _, link := range e.Sheet.Work {
		if target := book.Linked(e.Sheet, link); target != nil && target != e.Sheet {
			e.brought(target, e.all)
		}
	}
}

// brought adds what the work of another sheet gives, and what its messages
// speak of.
func (e *eyes) brought(target *sheet.Sheet, to map[*sheet.Hazard]bool) {
	facts := e.Book.HazardsOf(target)
	for i := range facts.Work.Steps {
		for _, c := range CausesOf(e.Book.Book, facts.Work.Steps[i].Does, facts.Work.Moments[i].State) {
			to[c.Hazard] = true
		}
	}
	for _, m := range target.Messages {
		for _, h := range facts.HazardsNamed(m) {
			to[h] = true
		}
	}
}

// readable reports a passage that a reader could act on.
func readable(p *Passage) bool {
	switch p.Kind {
	case QuestionText, Explanation:
		return false
	case AnswerText:
		return p.Right
	}
	return p.Message == nil && !p.Under(sheet.Sources)
}

// passage looks at one passage. In work that is told, words show a hazard
// wherever they stand; elsewhere, and behind a sentence on what people do
// wrong, only an order does.
func (e *eyes) passage(p *Passage) {
	if !readable(p) {
		return
	}
	place := func(hit english.Hit) sheet.Span {
		if fig, ok := p.Node.(*sheet.Figure); ok {
			return fig.Span
		}
		return p.Span(hit.First, hit.Last)
	}
	reg, wrong := e.Book.Register, false
	for _, s := range p.Sentences {
		if english.TellsFault(p.In(s)) {
			wrong = true
			continue
		}
		if !e.isWork(p) || wrong {
			e.order(p.Text, s, p.Step, place)
			continue
		}
		for _, hit := range reg.steps.Find(p.Text, s, english.Shown) {
			if i := reg.stepOwners[hit.Pattern]; !e.takenBack(i, p.Text, s, hit) {
				e.note(reg.Hazards[i], p.Text, hit, p.Step, place(hit))
			}
		}
		if !p.First {
			e.order(p.Text, s, p.Step, place)
		}
	}
	if p.Step != nil && p.First {
		e.beyondLinks(p)
	}
}

// order looks at a sentence that may order work outside the steps' own
// sentences. What can injure counts: by the phrases of the register where they
// take in the order's verb, and by the words of the lists of work.
func (e *eyes) order(t *english.Text, s english.Sentence, step *sheet.Step, place func(english.Hit) sheet.Span) {
	verb, ok := english.Action(t.In(s))
	if !ok || !e.Book.Lexicon.Orders(t.In(s)[verb:]) || !takesObject(t.In(s)[verb:]) {
		return
	}
	reg := e.Book.Register
	for _, hit := range reg.steps.Find(t, s, english.Shown) {
		i := reg.stepOwners[hit.Pattern]
		if hit.First == s.First+verb && reg.Hazards[i].Injury && !e.takenBack(i, t, s, hit) {
			e.note(reg.Hazards[i], t, hit, step, place(hit))
		}
	}
	u := e.Book.WorkWords.Sentence(t, s)
	if !u.Plain() || u.Doings[0].Start != t.Words[s.First+verb].Start {
		return
	}
	whole := english.Hit{First: s.First, Last: s.Last}
	first := work.Declaration{Act: u.Doings[0].Acts[0], At: u.Things, With: u.Tools, State: u.State}
	for _, c := range CausesOf(e.Book.Book, []work.Declaration{first}, nil) {
		if c.Hazard.Injury {
			e.note(c.Hazard, t, whole, step, place(whole))
		}
	}
}

// takesObject reports words that begin with a verb and what it is done to:
// "drill the floor", "take off the cover". Labels and lists of nouns, such as
// "feed from the battery", do not.
func takesObject(words []english.Word) bool {
	for i := 1; i < len(words) && i <= 2; i++ {
		w := &words[i]
		if w.Break >= english.Comma {
			return false
		}
		switch w.Lower {
		case "the", "a", "an", "it", "its", "them", "both", "each", "every", "all", "your", "this", "that", "these", "one", "two", "any":
			return true
		case "off", "out", "up", "down", "away", "back":
			continue
		}
		return false
	}
	return false
}

// beyondLinks looks at what a step's words name and its links leave out.
func (e *eyes) beyondLinks(p *Passage) {
	i := slices.Index(e.Sheet.Steps, p.Step)
	if i < 0 || i >= len(e.Work.Steps) || !slices.ContainsFunc(e.Sheet.Does, func(d *sheet.Do) bool { return d.Step == p.Step }) {
		return
	}
	for _, s := range p.Sentences {
		if english.TellsFault(p.In(s)) {
			return
		}
		u := e.Book.WorkWords.Sentence(p.Text, s)
		whole := english.Hit{First: s.First, Last: s.Last}
		for _, d := range e.Work.Steps[i].Does {
			if len(u.Doings) == 0 || !slices.ContainsFunc(u.Doings, func(x work.Doing) bool { return slices.Contains(x.Acts, d.Act) }) {
				continue // the sentence of another declaration
			}
			d.At, d.With = append(slices.Clip(d.At), u.Things...), append(slices.Clip(d.With), u.Tools...)
			d.State = append(slices.Clip(d.State), u.State...)
			for _, c := range CausesOf(e.Book.Book, []work.Declaration{d}, e.Work.Moments[i].State) {
				if c.Hazard.Injury {
					e.note(c.Hazard, p.Text, whole, p.Step, p.SentenceSpan(s))
				}
			}
		}
	}
}

// note keeps a hazard that nothing gives, once for each step and once outside
// the steps.
func (e *eyes) note(h *sheet.Hazard, t *english.Text, hit english.Hit, step *sheet.Step, at sheet.Span) {
	given := e.all[h]
	if i := slices.Index(e.Sheet.Steps, step); step != nil && i >= 0 && i < len(e.given) {
		given = e.given[i][h] || slices.Contains(e.Sheet.Front.Hazards, h.ID)
	}
	key := glimpsed{h, step}
	if given || e.seen[key] || slices.ContainsFunc(e.Present, func(p ShownHazard) bool { return p.Hazard == h && p.Step == step && step != nil }) {
		return // what the sheet shows there is judged as such
	}
	place := ShownHazard{Hazard: h, At: at, Step: step, Whole: step == nil}
	if slices.ContainsFunc(e.MessagesOn(h), func(m *sheet.Message) bool { return Guards(m, &place) }) {
		return
	}
	e.seen[key] = true
	g := Glimpse{h, t.Source[t.Words[hit.First].Start:t.Words[hit.Last-1].End], at, step}
	if WaiverAt(e.Sheet, h, step) != nil {
		e.waived = append(e.waived, g)
	} else {
		e.list = append(e.list, g)
	}
}
