package check

var circuitTapTurned = &Rule{
	Name: "circuit-tap-turned",
	Doc: `A fuse tap takes its current from the feed side of its slot

Turned round, the added load runs through the vehicle's own fuse and can take
the vehicle's circuit down with it. A drawing that shows this mistake on
purpose says wrong: [tap-turned].

Bad:

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
	Check: func(p *Pass) { p.judged("tap-turned") },
}
