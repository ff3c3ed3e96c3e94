package publish

import (
	"bytes"
	"image/color"
	"image/png"
	"io/fs"
	"strings"
	"testing"

	"baybook/theme"
)

// TestIconShowsTheDrawing looks at pixels of the theme's icon where its paths,
// read by eye, have ink and where they have none.
func TestIconShowsTheDrawing(t *testing.T) {
	drawing, err := fs.ReadFile(theme.Files, IconSource)
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range IconSizes {
		data, err := Icon(drawing, size)
		if err != nil {
			t.Fatal(err)
		}
		picture, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if b := picture.Bounds(); b.Dx() != size || b.Dy() != size {
			t.Errorf("%d pixels: the picture is %v", size, b)
		}
		for _, p := range []struct {
			x, y float64 // in the units of the drawing
			ink  bool
		}{
			{4, 32, true}, {60, 32, true}, {32, 4, true}, // the border
			{12, 50, true}, {32, 49, true}, // the title block
			{16, 33, true}, {33, 41, true}, // the wave
			{1, 1, false}, {32, 15, false}, {20, 49, false}, {45, 25, false},
		} {
			got := color.GrayModel.Convert(picture.At(int(p.x*float64(size)/64), int(p.y*float64(size)/64))).(color.Gray).Y
			if got < 0x80 != p.ink {
				t.Errorf("%d pixels: at %g, %g of the drawing the gray is %#x, want ink %t", size, p.x, p.y, got, p.ink)
			}
		}
	}
}

func TestIconRefusesWhatItCannotDraw(t *testing.T) {
	for name, c := range map[string]struct{ svg, want string }{
		"a circle":          {`<svg><circle r="4"/></svg>`, "holds paths"},
		"a curve":           {`<svg><path d="M0 0c1 1 2 2 3 3"/></svg>`, "use M, L, H, V and Z"},
		"no move":           {`<svg><path d="l1 1"/></svg>`, "begin with M"},
		"half a point":      {`<svg><path d="M1 1l4"/></svg>`, "middle of a point"},
		"numbers behind z":  {`<svg><path d="M1 1h4z5"/></svg>`, "use M, L, H, V and Z"},
		"a named color":     {`<svg><path d="M1 1h4" stroke="red"/></svg>`, "no color of three digits"},
		"another attribute": {`<svg><path d="M1 1h4" opacity=".5"/></svg>`, "opacity"},
		"no XML":            {`<svg><path`, "XML"},
	} {
		if _, err := Icon([]byte(c.svg), 64); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: the error is %v, want one with %q", name, err, c.want)
		}
	}
}
