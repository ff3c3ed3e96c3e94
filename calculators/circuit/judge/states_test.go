package judge

import (
	"slices"
	"strings"
	"testing"

	"baybook/calculators/circuit/circuittest"
)

// rulesOf are the names of the rules that a circuit breaks.
func rulesOf(a *Assessment) []string {
	var names []string
	for i := range a.Judgments {
		names = append(names, a.Judgments[i].Rule)
	}
	return names
}

const cranking = `
sources: {battery: {volts: 12.6, internal: 5 mohm}}
loads: {starter: {current: 150 A, type: motor, drop: 1 V}}
fuses: {main: {rating: 100 A, type: bolt-down, from: battery+}}
wires:
  W1: {from: main, to: starter, size: 6 AWG, length: 1 m, colour: RD}
  W2: {from: starter, to: battery-, size: 6 AWG, length: 50 cm, colour: BK}
states: {crank: {%}}
`

// TestShortState: 150 A overload 6 AWG (13.3 mm2, 112 A) and a fuse of 100 A
// for good. For 2 s the wire withstands it: (87.6 A·√s/mm2 × 13.3 mm2)² / (150
// A)² is 60 s. Type bolt-down opens at 1.5 times its rating after some 13 s at
// the soonest, so that it may open within 30 s and not within 2 s.
func TestShortState(t *testing.T) {
	for _, w := range []struct {
		keys string
		want []string
	}{
		{"", []string{"wire-overloaded", "fuse-under-load"}},
		{"lasts: 2 s", nil},
		{"lasts: 30 s", []string{"fuse-under-load"}},
		{"lasts: 90 s", []string{"fuse-under-load", "wire-overloaded"}},
	} {
		got := rulesOf(Assess(circuittest.Build(t, strings.Replace(cranking, "%", w.keys, 1))))
		for _, rule := range []string{"wire-overloaded", "fuse-under-load"} {
			if slices.Contains(got, rule) != slices.Contains(w.want, rule) {
				t.Errorf("%q is judged %v, want %v", w.keys, got, w.want)
			}
		}
	}
}

// TestDropLimitInVolts: the starter loses about 0.4 V on its way.
func TestDropLimitInVolts(t *testing.T) {
	for limit, over := range map[string]bool{"1 V": false, "200 mV": true, "1 %": true, "10 %": false} {
		got := rulesOf(Assess(circuittest.Build(t, strings.NewReplacer("drop: 1 V", "drop: "+limit, "{%}", "{}").Replace(cranking))))
		if slices.Contains(got, "drop") != over {
			t.Errorf("with a limit of %s: judged %v", limit, got)
		}
	}
}

// TestJoinedBatteries: two batteries that are joined are right where each end
// has its fuse, and what one gives the other is no drain on them.
func TestJoinedBatteries(t *testing.T) {
	text := strings.Replace(circuittest.Circuits(t)["two-batteries"], "volts: 12.6, internal: 8 mohm", "volts: 12.6, internal: 8 mohm, capacity: 60 Ah", 1)
	a := Assess(circuittest.Build(t, text+"\nstates: {key off: {off: [heater]}}\n"))
	if slices.Contains(rulesOf(a), "two-sources") {
		t.Errorf("judged %v", said(a))
	}
	if a.Standby.Added > 1e-6 {
		t.Errorf("%v A are drained parked, and nothing but the other battery takes them", a.Standby.Added)
	}
	takes := 0
	for i := range a.Network.Branches {
		if a.Network.Branches[i].IsSource() && a.Solutions[0].Flows[i].Current < -1 {
			takes++
		}
	}
	if takes != 1 {
		t.Errorf("%d batteries take current, want one", takes)
	}
}

// TestLugsOfOnePoint counts what is bolted to one point under two names.
func TestLugsOfOnePoint(t *testing.T) {
	var b strings.Builder
	b.WriteString("sources: {B: {volts: 12.6}}\ngrounds: {G1: {point: sill}, G2: {point: sill}}\nfuses: {F: {rating: 5 A, from: B+}}\nloads:\n")
	for _, name := range []string{"a", "b", "c", "d"} {
		b.WriteString("  " + name + ": {current: 10 mA, from: F}\n")
	}
	b.WriteString("wires:\n  W0: {from: B-, to: G1, size: 4 AWG, length: 40 cm, colour: BK}\n")
	for i, name := range []string{"a", "b", "c", "d"} {
		b.WriteString("  W" + name + ": {from: " + name + ", to: G" + string(rune('1'+i%2)) + ", size: 18 AWG, length: 40 cm, colour: BK}\n")
	}
	if got := rulesOf(Assess(circuittest.Build(t, b.String()))); !slices.Contains(got, "ground-stack") {
		t.Errorf("five lugs on one point under two names are judged %v", got)
	}
}

// TestPointOfNoGround tells a point under body: that is typed wrongly.
func TestPointOfNoGround(t *testing.T) {
	a := Assess(circuittest.Build(t, circuittest.Circuits(t)["light"]+"\nbody: {shell: {from: rear rail, to: batery tray}}\n"))
	for i := range a.Judgments {
		if j := &a.Judgments[i]; j.Rule == "unused" && strings.Contains(j.Message, "batery tray") && strings.Contains(j.Do, "did you mean battery tray?") {
			return
		}
	}
	t.Errorf("judged %v", said(a))
}
