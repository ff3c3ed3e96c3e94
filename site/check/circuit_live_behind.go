package check

import "baybook/site/finding"

var circuitLiveBehind = &Rule{
	Name:     "circuit-live-behind",
	Severity: finding.Warning,
	Doc: `What is behind a fuse is dead when the fuse is out

With two feeds to one wire, pulling one fuse leaves the wire live. Somebody
will put a tool to it. Say so on the label, or feed it once.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 10 A, from: battery+}
	  F2: {rating: 10 A, from: battery+}
	splices: [S1]
	loads:
	  lamp: {current: 4 A, type: lamp}
	wires:
	  W1: {from: F1, to: S1, size: 12 AWG, length: 3 m, colour: RD}
	  W2: {from: F2, to: S1, size: 12 AWG, length: 3 m, colour: RD}
	  W3: {from: S1, to: lamp, size: 12 AWG, length: 1 m, colour: RD}
	  W4: {from: lamp, to: battery-, size: 12 AWG, length: 3 m, colour: BK}
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 10 A, from: battery+}
	splices: [S1]
	loads:
	  lamp: {current: 4 A, type: lamp}
	wires:
	  W1: {from: F1, to: S1, size: 12 AWG, length: 3 m, colour: RD}
	  W3: {from: S1, to: lamp, size: 12 AWG, length: 1 m, colour: RD}
	  W4: {from: lamp, to: battery-, size: 12 AWG, length: 3 m, colour: BK}
	~~~
`,
	Check: func(p *Pass) { p.judged("live-behind") },
}
