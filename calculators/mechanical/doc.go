// Package mechanical holds the calculators for holes, bundles, sleeves,
// hinges and fasteners, and the formulas behind them for others to call.
package mechanical
