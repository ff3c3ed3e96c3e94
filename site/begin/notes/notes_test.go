package notes_test

import (
	"bytes"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"baybook/calculators"
	"baybook/site/begin"
	"baybook/site/begin/notes"
	"baybook/site/check"
	"baybook/site/check/rule"
	"baybook/site/finding"
	"baybook/site/sheet"

	"golang.org/x/tools/txtar"
)

var today = time.Date(2027, 3, 4, 0, 0, 0, 0, time.UTC)

// messy is a folder of notes with its pictures.
func messy(t *testing.T) fstest.MapFS {
	t.Helper()
	archive, err := txtar.ParseFile("testdata/messy.txtar")
	if err != nil {
		t.Fatal(err)
	}
	fsys := fstest.MapFS{}
	for _, f := range archive.Files {
		fsys[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return fsys
}

func withPictures(t *testing.T, fsys fstest.MapFS) fstest.MapFS {
	t.Helper()
	gray := image.NewGray(image.Rect(0, 0, 40, 30))
	var asJPEG, asPNG, asGIF bytes.Buffer
	if err := jpeg.Encode(&asJPEG, gray, nil); err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(&asPNG, gray); err != nil {
		t.Fatal(err)
	}
	if err := gif.Encode(&asGIF, gray, nil); err != nil {
		t.Fatal(err)
	}
	fsys["pics/back door.jpg"] = &fstest.MapFile{Data: asJPEG.Bytes()}
	fsys["pics/strip 1.PNG"] = &fstest.MapFile{Data: asPNG.Bytes()}
	fsys["pics/clip.gif"] = &fstest.MapFile{Data: asGIF.Bytes()}
	return fsys
}

var words = regexp.MustCompile(`[A-Za-z]{4,}`)

// Every word of a note is in its draft, in the words' old order or another.
func TestNothingIsLost(t *testing.T) {
	fsys := withPictures(t, messy(t))
	result, err := notes.From(fsys, today)
	if err != nil {
		t.Fatal(err)
	}
	if result.Drafts != 8 {
		t.Errorf("%d drafts of 8 notes:\n%s", result.Drafts, strings.Join(result.Report, "\n"))
	}
	all := ""
	for _, name := range slices.Sorted(maps.Keys(result.Files)) {
		if strings.HasSuffix(name, ".md") {
			all += string(result.Files[name])
		}
	}
	all = strings.ToLower(all)
	known := []string{"span", "https", "step", "tools", "parts", "pics", "table", "http"}
	for name, f := range fsys {
		if !strings.HasSuffix(name, ".md") && !strings.HasSuffix(name, ".txt") && !strings.HasSuffix(name, ".markdown") {
			continue
		}
		for _, w := range words.FindAllString(string(f.Data), -1) {
			if w = strings.ToLower(w); !strings.Contains(all, w) && !slices.Contains(known, w) {
				t.Errorf("%s: %q is in no draft", name, w)
			}
		}
	}
	report := strings.Join(result.Report, "\n")
	for _, want := range []string{"left: readme.docx", "left: pics/photo.heic", "save it as JPEG"} {
		if !strings.Contains(report, want) {
			t.Errorf("the report lacks %q:\n%s", want, report)
		}
	}
}

// The parts of a note become those of a sheet.
func TestSheetOfANote(t *testing.T) {
	result, err := notes.From(withPictures(t, messy(t)), today)
	if err != nil {
		t.Fatal(err)
	}
	for file, wants := range map[string][]string{
		"notes/reverse-cam-old.md": {
			"title: Reverse camera on the step van", "tools: [trim tool, 'meter, long bit', crimp pliers]", "minutes: 150", "kind: procedure", "draft: true", "date: \"2027-03-04\"",
			"## Steps\n\n1. Pull the plate lamp strip.", "\n3. Run the wire thru the boot\n", "## Prove it\n\npicture within 2 sec",
			"![the old strip with its two screws](reverse-cam-old-strip-1.png)", "(reverse-cam-old-back-door.jpg)", "needs words that say what it shows",
		},
		"notes/relais.md":      {"materials: [relay 30A, socket]", "[Reverse Cam (old)](reverse-cam-old.md)", "[the list](fuse-list.md)", "The link to `not there.md` leads nowhere."},
		"notes/fuse-list.md":   {"| camera | 20 AWG | 2 A |", "source\nnever bigger"},
		"doors/door-card.md":   {"title: Door card off and on", "1. Step one: window down", "## Usual mistakes", "![Clip with its two wings bent](door-card-clip.png)", "The note said author: somebody."},
		"doors/door-card-2.md": {"1. same as the other note but for the rear doors", "2. child lock stays on"},
		"wiki/earth-points.md": {"[back](../notes/relais.md)", "(https://example.invalid/x)"},
		"wiki/only-prose.md":   {"kind: guide", "No numbered list was found"},
	} {
		got := string(result.Files[file])
		for _, want := range wants {
			if !strings.Contains(got, want) {
				t.Errorf("%s lacks %q:\n%s", file, want, got)
			}
		}
	}
	if _, kind, err := image.Decode(bytes.NewReader(result.Files["doors/door-card-clip.png"])); err != nil || kind != "png" {
		t.Errorf("the GIF became %s, %v", kind, err)
	}
}

// The drafts are sheets that can be read, and stop nothing.
func TestDraftsAreSheets(t *testing.T) {
	result, err := notes.From(withPictures(t, messy(t)), today)
	if err != nil {
		t.Fatal(err)
	}
	book := fstest.MapFS{}
	if err := fs.WalkDir(begin.Book(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(begin.Book(), name)
		book[name] = &fstest.MapFile{Data: data}
		return err
	}); err != nil {
		t.Fatal(err)
	}
	for name, data := range result.Files {
		book[name] = &fstest.MapFile{Data: data}
	}
	read, list, err := sheet.Load(book, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	list = append(list, check.Run(rule.All(), read, check.History{Today: today})...)
	drafts, asked := 0, 0
	for _, s := range read.Sheets {
		if s.Front.Draft {
			drafts++
		}
	}
	for _, f := range list {
		if f.Severity == finding.Error && !isDraft(read, f.Pos.File) {
			t.Errorf("%s: [%s] %s", f.Pos, f.Rule, f.Message)
		}
		if f.Rule == "not-settled" {
			asked++
		}
	}
	if drafts != result.Drafts || asked < drafts-1 {
		t.Errorf("%d drafts, %d of them sheets, %d ask for what is not settled", result.Drafts, drafts, asked)
	}
}

func isDraft(book *sheet.Book, file string) bool {
	s := book.Sheet(strings.TrimSuffix(file, ".md"))
	return s != nil && s.Front.Draft
}

// What a folder must not do to the one who brings it in.
func TestHostileFolders(t *testing.T) {
	bomb := strings.Repeat("a", 2<<20)
	result, err := notes.From(fstest.MapFS{
		"huge.md":                        {Data: []byte(bomb)},
		"zeros.md":                       {Data: make([]byte, 100)},
		"latin.md":                       {Data: []byte("# Pr\xfcfung\n\nHei\xdf.\n")},
		"link.md":                        {Data: []byte("/etc/passwd"), Mode: fs.ModeSymlink},
		"out.md":                         {Data: []byte("![a b c](../../../etc/passwd) ![d e f](/etc/shadow.png) ![g h i](bad.png)")},
		"bad.png":                        {Data: []byte("no picture")},
		".git/config.md":                 {Data: []byte("# hidden")},
		"front.md":                       {Data: []byte("---\n[broken: yaml\n---\n# Title\n")},
		"yaml.md":                        {Data: []byte("---\ntitle: \"x: y # z\\n- a\"\n---\n1. one\n2. two\n")},
		"tag.md":                         {Data: []byte("<script>alert(1)</script>\n\n# Tag\n")},
		strings.Repeat("n", 300) + ".md": {Data: []byte("# long name")},
	}, today)
	if err != nil {
		t.Fatal(err)
	}
	for name := range result.Files {
		if !fs.ValidPath(name) || len(name) > 120 {
			t.Errorf("a file is called %q", name)
		}
		if strings.Contains(name, "hidden") || strings.Contains(name, "config") {
			t.Errorf("a hidden file was taken: %s", name)
		}
	}
	if got := string(result.Files["notes/latin.md"]); !strings.Contains(got, "Prüfung") || !strings.Contains(got, "Windows-1252") {
		t.Errorf("latin.md: %s", got)
	}
	if got := string(result.Files["notes/out.md"]); strings.Contains(got, "passwd)") || strings.Contains(got, "](bad") {
		t.Errorf("out.md: %s", got)
	}
	report := strings.Join(result.Report, "\n")
	for _, want := range []string{"left: huge.md", "left: link.md", "left: zeros.md"} {
		if !strings.Contains(report, want) {
			t.Errorf("the report lacks %q:\n%s", want, report)
		}
	}
}
