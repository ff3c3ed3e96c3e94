package faults

import (
	"math"
	"slices"
	"testing"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/solve"
)

func tableOf(t testing.TB, name string) *Table {
	return New(solve.Analyze(circuittest.Build(t, circuittest.Circuits(t)[name])))
}

func (t *Table) fault(name string) *Fault {
	for i := range t.Faults {
		if t.Faults[i].Name == name {
			return &t.Faults[i]
		}
	}
	return nil
}

func (t *Table) point(name string) int {
	return slices.IndexFunc(t.Points, func(p Point) bool { return p.Name == name })
}

// TestFaultsOfALight goes through the faults of a lamp with a key, as a tech
// finds them with a meter (common practice): without its ground a lamp has the
// feed's voltage on both terminals, with a wire open before it neither.
func TestFaultsOfALight(t *testing.T) {
	table := tableOf(t, "light")
	const on = 1
	for _, w := range []struct {
		fault       string
		lamp        bool // it lights
		plus, minus bool // they read the feed's voltage
		blown       bool
	}{
		{"nothing broken", true, true, false, false},
		{"W1 open", false, false, false, false},
		{"W3 open", false, false, false, false},
		{"F1 out", false, false, false, false},
		{"W4 open", false, true, true, false},
		{"G1 lost", false, true, true, false},
		{"W2 shorted to the body", false, false, false, true},
		{"W3 shorted to the body", false, false, false, true},
		{"W4 shorted to the body", true, true, false, false},
	} {
		f := table.fault(w.fault)
		if f == nil {
			t.Errorf("no fault %s", w.fault)
			continue
		}
		s := f.States[on]
		high := func(point string) bool { return s.Points[table.point(point)] > 11 }
		if lights := s.Loads[0] > 11; lights != w.lamp || high("lamp+") != w.plus || high("lamp-") != w.minus || (len(s.Opened) > 0) != w.blown {
			t.Errorf("%s: lights %v, lamp+ %v, lamp- %v, blown %v", w.fault, lights, s.Points[table.point("lamp+")], s.Points[table.point("lamp-")], s.Opened)
		}
	}
}

// TestStuckRelay holds a relay in both ways.
func TestStuckRelay(t *testing.T) {
	table := tableOf(t, "relay")
	load := func(fault string, state int) float64 { return table.fault(fault).States[state].Loads[0] }
	if off, on := load("R1 stuck closed", 0), load("R1 stuck open", 1); off < 11 || on > 1 {
		t.Errorf("stuck closed the load has %v V with the key off, stuck open %v V with it on", off, on)
	}
}

// TestFaultsAgainstSPICE injects every fault into the deck of every circuit
// and compares what each test point reads.
func TestFaultsAgainstSPICE(t *testing.T) {
	spice := circuittest.LookSPICE(t)
	names := []string{"light", "relay", "reverse-camera", "ring-feed"}
	if testing.Short() {
		names = names[:1]
	}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			study := solve.Analyze(circuittest.Build(t, circuittest.Circuits(t)[name]))
			table := New(study)
			state := study.Busiest()
			compared := 0
			for _, f := range table.Faults {
				if !f.States[state].Solved {
					continue
				}
				broken := Inject(study, f.Kind, f.Part, state)
				for _, fuse := range f.States[state].Opened {
					for i := range broken.Branches {
						if b := &broken.Branches[i]; b.Part == fuse && b.Role == circuit.Through {
							cut(b)
						}
					}
				}
				volts := circuittest.SPICE(t, spice, solve.AppendNetlist(nil, broken, state))
				nodes := solve.DeckNodes(broken, state)
				for i, p := range table.Points {
					want, ok := volts[nodes[p.Node]]
					if nodes[p.Node] != "0" && !ok {
						continue // nothing but open branches meets there
					}
					compared++
					if got := f.States[state].Points[i]; math.Abs(got-want) > 1e-6 {
						t.Errorf("%s: %s reads %v V, SPICE says %v V", f.Name, p.Name, got, want)
					}
				}
			}
			if compared < 50 {
				t.Errorf("only %d readings compared", compared)
			}
		})
	}
}

// TestExplain takes the readings of every fault at three points and wants that
// fault among those that explain them; and what tells the first two apart
// does.
func TestExplain(t *testing.T) {
	table := tableOf(t, "relay")
	const on = 1
	points := []int{table.point("aisle+"), table.point("aisle-"), table.point("R1.86")}
	for i, f := range table.Faults {
		if !f.States[on].Solved {
			continue
		}
		var readings []Reading
		for _, p := range points {
			readings = append(readings, Reading{p, f.States[on].Points[p]})
		}
		ranked := table.Explain(on, readings)
		at := slices.IndexFunc(ranked, func(s Suspect) bool { return s.Fault == i })
		if at < 0 || ranked[at].Misfit > 1 || ranked[0].Misfit > ranked[at].Misfit {
			t.Errorf("%s does not explain its own readings: %v", f.Name, ranked)
		}
		if next, gives := table.Next(on, ranked[0], ranked[1], readings); next >= 0 && math.Abs(gives[0]-gives[1]) < 0.15 {
			t.Errorf("%s and %s are told apart by %v at %s", table.Faults[ranked[0].Fault].Name, table.Faults[ranked[1].Fault].Name, gives, table.Points[next].Name)
		}
	}
	ranked := table.Explain(on, []Reading{{table.point("aisle+"), 12.4}, {table.point("aisle-"), 12.4}})
	if name := table.Faults[ranked[0].Fault].Name; name != "W4 open" && name != "G2 lost" {
		t.Errorf("12.4 V on both terminals of a load is explained by %s, want its ground", name)
	}
}
