package serve_test

import (
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site/serve"
)

// dial opens a connection that says so much and then nothing more.
func (d *served) dial(says string) net.Conn {
	d.t.Helper()
	conn, err := net.Dial("tcp", strings.TrimSuffix(strings.TrimPrefix(d.url, "http://"), "/"))
	if err != nil {
		d.t.Fatal(err)
	}
	d.t.Cleanup(func() { _ = conn.Close() })
	_, _ = io.WriteString(conn, says) // one that was shown out says nothing
	return conn
}

// Whatever hangs on the server, a reader who comes gets a page.
func TestPagesAreServedBesideACrowd(t *testing.T) {
	ask := func(at string) string { return "GET " + at + " HTTP/1.1\r\nHost: localhost\r\n\r\n" }
	for name, c := range map[string]struct {
		count int
		says  string
	}{
		"silent":             {600, ""},
		"half a request":     {600, "GET / HTTP/1.1\r\nHost: lo"},
		"idle after a page":  {600, ask("/" + firstSheet + ".html")},
		"live":               {1000, ask("/.baybook/events")},
		"pages not read out": {600, ask("/") + ask("/") + ask("/")},
	} {
		t.Run(name, func(t *testing.T) {
			d := start(t, nil)
			for range c.count {
				d.dial(c.says)
			}
			alone := &http.Client{Transport: &http.Transport{DisableKeepAlives: true}}
			for range 3 {
				response, err := alone.Get(d.url + firstSheet + ".html")
				if err != nil {
					t.Fatal(err)
				}
				if body, err := io.ReadAll(response.Body); err != nil || response.StatusCode != http.StatusOK || len(body) == 0 {
					t.Errorf("beside them a reader gets %s, %v", response.Status, err)
				}
				_ = response.Body.Close()
			}
		})
	}
}

// A content folder that goes, and one that comes in its place, are noticed,
// and the new one is watched.
func TestContentThatGoesAndComesBack(t *testing.T) {
	d := start(t, nil)
	away := d.content + "-away"
	until := func(b built, right func(b built) bool) {
		t.Helper()
		for range 20 {
			if right(b) {
				return
			}
			b = d.next()
		}
		t.Fatalf("it comes to %v", b)
	}
	fine := func(b built) bool { return b.err == nil && b.list.Err() == nil }
	gone := func(b built) bool { return b.err != nil }
	found := func(b built) bool { return b.list.Err() != nil }
	for range 2 {
		if err := os.Rename(d.content, away); err != nil {
			t.Fatal(err)
		}
		until(d.next(), gone)
		if response, _ := d.get("/" + firstSheet + ".html"); response.StatusCode != http.StatusOK {
			t.Errorf("the last good page is gone: %s", response.Status)
		}
		if err := os.CopyFS(d.content, os.DirFS(away)); err != nil {
			t.Fatal(err)
		}
		if err := os.RemoveAll(away); err != nil {
			t.Fatal(err)
		}
		until(d.next(), fine)
		until(d.save(firstSheet+".md", replace("kind: procedure", "kind: nonsense")), found)
		if _, list := d.get("/.baybook/findings"); !strings.Contains(list, "nonsense") {
			t.Error("the save in the folder that came is not seen")
		}
		until(d.save(firstSheet+".md", replace("kind: nonsense", "kind: procedure")), fine)
	}
}

// What a reader on the shop's network sees and can do, as the guide lists it:
// the pages, drafts and findings among them; nothing else of the machine, and
// nothing is changed.
func TestReaderOnTheNetwork(t *testing.T) {
	d := startWith(t, func(content string) {
		file := filepath.Join(content, firstSheet+".md")
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(replace("\n---\n", "\ndraft: true\n---\n")(string(text))), 0o644); err != nil {
			t.Fatal(err)
		}
	}, func(o *serve.Options) { o.LAN = true })
	if response, body := d.get("/"+firstSheet+".html", "Host", "desk.shop.example:8025"); response.StatusCode != http.StatusOK || !strings.Contains(body, "DRAFT") {
		t.Errorf("a draft by the machine's name: %s", response.Status)
	}
	for _, at := range []string{"/" + firstSheet + ".md", "/hazards.yaml", "/.git/config", "/.baybook/", "/debug/pprof/"} {
		if response, _ := d.get(at); response.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %s", at, response.Status)
		}
	}
	for _, method := range []string{http.MethodPost, http.MethodPut, http.MethodDelete, http.MethodPatch, http.MethodOptions, http.MethodConnect, http.MethodTrace} {
		if response, _ := d.ask(method, "/"+firstSheet+".html", nil); response.StatusCode != http.StatusMethodNotAllowed {
			t.Errorf("%s: %s", method, response.Status)
		}
	}
	d.save(firstSheet+".md", replace("title:", "tilte:"))
	if _, list := d.get("/.baybook/findings"); !strings.Contains(list, "tilte") || strings.Contains(list, d.content) {
		t.Errorf("the findings: %.300s", list)
	}
	if err := os.Rename(d.content, d.content+"-away"); err != nil {
		t.Fatal(err)
	}
	for d.next().err == nil {
	}
	if _, list := d.get("/.baybook/findings"); strings.Contains(list, filepath.Dir(d.content)) || !strings.Contains(list, "terminal") {
		t.Errorf("the page tells the network of this machine's folders: %s", list)
	}
}
