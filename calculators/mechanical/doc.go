// Package mechanical holds the calculators for holes, bundles, sleeves,
// hinges and fasteners, and the formulas behind them for others to call. Nothing
// changes a calculator, so goroutines may share it.
package mechanical
