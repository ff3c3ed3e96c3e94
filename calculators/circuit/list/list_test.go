package list

import (
	"math"
	"strings"
	"testing"

	"baybook/calculators/circuit/circuittest"
)

// TestListsAgree wants every list to speak of the same wires: each wire to cut
// once on a reel, with two labels, and as much to buy as is cut.
func TestListsAgree(t *testing.T) {
	for name, text := range circuittest.Circuits(t) {
		n := circuittest.Build(t, text)
		cut, labeled, ends := make(map[string]int), make(map[string]int), make(map[string]bool)
		total := 0.0
		for _, reel := range Cuts(n) {
			last, sum := math.Inf(1), 0.0
			for _, w := range reel.Cuts {
				cut[w.Number]++
				sum += w.Cut
				if w.Cut > last {
					t.Errorf("%s: %s is cut after a shorter one", name, w.Number)
				}
				last = w.Cut
			}
			if math.Abs(sum-reel.Total) > 1e-9 {
				t.Errorf("%s: %s holds %v m, cut are %v m", name, reel.Name, reel.Total, sum)
			}
			total += sum
		}
		for _, l := range Labels(n) {
			labeled[l.Wire]++
			ends[l.Wire+" "+l.End] = true
			if !strings.HasPrefix(l.Text, l.Wire+" "+l.End+" / ") {
				t.Errorf("%s: label %q of %s at %s", name, l.Text, l.Wire, l.End)
			}
		}
		for _, w := range Wires(n) {
			if w.Vehicle {
				continue
			}
			if cut[w.Number] != 1 || labeled[w.Number] != 2 || !ends[w.Number+" "+w.From] || !ends[w.Number+" "+w.To] {
				t.Errorf("%s: %s is cut %d times and has %d labels", name, w.Number, cut[w.Number], labeled[w.Number])
			}
			if least := w.Length*1.05 + 0.1; w.Cut < least-1e-9 || w.Cut > least+0.01 {
				t.Errorf("%s: %s of %v m is cut to %v m, want 5 %% and 10 cm more", name, w.Number, w.Length, w.Cut)
			}
		}
	}
}

// TestPinout reads the connector of a door: every wire at it stands once, on
// the side on which it was written.
func TestPinout(t *testing.T) {
	n := circuittest.Build(t, `
sources: {B: {volts: 12.6}}
fuses: {F: {rating: 5 A, from: B+}}
connectors: {X1: {ways: 3}}
loads: {lamp: {current: 1 A}}
wires:
  W1: {from: F, to: X1.1, size: 18 AWG, length: 1 m, colour: RD, function: light}
  W2: {from: X1.1, to: lamp, size: 18 AWG, length: 1 m, colour: RDBU, function: light}
  W3: {from: lamp, to: X1.3, size: 18 AWG, length: 1 m, colour: BK}
  W4: {from: X1.3, to: B-, size: 18 AWG, length: 1 m, colour: BK}
`)
	var got []string
	for _, p := range Pinouts(n) {
		for _, w := range p.Ways {
			line := p.Connector + "." + w.Number
			for _, wires := range [...][]Wire{w.In, w.Out} {
				line += " |"
				for _, wire := range wires {
					line += " " + wire.Number + " " + wire.Color
				}
			}
			got = append(got, line+" "+w.Function)
		}
	}
	if want := "X1.1 | W1 RD | W2 RDBU light; X1.2 | | ; X1.3 | W3 BK | W4 BK "; strings.Join(got, "; ") != want {
		t.Errorf("pinout %q, want %q", strings.Join(got, "; "), want)
	}
}
