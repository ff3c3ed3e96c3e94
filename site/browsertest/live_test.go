package browsertest

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site"
	desk "baybook/site/serve"
	"baybook/site/sitetest"
)

// TestSavedSheetReloadsItsPage writes a book while its page is open: the page
// shows what was saved, keeps still over a fault and says what it is, and goes
// on when it is mended.
func TestSavedSheetReloadsItsPage(t *testing.T) {
	t.Parallel()
	content := t.TempDir()
	if err := sitetest.Write(content, 5); err != nil {
		t.Fatal(err)
	}
	ready, done := make(chan string, 1), make(chan error, 1)
	ctx, cancel := context.WithCancel(t.Context())
	go func() { done <- runDesk(ctx, content, ready) }()
	t.Cleanup(func() {
		cancel()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	p := newTab(t)
	root := <-ready
	// What would keep the published book keeps nothing of one that is written.
	p.open(root)
	p.wait(`document.querySelector("[data-kept]").textContent.includes("not kept on this device")`)
	if n := eval[int](p, `navigator.serviceWorker.getRegistrations().then((r) => r.length)`); n != 0 {
		t.Errorf("%d workers keep pages of a book that is being written", n)
	}
	p.open(root + "area-000/lead-00000.html")
	save := func(old, with string) {
		t.Helper()
		name := filepath.Join(content, "area-000", "lead-00000.md")
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), old) {
			t.Fatalf("the sheet does not say %q", old)
		}
		if err := os.WriteFile(name, []byte(strings.ReplaceAll(string(text), old, with)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	save("at the bench", "in the quiet bay")
	p.wait(`document.querySelector("main").innerText.includes("in the quiet bay")`)
	p.wait(`!document.querySelector(".baybook-live")`)
	save("**WARNING: Feed", "**NOTICE: Feed")
	p.wait(`document.querySelector(".baybook-live")?.innerText.includes("1 error keeps the site from being built")`)
	p.wait(`document.querySelector(".baybook-live").innerText.includes("area-000/lead-00000.md:")`)
	p.wait(`document.querySelector("main").innerText.includes("in the quiet bay")`)
	p.tap(".baybook-live button")
	p.wait(`!document.querySelector(".baybook-live")`)
	save("**NOTICE: Feed", "**WARNING: Feed")
	save("in the quiet bay", "on the long bench")
	p.wait(`document.querySelector("main").innerText.includes("on the long bench")`)
}

func runDesk(ctx context.Context, content string, ready chan<- string) error {
	return desk.Run(ctx, desk.Options{
		Site: site.Options{Content: content}, Addr: "127.0.0.1:0",
		Ready: func(a []desk.Address) { ready <- a[0].URL },
	})
}
