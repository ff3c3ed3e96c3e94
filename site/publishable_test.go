package site

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/jpeg"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"baybook/site/begin"
	"baybook/site/core"
	"baybook/site/finding"
)

// What check passes, build publishes: a build fails only on findings, each with
// a place and an advice.

// kept is a sink that keeps what it is given.
type kept struct {
	mu    sync.Mutex
	files map[string][]byte
}

func (k *kept) Put(name string, data []byte) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.files[name] = data
	return nil
}

// sharedBase is the theme, bundled once.
var sharedBase = sync.OnceValues(func() (*base, error) {
	return newBase(context.Background(), Options{Core: core.Core{Module: []byte("\x00asm, for a test"), Script: []byte(`window.bookData="";`)}})
})

// builderOf makes a builder of a book that stands in memory.
func builderOf(t testing.TB, fsys fs.FS) *Builder {
	t.Helper()
	made, err := sharedBase()
	if err != nil {
		t.Fatal(err)
	}
	b := NewBuilder(Options{})
	b.base, b.fsys = made, fsys
	return b
}

// published builds a book: its files, or the findings that stopped it.
func published(t testing.TB, fsys fs.FS) (map[string][]byte, finding.List) {
	t.Helper()
	edition, list, err := builderOf(t, fsys).Next(t.Context())
	var stopped *finding.ListError
	if errors.As(err, &stopped) {
		for _, f := range list {
			if f.Pos.File == "" || f.Message == "" || f.Do == "" {
				t.Errorf("a finding without a place, words or advice: %+v", f)
			}
		}
		return nil, list
	}
	if err != nil {
		t.Fatal(err)
	}
	k := &kept{files: make(map[string][]byte)}
	if _, err := edition.Write(t.Context(), k); err != nil {
		t.Errorf("check passes what build cannot publish: %v", err)
	}
	return k.files, list
}

var wantComment = regexp.MustCompile(` ?<!-- want "[^"]*" -->`)

// whenLines are what a row of the register says of the work that brings it;
// the books of testdata have no lists of work, or their own.
var whenLines = regexp.MustCompile(`(?m)^  when:\n(    - .*\n)+`)

// bookOf reads a book of testdata.
func bookOf(t *testing.T, archive string) fstest.MapFS {
	t.Helper()
	parsed, err := txtar.ParseFile(archive)
	if err != nil {
		t.Fatal(err)
	}
	fsys := fstest.MapFS{}
	for _, name := range []string{"hazards.yaml", "glossary.yaml", "words.yaml", "shop.yaml"} {
		data, err := os.ReadFile(filepath.Join("../content", name))
		if err != nil {
			t.Fatal(err)
		}
		fsys[name] = &fstest.MapFile{Data: whenLines.ReplaceAll(data, nil)}
	}
	for _, f := range parsed.Files {
		if f.Name != "want" {
			fsys[f.Name] = &fstest.MapFile{Data: wantComment.ReplaceAll(f.Data, nil)}
		}
	}
	return fsys
}

func TestBooksOfTestdataArePublishedOrToldOf(t *testing.T) {
	for _, folder := range []string{"refused", "accepted"} {
		names, err := filepath.Glob("../testdata/" + folder + "/*.txtar")
		if err != nil || len(names) < 10 {
			t.Fatal(len(names), err)
		}
		for _, name := range names {
			t.Run(folder+"/"+strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
				files, list := published(t, bookOf(t, name))
				if files == nil && folder == "accepted" {
					t.Errorf("an accepted book is not built: %v", list)
				}
			})
		}
	}
}

// small is the small book in memory, its one sheet changed.
func small(t testing.TB, change func(text string) string) fstest.MapFS {
	t.Helper()
	fsys := fstest.MapFS{}
	err := fs.WalkDir(begin.Book(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(begin.Book(), name)
		fsys[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		fsys[smallSheet] = &fstest.MapFile{Data: []byte(change(string(fsys[smallSheet].Data)))}
	}
	return fsys
}

const smallSheet = "power/fused-lead.md"

// picture is a photograph of the given size.
func picture(t testing.TB, w, h int) string {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, w, h)), nil); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestFilesBesideTheSheets(t *testing.T) {
	good := picture(t, 40, 30)
	shows := "\n![The lead on the bench, its fuse to the left.](FILE \"The lead\")\n\n## Sources\n"
	links := "\nSee [what stands beside it](FILE).\n\n## Sources\n"
	for _, c := range []struct {
		name, file, data, text string
		// rule refuses it; where there is none, the file is published.
		rule string
	}{
		{"a whole photograph", "power/lead.jpg", good, shows, ""},
		{"a linked photograph", "power/lead.jpeg", good, links, ""},
		{"a linked drawing", "power/other.svg", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9"/></svg>`, links, ""},
		{"a linked list", "power/pins.csv", "1,12 V\n", links, ""},
		{"a linked document", "power/form.pdf", "%PDF-1.4\n", links, ""},
		{"a name with an accent", "power/câble.csv", "1,12 V\n", links, ""},
		{"a linked text without content", "power/empty.txt", "", links, ""},
		{"an empty photograph", "power/lead.jpg", "", shows, "photo"},
		{"a cut-off photograph", "power/lead.jpg", good[:len(good)-20], shows, "photo"},
		{"a photograph that is none", "power/lead.png", "a lead", shows, "photo"},
		{"a misnamed photograph", "power/lead.png", good, shows, "photo"},
		{"a photograph that nobody shows", "power/lead.png", good, "\n## Sources\n", "photo"},
		{"a photograph of too many bytes", "power/lead.jpg", good + strings.Repeat("\x00", 31<<20), shows, "photo"},
		{"a photograph with a large ending", "power/lead.JPG", good, shows, "file-name"},
		{"a drawing with a large ending", "power/lead.SVG", "<svg/>", shows, "file-name"},
		{"a sheet with a large ending", "power/lead.MD", "---\n", links, "file-kind"},
		{"an empty drawing", "power/lead.svg", "", shows, "figure-safe"},
		{"a cut-off drawing", "power/lead.svg", `<svg xmlns="http://www.w3.org/2000/svg"><g>`, shows, "figure-safe"},
		{"a drawing of a title alone", "power/lead.svg", `<svg xmlns="http://www.w3.org/2000/svg"><title>A</title></svg>`, shows, ""},
		{"a linked page", "power/page.html", "<p>", links, "file-kind"},
		{"a linked program", "power/run.js", "x", links, "file-kind"},
		{"a document that is too large", "power/form.pdf", strings.Repeat("x", 21<<20), links, "file-kind"},
		{"the register", "", "", strings.ReplaceAll(links, "FILE", "../hazards.yaml"), "link"},
		{"a folder", "power/more/pins.csv", "1\n", strings.ReplaceAll(links, "FILE", "more"), "link"},
		{"an area's folder", "", "", strings.ReplaceAll(links, "FILE", "../power/"), "link"},
	} {
		t.Run(c.name, func(t *testing.T) {
			base := filepath.Base(c.file)
			for _, base := range slices.Compact([]string{base, strings.ReplaceAll(base, "â", "%C3%A2")}) {
				fsys := small(t, func(text string) string {
					return strings.Replace(text, "\n## Sources\n", strings.ReplaceAll(c.text, "FILE", base), 1)
				})
				if c.file != "" {
					fsys[c.file] = &fstest.MapFile{Data: []byte(c.data)}
				}
				files, list := published(t, fsys)
				refused := slices.ContainsFunc(list, func(f finding.Finding) bool { return f.Rule == c.rule && f.Severity == finding.Error })
				switch {
				case c.rule != "" && !refused:
					t.Errorf("%s does not refuse it: %v", c.rule, list)
				case c.rule == "" && files == nil:
					t.Errorf("it is refused: %v", list)
				case c.rule == "" && files[c.file] == nil && !(strings.HasSuffix(c.file, ".svg") && c.text == shows):
					t.Errorf("it is not published: %v", slices.Sorted(maps.Keys(files)))
				}
			}
		})
	}
}

// Every link and picture of a published page leads to a published file.
func TestPublishedLinksLead(t *testing.T) {
	fsys := small(t, func(text string) string {
		return strings.Replace(text, "\n## Sources\n", "\n## Notes\n\nSee [the pins](pins.csv), [the form](form.pdf#page=2) and [this](lead.jpg).\n\n## Sources\n", 1)
	})
	for _, name := range []string{"power/pins.csv", "power/form.pdf"} {
		fsys[name] = &fstest.MapFile{Data: []byte("x")}
	}
	fsys["power/lead.jpg"] = &fstest.MapFile{Data: []byte(picture(t, 20, 10))}
	files, list := published(t, fsys)
	if files == nil {
		t.Fatal(list)
	}
	for _, name := range []string{"power/pins.csv", "power/form.pdf", "power/lead.jpg"} {
		if files[name] == nil {
			t.Errorf("%s is linked and not published", name)
		}
	}
}
