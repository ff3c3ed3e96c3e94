// Package photo reads photographs within bounds: the check that a picture is
// whole and the builder that makes it smaller agree on what they take.
package photo

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds of picture that a sheet may show
	_ "image/png"

	"golang.org/x/sync/semaphore"
)

// Bounds of a photograph. A phone's usual picture has 12 megapixels and 5 MB.
const (
	// MostBytes is the largest file.
	MostBytes = 30 << 20
	// MostPixels is how many pixels are decoded at once, of one picture or of
	// several together: at most 600 MB of memory while they are.
	MostPixels = 32_000_000
	// MostSide is the longest side, in pixels.
	MostSide = 20_000
)

// A Photo is a JPEG or PNG file whose header has been read.
type Photo struct {
	// Kind is "jpeg" or "png".
	Kind string
	// Width and Height are in pixels, as the picture is stored.
	Width, Height int
	data          []byte
}

// Read reads a picture's header. The error says which bound it breaks, or that
// it is no picture.
func Read(data []byte) (*Photo, error) {
	if len(data) == 0 {
		return nil, errors.New("the file is empty")
	}
	if len(data) > MostBytes {
		return nil, TooLarge(int64(len(data)))
	}
	config, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, errors.New("this is not a JPEG or PNG picture")
	}
	w, h := config.Width, config.Height
	if w < 1 || h < 1 || w > MostSide || h > MostSide || w*h > MostPixels {
		return nil, fmt.Errorf("the picture has %d x %d pixels; at most %d megapixels are taken, and %d pixels a side", w, h, MostPixels/1_000_000, MostSide)
	}
	return &Photo{Kind: kind, Width: w, Height: h, data: data}, nil
}

// TooLarge says that a file has more bytes than a photograph may.
func TooLarge(bytes int64) error {
	return fmt.Errorf("the file has %d MB; at most %d MB are taken", (bytes+1<<20-1)>>20, MostBytes>>20)
}

// Decode gives the whole picture.
func (p *Photo) Decode() (image.Image, error) {
	picture, _, err := image.Decode(bytes.NewReader(p.data))
	if err != nil {
		return nil, errors.New("the picture is broken or cut off")
	}
	return picture, nil
}

// A Room lets in as many pictures at once as have MostPixels together, so that
// a folder of large ones does not fill the memory. Goroutines may share it.
type Room struct{ pixels *semaphore.Weighted }

// NewRoom makes an empty room.
func NewRoom() *Room { return &Room{semaphore.NewWeighted(MostPixels)} }

// Enter waits until there is room for a picture; leave gives it back.
func (r *Room) Enter(p *Photo) (leave func()) {
	n := int64(p.Width) * int64(p.Height)
	_ = r.pixels.Acquire(context.Background(), n) // fails only when the context ends
	return func() { r.pixels.Release(n) }
}
