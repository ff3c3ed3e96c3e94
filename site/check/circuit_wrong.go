package check

var circuitWrong = &Rule{
	Name: "circuit-wrong",
	Firm: true,
	Doc: `A drawing that is marked as showing a mistake shows that mistake

The mark wrong: [tap-turned] keeps the mistake from stopping the book, so the
mistake has to be there. A drawing put right loses its mark.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  slot 12: {rating: 10 A, feeds: 4 A, vehicle: yes, from: battery+}
	  tap: {rating: 2 A, taps: slot 12}
	loads:
	  camera: {current: 300 mA}
	wires:
	  W1: {from: tap, to: camera, size: 18 AWG, length: 3 m, colour: YE}
	  W2: {from: camera, to: battery-, size: 18 AWG, length: 3 m, colour: BK}
	wrong: [tap-turned]
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  slot 12: {rating: 10 A, feeds: 4 A, vehicle: yes, from: battery+}
	  tap: {rating: 2 A, taps: slot 12, from: slot 12.out}
	loads:
	  camera: {current: 300 mA}
	wires:
	  W1: {from: tap, to: camera, size: 18 AWG, length: 3 m, colour: YE}
	  W2: {from: camera, to: battery-, size: 18 AWG, length: 3 m, colour: BK}
	wrong: [tap-turned]
	~~~
`,
	Check: func(p *Pass) { p.judged("wrong") },
}
