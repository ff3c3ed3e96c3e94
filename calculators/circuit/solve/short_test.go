package solve

import (
	"math"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/electrical"
)

// copper is the resistance in ohm of a copper wire at 20 °C.
func copper(length float64, gauge int) float64 {
	return electrical.ConductorResistance(electrical.MaterialNamed("copper"), 20, length, calc.AWGArea(gauge)*1e-6)
}

func shortOf(s *Study, wire string) *Short {
	for i := range s.Shorts {
		if s.Network.Name(s.Shorts[i].Wire) == wire {
			return &s.Shorts[i]
		}
	}
	return nil
}

// TestShort adds up the loop of a short by hand: the source, two wires and
// the fuse, and back from the body through the battery's ground.
func TestShort(t *testing.T) {
	s := Analyze(circuittest.Build(t, circuittest.Circuits(t)["light"]))
	const fuse, joint, internal = 7.69e-3 * 10 / 5, 0.5e-3, 8e-3
	loop := internal + copper(0.15, 16) + fuse + copper(2, 16) + joint + copper(0.4, 4)
	short := shortOf(s, "W2")
	if want := 12.6 / loop; math.Abs(short.Amps-want) > 1e-4*want { // the short itself has a microhm
		t.Errorf("short of %v A, want %v A", short.Amps, want)
	}
	// Beyond six times the rating a fuse lets through the energy of that
	// point: (6 × 5 A)² × 0.1 s.
	if want := 90 / (short.Amps * short.Amps); math.Abs(short.Opens-want) > 1e-9 {
		t.Errorf("opens within %v s, want %v s", short.Opens, want)
	}
	ks := 87.6e6 * calc.AWGArea(16) * 1e-6 // k of 105 °C insulation up to 160 °C
	if want := ks * ks / (short.Amps * short.Amps); math.Abs(short.Bears-want) > 0.005*want {
		t.Errorf("the wire bears %v s, want %v s", short.Bears, want)
	}
	if name := s.Network.Name(short.Fuse); name != "F1" || !short.Survives {
		t.Errorf("%s opens, the wire survives: %v", name, short.Survives)
	}
}

// TestShortInARing checks that a short in a ring is dead only when both fuses
// are open, one after the other, and the wire is heated all the while.
func TestShortInARing(t *testing.T) {
	s := Analyze(circuittest.Build(t, circuittest.Circuits(t)["ring-feed"]))
	short := shortOf(s, "W2")
	one := s.Network.Part("F1").(*circuit.Fuse).SlowestOpening(short.Amps)
	if math.IsInf(short.Opens, 1) || short.Opens <= one {
		t.Errorf("dead after %v s, although the first fuse alone takes up to %v s", short.Opens, one)
	}
	for _, b := range s.Blown {
		fuse := s.Network.Name(b.Fuse)
		other := map[string]string{"F1": "F2", "F2": "F1"}[fuse]
		if len(b.Dead) > 0 || s.Network.Names(b.Live) != other {
			t.Errorf("with %s out: dead %v, live through %q, want nothing dead and %s", fuse, b.Dead, s.Network.Names(b.Live), other)
		}
	}
}

// TestBlown knows what is dark when a fuse is out.
func TestBlown(t *testing.T) {
	s := Analyze(circuittest.Build(t, circuittest.Circuits(t)["nested"]))
	want := map[string]string{"main": "shelf left, shelf right, desk, heater and fan", "F1": "shelf left, shelf right and desk", "F2": "heater"}
	for _, b := range s.Blown {
		if name := s.Network.Name(b.Fuse); s.Network.Names(b.Dead) != want[name] || len(b.Live) > 0 {
			t.Errorf("with %s out %q is dead, want %q", name, s.Network.Names(b.Dead), want[name])
		}
	}
}

// TestBlownFollowsCoils: what a fuse feeds through a relay's coil or an
// amplifier's switch-on lead falls still with it.
func TestBlownFollowsCoils(t *testing.T) {
	for _, w := range []struct{ circuit, fuse, dead string }{
		{"bookmobile", "tap", "mirror, camera, amp, shelf left and shelf right"}, // R1's coil and the amplifier's lead
		{"bookmobile", "F1", "amp, shelf left and shelf right"},
		{"bookmobile", "F2", "amp"},
		{"bookmobile", "F4", "camera"}, // R2's coil
	} {
		s := Analyze(circuittest.Build(t, circuittest.Circuits(t)[w.circuit]))
		for _, b := range s.Blown {
			if s.Network.Name(b.Fuse) == w.fuse && s.Network.Names(b.Dead) != w.dead {
				t.Errorf("%s, with %s out: %q is dead, want %q", w.circuit, w.fuse, s.Network.Names(b.Dead), w.dead)
			}
		}
	}
}

// TestRelayFollowsItsCoil goes through the states of relays: at rest, pulled
// in, one by another, held by itself, let go.
func TestRelayFollowsItsCoil(t *testing.T) {
	all := circuittest.Circuits(t)
	for _, w := range []struct {
		circuit, state, relay string
		in                    bool
	}{
		{"relay", "key off", "R1", false}, {"relay", "key on", "R1", true},
		{"relay-chain", "key on", "R2", false}, {"relay-chain", "reverse", "R1", true}, {"relay-chain", "reverse", "R2", true},
		{"holding", "rest", "R1", false}, {"holding", "pressed", "R1", true}, {"holding", "held", "R1", true},
		{"low-side", "door shut", "R1", false}, {"low-side", "door open", "R1", true},
	} {
		n := circuittest.Build(t, all[w.circuit])
		for state := range n.States {
			if n.States[state].Name != w.state {
				continue
			}
			if sol := State(n, state); sol.Energized(n, n.Index(w.relay)) != w.in || !sol.Settled {
				t.Errorf("%s, %s: %s pulled in is %v, want %v", w.circuit, w.state, w.relay, !w.in, w.in)
			}
		}
	}
}

// TestDropIsThatOfTheCalculator computes a run by the calculator wire-drop
// and as a circuit.
func TestDropIsThatOfTheCalculator(t *testing.T) {
	n := circuittest.Build(t, `
sources: {B: {volts: 12.6, internal: 0, standing: 0}}
loads: {L: {current: 6 A}}
wires:
  W1: {from: B+, to: L, size: 14 AWG, length: 4 m, colour: RD}
  W2: {from: L, to: B-, size: 14 AWG, length: 4 m, colour: BK}
`)
	pairs, _ := calc.ParseQuery("current=6A&length=4m&wire=14AWG")
	_, result, _ := electrical.WireDrop.Answer(pairs)
	if got := State(n, 0).Flows[circuittest.LoadBranch(n, "L")].Drop; math.Abs(got-result.Num("at_load")) > 1e-5 {
		t.Errorf("the load has %v V, wire-drop says %v V", got, result.Num("at_load"))
	}
}
