package photo_test

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"baybook/site/photo"
)

// pngOf is the head of a PNG file (ISO/IEC 15948) that claims a size.
func pngOf(w, h uint32) []byte {
	head := binary.BigEndian.AppendUint32([]byte("IHDR"), w)
	head = append(binary.BigEndian.AppendUint32(head, h), 8, 2, 0, 0, 0)
	out := append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d"), head...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(head))
}

func TestRefusedPhotos(t *testing.T) {
	for name, c := range map[string]struct {
		data []byte
		says string
	}{
		"empty":          {nil, "empty"},
		"text":           {[]byte("the lead on the bench"), "not a JPEG or PNG"},
		"80 megapixels":  {pngOf(10_000, 8_000), "10000 x 8000"},
		"a long strip":   {pngOf(30_000, 10), "a side"},
		"no width":       {pngOf(0, 10), ""},
		"too many bytes": {make([]byte, photo.MostBytes+1), "31 MB"},
	} {
		if _, err := photo.Read(c.data); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", name, err, c.says)
		}
	}
}

func TestCutOffPhotos(t *testing.T) {
	var asPNG, asJPEG bytes.Buffer
	picture := image.NewGray(image.Rect(0, 0, 64, 48))
	if err := png.Encode(&asPNG, picture); err != nil {
		t.Fatal(err)
	}
	if err := jpeg.Encode(&asJPEG, picture, nil); err != nil {
		t.Fatal(err)
	}
	for kind, data := range map[string][]byte{"png": asPNG.Bytes(), "jpeg": asJPEG.Bytes()} {
		whole, err := photo.Read(data)
		if err != nil || whole.Kind != kind || whole.Width != 64 || whole.Height != 48 {
			t.Fatalf("%s: %+v, %v", kind, whole, err)
		}
		if _, err := whole.Decode(); err != nil {
			t.Errorf("%s: %v", kind, err)
		}
		cut, err := photo.Read(data[:len(data)-30])
		if err != nil {
			t.Fatal(err)
		}
		if _, err := cut.Decode(); err == nil {
			t.Errorf("%s: a picture without its end is taken", kind)
		}
	}
}
