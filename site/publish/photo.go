package publish

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"

	"baybook/site/photo"

	"golang.org/x/image/draw"
)

// widestPhoto is how many pixels wide a photograph is published: sharp on a
// phone and on paper at the width of a page, and no heavier.
const widestPhoto = 1200

// Photo prepares a JPEG or PNG photograph: made smaller where it is wider than
// a page needs, turned upright by its camera's note, and written again, so
// that place, time and camera that the file told of are gone. room bounds how
// many are worked on at once.
func Photo(data []byte, room *photo.Room) ([]byte, error) {
	p, err := photo.Read(data)
	if err != nil {
		return nil, err
	}
	defer room.Enter(p)()
	picture, err := p.Decode()
	if err != nil {
		return nil, err
	}
	held := 1
	if p.Kind == "jpeg" {
		held = orientation(data)
	}
	picture = upright(smaller(picture, turned(held)), held)
	var out bytes.Buffer
	if p.Kind == "png" {
		err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, picture)
	} else {
		err = jpeg.Encode(&out, picture, &jpeg.Options{Quality: 80})
	}
	return out.Bytes(), err
}

// smaller scales a picture down to the widest that is published; lying is true
// for one whose height will be its width.
func smaller(picture image.Image, lying bool) image.Image {
	size := picture.Bounds().Size()
	w, h := size.X, size.Y
	wide := w
	if lying {
		wide = h
	}
	if wide <= widestPhoto {
		return picture
	}
	scaled := image.NewRGBA(image.Rect(0, 0, max(1, w*widestPhoto/wide), max(1, h*widestPhoto/wide)))
	draw.CatmullRom.Scale(scaled, scaled.Bounds(), picture, picture.Bounds(), draw.Src, nil)
	return scaled
}

// turned reports an EXIF orientation by which height and width change places.
func turned(orientation int) bool { return orientation >= 5 && orientation <= 8 }

// upright turns and mirrors a picture by its EXIF orientation, 1 to 8.
func upright(picture image.Image, orientation int) image.Image {
	if orientation < 2 || orientation > 8 {
		return picture
	}
	size := picture.Bounds().Size()
	w, h := size.X, size.Y
	if turned(orientation) {
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
