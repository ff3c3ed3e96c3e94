package check

var circuitSpeakerGround = &Rule{
	Name: "circuit-speaker-ground",
	Doc: `No output of an amplifier touches the ground or the supply

A bridged output, or that of a radio, has no grounded side; joined to one it
dies.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 13.8, internal: 8 mohm}
	fuses:
	  F1: {rating: 15 A, from: battery+}
	amplifiers:
	  amp: {current: 6 A, output: 50 W, into: 4 ohm, least_load: 2 ohm, channels: 1}
	speakers:
	  left: {impedance: 4 ohm, power: 60 W}
	wires:
	  W1: {from: F1, to: amp, size: 12 AWG, length: 2 m, colour: RD}
	  W2: {from: amp, to: battery-, size: 12 AWG, length: 2 m, colour: BK}
	  W3: {from: amp.1+, to: left, size: 16 AWG, length: 3 m, colour: WH}
	  W4: {from: left, to: amp.1-, size: 16 AWG, length: 3 m, colour: WHBK}
	  W5: {from: amp.1-, to: battery-, size: 16 AWG, length: 1 m, colour: BK}
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 13.8, internal: 8 mohm}
	fuses:
	  F1: {rating: 15 A, from: battery+}
	amplifiers:
	  amp: {current: 6 A, output: 50 W, into: 4 ohm, least_load: 2 ohm, channels: 1}
	speakers:
	  left: {impedance: 4 ohm, power: 60 W}
	wires:
	  W1: {from: F1, to: amp, size: 12 AWG, length: 2 m, colour: RD}
	  W2: {from: amp, to: battery-, size: 12 AWG, length: 2 m, colour: BK}
	  W3: {from: amp.1+, to: left, size: 16 AWG, length: 3 m, colour: WH}
	  W4: {from: left, to: amp.1-, size: 16 AWG, length: 3 m, colour: WHBK}
	~~~
`,
	Check: func(p *Pass) { p.judged("speaker-ground") },
}
