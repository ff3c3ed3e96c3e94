package check

var circuitFuseOverWire = &Rule{
	Name: "circuit-fuse-over-wire",
	Firm: true,
	Doc: `No fuse lets through more than the wire behind it may carry

A fuse protects the wire, not the device. What a wire may carry is that of
the calculator fuse-size: size, insulation, air and bundle. Where a wire has
two feeds, their fuses count together.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 30 A, type: E}
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
	Check: func(p *Pass) { p.judged("fuse-over-wire") },
}
