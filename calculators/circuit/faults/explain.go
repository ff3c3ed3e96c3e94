package faults

import (
	"math"

	"baybook/calculators/calc"
)

// A Reading is what a meter shows at a point of the table.
type Reading struct {
	Point int // index
	Volts float64
}

// A Suspect is a fault with how well it explains some readings.
type Suspect struct {
	Fault int // index
	// Misfit is the largest difference between what is read and what the fault
	// gives, in tolerances of a reading: 1 and less explains them all.
	Misfit float64
}

// tolerance is how far a reading in V may be from what is computed: 0.15 V, and
// 3 % for a battery that is not quite at the voltage of the drawing (our own
// choice).
func tolerance(volts float64) float64 { return 0.15 + 0.03*math.Abs(volts) }

// Explain ranks all faults by how well they explain what is read in a state,
// the best first.
func (t *Table) Explain(state int, readings []Reading) []Suspect {
	var all []Suspect
	for i := range t.Faults {
		s := &t.Faults[i].States[state]
		if !s.Solved {
			continue
		}
		worst := 0.0
		for _, r := range readings {
			gives := s.Points[r.Point]
			worst = math.Max(worst, math.Abs(r.Volts-gives)/tolerance(gives))
		}
		all = append(all, Suspect{i, worst})
	}
	var ranked []Suspect
	for _, i := range calc.Sorted(len(all), func(a, b int) bool { return all[a].Misfit < all[b].Misfit }) {
		ranked = append(ranked, all[i])
	}
	return ranked
}

// Next is the point whose reading tells two faults apart best, and what each
// of them gives there in V; -1 where no reading tells them apart.
func (t *Table) Next(state int, a, b Suspect, read []Reading) (point int, gives [2]float64) {
	first, second := &t.Faults[a.Fault].States[state], &t.Faults[b.Fault].States[state]
	point, most := -1, 1.0
	for i := range t.Points {
		apart := math.Abs(first.Points[i]-second.Points[i]) / tolerance(math.Max(first.Points[i], second.Points[i]))
		if apart > most && !wasRead(read, i) {
			point, most, gives = i, apart, [2]float64{first.Points[i], second.Points[i]}
		}
	}
	return point, gives
}

func wasRead(read []Reading, point int) bool {
	for _, r := range read {
		if r.Point == point {
			return true
		}
	}
	return false
}
