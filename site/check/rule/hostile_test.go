package rule

import (
	"baybook/site/check"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"baybook/calculators"
	"baybook/site/finding"
	"baybook/site/sheet"
)

func sheetFile(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }

// refuses demands a finding of the rule in the file, and none by a failure of
// a rule itself.
func refuses(t *testing.T, list finding.List, file, rule string) {
	t.Helper()
	hit := false
	for _, f := range list {
		hit = hit || f.Rule == rule && f.Pos.File == file && f.Severity == finding.Error
		if strings.Contains(f.Message, "the rule itself failed") {
			t.Errorf("%s: %s", f.Rule, f.Message)
		}
	}
	if !hit {
		t.Errorf("%s is not refused by %s: %s", file, rule, short(list[:min(len(list), 5)]))
	}
}

// TestHostileSheets refuses, quickly and without failing, what no person
// writes.
func TestHostileSheets(t *testing.T) {
	plain, _ := exampleSheet("")
	step := func(s string) string { text, _ := exampleSheet("## Steps\n\n1. " + s + "\n"); return text }
	for _, tt := range []struct{ name, text, rule string }{
		{"50 MB", plain + strings.Repeat("All the same words again.\n", 2_000_000), "file-size"},
		{"one line of 2 MB", plain + strings.Repeat("x", 900_000), "file-size"},
		{"100 000 quotes deep", plain + strings.Repeat("> ", 9_000) + "x\n", "nesting"},
		{"100 000 lists deep", plain + nestedLists(100_000), "file-size"},
		{"numbers deep on a line", plain + strings.Repeat("1. ", 6_000) + "x\n", "nesting"},
		{"lists deep within the size", plain + nestedLists(200), "nesting"},
		{"brackets deep", step(strings.Repeat("[", 9_000)), "nesting"},
		{"zero width space", step("Look at the l\u200bamp."), "hidden-character"},
		{"right-to-left override", step("Look at \u202egnihton\u202c."), "hidden-character"},
		{"direction mark of another script", step("Look at \u061cit."), "hidden-character"},
		{"tag characters", step("Look at it\U000E0041."), "hidden-character"},
		{"isolates", step("Look at \u2067nothing\u2069."), "hidden-character"},
		{"control character", step("Look at \x1b[31mred."), "hidden-character"},
		{"zero width space as a code", step("Look at the l&#x200b;amp."), "hidden-character"},
		{"override as a code", step("Look at &#8238;nihton."), "hidden-character"},
		{"override by name", step("Look at &rlm;nihton."), "hidden-character"},
		{"soft hyphen by name", step("Look at the la&shy;mp."), "hidden-character"},
		{"letters as codes", step("Wa&#105;t 10 min for the lamp (example)."), "hidden-character"},
		{"override in a YAML escape", strings.Replace(plain, "title: A sheet", `title: "A \u202esheet"`, 1), "hidden-character"},
		{"zero width space in a tool", strings.Replace(plain, "tools: [key,", `tools: ["k\u200bey",`, 1), "hidden-character"},
		{"not UTF-8", step("Look at \xff."), "utf8"},
		{"raw HTML", step("Look at <script>alert(1)</script>."), "raw-html"},
		{"comment", step("Look <!-- at --> it."), "raw-html"},
		{"script link", step("Read [this](javascript:alert(1))"), "external-link"},
		{"script link in disguise", step("Read [this](JaVaScRiPt:alert(1))"), "external-link"},
		{"script link in entities", step("Read [this](&#106;avascript:alert(1))"), "link"},
		{"script link in angles", step("<javascript:alert(1)>"), "external-link"},
		{"script link by reference", step("Read [this].") + "\n[this]: javascript:alert(1)\n", "external-link"},
		{"data link", step("Read [this](data:text/html;base64,PHNjcmlwdD4=)"), "external-link"},
		{"script picture", step("Look.\n\n   ![A drawing of two wires.](javascript:alert(1))"), "figure"},
		{"data picture", step("Look.\n\n   ![A drawing of two wires.](data:image/svg+xml,x)"), "figure"},
		{"path out", step("Read [this](../../etc/passwd.md)"), "link"},
		{"path out in escapes", step("Read [this](%2e%2e/%2e%2e/etc/passwd.md)"), "link"},
		{"path out with backslashes", step(`Read [this](..\\..\\secret.md)`), "link"},
		{"picture path out", step("Look.\n\n   ![A drawing of two wires.](../../../etc/passwd.svg)"), "figure"},
		{"host without scheme", step("Read [this](//example.invalid/x)"), "external-link"},
		{"YAML alias", strings.Replace(plain, "owner: Bench", "owner: &a Bench\nsynonyms: [*a, *a]", 1), "front-matter"},
		{"YAML bomb", strings.Replace(plain, "owner: Bench", "owner: Bench\nsynonyms: "+yamlBomb, 1), "front-matter"},
		{"YAML deep", strings.Replace(plain, "owner: Bench", "owner: "+strings.Repeat("[", 20)+strings.Repeat("]", 20), 1), "front-matter"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			fsys := exampleFS()
			fsys["area/sheet.md"] = sheetFile(tt.text)
			start := time.Now()
			list := checkFS(t, fsys, check.History{Today: today})
			if took := time.Since(start); took > 20*time.Second {
				t.Errorf("it took %s", took)
			}
			refuses(t, list, "area/sheet.md", tt.rule)
		})
	}
}

const yamlBomb = "[&a [x,x,x,x,x,x,x,x,x], &b [*a,*a,*a,*a,*a,*a,*a,*a,*a], &c [*b,*b,*b,*b,*b,*b,*b,*b,*b], [*c,*c,*c,*c,*c,*c,*c,*c,*c]]"

// nestedLists is a list within a list, n deep.
func nestedLists(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", min(2*i, 15_000)) + "- x\n")
		if b.Len() > 3<<20 {
			break
		}
	}
	return b.String()
}

// TestHostileDataFiles refuses YAML bombs in the shop's data.
func TestHostileDataFiles(t *testing.T) {
	for file, rule := range map[string]string{"hazards.yaml": "hazard-register", "glossary.yaml": "glossary", "words.yaml": "words", "shop.yaml": "shop"} {
		fsys := exampleFS()
		fsys[file] = sheetFile(yamlBomb)
		refuses(t, checkFS(t, fsys, check.History{}), file, rule)
		fsys[file] = sheetFile("a: \xff")
		refuses(t, checkFS(t, fsys, check.History{}), file, "utf8")
		fsys[file] = sheetFile(strings.Repeat("- x\n", 1<<20))
		refuses(t, checkFS(t, fsys, check.History{}), file, "file-size")
	}
}

// TestRefusedUnread checks that a sheet that is refused unread gives that one
// finding, and none about its links, its places and its pictures.
func TestRefusedUnread(t *testing.T) {
	fsys := exampleFS()
	sheet, _ := exampleSheet("")
	fsys["area/sheet.md"] = sheetFile(sheet + "\nSee [its step](other.md#step-1).\n")
	fsys["area/other.md"] = sheetFile(strings.Replace(exampleOther, "Look at", "Look\u200b at", 1))
	list := checkFS(t, fsys, check.History{Today: today})
	if len(list) != 1 || list[0].Rule != "hidden-character" || list[0].Pos.File != "area/other.md" {
		t.Error(short(list))
	}
}

// TestHostileText refuses characters that cannot be seen in drawings and data.
func TestHostileText(t *testing.T) {
	drawing := func(text string) string {
		return strings.Replace(exampleDrawing, "</svg>", "<text>"+text+"</text></svg>", 1)
	}
	for _, tt := range []struct{ file, text string }{
		{"area/drawing.svg", drawing("\u202enihton")},
		{"area/drawing.svg", drawing("&#x202e;nihton")},
		{"area/drawing.svg", drawing("no\u200bthing")},
		{"glossary.yaml", `- {term: "bulk\u200bhead", meaning: The sheet between engine bay and cab.}`},
		{"shop.yaml", `{name: "The \u202ebay", book: Its book}`},
		{"hazards.yaml", strings.Replace(exampleRegister, "title: Exhaust gas", `title: "Exhaust \u2066gas"`, 1)},
	} {
		fsys := exampleFS()
		sheet, _ := exampleSheet("")
		fsys["area/sheet.md"] = sheetFile(sheet)
		fsys[tt.file] = sheetFile(tt.text)
		refuses(t, checkFS(t, fsys, check.History{Today: today}), tt.file, "hidden-character")
	}
}

// TestSymbolicLinks refuses links in the content folder, to files and folders.
func TestSymbolicLinks(t *testing.T) {
	dir := t.TempDir()
	for name, f := range exampleFS() {
		file := filepath.Join(dir, "content", name)
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, f.Data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	secret := filepath.Join(dir, "secret")
	if err := os.MkdirAll(secret, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(secret, "s.md"), []byte("secret"), 0o644); err != nil {
		t.Fatal(err)
	}
	for link, target := range map[string]string{"area/linked.md": filepath.Join(secret, "s.md"), "area/linked.svg": filepath.Join(secret, "s.md"), "folder": secret} {
		if err := os.Symlink(target, filepath.Join(dir, "content", link)); err != nil {
			t.Skip("this system makes no symbolic links")
		}
	}
	book, list, err := sheet.Load(os.DirFS(filepath.Join(dir, "content")), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	for _, link := range [...]string{"area/linked.md", "area/linked.svg", "folder"} {
		refuses(t, list, link, "file")
	}
	for _, s := range book.Sheets {
		if strings.Contains(s.File, "linked") || strings.HasPrefix(s.File, "folder") {
			t.Errorf("%s was read", s.File)
		}
	}
	for name := range book.Files {
		if strings.Contains(name, "linked") || strings.HasPrefix(name, "folder") {
			t.Errorf("%s was taken in", name)
		}
	}
}

// FuzzBook checks that no sheet makes the loader or a rule fail, that every
// finding lies in its file, and that a fixed sheet has nothing left to fix of
// the same kind at the same place.
func FuzzBook(f *testing.F) {
	shared := check.NewCache(All())
	for _, r := range All() {
		for _, example := range [...]string{ExampleOf(r).Bad(), ExampleOf(r).Good()} {
			fsys, _ := exampleBook(example)
			f.Add(string(fsys["area/sheet.md"].Data))
		}
	}
	base, _, err := sheet.Load(exampleFS(), calculators.All)
	if err != nil {
		f.Fatal(err)
	}
	run := func(t *testing.T, text string) finding.List {
		fsys := exampleFS()
		fsys["area/sheet.md"] = sheetFile(text)
		book, list, err := sheet.Reload(base, fsys, calculators.All)
		if err != nil {
			t.Fatal(err)
		}
		return append(list, shared.Run(book, check.History{Today: today})...).Dedupe()
	}
	f.Fuzz(func(t *testing.T, text string) {
		list := run(t, text)
		for _, x := range list {
			if strings.Contains(x.Message, "the rule itself failed") {
				t.Fatalf("%s: %s", x.Rule, x.Message)
			}
			if x.Pos.File == "area/sheet.md" && (x.Pos.Offset < 0 || x.Pos.Offset+x.Length > len(text)) {
				t.Fatalf("%s lies outside the file", x.Pos)
			}
		}
		fixes := list.Fixes("area/sheet.md")
		if len(fixes) == 0 {
			return
		}
		after, err := finding.Apply([]byte(text), fixes)
		if err != nil {
			t.Skip() // overlapping offers are refused as a whole
		}
		for _, x := range run(t, string(after)) {
			if x.Rule == "computed-number" && x.Fix != nil {
				t.Fatalf("still wrong after its fix: %s\n%s", x.Message, after)
			}
		}
	})
}
