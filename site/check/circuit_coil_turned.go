package check

var circuitCoilTurned = &Rule{
	Name: "circuit-coil-turned",
	Doc: `A coil with a diode across it has its positive side on 86

The other way round the diode conducts, and shorts the trigger.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 10 A, from: battery+}
	  F2: {rating: 2 A, from: battery+}
	switches: [key]
	relays:
	  R1: {coil: 85 ohm, suppression: diode, rating: 20 A}
	loads:
	  lamp: {current: 6 A, type: lamp}
	wires:
	  W1: {from: F1, to: R1.30, size: 12 AWG, length: 50 cm, colour: RD}
	  W2: {from: R1.87, to: lamp, size: 12 AWG, length: 3 m, colour: YE}
	  W3: {from: lamp, to: battery-, size: 12 AWG, length: 3 m, colour: BK}
	  W4: {from: F2, to: key, size: 18 AWG, length: 1 m, colour: BU}
	  W5: {from: key, to: R1.85, size: 18 AWG, length: 1 m, colour: BUWH}
	  W6: {from: R1.86, to: battery-, size: 18 AWG, length: 1 m, colour: BK}
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 12.6, internal: 8 mohm}
	fuses:
	  F1: {rating: 10 A, from: battery+}
	  F2: {rating: 2 A, from: battery+}
	switches: [key]
	relays:
	  R1: {coil: 85 ohm, suppression: diode, rating: 20 A}
	loads:
	  lamp: {current: 6 A, type: lamp}
	wires:
	  W1: {from: F1, to: R1.30, size: 12 AWG, length: 50 cm, colour: RD}
	  W2: {from: R1.87, to: lamp, size: 12 AWG, length: 3 m, colour: YE}
	  W3: {from: lamp, to: battery-, size: 12 AWG, length: 3 m, colour: BK}
	  W4: {from: F2, to: key, size: 18 AWG, length: 1 m, colour: BU}
	  W5: {from: key, to: R1.86, size: 18 AWG, length: 1 m, colour: BUWH}
	  W6: {from: R1.85, to: battery-, size: 18 AWG, length: 1 m, colour: BK}
	~~~
`,
	Check: func(p *Pass) { p.judged("coil-turned") },
}
