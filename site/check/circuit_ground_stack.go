package check

import "baybook/site/finding"

var circuitGroundStack = &Rule{
	Name:     "circuit-ground-stack",
	Severity: finding.Warning,
	Doc: `At most four wires stand on one ground

More do not hold one another down for long (CASA AC 21-99).

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 5 A}
	loads:
	  clock 4: {current: 10 mA}
	  clock 3: {current: 10 mA}
	  clock 2: {current: 10 mA}
	  clock 1: {current: 10 mA}
	  lamp: {current: 2 A, type: lamp}
	grounds:
	  G0: {point: tray}
	  G1: {point: roof}
	wires:
	  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}
	  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
	  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
	  W4: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}
	  A1: {from: F1, to: clock 1, size: 18 AWG, length: 1 m, colour: RD}
	  B1: {from: clock 1, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
	  A2: {from: F1, to: clock 2, size: 18 AWG, length: 1 m, colour: RD}
	  B2: {from: clock 2, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
	  A3: {from: F1, to: clock 3, size: 18 AWG, length: 1 m, colour: RD}
	  B3: {from: clock 3, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
	  A4: {from: F1, to: clock 4, size: 18 AWG, length: 1 m, colour: RD}
	  B4: {from: clock 4, to: G1, size: 18 AWG, length: 30 cm, colour: BK}
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 5 A}
	loads:
	  lamp: {current: 2 A, type: lamp}
	grounds:
	  G0: {point: tray}
	  G1: {point: roof}
	wires:
	  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}
	  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
	  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
	  W4: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}
	~~~
`,
	Check: func(p *Pass) { p.judged("ground-stack") },
}
