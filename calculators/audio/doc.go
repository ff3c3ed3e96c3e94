// Package audio holds the calculators for speakers, boxes, filters, level
// and what goes into a door, and the formulas behind them for others to call.
package audio
