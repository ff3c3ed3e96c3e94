package check

import (
	"baybook/site/check/english"
	"baybook/site/sheet"
)

// SheetFacts is what the rules of one sheet share: its texts taken apart, the
// hazards that it shows, its numbers. All of it is worked out once. One
// goroutine at a time uses it.
type SheetFacts struct {
	*HazardFacts
	Sheet *sheet.Sheet
	Book  *BookFacts
	// Passages are the sheet's leaf blocks in order.
	Passages []*Passage
	// MessageTexts are those of each safety message.
	MessageTexts map[*sheet.Message][]*Passage
	// Words takes further texts of the sheet apart.
	Words *english.Reader
	Front FrontTexts

	computed []ComputedNumber
	inputs   NumberList
	numbered bool
	parts    *PartSizes
	eyes     *eyes
}

// FrontTexts are the texts of the front matter that rules look at.
type FrontTexts struct {
	Title            *english.Text
	Tools, Materials []*english.Text
}

func readFront(front *sheet.Front, words *english.Reader) FrontTexts {
	t := FrontTexts{Title: words.Read(front.Title)}
	for _, tool := range front.Tools {
		t.Tools = append(t.Tools, words.Read(tool))
	}
	for _, material := range front.Materials {
		t.Materials = append(t.Materials, words.Read(material))
	}
	return t
}

// gather takes a sheet apart.
func gather(s *sheet.Sheet, book *BookFacts) *SheetFacts {
	f := &SheetFacts{Sheet: s, Book: book, MessageTexts: make(map[*sheet.Message][]*Passage), Words: &english.Reader{Stems: book.Stems}}
	f.Front = readFront(&s.Front, f.Words)
	if !Unread(s) {
		g := gatherer{facts: f, context: Passage{Kind: Opening}}
		g.children(s.Root)
	}
	return f
}

// Unread reports whether the loader refused the sheet as a whole. What it
// links to and what stands in it is then not known, and one finding says why.
func Unread(s *sheet.Sheet) bool { return s.Root == nil }

// Actions runs over the own sentence of every step: its passage and the
// sentence's words.
func (f *SheetFacts) Actions(do func(t *Passage, s english.Sentence)) {
	for _, t := range f.Passages {
		if t.Step != nil && t.First && t.Message == nil && t.Kind == StepText && len(t.Sentences) > 0 {
			do(t, t.Sentences[0])
		}
	}
}

// Instructions runs over every sentence of the steps' text.
func (f *SheetFacts) Instructions(do func(t *Passage, s english.Sentence)) {
	for _, t := range f.Passages {
		if t.Step == nil || t.Message != nil || t.Kind != StepText {
			continue
		}
		for _, s := range t.Sentences {
			do(t, s)
		}
	}
}
