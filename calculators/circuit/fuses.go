package circuit

import (
	"math"

	"baybook/calculators/electrical"
)

// A fuseFamily says in which ratings one type of fuse is made and how it
// behaves.
type fuseFamily struct {
	name    string
	ratings []float64 // A
	// cold are typical cold resistances: rating in A, ohm.
	cold []curvePoint
	// fastest and slowest bound the operating time: share of the rating, s.
	fastest, slowest []curvePoint
	// breaks is the largest current in A that it interrupts safely.
	breaks float64
}

// A curvePoint is one point of a published curve.
type curvePoint struct{ x, y float64 }

// Times are the limits of ISO 8820-3 for types C and F and of typical sheets
// for type E, from memory. Cold resistances are of typical sheets, from
// memory. Bolt-down fuses are taken as slow as type E, common practice. A
// circuit breaker is a thermal one, by typical sheets, from memory.
var fuseFamilies = []fuseFamily{
	{"C", []float64{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40},
		[]curvePoint{{10, 7.69e-3}, {25, 2.52e-3}, {40, 1.44e-3}}, fastBlade, slowBlade, 1000},
	{"F", []float64{2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30},
		[]curvePoint{{15, 4.57e-3}, {25, 2.36e-3}}, fastBlade, slowBlade, 1000},
	{"E", []float64{20, 30, 40, 50, 60, 70, 80},
		[]curvePoint{{30, 1.9e-3}, {35, 1.7e-3}, {40, 1.4e-3}}, fastLarge, slowLarge, 1000},
	{"bolt-down", []float64{30, 35, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300},
		[]curvePoint{{40, 1.4e-3}}, fastLarge, slowLarge, 2000},
	{"breaker", []float64{5, 6, 7.5, 8, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100, 120, 135, 150, 200},
		[]curvePoint{{30, 4e-3}}, fastBreaker, slowBreaker, 1000},
}

var (
	fastBlade = []curvePoint{{1, 360000}, {1.35, 0.75}, {1.60, 0.25}, {2, 0.15}, {3.5, 0.04}, {6, 0.02}}
	slowBlade = []curvePoint{{1.35, 1800}, {1.60, 50}, {2, 5}, {3.5, 0.5}, {6, 0.1}}
	// slowWide is that of type C of 35 A and 40 A, by one maker's sheet as
	// restated, which lets half as much energy again through a short.
	slowWide    = []curvePoint{{1.35, 600}, {1.60, 50}, {2, 5}, {3.5, 0.5}, {6, 0.15}}
	fastLarge   = []curvePoint{{1, 360000}, {1.35, 60}, {2, 2}, {3.5, 0.2}, {6, 0.04}}
	fastBreaker = []curvePoint{{1, 360000}, {1.35, 20}, {2, 4}, {3, 1.5}, {6, 0.3}}
	slowBreaker = []curvePoint{{1.35, 3600}, {2, 60}, {3, 15}, {6, 3}}
	slowLarge   = []curvePoint{{1.35, 1800}, {2, 50}, {3.5, 7}, {6, 1}}
)

// family finds the family of a fuse.
func (f *Fuse) family() *fuseFamily {
	for i := range fuseFamilies {
		if fuseFamilies[i].name == f.Type {
			return &fuseFamilies[i]
		}
	}
	return &fuseFamilies[0]
}

// IsMade reports whether the fuse's type is made in its rating.
func (f *Fuse) IsMade() bool {
	for _, r := range f.family().ratings {
		if r == f.Rating {
			return true
		}
	}
	return false
}

// Ratings are those in which the fuse's type is made, in A.
func (f *Fuse) Ratings() []float64 { return f.family().ratings }

// Breaks is the largest current in A that the fuse's type breaks.
func (f *Fuse) Breaks() float64 { return f.family().breaks }

// resistance is the resistance of a fuse: what the writer gives, else a typical
// one. Outside the ratings of the sheets it is in inverse proportion to the
// rating, for the drop at the rating hardly changes.
func (f *Fuse) resistance() float64 {
	if f.Ohms >= 0 {
		return f.Ohms
	}
	cold := f.family().cold
	first, last := cold[0], cold[len(cold)-1]
	switch {
	case f.Rating <= first.x:
		return first.y * first.x / f.Rating
	case f.Rating >= last.x:
		return last.y * last.x / f.Rating
	}
	return along(cold, f.Rating)
}

// along reads a curve between its points, straight on paper with logarithmic
// axes; x lies within it.
func along(curve []curvePoint, x float64) float64 {
	i := 0
	for i < len(curve)-2 && x >= curve[i+1].x {
		i++
	}
	a, b := curve[i], curve[i+1]
	return a.y * math.Pow(b.y/a.y, math.Log(x/a.x)/math.Log(b.x/a.x))
}

// openingTime reads a time-current curve at amps A, in s. Below the first
// point the fuse never opens. Beyond the last one I²t stays the same, since
// the element has no time to lose heat.
func openingTime(curve []curvePoint, rating, amps float64) float64 {
	x := math.Abs(amps) / rating
	first, last := curve[0], curve[len(curve)-1]
	switch {
	case x < first.x:
		return math.Inf(1)
	case x > last.x:
		return last.y * (last.x / x) * (last.x / x)
	}
	return along(curve, x)
}

// wideBlade is the rating in A from which type C opens more slowly.
const wideBlade = 35

// SlowestOpening is the longest time in s after which a fuse has opened at so
// many amperes; infinite where it need not open.
func (f *Fuse) SlowestOpening(amps float64) float64 {
	curve := f.family().slowest
	if f.Type == "C" && f.Rating >= wideBlade {
		curve = slowWide
	}
	return openingTime(curve, f.Rating, amps)
}

// FastestOpening is the shortest time in s after which a fuse may open at amps
// A; infinite where it may not.
func (f *Fuse) FastestOpening(amps float64) float64 {
	return openingTime(f.family().fastest, f.Rating, amps)
}

// Color is the body color of a blade fuse (ISO 8820-3), "" for others.
func (f *Fuse) Color() string {
	if f.Type == "bolt-down" || f.Type == "breaker" {
		return ""
	}
	if f.Rating == 1 {
		return "black"
	}
	return electrical.FuseColor(f.Rating)
}

// TypeName is the fuse's type in words: "type C", "bolt".
func (f *Fuse) TypeName() string {
	if f.Type == "breaker" {
		return "circuit breaker"
	}
	if f.Type == "bolt-down" {
		return "bolt"
	}
	return "type " + f.Type
}
