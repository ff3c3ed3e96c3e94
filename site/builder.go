package site

import (
	"cmp"
	"context"
	"fmt"
	"io/fs"
	"os"
	"time"

	"baybook/calculators"
	"baybook/site/check"
	"baybook/site/check/rule"
	"baybook/site/finding"
	"baybook/site/publish"
	"baybook/site/render"
	"baybook/site/sheet"
)

// A Builder makes one edition of a book after another and takes over from
// each what the next can use again: sheets whose files have not changed, their
// findings, their pages. One goroutine at a time may use it.
type Builder struct {
	options Options
	// base is what does not depend on the book, made once.
	base *base
	// book is the book as it was last read, edition the last that was made.
	book    *sheet.Book
	cache   *check.Cache
	edition *Edition
	// changes are what the pages tell of earlier issues.
	changes map[string][]Change
	// fsys takes the content folder's place in tests; nil reads the folder.
	fsys fs.FS
}

// NewBuilder makes a builder.
func NewBuilder(o Options) *Builder { return &Builder{options: o, cache: check.NewCache(rule.All())} }

// Next reads and checks the book as it stands now and gives an edition of it.
// Nothing of it is rendered yet. The findings are returned in either case; the
// error is a *finding.ListError where they stop publishing.
func (b *Builder) Next(ctx context.Context) (*Edition, finding.List, error) {
	based := b.loadAssets(ctx)
	list, err := b.check()
	baseErr := <-based
	if err != nil {
		return nil, nil, err
	}
	if err := cmp.Or(list.Err(), baseErr); err != nil {
		return nil, list, err
	}
	edition, err := b.compose()
	return edition, list, err
}

// loadAssets makes the base, while the book is read and checked, and says when it
// is there.
func (b *Builder) loadAssets(ctx context.Context) <-chan error {
	done := make(chan error, 1)
	if b.base != nil {
		done <- nil
		return done
	}
	go func() {
		made, err := newBase(ctx, b.options)
		if err == nil {
			b.base = made
		}
		done <- err
	}()
	return done
}

// check reads the book and runs the rules over it.
func (b *Builder) check() (finding.List, error) {
	past := make(chan History, 1)
	go func() { past <- b.options.history() }()
	book, list, err := b.load()
	history := <-past
	if err != nil {
		return nil, err
	}
	b.book, b.changes = book, history.Changes
	found := b.cache.Run(book, history)
	list = append(append(list, found...), render.CheckLanguage(b.options.theme(), book)...).Dedupe()
	spareDrafts(book, list)
	return list, nil
}

// spareDrafts makes warnings of what is wrong in drafts, which stop nothing.
func spareDrafts(book *sheet.Book, list finding.List) {
	drafts := make(map[string]bool)
	for _, s := range book.Sheets {
		drafts[s.File] = s.Front.Draft
	}
	for i := range list {
		if drafts[list[i].Pos.File] {
			list[i].Severity = finding.Warning
		}
	}
}

// load reads the content folder.
func (b *Builder) load() (*sheet.Book, finding.List, error) {
	if b.fsys != nil {
		return sheet.Reload(b.book, b.fsys, calculators.All)
	}
	content := b.options.content()
	info, err := os.Stat(content)
	if err != nil || !info.IsDir() {
		return nil, nil, fmt.Errorf("there is no content folder %s; name one with -content, or make one with baybook begin", content)
	}
	return sheet.Reload(b.book, os.DirFS(content), calculators.All)
}

// compose lists the files of an edition of the book as it was last read.
func (b *Builder) compose() (*Edition, error) {
	book := b.book
	if !b.options.Drafts {
		book = book.Published()
	}
	renderer, err := render.NewRenderer(b.options.theme(), book, book.Calculators, b.base.assets)
	if err != nil {
		return nil, err
	}
	renderer.Hazards, renderer.Messages = b.cache.Hazards(), b.cache.Messages()
	renderer.Lead, renderer.Changes = b.options.Drafts, b.changes
	renderer.Program = b.base.version.String()
	e := newEdition(book, renderer, b.edition)
	e.list(b.base)
	b.edition = e
	return e, nil
}

// History is what is known of earlier issues of the sheets, for the rules on
// revisions and approvals.
type History = check.History

// Issue is a sheet as it was last recorded.
type Issue = check.Issue

// Change is one record of a sheet.
type Change = check.Change

func (o Options) history() History {
	if o.History == nil {
		return History{Today: time.Now()}
	}
	return o.History()
}

// publishInto writes an edition into the folder of the options, all or
// nothing.
func (o Options) publishInto(ctx context.Context, e *Edition) (Report, error) {
	folder, err := publish.Begin(o.out(), o.content())
	if err != nil {
		return Report{}, err
	}
	var sink Sink = folder
	if o.Compress {
		sink = publish.Compressing(folder)
	}
	report, err := e.Write(ctx, sink)
	if err != nil {
		folder.Abort()
		return Report{}, err
	}
	return report, folder.Commit()
}
