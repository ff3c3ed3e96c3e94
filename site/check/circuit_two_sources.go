package check

var circuitTwoSources = &Rule{
	Name: "circuit-two-sources",
	Doc: `No named state joins two sources

The fuller battery feeds the other with all that the wire lets through, and a
fuse that is out leaves its wire live from the other side.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  starter: {volts: 12.6, internal: 15 mohm}
	  second: {volts: 12.2, internal: 20 mohm}
	fuses:
	  F1: {rating: 10 A, from: starter+}
	  F2: {rating: 15 A, from: second+}
	loads:
	  lamp: {current: 2 A, type: lamp}
	  heater: {current: 8 A, type: heater}
	wires:
	  W1: {from: F1, to: lamp, size: 12 AWG, length: 2 m, colour: YE}
	  W2: {from: F2, to: heater, size: 12 AWG, length: 2 m, colour: OG}
	  W3: {from: lamp, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
	  W4: {from: heater, to: second-, size: 12 AWG, length: 2 m, colour: BK}
	  W5: {from: second-, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
	  W6: {from: F1.out, to: F2.out, size: 12 AWG, length: 2 m, colour: RD}
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  starter: {volts: 12.6, internal: 15 mohm}
	  second: {volts: 12.2, internal: 20 mohm}
	fuses:
	  F1: {rating: 10 A, from: starter+}
	  F2: {rating: 15 A, from: second+}
	loads:
	  lamp: {current: 2 A, type: lamp}
	  heater: {current: 8 A, type: heater}
	wires:
	  W1: {from: F1, to: lamp, size: 12 AWG, length: 2 m, colour: YE}
	  W2: {from: F2, to: heater, size: 12 AWG, length: 2 m, colour: OG}
	  W3: {from: lamp, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
	  W4: {from: heater, to: second-, size: 12 AWG, length: 2 m, colour: BK}
	  W5: {from: second-, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
	~~~
`,
	Check: func(p *Pass) { p.judged("two-sources") },
}
