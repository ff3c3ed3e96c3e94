package publish

import (
	"bytes"
	"fmt"
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

// IconSource is the drawing in the theme that the icons are made from.
const IconSource = "icons/book.svg"

// iconGrid is the width and height of the drawing in its own units.
const iconGrid = 64

// Icon turns the theme's icon into a PNG that is size pixels wide and high, for
// systems that take no SVG. svg is the drawing: paths of straight lines on a
// grid of 64 by 64, on white. It reads as much of SVG as such a drawing needs
// and refuses anything else.
func Icon(svg []byte, size int) ([]byte, error) {
	paths, err := iconPaths(svg)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", IconSource, err)
	}
	picture := image.NewRGBA(image.Rect(0, 0, size, size))
	draw.Draw(picture, picture.Bounds(), image.White, image.Point{}, draw.Src)
	scale := float32(size) / iconGrid
	for _, p := range paths {
		if p.fill != nil {
			r := vector.NewRasterizer(size, size)
			for _, line := range p.lines {
				r.MoveTo(scale*line[0][0], scale*line[0][1])
				for _, to := range line[1:] {
					r.LineTo(scale*to[0], scale*to[1])
				}
				r.ClosePath()
			}
			r.Draw(picture, picture.Bounds(), image.NewUniform(p.fill), image.Point{})
		}
		if p.stroke != nil {
			r := vector.NewRasterizer(size, size)
			for _, line := range p.lines {
				for i := 1; i < len(line); i++ {
					stroke(r, scale, line[i-1], line[i], p.width)
				}
			}
			r.Draw(picture, picture.Bounds(), image.NewUniform(p.stroke), image.Point{})
		}
	}
	var out bytes.Buffer
	err = png.Encode(&out, picture)
	return out.Bytes(), err
}

// An iconPath is one path of the drawing: its lines, each a list of points in
// the drawing's units, and how they are painted; nil means not at all.
type iconPath struct {
	lines        [][][2]float32
	fill, stroke color.Color
	width        float32 // of the stroke
}

// stroke adds a straight stroke with square ends. All strokes run the same
// way round, so that where two overlap they add up and do not cancel.
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
