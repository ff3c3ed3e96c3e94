package browsertest

import (
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

const dpi = 300

// A template is cut along its print: on paper its check bar has 100 mm and its
// edge the radius that was asked for, within half a percent, all the way
// round.
func TestTemplateIsTrueToSize(t *testing.T) {
	t.Parallel()
	const outer = 190.0 // mm, the calculator's own example and the widest that A4 takes
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	p.open(root + "calculators/adapter-ring.html#calculator-1?outer=190mm&inner=142mm&screw_circle=156mm")
	p.wait(`document.querySelector("[data-output=chord]").textContent === "110.3 mm"`)
	for _, paper := range papers {
		page := templatePage(t, printed(p, paper.width, paper.height))
		bar, at := checkBar(page)
		if math.Abs(bar-100) > 0.5 {
			t.Errorf("on %s the bar of 100 mm is %.2f mm long", paper.name, bar)
			continue
		}
		// As the drawing lays them out: the bar stands under the ring, by the
		// height of a letter more than the ring's margins.
		size := (outer + 20) * calc.TextSize / 320
		x, y := at.x, at.y-outer/2-10-size
		for degrees := 5; degrees < 360; degrees += 10 {
			sin, cos := math.Sincos(float64(degrees) * math.Pi / 180)
			const within = outer / 2 * 0.005
			if !edge(page, x+outer/2*cos, y+outer/2*sin, within) {
				t.Errorf("on %s the ring has no edge at %d°, %.0f mm from its centre", paper.name, degrees, outer/2)
			}
			if edge(page, x+(outer/2-4)*cos, y+(outer/2-4)*sin, within) {
				t.Errorf("on %s there is an edge at %d° where there should be none", paper.name, degrees)
			}
		}
	}
	// In a sheet there is no room for it, and a smaller one would be cut wrong.
	p.open(root + "speakers/fit-adapter.html")
	for i, page := range pagesOf(t, printed(p, 210, 297)) {
		if strings.Contains(page.text(), "100 mm: check") {
			t.Errorf("page %d of the sheet shows a template", i+1)
		}
	}
}

// templatePage is a picture of the printed page that has the check bar.
func templatePage(t *testing.T, file string) *image.Gray {
	t.Helper()
	for n, page := range pagesOf(t, file) {
		if !strings.Contains(page.text(), "100 mm: check") {
			continue
		}
		base := filepath.Join(t.TempDir(), "page")
		number := strconv.Itoa(n + 1)
		poppler(t, "pdftoppm", "-r", strconv.Itoa(dpi), "-gray", "-png", "-singlefile", "-f", number, "-l", number, file, base)
		f, err := os.Open(base + ".png")
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		picture, err := png.Decode(f)
		if err != nil {
			t.Fatal(err)
		}
		g := image.NewGray(picture.Bounds())
		draw.Draw(g, g.Rect, picture, g.Rect.Min, draw.Src)
		return g
	}
	t.Fatal("no printed page has a check bar")
	return nil
}

func dark(g *image.Gray, x, y int) bool {
	return image.Pt(x, y).In(g.Rect) && g.GrayAt(x, y).Y < 128
}

// place is a place on paper, in mm.
type place struct{ x, y float64 }

// checkBar finds the line across a page that has eleven marks on it, and gives
// its length and its middle in mm. Of several it is the one nearest to 100 mm.
func checkBar(g *image.Gray) (length float64, middle place) {
	length = math.Inf(1)
	for y := 20; y < g.Rect.Dy(); y++ {
		for x := 0; x < g.Rect.Dx(); x++ {
			from := x
			for dark(g, x, y) {
				x++
			}
			run := x - from
			if run < 400 || !marked(g, from, y, run) {
				continue
			}
			if mm := float64(run) / dpi * mmPerInch; math.Abs(mm-100) < math.Abs(length-100) {
				length, middle = mm, place{(float64(from) + float64(run)/2) / dpi * mmPerInch, float64(y) / dpi * mmPerInch}
			}
		}
	}
	return length, middle
}

// marked reports whether a run has a mark at each tenth, and none between.
func marked(g *image.Gray, from, y, run int) bool {
	const above = 12 // pixels: more than the line is thick, less than a mark is high
	near := func(x int) bool {
		for d := -4; d <= 4; d++ {
			if dark(g, x+d, y-above) {
				return true
			}
		}
		return false
	}
	for i := range 11 {
		if !near(from + run*i/10) {
			return false
		}
		if i < 10 && near(from+run*(2*i+1)/20) {
			return false
		}
	}
	return true
}

// edge reports whether a line passes a place within the given distance in mm.
func edge(g *image.Gray, x, y, within float64) bool {
	reach := int(math.Ceil(within / mmPerInch * dpi))
	cx, cy := int(x/mmPerInch*dpi), int(y/mmPerInch*dpi)
	for dy := -reach; dy <= reach; dy++ {
		for dx := -reach; dx <= reach; dx++ {
			if dark(g, cx+dx, cy+dy) {
				return true
			}
		}
	}
	return false
}
