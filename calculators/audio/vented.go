package audio

import "math"

// SpeedOfSound is the speed of sound in m/s at 20 °C that box papers and the
// port formula are used with here.
const SpeedOfSound = 343.2

// A Vented is a driver in a vented box as a fourth-order high-pass with
// leakage loss QL (Small 1973). Frequencies in Hz; Alpha is Vas over the net
// volume.
type Vented struct {
	Fs, Qts, Alpha, Fb, Ql float64
}

// polynomial is |D|² of the response over z = fb·fs/f², constant term first:
// the power response is 1 over it, so that its value 2 is half power and its
// least value is the peak. With T = 1/f normalized to the mean of both,
// D(s) = s⁴ + a3 s³ + a2 s² + a1 s + 1.
func (v Vented) polynomial() []float64 {
	tb, ts := math.Sqrt(v.Fs/v.Fb), math.Sqrt(v.Fb/v.Fs)
	a3 := tb/v.Qts + ts/v.Ql
	a2 := (v.Alpha+1)*tb*tb + 1/(v.Qts*v.Ql) + ts*ts
	a1 := tb/v.Ql + ts/v.Qts
	return []float64{1, a3*a3 - 2*a2, a2*a2 + 2 - 2*a1*a3, a1*a1 - 2*a2, 1}
}

// Level is the response in dB at a frequency in Hz.
func (v Vented) Level(hertz float64) float64 {
	p := v.polynomial()
	p[0] = 0
	return asDecibels(evaluate(p, v.Fb*v.Fs/(hertz*hertz)))
}

// HalfPower is the highest frequency in Hz at which the response crosses half
// power.
func (v Vented) HalfPower() float64 {
	p := v.polynomial()
	p[0] -= 2 // from −1 at infinite frequency up to +∞ at 0: it crosses
	return math.Sqrt(v.Fb * v.Fs / positiveRoots(p)[0])
}

// Peak is the highest level in dB, 0 where the response never rises over the
// pass band.
func (v Vented) Peak() float64 {
	p := v.polynomial()
	p[0] = 0
	least := 0.0
	for _, z := range positiveRoots([]float64{p[1], 2 * p[2], 3 * p[3], 4 * p[4]}) {
		least = math.Min(least, evaluate(p, z))
	}
	return asDecibels(least)
}

// PortLength is how long in m each of a number of equal round ports must be:
// diameter in m, net volume in m³, tuning in Hz, end correction in port radii.
// It is 0 or less where no port can be short enough.
func PortLength(ports int, diameter, volume, tuning, correction float64) float64 {
	area, w := float64(ports)*math.Pi/4*diameter*diameter, 2*math.Pi*tuning
	return area*SpeedOfSound*SpeedOfSound/(volume*w*w) - correction*diameter/2
}
