package site

import (
	"context"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"sync"

	"baybook/site/check"
	"baybook/site/find"
	"baybook/site/finding"
	photos "baybook/site/photo"
	"baybook/site/publish"
	"baybook/site/render"
	"baybook/site/sheet"
)

// An Edition is the site of one state of the book: a list of files, each made
// when it is first asked for. Any number of goroutines may ask.
type Edition struct {
	Book     *sheet.Book
	renderer *render.Renderer
	// files by name; names in the order in which they are written.
	files map[string]*File
	names []string
	// docs is everything that can be found, gathered when first needed.
	docs func() []find.Doc
	// pages and photos are what the next edition may take over; drawings hold
	// what stands in pages by the file that it was made of.
	pages    map[string]page
	photos   map[string]photo
	drawings *drawings
	minify   *publish.Minifier
	// room bounds how many photographs are worked on at once.
	room *photos.Room
}

// A page is the file of a sheet, with everything that it was made of.
type page struct {
	file      *File
	sheet     *sheet.Sheet
	register  *sheet.Register
	told      *check.Messages
	glossary  *sheet.Glossary
	shop      *sheet.Shop
	drawings  []*finding.Source
	neighbors render.Neighbors
	changes   []check.Change
	language  *sheet.Interface
}

// A photo is a photograph's file, with the picture's size and time.
type photo struct {
	file *File
	info fs.FileInfo
}

// newEdition begins an edition; before is the last one, nil for the first.
func newEdition(book *sheet.Book, renderer *render.Renderer, before *Edition) *Edition {
	e := &Edition{
		Book: book, renderer: renderer, files: make(map[string]*File),
		docs:  sync.OnceValue(renderer.Docs),
		pages: make(map[string]page), photos: make(map[string]photo), room: photos.NewRoom(),
	}
	if before != nil {
		e.drawings, e.minify = before.drawings.kept(book), before.minify
	} else {
		e.drawings, e.minify = newDrawings(), publish.NewMinifier()
		before = &Edition{}
	}
	renderer.Figures = func(file string) string {
		drawing, _ := e.drawings.of(e.Book.Drawings[file]) // sheetPage reports the error
		return drawing
	}
	for _, s := range book.Sheets {
		e.pages[s.Path] = e.page(s, before.pages[s.Path])
		e.addPhotos(s, before.photos)
	}
	return e
}

// page gives a sheet's page: the one before where all that it was made of is
// the same. A job shows what other sheets say, so its page is never the same.
func (e *Edition) page(s *sheet.Sheet, before page) page {
	now := page{sheet: s, register: e.Book.Register, told: e.renderer.Messages(s), glossary: e.Book.Glossary, shop: e.Book.Shop, neighbors: e.renderer.Neighbors(s), changes: e.renderer.Changes[s.File], language: e.Book.Interface}
	for _, f := range s.Figures {
		now.drawings = append(now.drawings, e.Book.Drawings[f.File])
	}
	if before.sheet == s && s.Front.Kind != sheet.Job && before.register == now.register && before.told.Same(now.told) && before.glossary == now.glossary &&
		before.shop == now.shop && before.neighbors == now.neighbors && slices.Equal(before.drawings, now.drawings) &&
		slices.Equal(before.changes, now.changes) && before.language == now.language {
		return before
	}
	now.file = newFile(func(e *Edition) ([]byte, error) {
		for _, f := range s.Figures {
			if _, err := e.drawings.of(e.Book.Drawings[f.File]); err != nil {
				return nil, fmt.Errorf("%s: %w", f.File, err)
			}
		}
		return e.renderer.Sheet(s)
	}, e.finish)
	return now
}

// addPhotos lists the photographs that a sheet shows or links to.
func (e *Edition) addPhotos(s *sheet.Sheet, before map[string]photo) {
	for _, name := range e.filesOf(s) {
		info := e.Book.Files[name]
		if _, done := e.photos[name]; done || !sheet.IsPhoto(name) {
			continue
		}
		old := before[name]
		if old.info != nil && old.info.Size() == info.Size() && old.info.ModTime().Equal(info.ModTime()) {
			e.photos[name] = old
			continue
		}
		e.photos[name] = photo{info: info, file: newFile(func(e *Edition) ([]byte, error) {
			data, err := fs.ReadFile(e.Book.FS, name)
			if err != nil {
				return nil, err
			}
			if data, err = publish.Photo(data, e.room); err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
			return data, nil
		}, nil)}
	}
}

// filesOf lists the files beside the sheets that a sheet shows or links to.
func (e *Edition) filesOf(s *sheet.Sheet) []string {
	var names []string
	for _, f := range s.Figures {
		if path.Ext(f.File) != ".svg" { // a drawing stands in the page itself
			names = append(names, f.File)
		}
	}
	for _, l := range s.Links {
		names = append(names, s.Resolve(l.Dest).File)
	}
	return slices.DeleteFunc(names, func(name string) bool { return e.Book.Files[name] == nil })
}

// document is a file that is published as it is.
func document(name string) *File {
	return newFile(func(e *Edition) ([]byte, error) { return fs.ReadFile(e.Book.FS, name) }, nil)
}

// list fills in every file of the edition.
func (e *Edition) list(b *base) {
	for _, f := range b.files {
		e.add(f.name, f.file)
	}
	for _, p := range e.bookPages(b.assets) {
		e.add(p.name, newFile(func(*Edition) ([]byte, error) { return p.make() }, p.finish))
	}
	for _, c := range e.Book.Calculators {
		e.add(render.CalculatorPage(c), newFile(func(e *Edition) ([]byte, error) { return e.renderer.Calculator(c) }, e.finish))
	}
	if mark := e.Book.Shop.Logo; mark != "" {
		e.add(mark, document(mark))
	}
	for _, s := range e.Book.Sheets {
		e.add(render.PageOf(s), e.pages[s.Path].file)
		if render.HasQuote(s) {
			e.add(render.QuotePage(s), newFile(func(e *Edition) ([]byte, error) { return e.renderer.Quote(s) }, e.finish))
			e.add(render.QuoteData(s), newFile(func(e *Edition) ([]byte, error) { return e.renderer.QuoteJSON(s) }, nil))
		}
		for _, name := range e.filesOf(s) {
			if p, ok := e.photos[name]; ok {
				e.add(name, p.file)
			} else {
				e.add(name, document(name))
			}
		}
	}
	e.add(workerName, newFile(func(e *Edition) ([]byte, error) { return e.worker(b.theme, b.assets) }, nil))
}

// A bookPage is a file that tells of the book as a whole.
type bookPage struct {
	name   string
	make   func() ([]byte, error)
	finish func([]byte) ([]byte, error)
}

// bookPages lists them.
func (e *Edition) bookPages(assets render.Assets) []bookPage {
	index := sync.OnceValue(func() []byte { return find.Build(e.docs(), e.renderer.Synonyms()).Encode() })
	return []bookPage{
		{"index.html", e.renderer.Cover, e.finish},
		{"calculators.html", e.renderer.CalculatorList, e.finish},
		{"study.html", e.renderer.Study, e.finish},
		{"sign-off.html", e.renderer.SignOff, e.finish},
		{"record.html", e.renderer.Record, e.finish},
		{render.BeforePage, e.renderer.Before, e.finish},
		{render.PlacesPage, e.renderer.Places, e.finish},
		{render.LimitsPage, e.renderer.Limits, e.finish},
		{render.NewsPage, e.renderer.News, e.finish},
		{render.IssuesPage, e.renderer.Issues, e.finish},
		{"rules.html", e.renderer.Rules, e.finish},
		{"book.webmanifest", func() ([]byte, error) { return publish.Manifest(e.Book.Shop.Book) }, nil},
		{"a-z.html", func() ([]byte, error) { return e.renderer.AZ(e.docs()) }, e.finish},
		{assets.Index, func() ([]byte, error) { return index(), nil }, nil},
		{assets.IndexScript, func() ([]byte, error) { return publish.AsScript(index()) }, nil},
	}
}

// workerName is the service worker's file. It names the hashes of all others,
// so it is made last.
const workerName = "worker.js"

// worker makes the service worker. What only pages opened from a folder load
// is not kept by it, since no worker runs there.
func (e *Edition) worker(theme fs.FS, assets render.Assets) ([]byte, error) {
	var kept [][2]string
	for _, name := range e.names {
		if name == workerName || name == assets.CoreScript || name == assets.IndexScript {
			continue
		}
		sum, err := e.files[name].hash(e)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		kept = append(kept, [2]string{name, sum})
	}
	return publish.Worker(theme, kept)
}

func (e *Edition) add(name string, f *File) {
	if e.files[name] == nil {
		e.names = append(e.names, name)
	}
	e.files[name] = f
}

// finish is the last step of every page.
func (e *Edition) finish(page []byte) ([]byte, error) { return e.minify.HTML(page) }

// Open gives a file of the site by its path from the root, made now where
// nobody asked for it before. The error is fs.ErrNotExist where there is no
// such file.
func (e *Edition) Open(name string) (*File, error) {
	f := e.files[name]
	if f == nil {
		return nil, fs.ErrNotExist
	}
	if err := f.ready(e); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return f, nil
}

// SamePictures reports whether both editions hold the same photographs, which
// pages name and do not contain.
func (e *Edition) SamePictures(other *Edition) bool {
	if len(e.photos) != len(other.photos) {
		return false
	}
	for name, p := range e.photos {
		if other.photos[name].file != p.file {
			return false
		}
	}
	return true
}

// A Sink takes the files of a site as they are made, from many goroutines.
type Sink interface {
	Put(name string, data []byte) error
}

// Write makes every file into a sink. Nothing of it is kept, so that a large
// book needs little memory.
func (e *Edition) Write(ctx context.Context, sink Sink) (Report, error) {
	w := &writer{edition: e, sink: sink}
	if err := w.all(ctx); err != nil {
		return Report{}, err
	}
	return Report{Sheets: len(e.Book.Sheets), Calculators: len(e.Book.Calculators), Files: len(e.names), Bytes: w.bytes.Load()}, nil
}
