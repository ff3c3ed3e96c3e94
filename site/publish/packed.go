package publish

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
)

// AsScript packs bytes into a classic script, gzip in base64, for pages opened
// from a folder, where browsers refuse a fetch.
func AsScript(data []byte) ([]byte, error) {
	packed, err := gzipped(data, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	out := make([]byte, 0, len(packed)*4/3+64)
	out = append(out, `window.bookData="`...)
	out = base64.StdEncoding.AppendEncode(out, packed)
	return append(out, `";`...), nil
}

// gzipped packs bytes with gzip. The header names no file and no time, so
// that the same bytes always give the same.
func gzipped(data []byte, level int) ([]byte, error) {
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, level)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return packed.Bytes(), nil
}
