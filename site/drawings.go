package site

import (
	"errors"
	"hash/fnv"
	"strconv"
	"sync"

	"baybook/site/finding"
	"baybook/site/publish"
	"baybook/site/sheet"
)

// drawings are the SVG files made ready to stand in pages, each once, when it
// is first needed.
type drawings struct {
	mu    sync.Mutex
	ready map[*finding.Source]*drawing
}

type drawing struct {
	once   sync.Once
	markup string
	err    error
}

func newDrawings() *drawings { return &drawings{ready: make(map[*finding.Source]*drawing)} }

// of gives a drawing as markup. Names within it get a prefix that goes by its
// file alone, so that adding a drawing to the book changes no other page.
func (d *drawings) of(file *finding.Source) (string, error) {
	if file == nil {
		return "", nil // a photograph
	}
	d.mu.Lock()
	got := d.ready[file]
	if got == nil {
		got = &drawing{}
		d.ready[file] = got
	}
	d.mu.Unlock()
	got.once.Do(func() {
		name := fnv.New32a()
		_, _ = name.Write([]byte(file.File())) // never fails
		got.markup, got.err = publish.Drawing(file.Text(), "f"+strconv.FormatUint(uint64(name.Sum32()), 36)+"-")
		if got.err == nil && got.markup == "" {
			got.err = errors.New("the drawing is empty")
		}
	})
	return got.markup, got.err
}

// kept is the drawings of the last edition less those that the book no longer
// has.
func (d *drawings) kept(book *sheet.Book) *drawings {
	d.mu.Lock()
	defer d.mu.Unlock()
	k := newDrawings()
	for _, file := range book.Drawings {
		if got := d.ready[file]; got != nil {
			k.ready[file] = got
		}
	}
	return k
}
