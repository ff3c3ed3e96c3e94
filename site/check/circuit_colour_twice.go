package check

var circuitColourTwice = &Rule{
	Name: "circuit-colour-twice",
	Doc: `One colour has one function in a drawing

The next person follows the colour. A wire says its function; what returns to
the source is ground where nothing else is said.

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
	  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: BK, function: lamp}
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
	Check: func(p *Pass) { p.judged("colour-twice") },
}
