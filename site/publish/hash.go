package publish

import (
	"crypto/sha256"
	"encoding/hex"
	"path"
	"strings"
)

// Hashed puts a hash of the content into a file's name, so that a page never
// meets another edition's script, style, core or index.
func Hashed(name string, data []byte) string {
	sum := sha256.Sum256(data)
	ext := path.Ext(name)
	return strings.TrimSuffix(name, ext) + "." + hex.EncodeToString(sum[:6]) + ext
}
