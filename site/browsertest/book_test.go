package browsertest

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"baybook/site"
)

// scratch is a folder that stands as long as the tests run.
var scratch string

func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "baybook-browser-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	scratch = dir
	code := m.Run()
	closeBrowsers()
	if err := os.RemoveAll(dir); err != nil {
		fmt.Fprintln(os.Stderr, err)
	}
	os.Exit(code)
}

// built publishes a book once and gives the folder of its site.
func built(content, out string) func() (string, error) {
	return sync.OnceValues(func() (string, error) {
		dir := filepath.Join(scratch, out)
		_, list, err := site.Build(context.Background(), site.Options{Content: content, Out: dir})
		if err != nil {
			return "", fmt.Errorf("%s does not build: %w\n%v", content, err, list)
		}
		return dir, nil
	})
}

var buildShipped = built("../../content", "shipped")

// shipped is the folder of the shipped book's site.
func shipped(t testing.TB) string {
	t.Helper()
	dir, err := buildShipped()
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

// headers are what README asks of a web server in front of the book.
var headers = [][2]string{
	{"Content-Security-Policy", "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"},
	{"X-Content-Type-Options", "nosniff"},
	{"Referrer-Policy", "no-referrer"},
}

// A shelf is a web server with a site on it, which can be exchanged for
// another while it runs.
type shelf struct {
	*httptest.Server
	// root is the site's address, with a slash at its end.
	root string
	dir  atomic.Pointer[string]
	// gate, where a test sets it, is asked before each file is sent, and may
	// take its time, until the reader is gone; false refuses the file.
	gate atomic.Pointer[func(reader context.Context, name string) bool]
}

// serve puts a site behind a web server of plain files on this machine, at a
// path such as "/" or "/shop/book/".
func serve(t testing.TB, dir, at string) *shelf {
	t.Helper()
	s := &shelf{}
	s.dir.Store(&dir)
	s.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name, ok := strings.CutPrefix(r.URL.Path, at)
		if !ok {
			http.NotFound(w, r)
			return
		}
		for _, h := range headers {
			w.Header().Set(h[0], h[1])
		}
		w.Header().Set("Cache-Control", "no-cache")
		if name == "" || strings.HasSuffix(name, "/") {
			name += "index.html"
		}
		if gate := s.gate.Load(); gate != nil && !(*gate)(r.Context(), name) {
			http.NotFound(w, r)
			return
		}
		http.ServeFileFS(w, r, os.DirFS(*s.dir.Load()), name)
	}))
	t.Cleanup(s.Close)
	s.root = s.URL + at
	return s
}

// stop ends the server as a lost signal would: nothing answers any more.
func (s *shelf) stop() {
	s.CloseClientConnections()
	s.Close()
}
