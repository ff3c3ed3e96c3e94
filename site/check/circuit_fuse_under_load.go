package check

var circuitFuseUnderLoad = &Rule{
	Name: "circuit-fuse-under-load",
	Doc: `A fuse carries at most four fifths of its rating for good

Over its rating it opens at once or one warm day, and somebody fits a larger
one. From four fifths on, and where a surge may open it, this warns.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 5 A}
	loads:
	  lamp: {current: 6 A, type: lamp}
	grounds:
	  G0: {point: tray}
	  G1: {point: roof}
	wires:
	  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}
	  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
	  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
	  W4: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}
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
	Check: func(p *Pass) { p.judged("fuse-under-load") },
}
