package publish

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"io/fs"
	"slices"
	"sync"

	"github.com/evanw/esbuild/pkg/api"
)

// An Edition is the files of one site and their hashes: what a reader's
// device keeps, whole, to read without signal.
type Edition struct {
	mu    sync.Mutex
	files [][2]string
}

// Add notes a file. It may be called from many goroutines.
func (e *Edition) Add(name string, data []byte) {
	sum := sha256.Sum256(data)
	e.mu.Lock()
	defer e.mu.Unlock()
	e.files = append(e.files, [2]string{name, hex.EncodeToString(sum[:])})
}

// Worker makes the service worker of the edition: the theme's worker behind
// the edition's name and list of files.
func (e *Edition) Worker(theme fs.FS) ([]byte, error) {
	code, err := bundleOne(theme, "worker/worker.ts", api.FormatIIFE)
	if err != nil {
		return nil, err
	}
	slices.SortFunc(e.files, func(a, b [2]string) int { return cmp.Compare(a[0], b[0]) })
	files, err := json.Marshal(e.files)
	if err != nil {
		return nil, err
	}
	name := sha256.Sum256(append(files, code...))
	head := `self.edition="` + hex.EncodeToString(name[:8]) + `";self.files=` + string(files) + ";\n"
	return append([]byte(head), code...), nil
}

// Manifest makes the web app manifest, which lets a phone install the book.
func Manifest(book string) ([]byte, error) {
	type icon struct {
		Src     string `json:"src"`
		Sizes   string `json:"sizes"`
		Type    string `json:"type"`
		Purpose string `json:"purpose"`
	}
	return json.Marshal(struct {
		Name       string `json:"name"`
		ShortName  string `json:"short_name"`
		StartURL   string `json:"start_url"`
		Scope      string `json:"scope"`
		Display    string `json:"display"`
		Background string `json:"background_color"`
		Theme      string `json:"theme_color"`
		Icons      []icon `json:"icons"`
	}{book, book, "index.html", "./", "standalone", "#ffffff", "#ffffff", []icon{
		{"icons/book.svg", "any", "image/svg+xml", "any"},
		{"icons/book-mask.svg", "any", "image/svg+xml", "maskable"},
		{"icons/book-192.png", "192x192", "image/png", "any"},
		{"icons/book-512.png", "512x512", "image/png", "any"},
	}})
}
