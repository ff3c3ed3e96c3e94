package serve

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"path"
	"strings"

	"baybook/site"
)

// own is the path of everything that the server adds. No sheet can stand
// there, since no book reads a folder whose name starts with a dot.
const own = "/.baybook/"

//go:embed live.js live.css withdraw.js
var ownFiles embed.FS

// types are the kinds of file that a site has.
var types = map[string]string{
	".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
	".wasm": "application/wasm", ".bin": "application/octet-stream", ".json": "application/json",
	".webmanifest": "application/manifest+json", ".svg": "image/svg+xml", ".png": "image/png",
	".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".txt": "text/plain; charset=utf-8",
	".pdf": "application/pdf", ".csv": "text/csv; charset=utf-8", ".yaml": "application/yaml", ".yml": "application/yaml",
}

// newRoutes says who answers what.
func (d *devServer) newRoutes() *http.ServeMux {
	mux := http.NewServeMux()
	for _, name := range []string{"live.js", "live.css"} {
		mux.Handle(own+name, ownFile(name))
	}
	mux.HandleFunc(own+"events", d.stream)
	mux.HandleFunc(own+"findings", d.findings)
	// A worker kept from another site on this address would show its old pages
	// for ever; this one takes itself away.
	mux.Handle("/worker.js", ownFile("withdraw.js"))
	mux.HandleFunc("/", d.page)
	return mux
}

// ownFile answers with one of the server's own files.
func ownFile(name string) http.Handler {
	data, err := ownFiles.ReadFile(name)
	if err != nil {
		panic(err) // it is compiled in
	}
	file := site.FileOf(data)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { send(w, r, name, file) })
}

// pageHeader names the content of a page, for the script in it to see whether
// it is still the page that is served.
const pageHeader = "Book-Page"

// page answers with a file of the site.
func (d *devServer) page(w http.ResponseWriter, r *http.Request) {
	now := d.now()
	if now.edition == nil {
		d.trouble(w, http.StatusServiceUnavailable)
		return
	}
	name, ok := nameOf(r.URL.Path)
	if !ok {
		d.missing(w, r)
		return
	}
	file, err := now.edition.Open(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		d.missing(w, r)
	case err != nil:
		d.failed(w, err)
	case path.Ext(name) == ".html":
		w.Header().Set(pageHeader, file.Sum())
		send(w, r, name, d.withScript(name, file))
	default:
		send(w, r, name, file)
	}
}

// nameOf turns a path of a request into the name of a file; false for one that
// no link of the site leads to.
func nameOf(at string) (string, bool) {
	if at == "/" {
		return "index.html", true
	}
	name := strings.TrimPrefix(at, "/")
	ok := name != "" && path.Clean(name) == name && name[0] != '/' && name != ".." && !strings.HasPrefix(name, "../") &&
		!strings.ContainsAny(name, "\\\x00")
	return name, ok
}

// shownPage is a page with the server's script in it.
type shownPage struct{ plain, scripted *site.File }

// withScript adds the script that reloads, and tells the theme that nothing of
// this book is kept. The published page stays as it is.
func (d *devServer) withScript(name string, plain *site.File) *site.File {
	d.mu.RLock()
	before := d.shown[name]
	d.mu.RUnlock()
	if before.plain == plain {
		return before.scripted
	}
	page := bytes.Replace(plain.Data(), []byte("</head>"), []byte(liveScript(plain.Sum())+"</head>"), 1)
	scripted := site.FileOf(page)
	d.mu.Lock()
	d.shown[name] = shownPage{plain, scripted}
	d.mu.Unlock()
	return scripted
}

func liveScript(sum string) string {
	return `<meta name="being-written" content="yes"><script defer src="` + own + `live.js" data-sum="` + sum + `"></script>`
}

// send answers with a file: packed where the reader takes it so, or not at all
// where the reader has it.
func send(w http.ResponseWriter, r *http.Request, name string, file *site.File) {
	h := w.Header()
	kind := types[path.Ext(name)]
	if kind == "" {
		kind = "application/octet-stream"
	}
	h.Set("Content-Type", kind)
	h.Set("Cache-Control", "no-cache")
	h.Set("Vary", "Accept-Encoding")
	body, tag := file.Data(), file.Sum()[:32]
	if !strings.HasPrefix(kind, "image/") || kind == types[".svg"] {
		if coding := chosen(r.Header.Get("Accept-Encoding")); coding != "" {
			if packed := file.Packed(coding); packed != nil {
				body, tag = packed, tag+"-"+coding
				h.Set("Content-Encoding", coding)
			}
		}
	}
	h.Set("ETag", `"`+tag+`"`)
	if has(r.Header.Get("If-None-Match"), tag) {
		h.Del("Content-Type")
		h.Del("Content-Encoding")
		w.WriteHeader(http.StatusNotModified)
		return
	}
	h.Set("Content-Length", fmt.Sprint(len(body)))
	w.WriteHeader(http.StatusOK)
	if r.Method == http.MethodGet {
		_, _ = w.Write(body) // a reader who has gone needs no answer
	}
}

// has reports whether a list of entity tags (RFC 9110) holds one, compared
// weakly.
func has(list, tag string) bool {
	for t := range strings.SplitSeq(list, ",") {
		t = strings.TrimPrefix(strings.TrimSpace(t), "W/")
		if t == "*" || t == `"`+tag+`"` {
			return true
		}
	}
	return false
}

// codings are those that files are packed in, the smaller first.
var codings = []string{"br", "gzip"}

// chosen is the coding for an Accept-Encoding header (RFC 9110), "" for none.
func chosen(accepts string) string {
	for _, coding := range codings {
		for item := range strings.SplitSeq(accepts, ",") {
			name, weight, _ := strings.Cut(strings.TrimSpace(item), ";")
			if strings.EqualFold(strings.TrimSpace(name), coding) && !isZero(weight) {
				return coding
			}
		}
	}
	return ""
}

// isZero reports whether a weight parameter refuses: q=0, q=0.0.
func isZero(weight string) bool {
	value, ok := strings.CutPrefix(strings.ToLower(strings.ReplaceAll(weight, " ", "")), "q=")
	return ok && strings.Trim(value, "0.") == ""
}
