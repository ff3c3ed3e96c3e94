package browsertest

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"baybook/site"
	"baybook/site/begin"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
)

// kept waits until the whole book is on the device.
func kept(p *tab) {
	p.t.Helper()
	p.wait(`document.querySelector("[data-kept]").textContent.includes("whole book is kept")`)
}

func TestOffline(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	s := serve(t, shipped(t), "/shop/book/")
	p.open(s.root + "index.html")
	kept(p)
	s.stop()
	p.reload()
	p.wait(`document.querySelector(".areas")`)
	// Never opened before: a sheet, a calculator, the core and the search.
	p.open(s.root + "passage/door-boot.html")
	p.wait(`document.querySelectorAll(".step").length > 5 && document.querySelectorAll(".drawing svg").length > 0`)
	if eval[float64](p, `parseFloat(getComputedStyle(document.querySelector(".signal")).borderBottomWidth)`) == 0 {
		t.Error("the style is not there")
	}
	p.open(s.root + "calculators/hinge-slack.html")
	before := p.text(".answer")
	field := eval[string](p, `document.querySelector(".calculator input[inputmode=decimal]").id`)
	p.fill("#"+field, "155")
	p.wait(`document.querySelector(".answer").innerText !== ` + js(before))
	if hits := search(p, "gnd"); !holds(hits, 3, "ground/") {
		t.Errorf("with no server gnd finds %v", hits)
	}
	p.open(s.root)
	p.wait(`document.querySelector(".areas")`)
}

// Over plain HTTP from another machine browsers keep nothing: the cover says
// so, and what to do; all that needs no keeping works.
func TestPlainHTTPIsTold(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := strings.Replace(serve(t, shipped(t), "/").root, "127.0.0.1", elsewhere, 1)
	p.open(root + "index.html")
	p.wait(`document.querySelector("[data-kept]").textContent.includes("plain HTTP")`)
	if eval[bool](p, "isSecureContext") {
		t.Fatal("the browser takes the address for a secure one")
	}
	openJob(p, root, "Van 7")
	p.open(root + "power/fuse-tap.html")
	p.fill("#reading-feed-contact input", "12.6")
	p.wait(verdictOf("feed-contact") + ` === "ok"`)
	if hits := search(p, "gnd"); !holds(hits, 3, "ground/") {
		t.Errorf("gnd finds %v", hits)
	}
}

// Every icon that the manifest names is there in its size, and the browser has
// nothing against installing the book.
func TestInstallable(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/shop/book/").root + "index.html")
	kept(p)
	sizes := eval[[]string](p, `(async () => {
		const at = document.querySelector("link[rel=manifest]").href;
		const manifest = await (await fetch(at)).json();
		return Promise.all(manifest.icons.map(async (icon) => {
			const picture = new Image();
			picture.src = new URL(icon.src, at).href;
			await picture.decode();
			return icon.sizes === "any" ? "any" : icon.sizes + " is " + picture.naturalWidth + "x" + picture.naturalHeight;
		}));
	})()`)
	if got := strings.Join(sizes, ", "); got != "any, any, 192x192 is 192x192, 512x512 is 512x512" {
		t.Errorf("the icons are %s", got)
	}
	for _, e := range call(p, page.GetInstallabilityErrors, cdp.Empty{}).InstallabilityErrors {
		if e.ErrorID != "in-incognito" { // as every test's profile is
			t.Errorf("the book cannot be installed: %s %v", e.ErrorID, e.ErrorArguments)
		}
	}
}

// edition builds a small book whose one sheet has a title, so many minutes ago:
// web servers tell files apart by the second in which they were written.
func edition(t *testing.T, title string, ago int) string {
	t.Helper()
	content := filepath.Join(t.TempDir(), "book")
	if err := os.CopyFS(content, begin.Book()); err != nil {
		t.Fatal(err)
	}
	sheet := filepath.Join(content, "power", "fused-lead.md")
	text, err := os.ReadFile(sheet)
	if err != nil {
		t.Fatal(err)
	}
	line, _, _ := bytes.Cut(text[bytes.Index(text, []byte("title: ")):], []byte("\n"))
	if err := os.WriteFile(sheet, bytes.Replace(text, line, []byte("title: "+title), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "dist")
	if _, list, err := site.Build(context.Background(), site.Options{Content: content, Out: out}); err != nil {
		t.Fatal(err, list)
	}
	written := time.Now().Add(-time.Duration(ago) * time.Minute)
	err = filepath.WalkDir(out, func(name string, _ fs.DirEntry, err error) error {
		return errors.Join(err, os.Chtimes(name, written, written))
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// titles are what the one sheet of the small book is called in its page and in
// the search index, which must never come from two editions.
func titles(p *tab, root string) (page, found string) {
	p.t.Helper()
	p.open(root + "power/fused-lead.html")
	page = p.text("h1")
	search(p, "fused lead")
	return page, p.text(".hits")
}

func TestNewEditionIsOfferedAndSwapsWhole(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	first, second := edition(t, "Fused lead of the elder edition", 2), edition(t, "Fused lead of the younger edition", 1)
	s := serve(t, first, "/")
	p.open(s.root + "index.html")
	kept(p)
	s.dir.Store(&second)
	page, found := titles(p, s.root)
	if !strings.Contains(page, "elder") || !strings.Contains(found, "elder") || strings.Contains(found, "younger") {
		t.Errorf("before the change the page says %q, the search %q", page, found)
	}
	p.open(s.root + "index.html")
	p.wait(`document.querySelector(".newer button")`)
	// Not taken: the old edition stays whole, in every page.
	page, found = titles(p, s.root)
	if !strings.Contains(page, "elder") || strings.Contains(found, "younger") {
		t.Errorf("while the newer one waits the page says %q, the search %q", page, found)
	}
	p.reload()
	p.wait(`document.querySelector(".newer button")`)
	p.tap(".newer button")
	p.wait(`!document.querySelector(".newer") && document.querySelector("h1").textContent.includes("younger")`)
	page, found = titles(p, s.root)
	if !strings.Contains(page, "younger") || !strings.Contains(found, "younger") || strings.Contains(found, "elder") {
		t.Errorf("after the change the page says %q, the search %q", page, found)
	}
	s.stop()
	page, found = titles(p, s.root)
	if !strings.Contains(page, "younger") || !strings.Contains(found, "younger") {
		t.Errorf("without a server the page says %q, the search %q", page, found)
	}
}

// A server that changes half way, so that a file is not the one that the
// worker's list names, makes no mixture: the edition is refused whole.
func TestMixedEditionIsRefused(t *testing.T) {
	t.Parallel()
	first, second := edition(t, "Fused lead of the elder edition", 2), edition(t, "Fused lead of the younger edition", 1)
	worker, err := os.ReadFile(filepath.Join(second, "worker.js"))
	if err != nil {
		t.Fatal(err)
	}
	mixed := filepath.Join(t.TempDir(), "mixed")
	if err := os.CopyFS(mixed, os.DirFS(first)); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(mixed, "worker.js"), worker, 0o644); err != nil {
		t.Fatal(err)
	}
	p := newTab(t)
	p.allowed = []string{"belongs to another edition", "ServiceWorker"}
	s := serve(t, mixed, "/")
	p.open(s.root + "index.html")
	p.wait(`/could not be kept/.test(document.querySelector("[data-kept]").textContent)`)
	p.wait(`navigator.serviceWorker.getRegistrations().then((r) => r.every((x) => !x.active))`)
}

// Caches belong to an origin: two books under one leave each other's alone.
func TestTwoBooksUnderOneOrigin(t *testing.T) {
	t.Parallel()
	both := t.TempDir()
	for name, title := range map[string]string{"vans": "Fused lead of the vans", "vans-2": "Fused lead of the trailers"} {
		if err := os.CopyFS(filepath.Join(both, name), os.DirFS(edition(t, title, 1))); err != nil {
			t.Fatal(err)
		}
	}
	p := newTab(t)
	s := serve(t, both, "/")
	for _, name := range []string{"vans", "vans-2", "vans"} {
		p.open(s.root + name + "/index.html")
		kept(p)
	}
	s.stop()
	for name, title := range map[string]string{"vans": "of the vans", "vans-2": "of the trailers"} {
		if page, found := titles(p, s.root+name+"/"); !strings.Contains(page, title) || !strings.Contains(found, title) {
			t.Errorf("without a server %s says %q, its search %q", name, page, found)
		}
	}
}

// A browser may throw kept files away: the cover counts what is there, says
// what is lost, and fetches it again when it can.
func TestLostCopyIsToldAndMended(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.allowed = []string{"404"}
	s := serve(t, edition(t, "Fused lead of the bench", 1), "/shop/")
	p.open(s.root + "index.html")
	kept(p)
	lose := func() {
		t.Helper()
		lost := eval[float64](p, `(async () => {
			let lost = 0;
			for (const name of await caches.keys()) {
				const cache = await caches.open(name);
				for (const r of await cache.keys()) if (/\/power\/|calculators\//.test(r.url) && await cache.delete(r)) lost++;
			}
			return lost;
		})()`)
		if lost < 10 {
			t.Fatalf("%v files could be lost", lost)
		}
	}
	lose()
	refuse := func(_ context.Context, name string) bool { return !strings.HasPrefix(name, "power/") }
	s.gate.Store(&refuse)
	p.reload()
	p.wait(`/^Only \d+ of the book's \d+ files are on this device/.test(document.querySelector("[data-kept]").textContent)`)
	s.gate.Store(nil)
	p.reload()
	kept(p)
	// A page that is asked for and not there has the rest mended too.
	lose()
	p.open(s.root + "power/fused-lead.html")
	p.wait(`(async () => {
		const cache = await caches.open((await caches.keys())[0]);
		return !!(await cache.match(new URL("../calculators/wire-drop.html", location.href)));
	})()`)
	s.stop()
	p.open(s.root + "calculators/wire-drop.html")
	p.wait(`document.querySelector(".answer")`)
}
