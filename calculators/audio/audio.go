// Package audio holds the calculators for speakers, boxes, filters, level
// and what goes into a door, and the formulas behind them for others to call.
// Nothing changes a calculator, so goroutines may share it.
package audio

import "strconv"

// count writes a number of things: "1 port", "2 ports".
func count(n int, thing string) string {
	if n != 1 {
		thing += "s"
	}
	return strconv.Itoa(n) + " " + thing
}
