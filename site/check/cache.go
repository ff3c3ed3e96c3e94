package check

import (
	"io/fs"
	"maps"
	"path"
	"runtime"
	"slices"
	"strings"
	"time"

	"baybook/site/finding"
	"baybook/site/sheet"

	"golang.org/x/sync/errgroup"
)

// A Cache is what the last run found in each sheet. The next run over the
// same book takes over what rests on nothing that has changed since. One
// goroutine at a time may use it.
type Cache struct {
	rules   []*Rule
	book    *sheet.Book
	today   string
	shared  *BookFacts
	results map[*sheet.Sheet]result
	// drawings are the findings in each drawing, by its text.
	drawings map[*finding.Source]finding.List
}

// NewCache makes a cache for a list of rules that remembers nothing yet. The
// list may hold rules that the loader keeps, for waivers to be judged by.
func NewCache(rules []*Rule) *Cache { return &Cache{rules: rules} }

// A result is what the rules found in a sheet, and which sheets they looked at
// to find it.
type result struct {
	found   finding.List
	leads   []lead
	present []ShownHazard
	told    *Messages
}

// Messages gives the messages of each sheet of the last run, as Hazards does.
func (c *Cache) Messages() func(*sheet.Sheet) *Messages {
	book, results := c.book, c.results
	return func(s *sheet.Sheet) *Messages {
		if r, ok := results[s]; ok {
			return r.told
		}
		return MessagesOf(book, s)
	}
}

// Hazards gives the hazards that each sheet of the last run shows, as the
// function Hazards does, without looking at the sheet again. Later runs do not
// change what it gives.
func (c *Cache) Hazards() func(*sheet.Sheet) []ShownHazard {
	book, results := c.book, c.results
	return func(s *sheet.Sheet) []ShownHazard {
		if r, ok := results[s]; ok {
			return r.present
		}
		return Hazards(book, s)
	}
}

// A lead is a link from one sheet to another.
type lead struct {
	path string
	// brings is true where what the other sheet brings along is looked at too:
	// a step may do it, or a job composes it.
	brings bool
}

// Run checks a book by every rule and gives the findings in order. Sheets are
// checked side by side. A rule that fails becomes a finding, and the others go
// on.
func (c *Cache) Run(book *sheet.Book, history History) finding.List {
	before, drawn := c.results, c.drawings
	today := history.Today.Format(time.DateOnly)
	// Findings about the past are not remembered: where the past is known,
	// every sheet is checked again.
	if c.book == nil || history.Sheets != nil || c.today != today || !sameGround(c.book, book) {
		before, drawn = nil, nil
	}
	if c.shared == nil || c.book.Register != book.Register || c.book.Glossary != book.Glossary || c.book.Words != book.Words || c.book.Work != book.Work {
		c.shared = newBookFacts(c.rules, book)
	}
	c.shared.Book = book
	results := make([]result, len(book.Sheets))
	stale := staleSheets(book, before)
	eachIndex(len(book.Sheets), func(i int) {
		s := book.Sheets[i]
		if !stale[s] {
			results[i] = before[s]
			return
		}
		found, facts := checkSheet(s, c.shared, history), c.shared.HazardsOf(s)
		results[i] = result{found, leadsOf(s), facts.Present, facts.Messages()}
	})
	c.book, c.today, c.results = book, today, make(map[*sheet.Sheet]result, len(book.Sheets))
	var list finding.List
	for i, s := range book.Sheets {
		c.results[s] = results[i]
		list = append(list, results[i].found...)
	}
	list = append(list, c.runDrawings(book, drawn)...)
	for _, rule := range c.rules {
		if rule.CheckBook != nil {
			list = append(list, runRule(&Pass{Rule: rule, Book: book, History: history, Shared: c.shared})...)
		}
	}
	c.shared.forget()
	return list.Dedupe()
}

// runDrawings checks the drawings that were not there before, side by side.
func (c *Cache) runDrawings(book *sheet.Book, before map[*finding.Source]finding.List) finding.List {
	names := slices.Sorted(maps.Keys(book.Drawings))
	found := make([]finding.List, len(names))
	eachIndex(len(names), func(i int) {
		drawing := book.Drawings[names[i]]
		list, known := before[drawing]
		if !known {
			list = checkDrawing(drawing, c.shared)
		}
		found[i] = list
	})
	c.drawings = make(map[*finding.Source]finding.List, len(names))
	for i, name := range names {
		c.drawings[book.Drawings[name]] = found[i]
	}
	return slices.Concat(found...)
}

// sameGround reports whether two readings of a book agree in all that any
// sheet may depend on: data files, names of files, and the path and number of
// every sheet.
func sameGround(a, b *sheet.Book) bool {
	if a.Register != b.Register || a.Glossary != b.Glossary || a.Shop != b.Shop || a.Words != b.Words || a.Work != b.Work {
		return false
	}
	sameFiles := maps.EqualFunc(a.Files, b.Files, func(fs.FileInfo, fs.FileInfo) bool { return true })
	return sameFiles && slices.EqualFunc(a.Sheets, b.Sheets, func(x, y *sheet.Sheet) bool {
		return x == y || x.Path == y.Path && x.Front.Number == y.Front.Number
	})
}

// staleSheets are those that must be looked at: the changed ones, all that
// link to a changed one, and all that bring along one of either kind.
func staleSheets(book *sheet.Book, before map[*sheet.Sheet]result) map[*sheet.Sheet]bool {
	stale := make(map[*sheet.Sheet]bool)
	var work []*sheet.Sheet
	for _, s := range book.Sheets {
		if _, known := before[s]; !known {
			stale[s] = true
			work = append(work, s)
		}
	}
	if len(work) == len(book.Sheets) || len(work) == 0 {
		return stale
	}
	changed := maps.Clone(stale)
	from := make(map[string][]*sheet.Sheet)
	for _, s := range book.Sheets {
		for _, l := range before[s].leads {
			if target := book.Sheet(l.path); l.brings {
				from[l.path] = append(from[l.path], s)
			} else if changed[target] {
				stale[s] = true
			}
		}
	}
	for len(work) > 0 {
		s := work[0]
		work = work[1:]
		for _, by := range from[s.Path] {
			if !stale[by] {
				stale[by] = true
				work = append(work, by)
			}
		}
	}
	return stale
}

// leadsOf lists the sheets that a sheet links to.
func leadsOf(s *sheet.Sheet) []lead {
	var list []lead
	for i, l := range slices.Concat(s.Work, s.Links) {
		t := s.Resolve(l.Dest)
		if t.Outside || path.Ext(t.File) != ".md" {
			continue
		}
		list = append(list, lead{strings.TrimSuffix(t.File, ".md"), l.Step != nil || i < len(s.Work)})
	}
	return list
}

// eachIndex calls do for every number below n, on all processors.
func eachIndex(n int, do func(i int)) {
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i := range n {
		group.Go(func() error {
			do(i)
			return nil
		})
	}
	_ = group.Wait() // nothing in it gives an error; a rule that fails is a finding
}
