package judge

// The circuits with nothing wrong that several rules show their mistake in.

const lampCircuit = `sources:
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
`

const tapCircuit = `sources:
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
`

const relayCircuit = `sources:
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
`

const speakerCircuit = `sources:
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
`
