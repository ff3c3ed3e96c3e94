package check

var circuitSpeakerLoad = &Rule{
	Name: "circuit-speaker-load",
	Doc: `The speakers on an output are a load that it bears

Two speakers side by side halve the ohms, and an amplifier under its least load
dies hot. A speaker that is given more than it bears is warned of.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 13.8, internal: 8 mohm}
	fuses:
	  F1: {rating: 15 A, from: battery+}
	amplifiers:
	  amp: {current: 6 A, output: 50 W, into: 4 ohm, least_load: 4.5 ohm, channels: 1}
	speakers:
	  left: {impedance: 4 ohm, power: 60 W}
	wires:
	  W1: {from: F1, to: amp, size: 12 AWG, length: 2 m, colour: RD}
	  W2: {from: amp, to: battery-, size: 12 AWG, length: 2 m, colour: BK}
	  W3: {from: amp.1+, to: left, size: 16 AWG, length: 3 m, colour: WH}
	  W4: {from: left, to: amp.1-, size: 16 AWG, length: 3 m, colour: WHBK}
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
	Check: func(p *Pass) { p.judged("speaker-load") },
}
