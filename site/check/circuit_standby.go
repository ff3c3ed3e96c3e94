package check

var circuitStandby = &Rule{
	Name: "circuit-standby",
	Doc: `Parked, the battery lasts for as long as the vehicle stands

It is judged by the calculator standby, with what the parked state draws, the
battery's capacity, and limits: {parked: ...}.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm, capacity: 60 Ah}
	fuses:
	  F1: {rating: 2 A, from: battery+}
	loads:
	  camera: {current: 300 mA, sleeps: 200 mA}
	wires:
	  W1: {from: F1, to: camera, size: 18 AWG, length: 3 m, colour: YE}
	  W2: {from: camera, to: battery-, size: 18 AWG, length: 3 m, colour: BK}
	states:
	  key off: {parked: yes}
	  key on: {}
	limits: {parked: 14 d}
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm, capacity: 60 Ah}
	fuses:
	  F1: {rating: 2 A, from: battery+}
	loads:
	  camera: {current: 300 mA, sleeps: 2 mA}
	wires:
	  W1: {from: F1, to: camera, size: 18 AWG, length: 3 m, colour: YE}
	  W2: {from: camera, to: battery-, size: 18 AWG, length: 3 m, colour: BK}
	states:
	  key off: {parked: yes}
	  key on: {}
	limits: {parked: 14 d}
	~~~
`,
	Check: func(p *Pass) { p.judged("standby") },
}
