package site

import (
	"bytes"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"baybook/site/finding"
)

// FuzzPage takes a sheet all the way: read, checked, rendered, and read again
// as HTML5 (WHATWG HTML, section 13) as a browser does. Whatever check passes
// becomes a page that runs nothing of the sheet's, asks nothing of the outside,
// and names no part twice.
func FuzzPage(f *testing.F) {
	plain := string(small(f, nil)[smallSheet].Data)
	f.Add(plain)
	for _, more := range pageSeeds {
		f.Add(string(withSeed(f, more)[smallSheet].Data))
	}
	names, _ := filepath.Glob("../content/*/*.md")
	for _, name := range names {
		if data := readSeed(f, name); len(data) < 9_000 {
			f.Add(data)
		}
	}
	builder := builderOf(f, nil)
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 12_000 {
			return
		}
		fsys := small(t, func(string) string { return text })
		fsys["power/pins.csv"] = &fstest.MapFile{Data: []byte("1\n")}
		builder.fsys = fsys
		edition, list, err := builder.Next(t.Context())
		if err != nil {
			if list.Err() == nil {
				t.Fatal(err)
			}
			return
		}
		file, err := edition.Open(strings.TrimSuffix(smallSheet, ".md") + ".html")
		if err != nil {
			t.Fatalf("check passes what cannot be rendered: %v", err)
		}
		soundPage(t, file.Data(), list)
	})
}

// withSeed is the small book with a seed in its sheet.
func withSeed(t testing.TB, seed string) fstest.MapFS {
	t.Helper()
	fsys := small(t, func(text string) string {
		return strings.Replace(text, "\n## Sources\n", "\n"+seed+"\n\n## Sources\n", 1)
	})
	fsys["power/pins.csv"] = &fstest.MapFile{Data: []byte("1\n")}
	return fsys
}

// The seeds of FuzzPage pass the checks, so that fuzzing starts in the pages.
func TestPageSeedsBecomePages(t *testing.T) {
	for _, seed := range pageSeeds {
		files, list := published(t, withSeed(t, seed))
		if files == nil {
			t.Errorf("%.40q is refused: %v", seed, list)
			continue
		}
		soundPage(t, files[strings.TrimSuffix(smallSheet, ".md")+".html"], list)
	}
}

// readSeed is a file's text.
func readSeed(f *testing.F, name string) string {
	f.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		f.Fatal(err)
	}
	return string(data)
}

// pageSeeds are what a sheet can hold beside plain steps.
var pageSeeds = []string{
	"| slot | rating |\n|---|---:|\n| 4 | [15 A](about:) |",
	"[](calc:wire-drop?current=6A&length=4m&wire=16AWG)",
	"[](calc:wire-drop?wire=20AWG,18AWG&length=2m,4m&current=3A#drop)",
	"[](calc:wire-drop?current=4..12A&length=4m&wire=16AWG#drop)",
	"- Read the fuse: [at least 11 V](reading:fuse-volts?min=11V)",
	"```circuit\ntitle: Lamp\nsource:\n  battery: {volts: 12.6, internal: 8 mohm}\nfuses:\n  F1: {rating: 10 A, type: C}\nswitches: [key]\nloads:\n  lamp: {current: 6 A, type: lamp}\ngrounds:\n  G0: {point: tray}\n  G1: {point: rail}\nwires:\n  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}\n  W2: {from: F1, to: key, size: 16 AWG, length: 50 cm, colour: RD}\n  W3: {from: key, to: lamp, size: 16 AWG, length: 50 cm, colour: RDYE}\n  W4: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}\n  W5: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}\nstates:\n  key off: {parked: yes}\n  key on: {closed: [key]}\n```",
	"```go\nfunc main() { println(\"</script><b onclick=x>\") }\n```",
	"See [the pins](pins.csv \"a 'title' <b>\"), <https://example.invalid/a?b=c&d=\"e>, and `code <i>`.",
	"> **WARNING: Feed without a fuse.** A wire without a fuse at its source glows when it touches the body, and the vehicle burns.\n>\n> Fit a fuse of 10 A at most on 16 AWG wire, within 180 mm of the source.",
	"1. What lights?\n   - [x] The lamp \\& \\<the key\\>.\n   - [ ] The key.\n\n   > The lamp has a filament.",
	"![The order of the parts: battery, fuse, lamp.](fused-lead-order.svg \"A <title>\")",
	"&lt;script&gt;alert(1)&lt;/script&gt; &#34; &quot; \\<b\\> *a* **b** ~~c~~ [a]: x",
}

// runners are elements that run, fetch or embed something of a stranger's.
var runners = []string{"iframe", "object", "embed", "base", "frame", "frameset", "applet", "portal", "audio", "video", "source", "track", "image", "foreignobject", "animate", "set", "handler", "math"}

// loads are attributes whose value is fetched or followed.
var loads = []string{"src", "href", "xlink:href", "srcset", "action", "formaction", "poster", "data", "background", "ping", "cite", "manifest", "archive", "codebase"}

// soundPage reads a page as a browser does and refuses what the builder never
// writes.
func soundPage(t *testing.T, page []byte, list finding.List) {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	ids := make(map[string]bool)
	for n := range root.Descendants() {
		if n.Type == html.TextNode && (n.Parent == nil || n.Parent.Data == "html" || n.Parent.Data == "head") && strings.TrimSpace(n.Data) != "" {
			t.Errorf("words outside the page's body: %q", n.Data)
		}
		if n.Type != html.ElementNode {
			continue
		}
		if slices.Contains(runners, n.Data) {
			t.Errorf("an element %s", n.Data)
		}
		if n.Data == "script" && !ours(n) {
			t.Error("a script that is not the book's own")
		}
		for _, a := range n.Attr {
			soundAttribute(t, n, a, ids)
		}
	}
	if len(list) == 0 && len(ids) == 0 {
		t.Error("a page without parts")
	}
}

// ours reports a script of the book's own: a file of its assets, or data.
func ours(n *html.Node) bool {
	for _, a := range n.Attr {
		if a.Key == "src" {
			return strings.HasPrefix(a.Val, "../assets/") && n.FirstChild == nil
		}
		if a.Key == "type" && a.Val == "application/json" {
			return true
		}
	}
	return false
}

func soundAttribute(t *testing.T, n *html.Node, a html.Attribute, ids map[string]bool) {
	t.Helper()
	key := strings.ToLower(a.Key)
	if a.Namespace != "" {
		key = a.Namespace + ":" + key
	}
	switch {
	case strings.HasPrefix(key, "on"), key == "srcdoc":
		t.Errorf("<%s %s> runs %q", n.Data, key, a.Val)
	case strings.ContainsAny(a.Key, "\"'<>= \t\n"):
		t.Errorf("<%s> has an attribute %q", n.Data, a.Key)
	case key == "id":
		if ids[a.Val] {
			t.Errorf("two parts are named %q", a.Val)
		}
		ids[a.Val] = true
	case slices.Contains(loads, key):
		u, err := url.Parse(strings.TrimSpace(a.Val))
		if err != nil {
			t.Errorf("<%s %s=%q>: %v", n.Data, key, a.Val, err)
			return
		}
		outside := u.Scheme != "" || u.Host != ""
		if outside && !(n.Data == "a" && key == "href" && slices.Contains([]string{"http", "https", "mailto", "tel"}, u.Scheme)) {
			t.Errorf("<%s %s=%q> leads out of the book", n.Data, key, a.Val)
		}
	case key == "style" && strings.Contains(strings.ToLower(a.Val), "url"):
		t.Errorf("<%s style=%q>", n.Data, a.Val)
	}
}
