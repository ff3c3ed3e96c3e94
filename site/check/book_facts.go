package check

import (
	"strings"
	"sync"

	"baybook/site/check/english"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

// BookFacts is what the rules of all sheets share: the book's lists, their
// phrases ready to be looked for, and the stems of words. Any number of
// goroutines may use it.
type BookFacts struct {
	Book *sheet.Book
	// Rules are all that a waiver may name, the loader's too.
	Rules    []*Rule
	Stems    *english.Stems
	Register *RegisterPhrases
	Glossary *GlossaryPhrases
	Lexicon  *english.Lexicon
	// WorkWords are the plain words that declare work, NeverSays the phrases that
	// give an order which no sheet gives.
	WorkWords *work.Words
	NeverSays *NeverPhrases

	mu    sync.Mutex
	looks map[*sheet.Sheet]*hazardsOnce
	kept  int // how many of them hold facts
	// series are the letters of document numbers in the book seriesOf.
	series   map[string]bool
	seriesOf *sheet.Book
}

func newBookFacts(rules []*Rule, book *sheet.Book) *BookFacts {
	words := wordsOf(book.Words)
	stems := english.NewStems(words.Stems)
	workWords, _ := work.NewWords(book.Work.Lists, stems) // the rule work-lists reports what is wrong
	return &BookFacts{
		WorkWords: workWords, NeverSays: readNever(book.Work.Lists, stems),
		Book: book, Rules: rules, Stems: stems, looks: make(map[*sheet.Sheet]*hazardsOnce),
		Register: readRegister(book.Register, stems), Glossary: readGlossary(book.Glossary, stems), Lexicon: english.NewLexicon(words, stems),
	}
}

// wordsOf hands the book's words over to package english.
func wordsOf(from *sheet.Words) *english.Words {
	w := &english.Words{Sources: from.Sources, Verbs: from.Verbs, Harms: from.Harms, Vague: from.Vague, Stems: make(map[string]string)}
	for _, p := range from.Protection {
		w.Protections = append(w.Protections, english.ProtectionWords(p))
	}
	for _, s := range from.Stems {
		for _, form := range s.Forms {
			w.Stems[form] = s.Stem
		}
	}
	return w
}

// forget drops what was worked out for single sheets.
func (b *BookFacts) forget() { b.looks, b.kept = make(map[*sheet.Sheet]*hazardsOnce), 0 }

// NumberSeries are the letters with which the book's document numbers start.
func (b *BookFacts) NumberSeries() map[string]bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.series == nil || b.seriesOf != b.Book {
		b.series, b.seriesOf = make(map[string]bool), b.Book
		for _, s := range b.Book.Sheets {
			letters, _, _ := strings.Cut(s.Front.Number, "-")
			b.series[letters] = true
		}
	}
	return b.series
}

// Named finds a rule by name; nil where there is none.
func Named(rules []*Rule, name string) *Rule {
	for _, r := range rules {
		if r.Name == name {
			return r
		}
	}
	return nil
}
