package serve_test

import (
	"bufio"
	"compress/gzip"
	"context"
	"errors"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/andybalholm/brotli"

	"baybook/site"
	"baybook/site/core"
	"baybook/site/finding"
	"baybook/site/serve"
	"baybook/site/sitetest"
)

// A served is a book being served on the loopback address.
type served struct {
	t       *testing.T
	content string
	url     string
	built   chan built
}

type built struct {
	list finding.List
	err  error
}

// testCore stands for the compiled core, which these tests do not run.
var testCore = core.Core{Module: []byte(strings.Repeat("\x00asm", 600)), Script: []byte(`window.bookData="";`)}

// start serves a book of three sheets until the test ends.
func start(t *testing.T, change func(content string)) *served {
	t.Helper()
	return startWith(t, change, nil)
}

// startWith does so with other options.
func startWith(t *testing.T, change func(content string), options func(*serve.Options)) *served {
	t.Helper()
	d := &served{t: t, content: t.TempDir(), built: make(chan built, 100)}
	if err := sitetest.Write(d.content, 3); err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(d.content)
	}
	ctx, cancel := context.WithCancel(t.Context())
	ready, done := make(chan string, 1), make(chan error, 1)
	o := serve.Options{
		Site: site.Options{Content: d.content, Core: testCore}, Addr: "127.0.0.1:0",
		Ready: func(a []serve.Address) { ready <- a[0].URL },
		Built: func(list finding.List, _ time.Duration, err error) { d.built <- built{list, err} },
	}
	if options != nil {
		options(&o)
	}
	go func() { done <- serve.Run(ctx, o) }()
	t.Cleanup(func() {
		cancel()
		if err := <-done; err != nil {
			t.Errorf("the server ended with %v", err)
		}
	})
	select {
	case d.url = <-ready:
	case err := <-done:
		done <- err
		t.Fatal(err)
	}
	<-d.built
	return d
}

// get asks for a path, with headers given in pairs.
func (d *served) get(at string, header ...string) (*http.Response, string) {
	d.t.Helper()
	return d.ask(http.MethodGet, at, nil, header...)
}

// client sends what is typed and unpacks nothing.
var client = &http.Client{Transport: &http.Transport{DisableCompression: true, MaxIdleConnsPerHost: 8}}

func (d *served) ask(method, at string, body io.Reader, header ...string) (*http.Response, string) {
	d.t.Helper()
	r, err := http.NewRequestWithContext(d.t.Context(), method, strings.TrimSuffix(d.url, "/")+at, body)
	if err != nil {
		d.t.Fatal(err)
	}
	for i := 0; i < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	if host := r.Header.Get("Host"); host != "" {
		r.Host = host
	}
	response, err := client.Do(r)
	if err != nil {
		d.t.Fatal(err)
	}
	defer response.Body.Close()
	content, err := io.ReadAll(response.Body)
	if err != nil {
		d.t.Fatal(err)
	}
	return response, string(content)
}

// save writes a sheet as an editor does and waits for what that came to.
func (d *served) save(name string, change func(string) string) built {
	d.t.Helper()
	file := filepath.Join(d.content, name)
	text, err := os.ReadFile(file)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		d.t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		d.t.Fatal(err)
	}
	temp := filepath.Join(filepath.Dir(file), ".swap")
	if err := os.WriteFile(temp, []byte(change(string(text))), 0o644); err != nil {
		d.t.Fatal(err)
	}
	if err := os.Rename(temp, file); err != nil {
		d.t.Fatal(err)
	}
	return d.next()
}

func (d *served) next() built {
	d.t.Helper()
	select {
	case b := <-d.built:
		return b
	case <-time.After(20 * time.Second):
		d.t.Fatal("nothing was built after the save")
		return built{}
	}
}

const firstSheet = "area-000/lead-00000"

func replace(old, with string) func(string) string {
	return func(s string) string { return strings.Replace(s, old, with, 1) }
}

func TestSavedSheetIsServed(t *testing.T) {
	d := start(t, nil)
	_, before := d.get("/" + firstSheet + ".html")
	if b := d.save(firstSheet+".md", replace("Makes, at the bench,", "Makes, on a tidy bench,")); b.err != nil || len(b.list) != 0 {
		t.Fatalf("the save came to %v, %v", b.list, b.err)
	}
	response, after := d.get("/" + firstSheet + ".html")
	if strings.Contains(before, "tidy bench") || !strings.Contains(after, "tidy bench") {
		t.Error("the page does not show what was saved")
	}
	if response.Header.Get("Book-Page") == "" || !strings.Contains(after, response.Header.Get("Book-Page")) {
		t.Error("the page does not carry the name of its own content")
	}
}

func TestNewFolderIsWatched(t *testing.T) {
	d := start(t, nil)
	fromFirst := func(string) string {
		text, err := os.ReadFile(filepath.Join(d.content, firstSheet+".md"))
		if err != nil {
			t.Fatal(err)
		}
		s := strings.Replace(string(text), "number: LD-00000", "number: NW-01", 1)
		s = strings.Replace(s, "[the new lead](../new/fresh.md), ", "", 1)
		return strings.ReplaceAll(s, "lead-00000-order.svg", "../area-000/lead-00000-order.svg")
	}
	if b := d.save(firstSheet+".md", replace("See [the next lead]", "See [the new lead](../new/fresh.md), [the next lead]")); b.list.Err() == nil {
		t.Fatal("a link to a sheet that is not there was not found")
	}
	for b := d.save("new/fresh.md", fromFirst); b.list.Err() != nil; { // folder and file may come as two saves
		b = d.next()
	}
	if b := d.save("new/fresh.md", replace("at the bench", "in the new folder")); b.err != nil {
		t.Fatal(b.err)
	}
	if _, page := d.get("/new/fresh.html"); !strings.Contains(page, "in the new folder") {
		t.Error("a save in a new folder is not seen")
	}
}

func TestErrorKeepsTheLastGoodSite(t *testing.T) {
	d := start(t, nil)
	_, before := d.get("/" + firstSheet + ".html")
	b := d.save(firstSheet+".md", replace("**WARNING: Feed without a fuse.**", "**NOTICE: Feed without a fuse.**"))
	if b.list.Err() == nil {
		t.Fatal("the fault was not found")
	}
	if _, page := d.get("/" + firstSheet + ".html"); page != before {
		t.Error("the last good page is gone")
	}
	_, findings := d.get("/.baybook/findings")
	for _, want := range []string{"keep", firstSheet + ".md:", "NOTICE"} {
		if !strings.Contains(findings, want) {
			t.Errorf("the findings do not say %q:\n%s", want, findings)
		}
	}
	if b := d.save(firstSheet+".md", replace("**NOTICE: Feed without a fuse.**", "**WARNING: Feed without a fuse.**")); b.list.Err() != nil {
		t.Fatal(b.list)
	}
	if _, findings := d.get("/.baybook/findings"); !strings.Contains(findings, "Nothing is wrong") {
		t.Errorf("the findings stay after they were mended:\n%s", findings)
	}
}

func TestBookThatNeverWasGoodShowsItsFindings(t *testing.T) {
	d := start(t, func(content string) {
		file := filepath.Join(content, firstSheet+".md")
		if err := os.WriteFile(file, []byte("---\ntitle: <b>Half</b>\n---\nNothing yet.\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	})
	response, page := d.get("/")
	if response.StatusCode != http.StatusServiceUnavailable || !strings.Contains(page, firstSheet+".md:") {
		t.Errorf("%s\n%s", response.Status, page)
	}
	if !strings.Contains(page, `src="/.baybook/live.js"`) {
		t.Error("the page of findings does not go on by itself")
	}
	if strings.Contains(page, "<b>Half</b>") {
		t.Error("words of a sheet stand in the page as markup")
	}
}

func TestMissingFolderEndsAtOnce(t *testing.T) {
	err := serve.Run(t.Context(), serve.Options{Addr: "127.0.0.1:0", Site: site.Options{Content: filepath.Join(t.TempDir(), "none")}})
	if err == nil || !strings.Contains(err.Error(), "no content folder") {
		t.Errorf("got %v", err)
	}
}

func TestPublishedPagesCarryNoScriptOfTheServer(t *testing.T) {
	d := start(t, nil)
	out := filepath.Join(t.TempDir(), "dist")
	if _, _, err := site.Build(t.Context(), site.Options{Content: d.content, Out: out, Core: testCore}); err != nil {
		t.Fatal(err)
	}
	err := filepath.WalkDir(out, func(name string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(name)
		if strings.Contains(string(data), "/.baybook/") {
			t.Errorf("%s speaks of the server", name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestOpenPagesAreTold(t *testing.T) {
	d := start(t, nil)
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, d.url+".baybook/events", nil)
	if err != nil {
		t.Fatal(err)
	}
	response, err := client.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	if kind := response.Header.Get("Content-Type"); kind != "text/event-stream" {
		t.Errorf("type %q", kind)
	}
	lines := bufio.NewScanner(response.Body)
	notice := func() string {
		for lines.Scan() {
			if data, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				return data
			}
		}
		t.Fatal("the stream ended")
		return ""
	}
	if got, want := notice(), `{"build":1,"pictures":0,"broken":false}`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	d.save(firstSheet+".md", replace("kind: procedure", "kind: nonsense"))
	if got, want := notice(), `{"build":2,"pictures":0,"broken":true}`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// RFC 9110: section 8.8.3 entity tags, 12.5.3 Accept-Encoding, 13.1.2
// If-None-Match.
func TestFilesAreSentPackedAndOnce(t *testing.T) {
	d := start(t, nil)
	page := "/" + firstSheet + ".html"
	_, plain := d.get(page)
	unpack := map[string]func(io.Reader) io.Reader{
		"":   func(r io.Reader) io.Reader { return r },
		"br": func(r io.Reader) io.Reader { return brotli.NewReader(r) },
		"gzip": func(r io.Reader) io.Reader {
			z, err := gzip.NewReader(r)
			if err != nil {
				t.Fatal(err)
			}
			return z
		},
	}
	tags := make(map[string]bool)
	for accepts, coding := range map[string]string{
		"": "", "identity": "", "gzip": "gzip", "gzip, deflate, br": "br", "br;q=0, gzip;q=0.5": "gzip", "BR": "br",
		"br;q=0.0": "", "deflate, zstd": "", "*;q=0": "",
	} {
		response, body := d.get(page, "Accept-Encoding", accepts)
		if got := response.Header.Get("Content-Encoding"); got != coding {
			t.Errorf("Accept-Encoding %q: coding %q, want %q", accepts, got, coding)
			continue
		}
		content, err := io.ReadAll(unpack[coding](strings.NewReader(body)))
		if err != nil || string(content) != plain {
			t.Errorf("coding %q does not give the page back: %v", coding, err)
		}
		if response.Header.Get("Vary") != "Accept-Encoding" {
			t.Error("the answer does not say that it varies")
		}
		tag := response.Header.Get("ETag")
		tags[tag] = true
		again, body := d.get(page, "Accept-Encoding", accepts, "If-None-Match", `"other", W/`+tag)
		if again.StatusCode != http.StatusNotModified || body != "" {
			t.Errorf("a page that the reader has is sent again: %s", again.Status)
		}
	}
	if len(tags) != 3 {
		t.Errorf("%d tags for three codings", len(tags))
	}
}

func TestHeadIsGetWithoutItsBody(t *testing.T) {
	d := start(t, nil)
	get, body := d.get("/")
	head, none := d.ask(http.MethodHead, "/", nil)
	if none != "" || head.Header.Get("Content-Length") != get.Header.Get("Content-Length") || len(body) == 0 {
		t.Errorf("GET %v, HEAD %v", get.Header, head.Header)
	}
}

func TestTypesAndHeaders(t *testing.T) {
	d := start(t, nil)
	_, cover := d.get("/")
	coreName := cover[strings.Index(cover, `data-core="`)+len(`data-core="`):]
	coreName = coreName[:strings.IndexByte(coreName, '"')]
	for at, kind := range map[string]string{
		"/": "text/html; charset=utf-8", "/index.html": "text/html; charset=utf-8", "/book.webmanifest": "application/manifest+json",
		"/" + coreName: "application/wasm", "/icons/book.svg": "image/svg+xml", "/worker.js": "text/javascript; charset=utf-8",
		"/.baybook/live.css": "text/css; charset=utf-8", "/assets/find.bin": "application/octet-stream",
	} {
		response, _ := d.get(at)
		if got := response.Header.Get("Content-Type"); got != kind || response.StatusCode != http.StatusOK {
			t.Errorf("%s: %s, type %q, want %q", at, response.Status, got, kind)
		}
		for name, want := range map[string]string{
			"Content-Security-Policy": "frame-ancestors 'none'", "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer",
		} {
			if !strings.Contains(response.Header.Get(name), want) {
				t.Errorf("%s: %s is %q", at, name, response.Header.Get(name))
			}
		}
	}
}

func TestNothingOutsideTheSiteIsServed(t *testing.T) {
	d := start(t, func(content string) {
		if err := os.WriteFile(filepath.Join(content, "..", "secret.txt"), []byte("secret"), 0o644); err != nil {
			t.Fatal(err)
		}
	})
	address := strings.TrimSuffix(strings.TrimPrefix(d.url, "http://"), "/")
	for _, at := range []string{
		"/../secret.txt", "/..%2fsecret.txt", "/%2e%2e/secret.txt", "/area-000/../../secret.txt", "/..\\secret.txt", "//secret.txt",
		"/./index.html", "/" + firstSheet + ".md", "/shop.yaml", "/.baybook-site", "/index.html/", "/%00", "/area-000/",
		"/.baybook/../shop.yaml", "/.baybook/live.js/x", "/.baybook/devserver.go",
	} {
		conn, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		// A raw request, since clients tidy such paths up.
		_, _ = io.WriteString(conn, "GET "+at+" HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
		answer, err := io.ReadAll(conn)
		_ = conn.Close()
		if err != nil {
			t.Fatal(err)
		}
		status, _, _ := strings.Cut(string(answer), "\r\n")
		if strings.Contains(status, " 200 ") || strings.Contains(string(answer), "secret\n") {
			t.Errorf("%s: %s", at, status)
		}
	}
}

func TestTakenAddressIsToldOfWhenItWasAskedFor(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	content := t.TempDir()
	if err := sitetest.Write(content, 1); err != nil {
		t.Fatal(err)
	}
	err = serve.Run(t.Context(), serve.Options{Addr: taken.Addr().String(), Site: site.Options{Content: content, Core: testCore}})
	if err == nil {
		t.Error("served on an address that is taken")
	}
}
