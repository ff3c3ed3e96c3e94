package publish

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
)

// AsScript packs bytes into a classic script, gzip in base64, for pages opened
// from a folder, where browsers refuse a fetch.
func AsScript(data []byte) ([]byte, error) {
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	out := make([]byte, 0, packed.Len()*4/3+64)
	out = append(out, `window.bookData="`...)
	out = base64.StdEncoding.AppendEncode(out, packed.Bytes())
	return append(out, `";`...), nil
}
