package audio_test

import (
	"math"
	"testing"

	"baybook/calculators/audio"
)

// prototypes are the element values of singly terminated ladders as filter
// tables print them, from the source.
var prototypes = []struct {
	name       string
	polynomial []float64
	want       []float64
}{
	{"Butterworth 1", []float64{1, 1}, []float64{1}},
	{"Butterworth 2", []float64{1, math.Sqrt2, 1}, []float64{math.Sqrt2, 1 / math.Sqrt2}},
	{"Butterworth 3", []float64{1, 2, 2, 1}, []float64{1.5, 4.0 / 3, 0.5}},
	{"Butterworth 4", []float64{1, 2.6131259297527530, 3.4142135623730951, 2.6131259297527530, 1}, []float64{1.530734, 1.577161, 1.082392, 0.382683}},
	{"Linkwitz-Riley 2", []float64{1, 2, 1}, []float64{2, 0.5}},
	{"Linkwitz-Riley 4", []float64{1, 2 * math.Sqrt2, 4, 2 * math.Sqrt2, 1},
		[]float64{4 * math.Sqrt2 / 3, 9 / (4 * math.Sqrt2), 2 * math.Sqrt2 / 3, 1 / (2 * math.Sqrt2)}},
	{"Bessel 2", []float64{3, 3, 1}, []float64{1, 1.0 / 3}},
}

func TestPrototype(t *testing.T) {
	for _, p := range prototypes {
		got := audio.Prototype(p.polynomial)
		for i := range p.want {
			if math.Abs(got[i]/p.want[i]-1) > 2e-6 {
				t.Errorf("%s: elements %.7g, want %.7g", p.name, got, p.want)
				break
			}
		}
	}
}

// TestLadderLevel: the parts of a ladder make the level that the closed form
// says, high-pass and low-pass, at any load and frequency.
func TestLadderLevel(t *testing.T) {
	for _, p := range prototypes[:6] {
		order := len(p.polynomial) - 1
		family := "butterworth"
		if p.name[0] == 'L' {
			family = "linkwitz-riley"
		}
		for _, high := range []bool{false, true} {
			parts := audio.Ladder(audio.Prototype(p.polynomial), high, 3.7, 180)
			for f := 6.0; f < 20000; f *= 1.4 {
				x := f / 180
				if high {
					x = 1 / x
				}
				got, want := audio.LadderLevel(parts, 3.7, f), audio.FilterLevel(family, order, x)
				if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
					t.Errorf("%s, high %v, %.1f Hz: ladder %.12g dB, closed form %.12g dB", p.name, high, f, got, want)
				}
			}
		}
	}
}

// TestOctave: far beyond the corner each order falls 6.0206 dB an octave.
func TestOctave(t *testing.T) {
	for order := 1; order <= 4; order++ {
		if fall := audio.FilterLevel("butterworth", order, 1000) - audio.FilterLevel("butterworth", order, 2000); math.Abs(fall-6.0206*float64(order)) > 1e-3 {
			t.Errorf("order %d falls %.4f dB an octave", order, fall)
		}
	}
}
