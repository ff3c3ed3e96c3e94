package report

import (
	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/solve"
	"strconv"
	"strings"
	"testing"
)

// large is a circuit of some 200 parts: feeds with fuses, relays, loads of
// every law, returns through shared splices, a ring.
func large() string {
	var b strings.Builder
	section := func(name string, line func(i int) string) {
		b.WriteString(name + ":\n")
		for i := 1; i <= 14; i++ {
			b.WriteString("  " + strings.ReplaceAll(line(i), "#", strconv.Itoa(i)) + "\n")
		}
	}
	section("fuses", func(int) string { return "F#: {rating: 10 A, from: battery+}" })
	section("relays", func(int) string { return "R#: {suppression: diode}" })
	section("splices", func(int) string { return "S#: {}" })
	section("loads", func(i int) string {
		return [...]string{"L#: {current: 2 A}", "L#: {power: 20 W}", "L#: {ohms: 8, type: lamp}"}[i%3]
	})
	section("leds", func(int) string { return "E#: {forward: 3 V, count: 3, resistor: 150 ohm, strings: 4}" })
	section("grounds", func(i int) string { return "G#: {point: rail " + strconv.Itoa(i%4) + "}" })
	b.WriteString("sources: {battery: {volts: 12.6, internal: 8 mohm}}\nswitches: {key: {from: battery+}}\nwires:\n")
	b.WriteString("  WG: {from: battery-, to: G1, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}\n")
	b.WriteString("  WR: {from: S1, to: S9, size: 14 AWG, length: 1 m, colour: RD}\n")
	for i := 1; i <= 14; i++ {
		b.WriteString(strings.ReplaceAll(`  A#: {from: F#, to: R#.30, size: 14 AWG, length: 2 m, colour: RD}
  B#: {from: R#.87, to: S#, size: 14 AWG, length: 2 m, colour: RD}
  C#: {from: S#, to: L#, size: 18 AWG, length: 1 m, colour: YE}
  D#: {from: S#, to: E#, size: 18 AWG, length: 1 m, colour: YE}
  H#: {from: L#, to: G#, size: 18 AWG, length: 40 cm, colour: BK}
  I#: {from: E#, to: G#, size: 18 AWG, length: 40 cm, colour: BK}
  J#: {from: key, to: R#.86, size: 18 AWG, length: 1 m, colour: BU}
  K#: {from: R#.85, to: G#, size: 18 AWG, length: 1 m, colour: BK}
`, "#", strconv.Itoa(i)))
	}
	b.WriteString("states:\n  key off: {}\n  key on: {closed: [key]}\n")
	return b.String()
}

// BenchmarkWhole builds, solves, judges and draws some 200 parts.
func BenchmarkWhole(b *testing.B) {
	d := circuittest.Draft(b, large())
	for b.Loop() {
		n, problems := d.Build()
		if n == nil {
			b.Fatal(problems)
		}
		AppendMarkup(nil, judge.Assess(n), draw.View{})
	}
	b.ReportMetric(float64(len(d.Entries)), "parts")
}

// BenchmarkAsk is what a keystroke costs the browser's core: a circuit of the
// usual size, read back, changed, solved, judged and drawn.
func BenchmarkAsk(b *testing.B) {
	encoded := circuittest.Draft(b, circuittest.Circuits(b)["whole"]).Encode()
	for b.Loop() {
		if _, problems := Ask(encoded, "load.aisle.current=7A&wire.W3.length=5m&state=key%20on"); problems != nil {
			b.Fatal(problems[0])
		}
	}
}

// BenchmarkParts shows where the time of BenchmarkWhole goes.
func BenchmarkParts(b *testing.B) {
	n, problems := circuittest.Draft(b, large()).Build()
	if n == nil {
		b.Fatal(problems)
	}
	s := judge.Assess(n)
	b.Run("solve", func(b *testing.B) {
		for b.Loop() {
			solve.State(n, 1)
		}
	})
	b.Run("analyse", func(b *testing.B) {
		for b.Loop() {
			judge.Assess(n)
		}
	})
	b.Run("draw", func(b *testing.B) {
		for b.Loop() {
			draw.Drawing(s, draw.View{})
		}
	})
}
