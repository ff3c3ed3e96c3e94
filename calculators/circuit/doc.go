// Package circuit solves, judges and draws the wiring of one installation:
// a network goes in; node voltages, faults, judgments, a parts list and a
// drawing come out. It runs in the builder and in the browser alike, and so
// imports nothing that would weigh on the browser's download.
//
// # What is written
//
// A circuit is written as sections of named parts, each part with a few keys:
//
//	title: Reading light
//	sources:
//	  battery: {volts: 12.6, internal: 8 mohm}
//	fuses:
//	  F1: {rating: 5 A, type: C}
//	switches:
//	  key: {}
//	loads:
//	  lamp: {current: 2 A, type: lamp}
//	grounds:
//	  G1: {point: rear rail}
//	  G0: {point: battery tray}
//	wires:
//	  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}
//	  W2: {from: F1, to: key, size: 16 AWG, length: 2 m, colour: RD}
//	  W3: {from: key, to: lamp, size: 16 AWG, length: 4 m, colour: RDYE}
//	  W4: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
//	  W5: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK}
//	states:
//	  key off: {parked: yes}
//	  key on: {closed: [key]}
//
// A wire runs from one end to another. An end is the name of a part, and the
// direction says which side of it is meant: "to: F1" is the side that current
// goes into, "from: F1" the side that it leaves by. Where that is not enough
// the side is named: battery+, lamp-, F1.in, F1.out, R1.87, C1.2 (way 2 of a
// connector), amp.rem, amp.2- (an output). Any ring and any branch may be
// written. A part that is plugged straight onto another, without a wire, has
// from: or to: of its own.
//
// [Classes] lists the sections and their keys; reader, encoder and overrides
// all go by it. A [Draft] is a circuit as it is written; [Draft.Build] turns
// it into a [Network] or says what is wrong with which key of which part.
//
// # What is assumed
//
// Direct current at rest. A load is a constant current or a constant power
// down to half its supply, and a resistance below; a string of LEDs is its
// forward voltage and its resistor; an amplifier's outputs are a voltage of
// their own on the speakers. Wires are at the temperature that the limits
// name. A resistance of zero is
// none: the two nodes are one.
package circuit
