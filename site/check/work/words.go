package work

import (
	"slices"
	"strings"

	"baybook/site/check/english"
)

// Words know by which plain words a step declares its work. Any number of
// goroutines may share them.
type Words struct {
	lists *Lists
	stems *english.Stems
	acts  *english.Set
	names *english.Set
	// verbs are, by act, the verbs that it goes by, whatever must stand beside.
	verbs map[string]*english.Set
	// of are the entries and weights of the phrases of each set.
	ofActs, ofNames []goesBy
	// parts are the stems of the nouns that things and tools go by.
	parts map[string]bool
}

// goesBy is a phrase's entry and how much of a text it takes in.
type goesBy struct {
	entry *Entry
	// parts and words are how many the phrase has.
	parts, words int
}

// NewWords reads the words of the lists. Problems are phrases that are not
// well formed, as sentences; they are left out.
func NewWords(l *Lists, stems *english.Stems) (*Words, []string) {
	w := &Words{lists: l, stems: stems, parts: make(map[string]bool)}
	var acts, names []english.Pattern
	var problems []string
	read := func(source string, e *Entry, patterns *[]english.Pattern, of *[]goesBy) {
		p, msg := english.Parse(source, stems)
		if msg != "" {
			problems = append(problems, e.ID+": "+msg)
			return
		}
		*patterns = append(*patterns, p)
		*of = append(*of, goesBy{e, strings.Count(source, " + ") + 1, len(strings.Fields(source))})
	}
	for _, k := range [...]Kind{Act, Thing, Tool, State} {
		list := l.Of(k)
		for i := range list {
			e := &list[i]
			for _, s := range e.Words {
				if k == Act {
					read("to "+s, e, &acts, &w.ofActs)
				} else {
					read(s, e, &names, &w.ofNames)
				}
				if k == Thing || k == Tool {
					w.addPart(s)
				}
			}
			for _, s := range e.Said {
				read(s, e, &names, &w.ofNames)
			}
		}
	}
	w.verbs = make(map[string]*english.Set)
	for i := range l.Acts {
		w.verbs[l.Acts[i].ID] = w.verbsOf(&l.Acts[i])
	}
	w.acts, w.names = english.NewSet(acts), english.NewSet(names)
	return w, problems
}

// verbsOf reads the verbs that an act goes by, its own and those of what it is
// like.
func (w *Words) verbsOf(e *Entry) *english.Set {
	var list []english.Pattern
	for depth := 0; e != nil && depth < 4; e, depth = w.lists.entries[e.Like], depth+1 {
		for _, s := range e.Words {
			first, _, _ := strings.Cut(s, " + ")
			first, _, _ = strings.Cut(first, " ")
			if p, msg := english.Parse(first, w.stems); msg == "" {
				list = append(list, p)
			}
		}
		for _, s := range e.Said {
			if p, msg := english.Parse(s, w.stems); msg == "" {
				list = append(list, p)
			}
		}
	}
	return english.NewSet(list)
}

// Goes reports whether words of a sheet name a way to do an act.
func (w *Words) Goes(words, act string) bool {
	set := w.verbs[act]
	if set == nil {
		return false
	}
	t := english.Read(words, w.stems)
	return set.Has(t, english.Sentence{Last: len(t.Words)}, english.Said)
}

// Ways lists the acts that words of a sheet go by.
func (w *Words) Ways(words string) []string {
	var list []string
	for i := range w.lists.Acts {
		if id := w.lists.Acts[i].ID; w.Goes(words, id) {
			list = append(list, id)
		}
	}
	return list
}

// A Doing is a verb of a text and the acts that it goes by.
type Doing struct {
	// Word is the verb as it stands; Start and End are its bytes in the text.
	Word       string
	Start, End int
	// Acts are those that the verb may mean: one where it is plain.
	Acts []string
}

// An Understood is what the plain words of a sentence declare.
type Understood struct {
	// Start and End are the sentence's bytes in the text.
	Start, End           int
	Doings               []Doing
	Things, Tools, State []string
}

// Plain reports whether the sentence names at least one act and no verb of it
// means several.
func (u *Understood) Plain() bool {
	if len(u.Doings) == 0 {
		return false
	}
	return len(u.Doings[0].Acts) == 1
}

// Declarations are the sentence's acts with all that it names.
func (u *Understood) Declarations() []Declaration {
	var list []Declaration
	for _, d := range u.Doings {
		for _, act := range d.Acts {
			if !slices.ContainsFunc(list, func(x Declaration) bool { return x.Act == act }) {
				list = append(list, Declaration{Act: act, At: u.Things, With: u.Tools, State: u.State})
			}
		}
	}
	return list
}

// Read takes a text's plain words for work, sentence by sentence.
func (w *Words) Read(text string) []Understood {
	return w.ReadText(english.Read(text, w.stems))
}

// ReadText is Read for a text that is taken apart already, with the same stems.
func (w *Words) ReadText(t *english.Text) []Understood {
	var list []Understood
	for _, s := range t.Sentences {
		list = append(list, w.Sentence(t, s))
	}
	return list
}

// Sentence takes the plain words of one sentence of a text for work.
func (w *Words) Sentence(t *english.Text, s english.Sentence) Understood {
	u := Understood{}
	if s.First < s.Last {
		u.Start, u.End = t.Words[s.First].Start, t.Words[s.Last-1].End
	}
	hits := longest(w.names.Each(t, s, english.Shown), w.ofNames)
	u.Doings = w.doings(t, s)
	for _, h := range hits {
		e := w.ofNames[h.Pattern].entry
		switch e.Kind {
		case Act:
			u.said(t, h, e)
		case Thing:
			u.Things = with(u.Things, e.ID)
		case Tool:
			u.Tools = with(u.Tools, e.ID)
		case State:
			u.State = with(u.State, e.ID)
		}
	}
	return u
}

// said takes in an act that a phrase shows without a verb.
func (u *Understood) said(t *english.Text, h english.Hit, e *Entry) {
	for i := range u.Doings {
		d := &u.Doings[i]
		if d.Start == t.Words[h.First].Start {
			d.Acts = []string{e.ID} // "road test the van": the phrase says more than the verb
			return
		}
		if slices.Contains(d.Acts, e.ID) {
			return
		}
	}
	u.Doings = append(u.Doings, Doing{
		Word: t.Source[t.Words[h.First].Start:t.Words[h.Last-1].End], Start: t.Words[h.First].Start, End: t.Words[h.Last-1].End,
		Acts: []string{e.ID},
	})
}

func with(list []string, id string) []string {
	if slices.Contains(list, id) {
		return list
	}
	return append(list, id)
}

// doings are the verbs of a sentence. Where several acts go by one verb, the
// phrase that takes in more of the sentence decides.
func (w *Words) doings(t *english.Text, s english.Sentence) []Doing {
	var list []Doing
	var weights []int
	for _, h := range w.acts.Each(t, s, english.Shown) {
		by := w.ofActs[h.Pattern]
		weight := by.parts*10 + by.words
		if by.parts > 1 {
			weight = by.parts*10 + 1
		}
		start := t.Words[h.First].Start
		i := slices.IndexFunc(list, func(d Doing) bool { return d.Start == start })
		if i < 0 {
			i = len(list)
			list, weights = append(list, Doing{Start: start}), append(weights, 0)
		}
		d := &list[i]
		if weight > weights[i] {
			d.Acts, weights[i] = nil, weight
			d.End = t.Words[h.Last-1].End
			d.Word = t.Source[d.Start:d.End]
		}
		if weight == weights[i] {
			d.Acts = with(d.Acts, by.entry.ID)
		}
	}
	slices.SortFunc(list, func(a, b Doing) int { return a.Start - b.Start })
	return list
}

// longest leaves out hits that lie within a longer one: the fuse of "fuse
// box".
func longest(hits []english.Hit, of []goesBy) []english.Hit {
	var list []english.Hit
	for _, h := range hits {
		if of[h.Pattern].parts > 1 || !slices.ContainsFunc(hits, func(o english.Hit) bool {
			return o.First <= h.First && o.Last >= h.Last && o.Last-o.First > h.Last-h.First
		}) {
			list = append(list, h)
		}
	}
	return list
}
