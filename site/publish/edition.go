package publish

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"io/fs"
	"slices"

	"github.com/evanw/esbuild/pkg/api"
)

// Worker makes the service worker of an edition: the theme's worker behind the
// edition's name and the list of what a reader's device keeps, whole, to read
// without signal. Each of files is a name and its SHA-256 hash in hexadecimal.
func Worker(theme fs.FS, files [][2]string) ([]byte, error) {
	code, err := bundleOne(theme, "worker/worker.ts", api.FormatIIFE)
	if err != nil {
		return nil, err
	}
	slices.SortFunc(files, func(a, b [2]string) int { return cmp.Compare(a[0], b[0]) })
	list, err := json.Marshal(files)
	if err != nil {
		return nil, err
	}
	name := sha256.Sum256(append(list, code...))
	head := `self.edition="` + hex.EncodeToString(name[:8]) + `";self.files=` + string(list) + ";\n"
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
		{IconName(192), "192x192", "image/png", "any"},
		{IconName(512), "512x512", "image/png", "any"},
	}})
}
