package audio_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"baybook/calculators/audio"
	"baybook/calculators/calc"
)

// TestBehind turns the drawn outline of a speaker about its flange's middle,
// point by point, and looks how far it reaches to either side.
func TestBehind(t *testing.T) {
	for degrees := 0.0; degrees <= 30; degrees += 2.5 {
		const depth, magnet, frame, rise = 65.0, 90.0, 165.0, 12.0
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		behind, front := math.Inf(-1), math.Inf(-1)
		for _, y := range []float64{-1, 1} {
			behind = math.Max(behind, depth*cos+y*magnet/2*sin)
			front = math.Max(front, rise*cos+y*frame/2*sin)
		}
		tilt := degrees * math.Pi / 180
		if got := audio.Behind(depth, magnet, tilt); math.Abs(got-behind) > 1e-9 {
			t.Errorf("at %g degrees %g mm behind, want %g", degrees, got, behind)
		}
		if got := audio.InFront(rise, frame, tilt); math.Abs(got-front) > 1e-9 {
			t.Errorf("at %g degrees %g mm in front, want %g", degrees, got, front)
		}
	}
}

// TestAdapterMovesBoth: a millimeter of adapter gives the glass what it takes
// from the trim.
func TestAdapterMovesBoth(t *testing.T) {
	thin, thick := compute(t, audio.SpeakerFit, "adapter=6&wedge=5deg"), compute(t, audio.SpeakerFit, "adapter=0.7cm&wedge=300arcmin")
	if d := thick.Num("glass_margin") - thin.Num("glass_margin"); math.Abs(d-1) > 1e-9 {
		t.Errorf("the glass gains %g mm", d)
	}
	if d := thin.Num("trim_margin") - thick.Num("trim_margin"); math.Abs(d-1) > 1e-9 {
		t.Errorf("the trim loses %g mm", d)
	}
}

// TestChord measures between neighboring holes placed by coordinates, and
// walks once round the circle.
func TestChord(t *testing.T) {
	for n := 2; n <= 12; n++ {
		hole := func(i int) complex128 { return cmplx.Rect(155.0/2, 2*math.Pi*float64(i)/float64(n)) }
		for i := range n {
			if got, want := audio.Chord(155, n), cmplx.Abs(hole(i+1)-hole(i)); math.Abs(got-want) > 1e-9 {
				t.Errorf("%d holes: chord %g, measured %g", n, got, want)
			}
		}
	}
}

// TestOberst derives the loss factor anew: the bending stiffness of a
// two-layer beam about its own neutral axis, with a complex modulus in the
// layer, has the loss factor Im/Re as the layer's loss tends to nothing.
func TestOberst(t *testing.T) {
	const tiny = 1e-7
	for _, h := range []float64{0.3, 1, 2.5, 8, 40} {
		for _, e := range []float64{5e-6, 1e-3, 0.05, 0.15} {
			layer := complex(e, e*tiny)
			axis := (0.5 + layer*complex(h*(1+h/2), 0)) / (1 + layer*complex(h, 0))
			bending := func(modulus complex128, thick, middle float64) complex128 {
				away := complex(middle, 0) - axis
				return modulus * (complex(thick*thick*thick/12, 0) + complex(thick, 0)*away*away)
			}
			whole := bending(1, 1, 0.5) + bending(layer, h, 1+h/2)
			want := imag(whole) / real(whole) / tiny
			if got := audio.OberstLoss(1, e, h); math.Abs(got/want-1) > 1e-6 {
				t.Errorf("e %g, h %g: loss factor %.8g, beam %.8g", e, h, got, want)
			}
		}
	}
}

// TestSheets: a whole number of sheets that fits exactly is not rounded past,
// and never fewer than cover the area are bought.
func TestSheets(t *testing.T) {
	for n := 1; n <= 60; n++ {
		query := fmt.Sprintf("width=%gm&height=0.5m&cover=100%%25&sheet_width=0.07m&sheet_height=0.5m&waste=0", 0.07*float64(n))
		if got := compute(t, audio.DampingCover, query).Num("sheets"); got != float64(n) {
			t.Errorf("%d sheets side by side: %g to buy", n, got)
		}
	}
	r := compute(t, audio.DampingCover, "waste=0")
	if bought := r.Num("sheets") * 0.15; calc.Under(bought, r.Num("area")) || calc.Over(bought, r.Num("area")+0.15) {
		t.Errorf("%g m2 bought for %g m2", bought, r.Num("area"))
	}
}

// TestLoudnessLaws: double distance −6.02 dB, double power +3.01 dB, NIOSH
// halves every 3 dB and OSHA every 5 dB.
func TestLoudnessLaws(t *testing.T) {
	at := func(query string) *calc.Result { return compute(t, audio.Loudness, query) }
	base := at("basis=1W&power=1")
	for _, test := range []struct {
		query string
		gain  float64
	}{
		{"basis=1W&power=2", 10 * math.Log10(2)}, {"basis=1W&power=1&distance=2", -20 * math.Log10(2)},
		{"basis=1W&power=1&distance=200cm", -20 * math.Log10(2)}, {"basis=1W&power=0.001kW", 0},
		{"basis=1W&power=1&speakers=4", 20 * math.Log10(2)}, {"basis=1W&power=1&speakers=4&adding=coherent", 40 * math.Log10(2)},
	} {
		if gain := at(test.query).Num("level") - base.Num("level"); math.Abs(gain-test.gain) > 1e-9 {
			t.Errorf("%s: %+.4f dB, want %+.4f", test.query, gain, test.gain)
		}
	}
	three, five := at("basis=1W&power=1&sensitivity=93"), at("basis=1W&power=1&sensitivity=95")
	if math.Abs(base.Num("niosh")/three.Num("niosh")-2) > 1e-9 || math.Abs(base.Num("osha")/five.Num("osha")-2) > 1e-9 {
		t.Error("the time a day does not halve as the rules say")
	}
}

// TestGain: voltage times current is the power, peak is √2 over rms.
func TestGain(t *testing.T) {
	r := compute(t, audio.GainVoltage, "power=0.3kW&load=2700mohm")
	if p := r.Num("voltage") * r.Num("current"); math.Abs(p-300) > 1e-9 {
		t.Errorf("%.6f V × %.6f A is %.6f W", r.Num("voltage"), r.Num("current"), p)
	}
	if ratio := r.Num("peak") / r.Num("voltage"); math.Abs(ratio-math.Sqrt2) > 1e-12 {
		t.Errorf("peak over rms %.6f", ratio)
	}
}
