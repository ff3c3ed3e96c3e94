package check

var circuitTap = &Rule{
	Name: "circuit-tap",
	Firm: true,
	Doc: `A fuse tap leaves its slot the room that it needs

It is judged by the calculator fuse-tap: what the slot feeds already and what
is added stay under four fifths of the slot's fuse, the tap's fuse is no larger
than the slot's own, and a safety circuit is never tapped.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  slot 12: {rating: 10 A, feeds: 7.9 A, vehicle: yes, from: battery+}
	  tap: {rating: 2 A, taps: slot 12}
	loads:
	  camera: {current: 300 mA}
	wires:
	  W1: {from: tap, to: camera, size: 18 AWG, length: 3 m, colour: YE}
	  W2: {from: camera, to: battery-, size: 18 AWG, length: 3 m, colour: BK}
	~~~

Good:

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
	~~~
`,
	Check: func(p *Pass) { p.judged("tap") },
}
