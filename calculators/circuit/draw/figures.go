package draw

import (
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

// figures are the numbers of a state as a drawing letters them. A state that
// has no solution has none.
type figures struct{ none bool }

func figuresOf(sol *solve.Solution) figures { return figures{!sol.Solved()} }

func (f figures) write(v float64, form func(float64) string) string {
	if f.none {
		return "–"
	}
	return form(v)
}

func (f figures) amps(v float64) string  { return f.write(v, format.Amps) }
func (f figures) volts(v float64) string { return f.write(v, format.NodeVolts) }
func (f figures) watts(v float64) string { return f.write(v, format.Watts) }
func (f figures) drop(v float64) string  { return f.write(v, format.Drop) }
