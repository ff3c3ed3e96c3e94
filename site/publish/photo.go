package publish

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"

	"golang.org/x/image/draw"
)

// widestPhoto is how many pixels wide a photograph is published: sharp on a
// phone and on paper at the width of a page, and no heavier.
const widestPhoto = 1200

// mostPixels is the largest photograph that is decoded; a file that claims
// more would fill the memory before it is found to lie.
const mostPixels = 80_000_000

// Photo prepares a JPEG or PNG photograph: turned upright by its camera's
// note, made smaller where it is wider than a page needs, and written anew, so
// that place, time and camera that the file told of are gone.
func Photo(data []byte) ([]byte, error) {
	config, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("this is not a JPEG or PNG picture: %w", err)
	}
	if config.Width*config.Height > mostPixels {
		return nil, fmt.Errorf("the picture has %d x %d pixels; make it smaller than %d in all", config.Width, config.Height, mostPixels)
	}
	picture, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("the picture cannot be read: %w", err)
	}
	if kind == "jpeg" {
		picture = upright(picture, orientation(data))
	}
	picture = smaller(picture)
	var out bytes.Buffer
	if kind == "png" {
		err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, picture)
	} else {
		err = jpeg.Encode(&out, picture, &jpeg.Options{Quality: 80})
	}
	return out.Bytes(), err
}

// smaller scales a picture down to the widest that is published.
func smaller(picture image.Image) image.Image {
	size := picture.Bounds().Size()
	if size.X <= widestPhoto {
		return picture
	}
	scaled := image.NewRGBA(image.Rect(0, 0, widestPhoto, max(1, size.Y*widestPhoto/size.X)))
	draw.CatmullRom.Scale(scaled, scaled.Bounds(), picture, picture.Bounds(), draw.Src, nil)
	return scaled
}

// upright turns and mirrors a picture by its EXIF orientation, 1 to 8.
func upright(picture image.Image, orientation int) image.Image {
	if orientation < 2 || orientation > 8 {
		return picture
	}
	size := picture.Bounds().Size()
	w, h := size.X, size.Y
	turned := orientation >= 5
	if turned {
		w, h = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	at := picture.Bounds().Min
	for y := range h {
		for x := range w {
			sx, sy := source(orientation, x, y, w, h)
			out.Set(x, y, picture.At(at.X+sx, at.Y+sy))
		}
	}
	return out
}

// source is the place in the stored picture of a place in the upright one of
// size w × h, by the table of EXIF tag 0x0112 (orientation).
func source(orientation, x, y, w, h int) (int, int) {
	switch orientation {
	case 2:
		return w - 1 - x, y
	case 3:
		return w - 1 - x, h - 1 - y
	case 4:
		return x, h - 1 - y
	case 5:
		return y, x
	case 6:
		return y, w - 1 - x
	case 7:
		return h - 1 - y, w - 1 - x
	case 8:
		return h - 1 - y, x
	}
	return x, y
}
