package publish

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path"
	"path/filepath"
	"slices"

	"github.com/andybalholm/brotli"
)

// The levels of packing. A page is packed in a millisecond, the core for
// seconds, since every phone fetches it and it seldom changes.
const (
	quickBrotli = 5
	smallBrotli = brotli.BestCompression
	quickGzip   = gzip.DefaultCompression
)

// worthSmall is how long a file is for which the smallest packing is looked
// for in the cache.
const worthSmall = 256 << 10

// Packed is data in a coding of HTTP, "br" or "gzip", nil where it is no
// smaller so. It takes what is at hand: the smallest packing of a large file
// where an earlier build has kept it, else a quick one.
func Packed(data []byte, coding string) []byte {
	var packed []byte
	switch coding {
	case "br":
		if len(data) >= worthSmall {
			packed, _ = os.ReadFile(cachedName(data)) // not there: packed quickly
		}
		if packed == nil {
			packed = brotlied(data, quickBrotli)
		}
	case "gzip":
		packed, _ = gzipped(data, quickGzip) // a buffer takes everything
	}
	if packed == nil || len(packed) >= len(data) {
		return nil
	}
	return packed
}

func brotlied(data []byte, level int) []byte {
	var packed bytes.Buffer
	w := brotli.NewWriterLevel(&packed, level)
	_, _ = w.Write(data) // a buffer takes everything
	_ = w.Close()
	return packed.Bytes()
}

// smallest is the smallest packing, made once and kept in the user's cache by
// the hash of the content.
func smallest(data []byte) ([]byte, error) {
	name := cachedName(data)
	if packed, err := os.ReadFile(name); err == nil {
		return packed, nil
	}
	packed := brotlied(data, smallBrotli)
	return packed, Keep(filepath.Dir(name), name, packed)
}

func cachedName(data []byte) string {
	sum := sha256.Sum256(data)
	return filepath.Join(CacheFolder(), "packed-"+hex.EncodeToString(sum[:16])+".br")
}

// packable are the endings of files that packing makes smaller; pictures are
// packed already.
var packable = []string{".html", ".css", ".js", ".wasm", ".bin", ".svg", ".json", ".webmanifest", ".txt"}

// A Putter takes the files of a site.
type Putter interface {
	Put(name string, data []byte) error
}

// A compressing putter writes packed copies beside files.
type compressing struct{ to Putter }

// Compressing writes, beside each file that packing makes smaller, a .br and a
// .gz copy, as web servers look for them.
func Compressing(to Putter) Putter { return compressing{to} }

// seldomChanges reports whether a file is one that every phone fetches and few
// editions change: the core, and the styles and scripts of every page. What
// holds the core or the index as a script is packed inside already.
func seldomChanges(name string, data []byte) bool {
	ending := path.Ext(name)
	return ending == ".wasm" || (ending == ".css" || ending == ".js") && path.Dir(name) == "assets" && len(data) < worthSmall
}

// Put writes a file and its packed copies.
func (c compressing) Put(name string, data []byte) error {
	if err := c.to.Put(name, data); err != nil {
		return err
	}
	if !slices.Contains(packable, path.Ext(name)) {
		return nil
	}
	pack := func(data []byte) ([]byte, error) { return brotlied(data, quickBrotli), nil }
	if seldomChanges(name, data) {
		pack = smallest
	}
	br, err := pack(data)
	if err != nil {
		return err
	}
	gz, err := gzipped(data, gzip.BestCompression)
	if err != nil {
		return err
	}
	for _, packed := range []struct {
		ending string
		data   []byte
	}{{".br", br}, {".gz", gz}} {
		if len(packed.data) >= len(data) {
			continue
		}
		if err := c.to.Put(name+packed.ending, packed.data); err != nil {
			return err
		}
	}
	return nil
}
