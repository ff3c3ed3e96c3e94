package sheet

import (
	"bytes"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"time"

	"baybook/calculators/calc"
	"baybook/site/finding"

	"golang.org/x/sync/errgroup"
)

// Load reads the whole content folder. The findings are what is wrong with
// the files as files; the error is for a folder that cannot be read at all.
func Load(fsys fs.FS, calculators []*calc.Calculator) (*Book, finding.List, error) {
	return Reload(nil, fsys, calculators)
}

// Reload reads the content folder again. A sheet, drawing or data file that
// has not changed since previous was read is taken over from it: the same
// pointer says that nothing in it has changed. previous stays as it was; nil
// reads everything.
func Reload(previous *Book, fsys fs.FS, calculators []*calc.Calculator) (*Book, finding.List, error) {
	b := &Book{
		FS: fsys, Files: make(map[string]fs.FileInfo), Drawings: make(map[string]*finding.Source),
		Register: &Register{}, Glossary: &Glossary{}, Shop: &Shop{}, Areas: &Areas{}, Limits: &LimitRegister{}, Words: &Words{}, Work: noWork(),
		byPath: make(map[string]*Sheet), byNumber: make(map[string]*Sheet),
		entries: make(map[string]*entry), begun: time.Now(),
	}
	l := &loader{book: b, previous: previous, reader: NewReader(calculators)}
	sheets, err := b.walk(l.report)
	if err != nil {
		return nil, nil, err
	}
	for _, f := range dataFiles {
		l.data(f)
		if f.name == ShopFile {
			l.settlePrices(calculators)
		}
	}
	if l.book.Limits.Source != nil {
		l.reader.limits = l.book.Limits
	}
	var drawings []string
	for name := range b.Files {
		if path.Ext(name) == ".svg" {
			drawings = append(drawings, name)
		}
	}
	l.each(drawings, parseDrawing)
	for _, name := range drawings {
		l.list = append(l.list, b.entries[name].found...)
		if source := b.entries[name].source; source != nil {
			b.Drawings[name] = source
		}
	}
	l.photos()
	l.areas()
	l.logo()
	l.each(sheets, parseSheet)
	for _, name := range sheets {
		l.list = append(l.list, b.entries[name].found...)
		if s := b.entries[name].sheet; s != nil {
			b.add(s, l.report)
		}
	}
	return b, l.list, nil
}

// A loader is the reading of one folder.
type loader struct {
	book, previous *Book
	reader         *Reader
	list           finding.List
}

// settlePrices makes the book's calculators start from the shop's figures.
// Where those have changed, nothing read before is kept.
func (l *loader) settlePrices(calculators []*calc.Calculator) {
	b, before := l.book, l.previous
	b.Calculators = b.Shop.Calculators(calculators)
	if before != nil && slices.Equal(before.Shop.prices(), b.Shop.prices()) {
		b.Calculators = before.Calculators
	} else {
		l.previous = nil // prices in every sheet rest on the shop's
	}
	l.reader = NewReader(b.Calculators)
}

func (l *loader) report(f finding.Finding) { l.list = append(l.list, f) }

// An entry is what reading a file of the folder gave.
type entry struct {
	size    int64
	changed time.Time
	// source is the file as it was read, nil where it could not be.
	source *finding.Source
	found  finding.List
	// One of these is set on the file that it was read from.
	sheet    *Sheet
	register *Register
	glossary *Glossary
	shop     *Shop
	language *Interface
	areas    *Areas
	limits   *LimitRegister
	work     *Work
	words    *Words
}

// coarse is longer than one tick of any file system's clock. Files younger
// than that are compared by content, not by time.
const coarse = 2 * time.Second

// fetch settles a file's entry: as the previous reading left it where the file
// is the same, else by parsing its content. It serves many goroutines, each
// with a file of its own.
func (l *loader) fetch(name string, parse func(l *loader, name string, content []byte, err error) entry) {
	now := l.book.entries[name]
	var before *entry
	if l.previous != nil {
		before = l.previous.entries[name]
	}
	same := before != nil && before.source != nil && !l.judgedAnew(before.sheet)
	take := func() {
		size, changed := now.size, now.changed
		*now = *before
		now.size, now.changed = size, changed
	}
	if same && before.size == now.size && before.changed.Equal(now.changed) &&
		!now.changed.IsZero() && now.changed.Before(l.previous.begun.Add(-coarse)) {
		take()
		return
	}
	content, err := readFile(l.book.FS, name)
	if same && err == nil && bytes.Equal(before.source.Text(), content) {
		take()
		return
	}
	parsed := parse(l, name, content, err)
	parsed.size, parsed.changed = now.size, now.changed
	*now = parsed
}

// judgedAnew reports whether a sheet names limits of a register that has
// changed since it was read.
func (l *loader) judgedAnew(s *Sheet) bool {
	return s != nil && s.judgesByLimits && l.previous.Limits != l.book.Limits
}

// each settles many files, on all processors.
func (l *loader) each(names []string, parse func(*loader, string, []byte, error) entry) {
	forEach(names, func(name string) { l.fetch(name, parse) })
}

// forEach does the same for every name, on all processors.
func forEach(names []string, do func(name string)) {
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for _, name := range names {
		group.Go(func() error {
			do(name)
			return nil
		})
	}
	_ = group.Wait() // no file gives an error; what is wrong with one is a finding
}

// refused is the entry of a file that cannot be read.
func refused(name, message, do string) entry {
	f := finding.NewSource(name, nil).At(0, 0)
	f.Rule, f.Message, f.Do = "file", message, do
	return entry{found: finding.List{f}}
}

func parseSheet(l *loader, name string, content []byte, err error) entry {
	if err != nil {
		return refused(name, "the file cannot be read: "+reason(err), "check that the file is there and may be read")
	}
	s, found := l.reader.Parse(name, content)
	return entry{source: s.Source, sheet: s, found: found}
}

func parseDrawing(_ *loader, name string, content []byte, err error) entry {
	if err != nil || len(content) > mostBytes {
		return refused(name, name+" cannot be read as a drawing, or is larger than a drawing is", "save it again, plain and small")
	}
	return entry{source: finding.NewSource(name, content)}
}

// A dataFile is one of the files at the top of the folder that all sheets
// rest on. The shop's comes first: what is computed in the others starts from
// its prices.
type dataFile struct {
	name string
	// optional is true where a book may do without the file.
	optional bool
	// parse sets the entry's part; take puts it into the book.
	parse func(l *loader, e *entry, report func(finding.Finding))
	take  func(b *Book, e *entry)
}

var dataFiles = []dataFile{
	{ShopFile, false,
		func(_ *loader, e *entry, report func(finding.Finding)) { e.shop = readShop(e.source, report) },
		func(b *Book, e *entry) { b.Shop = e.shop }},
	{RegisterFile, false,
		func(_ *loader, e *entry, report func(finding.Finding)) { e.register = readRegister(e.source, report) },
		func(b *Book, e *entry) { b.Register = e.register }},
	{GlossaryFile, false,
		func(_ *loader, e *entry, report func(finding.Finding)) { e.glossary = readGlossary(e.source, report) },
		func(b *Book, e *entry) { b.Glossary = e.glossary }},
	{WordsFile, false,
		func(_ *loader, e *entry, report func(finding.Finding)) { e.words = readWords(e.source, report) },
		func(b *Book, e *entry) { b.Words = e.words }},
	{AreasFile, true,
		func(_ *loader, e *entry, report func(finding.Finding)) { e.areas = readAreas(e.source, report) },
		func(b *Book, e *entry) { b.Areas = e.areas }},
	{LimitFile, true,
		func(l *loader, e *entry, report func(finding.Finding)) {
			e.limits = readLimits(e.source, l.reader, report)
		},
		func(b *Book, e *entry) { b.Limits = e.limits }},
	{WorkFile, true,
		func(_ *loader, e *entry, report func(finding.Finding)) { e.work = readWork(e.source, report) },
		func(b *Book, e *entry) { b.Work = e.work }},
	{InterfaceFile, true,
		func(_ *loader, e *entry, report func(finding.Finding)) { e.language = ReadInterface(e.source, report) },
		func(b *Book, e *entry) { b.Interface = e.language }},
}

// data reads one data file. One that cannot be read leaves the book's own
// empty.
func (l *loader) data(f dataFile) {
	if e, listed := l.book.entries[f.name]; e == nil {
		if f.optional || listed { // walk has refused one that is listed
			return
		}
		l.book.entries[f.name] = &entry{}
	}
	l.fetch(f.name, func(l *loader, name string, content []byte, err error) entry {
		if err != nil {
			return refused(name, name+" cannot be read: "+reason(err), "put a "+name+" at the top of the content folder; baybook begin makes one")
		}
		e := entry{source: finding.NewSource(name, content)}
		report := func(f finding.Finding) { e.found = append(e.found, f) }
		if readable(e.source, report) {
			f.parse(l, &e, report)
		}
		return e
	})
	e := l.book.entries[f.name]
	l.list = append(l.list, e.found...)
	if e.source == nil {
		return
	}
	delete(l.book.Files, f.name)
	if e.register != nil || e.glossary != nil || e.shop != nil || e.work != nil || e.areas != nil || e.limits != nil || e.words != nil || e.language != nil {
		f.take(l.book, e)
	}
}
