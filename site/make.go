package site

import (
	"context"
	"fmt"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"baybook/calculators"
	"baybook/site/find"
	"baybook/site/publish"
	"baybook/site/render"
	"baybook/site/sheet"
)

// A Sink takes the files of a site as they are made, from many goroutines.
type Sink interface {
	Put(name string, data []byte) error
}

// A maker makes one site.
type maker struct {
	options Options
	book    *sheet.Book
	sink    Sink
	press   *render.Press
	figures map[string]string
	report  Report
	files   atomic.Int64
	bytes   atomic.Int64
}

// Make renders a checked book into a sink.
func Make(ctx context.Context, o Options, book *sheet.Book, sink Sink) (Report, error) {
	m := &maker{options: o, book: book, sink: sink}
	assets, err := m.assets(ctx)
	if err != nil {
		return Report{}, err
	}
	if m.press, err = render.NewPress(o.theme(), book, calculators.All, assets); err != nil {
		return Report{}, err
	}
	if err := m.prepareFigures(); err != nil {
		return Report{}, err
	}
	m.press.Figures = func(file string) string { return m.figures[file] }
	docs := m.press.Docs()
	if err := m.index(docs, assets); err != nil {
		return Report{}, err
	}
	if err := m.pages(ctx, docs); err != nil {
		return Report{}, err
	}
	return Report{
		Sheets: len(book.Sheets), Calculators: len(calculators.All),
		Files: int(m.files.Load()), Bytes: m.bytes.Load(),
	}, nil
}

// put writes one file and counts it.
func (m *maker) put(name string, data []byte) error {
	m.files.Add(1)
	m.bytes.Add(int64(len(data)))
	return m.sink.Put(name, data)
}

// assets writes what every page refers to.
func (m *maker) assets(ctx context.Context) (render.Assets, error) {
	core, err := m.options.core(ctx)
	if err != nil {
		return render.Assets{}, err
	}
	bundle, err := publish.Bundled(m.options.theme())
	if err != nil {
		return render.Assets{}, err
	}
	assets := render.Assets{
		Style:  publish.Hashed("assets/sheet.css", bundle.Style),
		Script: publish.Hashed("assets/page.js", bundle.Script),
		Core:   publish.Hashed("assets/core.wasm", core.Module), CoreScript: publish.Hashed("assets/core.js", core.Script),
		// The index keeps its name from edition to edition, so that a changed
		// sheet does not change every page.
		Index: "assets/find.bin", IndexScript: "assets/find.js",
	}
	for _, f := range []struct {
		name string
		data []byte
	}{{assets.Style, bundle.Style}, {assets.Script, bundle.Script}, {assets.Core, core.Module}, {assets.CoreScript, core.Script}} {
		if err := m.put(f.name, f.data); err != nil {
			return render.Assets{}, err
		}
	}
	return assets, m.icons()
}

// icons copies the theme's icons.
func (m *maker) icons() error {
	return fs.WalkDir(m.options.theme(), "icons", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(m.options.theme(), name)
		if err != nil {
			return err
		}
		return m.put(name, data)
	})
}

// index writes the search index.
func (m *maker) index(docs []find.Doc, assets render.Assets) error {
	data := find.Build(docs, m.press.Synonyms()).Encode()
	script, err := publish.AsScript(data)
	if err != nil {
		return err
	}
	if err := m.put(assets.Index, data); err != nil {
		return err
	}
	return m.put(assets.IndexScript, script)
}

// prepareFigures readies every figure that a sheet shows: drawings to stand
// in pages, photographs as files.
func (m *maker) prepareFigures() error {
	m.figures = make(map[string]string)
	var photos []string
	for _, s := range m.book.Sheets {
		for _, f := range s.Figures {
			if _, done := m.figures[f.File]; done {
				continue
			}
			m.figures[f.File] = ""
			if path.Ext(f.File) != ".svg" {
				photos = append(photos, f.File)
				continue
			}
			data, err := fs.ReadFile(m.book.FS, f.File)
			if err != nil {
				return err
			}
			prefix := fmt.Sprintf("f%d-", len(m.figures))
			if m.figures[f.File], err = publish.Drawing(data, prefix); err != nil {
				return fmt.Errorf("%s: %w", f.File, err)
			}
		}
	}
	slices.Sort(photos)
	return each(photos, func(file string) error {
		data, err := fs.ReadFile(m.book.FS, file)
		if err != nil {
			return err
		}
		if data, err = publish.Photo(data); err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		return m.put(file, data)
	})
}

// pages renders every page, many at a time.
func (m *maker) pages(ctx context.Context, docs []find.Doc) error {
	type page struct {
		name   string
		render func() ([]byte, error)
	}
	list := []page{
		{"index.html", m.press.Cover},
		{"calculators.html", m.press.CalculatorList},
		{"a-z.html", func() ([]byte, error) { return m.press.AZ(docs) }},
	}
	for _, c := range calculators.All {
		list = append(list, page{render.CalculatorPage(c), func() ([]byte, error) { return m.press.Calculator(c) }})
	}
	for _, s := range m.book.Sheets {
		list = append(list, page{render.PageOf(s), func() ([]byte, error) { return m.press.Sheet(s) }})
	}
	minify := publish.NewMinifier()
	return each(list, func(p page) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		data, err := p.render()
		if err != nil {
			return err
		}
		if data, err = minify.HTML(data); err != nil {
			return fmt.Errorf("%s: %w", p.name, err)
		}
		return m.put(p.name, data)
	})
}

// each does the same for every item, on all processors, and gives the first
// error in the items' order.
func each[T any](items []T, do func(T) error) error {
	errs := make([]error, len(items))
	var next atomic.Int64
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(items) {
					return
				}
				errs[i] = do(items[i])
			}
		})
	}
	group.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
