package check

var circuitSharedGround = &Rule{
	Name: "circuit-shared-ground",
	Doc: `A device at sensor level shares no ground wire with a load of power

The load lifts the ground of a camera or a radio by its own drop, and the drop
stands in the picture or the sound. Several wires on one point are right; one
wire for several is not. Devices say signal: yes.

Bad:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 13.8, internal: 8 mohm}
	fuses:
	  F1: {rating: 30 A, type: E, from: battery+}
	  F2: {rating: 2 A, from: battery+}
	splices: [S1]
	loads:
	  amplifier: {current: 20 A}
	  camera: {current: 150 mA, signal: yes}
	grounds:
	  G0: {point: tray}
	  G1: {point: rear rail}
	wires:
	  W1: {from: F1, to: amplifier, size: 8 AWG, length: 4 m, colour: RD}
	  W2: {from: F2, to: camera, size: 20 AWG, length: 6 m, colour: RDWH}
	  W3: {from: amplifier, to: S1, size: 8 AWG, length: 30 cm, colour: BK}
	  W4: {from: camera, to: S1, size: 20 AWG, length: 30 cm, colour: BK}
	  W5: {from: S1, to: G1, size: 8 AWG, length: 30 cm, colour: BK}
	  W6: {from: battery-, to: G0, size: 2 AWG, length: 40 cm, colour: BK, vehicle: yes}
	~~~

Good:

	## Prove it

	- The lamp lights.

	~~~circuit
	sources:
	  battery: {volts: 13.8, internal: 8 mohm}
	fuses:
	  F1: {rating: 30 A, type: E, from: battery+}
	  F2: {rating: 2 A, from: battery+}
	splices: [S1]
	loads:
	  amplifier: {current: 20 A}
	  camera: {current: 150 mA, signal: yes}
	grounds:
	  G0: {point: tray}
	  G1: {point: rear rail}
	  G2: {point: rear rail}
	wires:
	  W1: {from: F1, to: amplifier, size: 8 AWG, length: 4 m, colour: RD}
	  W2: {from: F2, to: camera, size: 20 AWG, length: 6 m, colour: RDWH}
	  W3: {from: amplifier, to: S1, size: 8 AWG, length: 30 cm, colour: BK}
	  W4: {from: camera, to: G2, size: 20 AWG, length: 30 cm, colour: BK}
	  W5: {from: S1, to: G1, size: 8 AWG, length: 30 cm, colour: BK}
	  W6: {from: battery-, to: G0, size: 2 AWG, length: 40 cm, colour: BK, vehicle: yes}
	~~~
`,
	Check: func(p *Pass) { p.judged("shared-ground") },
}
