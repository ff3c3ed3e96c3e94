package publish

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"strconv"

	"golang.org/x/image/vector"
)

// IconSizes are the sizes, in pixels each way, of which a phone asks for one
// when the book is installed.
var IconSizes = []int{192, 512}

// IconName is where the icon of a size stands in the site.
func IconName(size int) string { return "icons/book-" + strconv.Itoa(size) + ".png" }

// Icon draws the book's icon as a PNG of so many pixels each way, for
// systems that take no SVG: a sheet with its border, a reading that jumps,
// and the title block, as icons/book.svg has them.
func Icon(size int) ([]byte, error) {
	picture := image.NewRGBA(image.Rect(0, 0, size, size))
	draw.Draw(picture, picture.Bounds(), image.White, image.Point{}, draw.Src)
	r := vector.NewRasterizer(size, size)
	scale := float32(size) / 64
	frame(r, scale, 4, 4, 56, 56, 4)
	frame(r, scale, 12, 44, 40, 10, 3)
	stroke(r, scale, [2]float32{32, 44}, [2]float32{32, 54}, 3)
	wave := [][2]float32{{12, 33}, {23, 33}, {27, 25}, {33, 41}, {38, 29}, {41, 33}, {52, 33}}
	for i := 1; i < len(wave); i++ {
		stroke(r, scale, wave[i-1], wave[i], 3.5)
	}
	r.Draw(picture, picture.Bounds(), image.NewUniform(color.Gray{0x11}), image.Point{})
	var out bytes.Buffer
	err := png.Encode(&out, picture)
	return out.Bytes(), err
}

// frame adds the four strokes of a rectangle.
func frame(r *vector.Rasterizer, scale, x, y, w, h, thick float32) {
	corners := [][2]float32{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
	for i, a := range corners {
		stroke(r, scale, a, corners[(i+1)%4], thick)
	}
}

// stroke adds a straight stroke with square ends. All strokes run the same
// way round, so that where two lie over each other they add up, not cancel.
func stroke(r *vector.Rasterizer, scale float32, a, b [2]float32, thick float32) {
	length := float32(math.Hypot(float64(b[0]-a[0]), float64(b[1]-a[1])))
	if length == 0 {
		return
	}
	ux, uy := (b[0]-a[0])/length*thick/2, (b[1]-a[1])/length*thick/2
	at := func(p [2]float32, along, across float32) (float32, float32) {
		return scale * (p[0] + along*ux - across*uy), scale * (p[1] + along*uy + across*ux)
	}
	x, y := at(a, -1, -1)
	r.MoveTo(x, y)
	for _, c := range []struct {
		p             [2]float32
		along, across float32
	}{{b, 1, -1}, {b, 1, 1}, {a, -1, 1}} {
		x, y = at(c.p, c.along, c.across)
		r.LineTo(x, y)
	}
	r.ClosePath()
}
