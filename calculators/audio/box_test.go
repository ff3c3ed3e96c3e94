package audio_test

import (
	"fmt"
	"math"
	"testing"

	"baybook/calculators/audio"
)

// thiele are lossless alignments 1 to 9 of Thiele's table (JAES 1971, from
// memory): printed to three figures, and computed from Small's response.
var thiele = []struct {
	qt, alpha, h       float64
	f3printed, f3exact float64
}{
	{0.180, 10.445, 1.997, 2.68, 2.679},
	{0.209, 7.454, 1.730, 2.28, 2.274},
	{0.259, 4.456, 1.413, 1.77, 1.772},
	{0.303, 2.947, 1.224, 1.45, 1.448},
	{0.38268, 1.4142, 1.0000, 1.000, 1.0000},
	{0.415, 1.053, 0.928, 0.867, 0.866},
	{0.466, 0.724, 0.827, 0.729, 0.726},
	{0.518, 0.558, 0.755, 0.641, 0.641},
	{0.557, 0.486, 0.718, 0.600, 0.600},
}

func TestThieleAlignments(t *testing.T) {
	for i, a := range thiele {
		box := audio.Vented{Fs: 1, Qts: a.qt, Alpha: a.alpha, Fb: a.h, Ql: 1e12}
		f3 := box.HalfPower()
		if math.Abs(f3/a.f3exact-1) > 2e-3 || math.Abs(f3/a.f3printed-1) > 6e-3 {
			t.Errorf("alignment %d: f3/fs %.4f, printed %.3f, computed from the papers %.4f", i+1, f3, a.f3printed, a.f3exact)
		}
	}
}

// TestLosslessOffAlignment is a worked example: fs 28, Qts 0.45, Vas 90 L in
// 60 L tuned to 30 Hz without loss has f3 28.973 Hz and peaks 1.973 dB.
func TestLosslessOffAlignment(t *testing.T) {
	box := audio.Vented{Fs: 28, Qts: 0.45, Alpha: 1.5, Fb: 30, Ql: 1e12}
	if f3 := box.HalfPower(); math.Abs(f3-28.973) > 6e-4 {
		t.Errorf("f3 %.4f Hz", f3)
	}
	if peak := box.Peak(); math.Abs(peak-1.973) > 6e-4 {
		t.Errorf("peak %.4f dB", peak)
	}
	if at := box.Level(49.16); math.Abs(at-1.973) > 6e-4 {
		t.Errorf("level at 49.16 Hz %.4f dB", at)
	}
}

// TestB4 holds the fourth-order Butterworth to its closed form: flat, and
// −10·log10(1 + (f3/f)^8).
func TestB4(t *testing.T) {
	// α = √2 and h = 1 with QT = 1/sqrt(4 + 2√2) without loss, Thiele.
	box := audio.Vented{Fs: 40, Qts: 1 / math.Sqrt(4+2*math.Sqrt2), Alpha: math.Sqrt2, Fb: 40, Ql: 1e15}
	for f := 5.0; f < 500; f *= 1.1 {
		want := -10 * math.Log10(1+math.Pow(40/f, 8))
		if got := box.Level(f); math.Abs(got-want) > 1e-9*math.Max(1, -want) {
			t.Errorf("at %.1f Hz %.10g dB, want %.10g", f, got, want)
		}
	}
	if f3, peak := box.HalfPower(), box.Peak(); math.Abs(f3-40) > 1e-9 || peak > 1e-12 {
		t.Errorf("f3 %.12g Hz, peak %.3g dB", f3, peak)
	}
}

// TestPortShut: with the tuning close to zero the vented box behaves as a
// closed one.
func TestPortShut(t *testing.T) {
	box := audio.Vented{Fs: 40, Qts: 0.45, Alpha: 1.5, Fb: 1e-4, Ql: 1e12}
	rise := math.Sqrt(2.5)
	for f := 10.0; f < 400; f *= 1.3 {
		if got, want := box.Level(f), audio.SealedLevel(0.45*rise, f/(40*rise)); math.Abs(got-want) > 1e-6 {
			t.Errorf("at %.1f Hz %.8f dB vented, %.8f dB sealed", f, got, want)
		}
	}
}

// TestHighestCrossing: where the response crosses half power three times, f3
// is the highest, and nothing above it is under half power.
func TestHighestCrossing(t *testing.T) {
	box := audio.Vented{Fs: 150, Qts: 0.3, Alpha: 1, Fb: 20, Ql: 50}
	half := 10 * math.Log10(0.5)
	crossings, above := 0, false
	for f := 2.0; f < 5000; f *= 1.001 {
		if over := box.Level(f) > half; over != above {
			above = over
			crossings++
		}
	}
	f3 := box.HalfPower()
	if math.Abs(box.Level(f3)-half) > 1e-9 {
		t.Errorf("level at f3 is %.10f dB", box.Level(f3))
	}
	for f := f3 * 1.0001; f < 1e5; f *= 1.01 {
		if box.Level(f) < half {
			t.Fatalf("f3 is %.3f Hz, but at %.3f Hz the level is %.3f dB (%d crossings)", f3, f, box.Level(f), crossings)
		}
	}
}

// TestPortTunes puts the length back into the law of the resonator:
// fB = c/2π·sqrt(S/(V·(L + k·a))).
func TestPortTunes(t *testing.T) {
	for _, ports := range []int{1, 2, 4} {
		for _, diameter := range []float64{0.05, 0.1, 0.2} {
			length := audio.PortLength(ports, diameter, 0.04, 31, 1.463)
			area := float64(ports) * math.Pi / 4 * diameter * diameter
			tuned := audio.SpeedOfSound / (2 * math.Pi) * math.Sqrt(area/(0.04*(length+1.463*diameter/2)))
			if math.Abs(tuned-31) > 1e-9 {
				t.Errorf("%d ports of %g m, %g m long tune to %.6f Hz", ports, diameter, length, tuned)
			}
		}
	}
}

// TestSealedScales: all frequencies of a box rise with fs, and none depends
// on the unit of a volume.
func TestSealedScales(t *testing.T) {
	one := compute(t, audio.SealedBox, "fs=30&probe=50&volume=28.316846592L&vas=2ft3")
	two := compute(t, audio.SealedBox, "fs=60&probe=100&volume=1ft3&vas=56.633693184L")
	for _, o := range []string{"fc", "f3"} {
		if math.Abs(two.Num(o)/one.Num(o)-2) > 1e-12 {
			t.Errorf("%s goes from %v to %v", o, one.Num(o), two.Num(o))
		}
	}
	for _, o := range []string{"qtc", "peak", "level", "volume_for_target"} {
		if math.Abs(two.Num(o)-one.Num(o)) > 1e-9 {
			t.Errorf("%s goes from %v to %v", o, one.Num(o), two.Num(o))
		}
	}
	// The volume for a target gives that target.
	v := compute(t, audio.SealedBox, "target=0.8").Num("volume_for_target")
	if q := compute(t, audio.SealedBox, fmt.Sprintf("volume=%.15g", v)).Num("qtc"); math.Abs(q-0.8) > 1e-12 {
		t.Errorf("the volume for Qtc 0.8 gives %v", q)
	}
}

func BenchmarkHalfPower(b *testing.B) {
	box := audio.Vented{Fs: 28, Qts: 0.45, Alpha: 1.5, Fb: 30, Ql: 7}
	for b.Loop() {
		box.HalfPower()
	}
}
