package check

var circuitDrop = &Rule{
	Name: "circuit-drop",
	Doc: `What a load loses on the way there and back stays within the limit

In every named state, from the terminals of the source. The limit is that of
the drawing (3 % where none is written), or the load's own. A load may also say
the least voltage that it works at.

Bad:

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
	  W2: {from: F1, to: lamp, size: 16 AWG, length: 24 m, colour: RD}
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
	Check: func(p *Pass) { p.judged("drop") },
}
