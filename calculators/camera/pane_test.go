package camera_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"baybook/calculators/camera"
)

// posts are the cylinders' places, written again: 20, 10 and 1 ft back, 5 ft
// to the sides.
var posts = [7]camera.Post{{X: -1.524, Y: 6.096}, {Y: 6.096}, {X: 1.524, Y: 6.096}, {X: -1.524, Y: 3.048}, {X: 1.524, Y: 3.048},
	{X: -1.524, Y: 0.305}, {X: 1.524, Y: 0.305}}

// touching finds the two places where level lines from the lens touch a post,
// by closing in on the circle's point whose radius is square to the sight.
func touching(c camera.Camera, p camera.Post) [2][2]float64 {
	var both [2][2]float64
	towards := math.Atan2(c.Y-p.Y, c.X-p.X)
	for i, sign := range []float64{1, -1} {
		low, high := 0.0, math.Pi/2
		for range 80 {
			a := towards + sign*(low+high)/2
			x, y := p.X+0.15*math.Cos(a), p.Y+0.15*math.Sin(a)
			if (c.X-x)*math.Cos(a)+(c.Y-y)*math.Sin(a) > 0 {
				low = (low + high) / 2
			} else {
				high = (low + high) / 2
			}
			both[i] = [2]float64{x, y}
		}
	}
	return both
}

// byColumns measures the share of a post's rectangle that is seen, and the
// widest strip seen at full height, column by column: each column's seen
// lengths by looking at many heights and halving between unlike ones.
func byColumns(c camera.Camera, p camera.Post, columns, heights int) (share, strip float64) {
	edge := touching(c, p)
	wide := math.Hypot(edge[0][0]-edge[1][0], edge[0][1]-edge[1][1])
	run := 0.0
	for i := range columns {
		s := (float64(i) + 0.5) / float64(columns)
		x, y := edge[0][0]+s*(edge[1][0]-edge[0][0]), edge[0][1]+s*(edge[1][1]-edge[0][1])
		length, before := 0.0, seen(c, x, y, 0)
		whole := before
		for k := range heights {
			low, high := 0.8*float64(k)/float64(heights), 0.8*float64(k+1)/float64(heights)
			now := seen(c, x, y, high)
			whole = whole && now
			switch {
			case now && before:
				length += high - low
			case now != before:
				from, to := low, high
				for range 40 {
					if middle := (from + to) / 2; seen(c, x, y, middle) == before {
						from = middle
					} else {
						to = middle
					}
				}
				if now {
					length += high - to
				} else {
					length += from - low
				}
			}
			before = now
		}
		share += length / 0.8 / float64(columns)
		if run += wide / float64(columns); !whole {
			run = 0
		}
		strip = math.Max(strip, run)
	}
	return share, strip
}

// TestSeenByColumns holds the shares, found by following the sides of the
// picture round each post, to shares found column by column.
func TestSeenByColumns(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	cut := 0
	for range 150 {
		c := anyCamera(r)
		c.X, c.Y = 3*r.Float64()-1.5, 0.5-1.5*r.Float64()
		for i, p := range posts {
			if math.Hypot(p.X-c.X, p.Y-c.Y) < 0.3 {
				continue
			}
			share, strip := c.Seen(p)
			if share == 0 || share == 1 {
				if rough, _ := byColumns(c, p, 40, 40); math.Abs(rough-share) > 1e-3 {
					t.Errorf("%+v post %d: %g seen, by columns %g", c, i, share, rough)
				}
				continue
			}
			cut++
			const columns = 400
			roughly, roughStrip := byColumns(c, p, columns, 60)
			if math.Abs(share-roughly) > 1e-4 {
				t.Errorf("%+v post %d: %.9f seen, by columns %.9f", c, i, share, roughly)
			}
			if math.Abs(strip-roughStrip) > 2*0.3/columns {
				t.Errorf("%+v post %d: a strip of %g m, by columns %g", c, i, strip, roughStrip)
			}
		}
	}
	if cut < 120 {
		t.Errorf("only %d posts are cut by the picture", cut)
	}
}

// TestSeenRectilinear: a rectilinear picture's sides are planes, so the seen
// part is a polygon: the rectangle cut by four planes, in closed form.
func TestSeenRectilinear(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	cut := 0
	for range 600 {
		c := anyCamera(r)
		c.Rectilinear = true
		c.HFOV, c.VFOV = math.Min(c.HFOV, 169*deg), math.Min(c.VFOV, 169*deg)
		c.X, c.Y = 3*r.Float64()-1.5, 0.5-1.5*r.Float64()
		for i, p := range posts {
			if math.Hypot(p.X-c.X, p.Y-c.Y) < 0.3 {
				continue
			}
			share, _ := c.Seen(p)
			want := polygonShare(c, p)
			if math.Abs(share-want) > 1e-9*want+1e-12 {
				t.Errorf("%+v post %d: %.12g seen, cut by planes %.12g", c, i, share, want)
			}
			if share > 0 && share < 1 {
				cut++
			}
		}
	}
	if cut < 300 {
		t.Errorf("only %d posts are cut by the picture", cut)
	}
}

// polygonShare cuts the rectangle, in parts of its width and height, by the
// four planes of a rectilinear picture and gives what is left (shoelace).
func polygonShare(c camera.Camera, p camera.Post) float64 {
	edge := touching(c, p)
	polygon := [][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
	for side := range 4 {
		room := func(s, q float64) float64 { // how far inside the side's plane
			x := edge[0][0] + s*(edge[1][0]-edge[0][0]) - c.X
			y := edge[0][1] + s*(edge[1][1]-edge[0][1]) - c.Y
			z := 0.8*q - c.Height
			ahead := y*math.Cos(c.Tilt) - z*math.Sin(c.Tilt)
			above := y*math.Sin(c.Tilt) + z*math.Cos(c.Tilt)
			return [4]float64{ahead*math.Tan(c.HFOV/2) - x, ahead*math.Tan(c.HFOV/2) + x,
				ahead*math.Tan(c.VFOV/2) - above, ahead*math.Tan(c.VFOV/2) + above}[side]
		}
		var left [][2]float64
		for i, b := range polygon {
			a := polygon[(i+len(polygon)-1)%len(polygon)]
			ra, rb := room(a[0], a[1]), room(b[0], b[1])
			if ra > 0 != (rb > 0) {
				k := ra / (ra - rb)
				left = append(left, [2]float64{a[0] + k*(b[0]-a[0]), a[1] + k*(b[1]-a[1])})
			}
			if rb > 0 {
				left = append(left, b)
			}
		}
		polygon = left
	}
	area := 0.0
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		area += (a[0]*b[1] - b[0]*a[1]) / 2
	}
	return math.Abs(area)
}

// TestWorkedBearings is a worked example: from a lens on the centerline in the
// bumper plane, with the posts' places rounded to 1.52, 3.05 and 0.30 m, the
// whole of F and G reaches 168.8 degrees across and the outer edge of D and E
// 29.01 degrees to the side. A lens level at half their height sees them whole
// from that view on.
func TestWorkedBearings(t *testing.T) {
	c := camera.Camera{Height: 0.4, VFOV: 100 * deg}
	for _, row := range []struct {
		post              camera.Post
		across, tolerance float64 // degrees
	}{{camera.Post{X: -1.52, Y: 0.30}, 168.8, 0.06}, {camera.Post{X: 1.52, Y: 3.05}, 2 * 29.01, 0.02}} {
		if got := 2 * outer(touching(c, row.post)) / deg; math.Abs(got-row.across) > row.tolerance {
			t.Errorf("touched at %g degrees, want %g", got, row.across)
		}
		for _, more := range []float64{-row.tolerance, row.tolerance} {
			c.HFOV = (row.across + more) * deg
			if share, _ := c.Seen(row.post); (share == 1) != (more > 0) {
				t.Errorf("a view of %g degrees shows %g", c.HFOV/deg, share)
			}
		}
	}
}

// outer is the bearing off the y axis of the outer of two places.
func outer(edges [2][2]float64) float64 {
	return math.Max(math.Abs(math.Atan2(edges[0][0], edges[0][1])), math.Abs(math.Atan2(edges[1][0], edges[1][1])))
}

// TestMirrorImage: a lens moved to the other side sees the other posts alike.
func TestMirrorImage(t *testing.T) {
	for _, q := range []string{"hfov=150&tilt=20&offset=%gm", "lens=rectilinear&hfov=120&vfov=60&offset=%gm&forward=0.3", "hfov=185&vfov=140&tilt=60&offset=%gm"} {
		a, b := compute(t, camera.RearObjects, fmt.Sprintf(q, 0.7)), compute(t, camera.RearObjects, fmt.Sprintf(q, -0.7))
		for i, other := range "cbaedgf" {
			x, y := a.Num("visible_"+string("abcdefg"[i])), b.Num("visible_"+string(other))
			if math.Abs(x-y) > 1e-9*(1+x) {
				t.Errorf("%s: %c is %g %%, mirrored %g %%", q, "abcdefg"[i], x, y)
			}
		}
	}
}

// TestBehindRectilinear: what is behind a rectilinear camera, or level with
// its lens, is not seen, and its angle is absent with a reason; an equidistant
// one shows it.
func TestBehindRectilinear(t *testing.T) {
	for _, height := range []string{"0.3", "0.4"} {
		query := "hfov=160&vfov=160&tilt=90&height=" + height
		r := compute(t, camera.RearObjects, "lens=rectilinear&"+query)
		if r.Num("visible_a") != 0 || !strings.Contains(strings.Join(r.Reasons, "; "), "no angles for A, B, C") {
			t.Errorf("height %s: %g %% of A, %q", height, r.Num("visible_a"), r.Reasons)
		}
		other := compute(t, camera.RearObjects, query)
		for _, name := range []string{"angle_a", "angle_b", "angle_c", "angle_mean"} {
			if r.Get(name).Present || !other.Get(name).Present {
				t.Errorf("height %s: %s is %v, equidistant %v", height, name, r.Get(name), other.Get(name))
			}
		}
	}
}

// TestStripJudged: F and G pass exactly where a strip of 150 mm is seen.
func TestStripJudged(t *testing.T) {
	for across := 140.0; across < 175; across += 0.5 {
		r := compute(t, camera.RearObjects, fmt.Sprintf("height=1m&tilt=20&vfov=130&hfov=%g", across))
		c := camera.Camera{Height: 1, Tilt: 20 * deg, HFOV: across * deg, VFOV: 130 * deg}
		_, strip := byColumns(c, posts[5], 2000, 20)
		if says := strings.Contains(strings.Join(r.Reasons, " "), "no strip"); says != (strip < 0.15) && math.Abs(strip-0.15) > 3e-4 {
			t.Errorf("%g degrees: strip of %g m, %q", across, strip, r.Reasons)
		}
	}
}

func FuzzRearObjects(f *testing.F) { fuzz(f, camera.RearObjects) }

func BenchmarkRearObjects(b *testing.B) { benchmark(b, camera.RearObjects) }
