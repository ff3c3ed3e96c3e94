package site_test

import (
	"bytes"
	"context"
	"fmt"
	"html/template"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/html"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"baybook/site"
)

// sizes are the books that are measured: a small shop's, a large one's, and
// one beyond any shop.
var sizes = []int{50, 5000, 10000}

// nowhere is a sink that throws everything away.
type nowhere struct{}

func (nowhere) Put(string, []byte) error { return nil }

func eachSize(b *testing.B, run func(b *testing.B, dir string)) {
	for _, n := range sizes {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			dir := book(b, n)
			runtime.GC()
			b.ResetTimer()
			run(b, dir)
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*n), "µs/sheet")
		})
	}
}

// BenchmarkBuild reads, checks and renders a book with all that belongs to it,
// the search index included.
func BenchmarkBuild(b *testing.B) {
	eachSize(b, func(b *testing.B, dir string) {
		for b.Loop() {
			edition, list, err := site.NewBuilder(site.Options{Content: dir, Core: testCore}).Next(context.Background())
			if err != nil {
				b.Fatal(list, err)
			}
			if _, err := edition.Write(context.Background(), nowhere{}); err != nil {
				b.Fatal(err)
			}
		}
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		b.ReportMetric(float64(m.Sys)/(1<<20), "MiB")
	})
}

// BenchmarkCheck reads and checks a book.
func BenchmarkCheck(b *testing.B) {
	eachSize(b, func(b *testing.B, dir string) {
		for b.Loop() {
			if _, list, err := site.Check(site.Options{Content: dir}); err != nil || len(list) > 0 {
				b.Fatal(list, err)
			}
		}
	})
}

// BenchmarkFloor is what the libraries take on the same text with nothing of
// the book's own: Markdown to HTML, put into a page by a template, made small.
func BenchmarkFloor(b *testing.B) {
	eachSize(b, func(b *testing.B, dir string) {
		names := sheetsOf(b, dir)
		markdown := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList))
		page := template.Must(template.New("").Parse(floorPage))
		small := minify.New()
		small.Add("text/html", &html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true, KeepDefaultAttrVals: true})
		for b.Loop() {
			work := make(chan string)
			done := make(chan error)
			for range runtime.GOMAXPROCS(0) {
				go func() {
					for name := range work {
						if err := floor(markdown, page, small, name); err != nil {
							done <- err
							return
						}
					}
					done <- nil
				}()
			}
			for _, n := range names {
				work <- n
			}
			close(work)
			for range runtime.GOMAXPROCS(0) {
				if err := <-done; err != nil {
					b.Fatal(err)
				}
			}
		}
	})
}

// floorPage has about as much in it as the book's own layout.
const floorPage = `<!doctype html><html lang="{{.Lang}}"><head><meta charset="utf-8"><title>{{.Title}}</title><link rel="stylesheet" href="{{.Root}}sheet.css"></head>
<body><header><a href="{{.Root}}index.html">{{.Book}}</a></header><main><h1>{{.Title}}</h1><ul>{{range .Tools}}<li>{{.}}</li>{{end}}</ul>{{.Text}}</main>
<footer><table><tr><td>{{.Book}}</td><td>{{.Number}}</td><td>{{.Title}}</td></tr></table></footer></body></html>`

func floor(markdown goldmark.Markdown, page *template.Template, small *minify.M, name string) error {
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	_, body, _ := strings.Cut(string(text)[4:], "\n---\n")
	var out, whole bytes.Buffer
	if err := markdown.Convert([]byte(body), &out); err != nil {
		return err
	}
	err = page.Execute(&whole, map[string]any{
		"Lang": "en", "Title": "Fused lead", "Root": "../", "Book": "Bay Book", "Number": "LD-00001",
		"Tools": []string{"wire cutter", "wire stripper", "ratchet crimp tool", "digital multimeter"}, "Text": template.HTML(out.String()),
	})
	if err != nil {
		return err
	}
	_, err = small.Bytes("text/html", whole.Bytes())
	return err
}

func sheetsOf(b *testing.B, dir string) []string {
	var names []string
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if filepath.Ext(name) == ".md" {
			names = append(names, name)
		}
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	return names
}

// BenchmarkSave is one saved sheet in a book that is being served, up to the
// page that the browser asks for.
func BenchmarkSave(b *testing.B) {
	eachSize(b, func(b *testing.B, dir string) {
		builder := site.NewBuilder(site.Options{Content: dir, Core: testCore})
		if _, list, err := builder.Next(context.Background()); err != nil {
			b.Fatal(list, err)
		}
		n := 0
		for b.Loop() {
			n++
			edit(b, dir, first, func(s string) string {
				at := strings.Index(s, "minutes: ") + len("minutes: ")
				return s[:at] + fmt.Sprint(20+n%9) + s[at+2:]
			})
			edition, list, err := builder.Next(context.Background())
			if err != nil {
				b.Fatal(list, err)
			}
			if _, err := edition.Open(strings.TrimSuffix(first, ".md") + ".html"); err != nil {
				b.Fatal(err)
			}
		}
	})
}
