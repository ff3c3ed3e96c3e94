package judge

import (
	"slices"
	"strings"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/circuittest"
)

// refused are circuits that differ from one with nothing wrong in one thing,
// and the one judgment that each must get.
var refused = []struct {
	name, rule, element string
	verdict             calc.Verdict
	change              []string // old, new
}{
	{"fuse far from the source", "unfused", "W1", calc.Stop, []string{"W1: {from: battery+, to: F1, size: 12 AWG, length: 15 cm", "W1: {from: battery+, to: F1, size: 12 AWG, length: 45 cm"}},
	{"load without a fuse", "unfused", "aisle", calc.Stop, []string{
		"F1: {rating: 10 A}", "F1: {rating: 10 A, from: S0}",
		"W1: {from: battery+, to: F1, size: 12 AWG, length: 15 cm", "W1: {from: battery+, to: R1.30, size: 12 AWG, length: 5 cm",
		"W3: {from: R1.87, to: aisle, size: 12 AWG, length: 4 m", "W3: {from: R1.87, to: aisle, size: 12 AWG, length: 10 cm",
		"  W2: {from: F1, to: R1.30, size: 12 AWG, length: 50 cm, colour: RD, function: feed}\n", ""}},
	{"fuse above the wire", "fuse-over-wire", "W11", calc.Stop, []string{
		"  F2: {rating: 30 A, type: E}", "  F2: {rating: 30 A, type: E}\n  F3: {rating: 15 A, from: S0}",
		"W11: {from: C1.2, to: G2, size: 20 AWG, length: 30 cm, colour: BK}", "W11: {from: F3, to: left lamp, size: 20 AWG, length: 30 cm, colour: OG}\n  W21: {from: left lamp, to: G2, size: 20 AWG, length: 30 cm, colour: BK}\n  W22: {from: C1.2, to: G2, size: 20 AWG, length: 30 cm, colour: BK}",
		"  camera: {current", "  left lamp: {current: 1 mA, type: lamp}\n  camera: {current"}},
	{"ground wire too thin", "wire-overloaded", "W14", calc.Stop, []string{"W14: {from: amp, to: G3, size: 8 AWG, length: 30 cm", "W14: {from: amp, to: G3, size: 22 AWG, length: 10 cm"}},
	{"fuse under its load", "fuse-under-load", "F1", calc.Stop, []string{"F1: {rating: 10 A}", "F1: {rating: 5 A}", "inrush: 20 A", "inrush: 8 A"}},
	{"fuse near its load", "fuse-under-load", "F1", calc.Check, []string{"F1: {rating: 10 A}", "F1: {rating: 7.5 A}", "aisle: {current: 6 A", "aisle: {current: 6.5 A"}},
	{"fuse that a surge opens", "fuse-under-load", "F1", calc.Check, []string{"inrush: 20 A, surge: 20 ms", "inrush: 60 A, surge: 100 ms"}},
	{"rating that is not made", "fuse-made", "tap", calc.Stop, []string{"tap: {rating: 2 A", "tap: {rating: 2.5 A"}},
	{"drop over the limit", "drop", "aisle", calc.Stop, []string{"W3: {from: R1.87, to: aisle, size: 12 AWG, length: 4 m", "W3: {from: R1.87, to: aisle, size: 12 AWG, length: 12 m"}},
	{"voltage under what is needed", "drop", "camera", calc.Stop, []string{"signal: yes, least: 10 V", "signal: yes, least: 12.58 V"}},
	{"load with no return", "no-return", "camera", calc.Stop, []string{"  W10: {from: camera, to: C1.2, size: 20 AWG, length: 1 m, colour: BK}\n", ""}},
	{"speaker with one wire", "no-return", "left", calc.Stop, []string{"  W17: {from: left, to: amp.1-, size: 16 AWG, length: 3 m, colour: WHBK}\n", ""}},
	{"camera the wrong way round", "reversed", "camera", calc.Stop, []string{
		"to: camera, size", "to: camera-, size", "from: camera, to: C1.2", "from: camera+, to: C1.2"}},
	{"tap without room", "tap", "tap", calc.Stop, []string{"feeds: 5 A", "feeds: 11.9 A"}},
	{"tap on a safety circuit", "tap", "tap", calc.Stop, []string{"feeds: 5 A", "feeds: 5 A, slot: safety"}},
	{"tap turned round", "tap-turned", "tap", calc.Stop, []string{"taps: slot 7", "taps: slot 7, from: slot 7.out"}},
	{"coil with nothing across it", "coil-bare", "R1", calc.Stop, []string{"suppression: diode", "suppression: none"}},
	{"coil turned round", "coil-turned", "R1", calc.Stop, []string{"to: R1.86", "to: R1.85", "from: R1.85", "from: R1.86"}},
	{"relay over its rating", "contact-over", "R1", calc.Stop, []string{"suppression: diode, rating: 20 A", "suppression: diode, rating: 5 A"}},
	{"camera on the amplifier's ground", "shared-ground", "W14", calc.Stop, []string{
		"W11: {from: C1.2, to: G2,", "W11: {from: C1.2, to: S2,", "to: G3, size: 8 AWG, length: 30 cm, colour: BK}", "to: G3, size: 8 AWG, length: 30 cm, colour: BK}",
		"W14: {from: amp, to: G3", "W24: {from: amp, to: S2, size: 8 AWG, length: 30 cm, colour: BK}\n  W14: {from: S2, to: G3", "W14: {from: S2, to: G3, size: 8 AWG, length: 30 cm", "W14: {from: S2, to: G3, size: 8 AWG, length: 3 m", "splices: [S0, S1]", "splices: [S0, S1, S2]"}},
	{"five wires on a ground", "ground-stack", "G1", calc.Check, []string{"to: G3, size", "to: G1, size",
		"  W20:", "  W21: {from: clock, to: G1, size: 20 AWG, length: 10 cm, colour: BK}\n  W22: {from: bell, to: G1, size: 20 AWG, length: 10 cm, colour: BK}\n  W20:",
		"  camera: {current", "  clock: {current: 10 mA, from: C1.1.out}\n  bell: {current: 10 mA, from: C1.1.out}\n  camera: {current"}},
	{"one colour for two things", "colour-twice", "W3", calc.Stop, []string{"colour: RDYE", "colour: RD"}},
	{"two ohms too few", "speaker-load", "amp", calc.Stop, []string{"impedance: 4 ohm, power: 60 W}\n  right", "impedance: 1.5 ohm, power: 200 W}\n  right"}},
	{"speaker on the body", "speaker-ground", "amp", calc.Stop, []string{"W17: {from: left, to: amp.1-,", "W21: {from: amp.1-, to: G3, size: 16 AWG, length: 3 m, colour: BK}\n  W17: {from: left, to: amp.1-,"}},
	{"flat in a week", "standby", "battery", calc.Stop, []string{"sleeps: 2 mA", "sleeps: 200 mA"}},
	{"splice on which nothing hangs", "unused", "S9", calc.Check, []string{"splices: [S0, S1]", "splices: [S0, S1, S9]"}},
	{"a mistake that is not shown", "wrong", "", calc.Stop, []string{"limits:", "wrong: [tap-turned]\nlimits:"}},
}

// TestRefused changes one thing of a circuit with nothing wrong, and wants
// that one judgment and no other.
func TestRefused(t *testing.T) {
	whole := circuittest.Circuits(t)["whole"]
	if got := said(Assess(circuittest.Build(t, whole))); len(got) > 0 {
		t.Fatalf("the circuit with nothing wrong is judged: %v", got)
	}
	seen := make(map[string]bool)
	for _, r := range refused {
		seen[r.rule] = true
		t.Run(r.name, func(t *testing.T) {
			text := whole
			for i := 0; i < len(r.change); i += 2 {
				if !strings.Contains(text, r.change[i]) {
					t.Fatalf("nothing to change: %s", r.change[i])
				}
				text = strings.ReplaceAll(text, r.change[i], r.change[i+1])
			}
			s := Assess(circuittest.Build(t, text))
			found := false
			for i := range s.Judgments {
				j := &s.Judgments[i]
				name := ""
				if j.Part >= 0 {
					name = s.Network.Name(j.Part)
				}
				switch {
				case j.Rule == "unused" && r.rule != "unused": // the change may leave a part over
				case j.Rule != r.rule:
					t.Errorf("judged %s too: %s", j.Rule, j.Message)
				case name == r.element && j.Verdict == r.verdict && j.Message != "" && j.Do != "":
					found = true
				}
			}
			if !found {
				t.Errorf("no %s of %s: %v", r.rule, r.element, said(s))
			}
		})
	}
	for _, rule := range RuleNames() {
		if !seen[rule] && !slices.Contains(elsewhere, rule) {
			t.Errorf("no circuit is refused for %s", rule)
		}
	}
}

// elsewhere are rules whose circuit breaks another rule too, of necessity;
// TestRefusedWith has them.
var elsewhere = []string{"short", "wire-burns", "live-behind", "no-solution", "two-sources", "wire-turned", "source-limit"}

// TestRefusedWith wants a judgment of circuits that cannot get it alone.
func TestRefusedWith(t *testing.T) {
	all := circuittest.Circuits(t)
	chatter := strings.NewReplacer("W3: {from: S1, to: start", "W3: {from: R1.87a, to: start").Replace(all["holding"])
	chatter = strings.Replace(chatter, "  W5: {from: R1.87, to: S2, size: 18 AWG, length: 10 cm, colour: BU}\n", "", 1)
	for _, r := range []struct{ name, rule, element, text string }{
		{"plus on minus", "short", "battery", strings.Replace(all["light"], "from: lamp, to: G1", "from: lamp+, to: G1", 1)},
		{"wire written the other way round", "wire-turned", "W4", strings.Replace(all["light"], "from: lamp, to: G1", "from: G1, to: lamp", 1)},
		{"thin wire behind a large fuse", "wire-burns", "W1", all["starved"]},
		{"two batteries joined", "two-sources", "leisure", strings.Replace(all["two-batteries"], "W2: {from: F2, to: S1,", "W9: {from: leisure+, to: starter+, size: 6 AWG, length: 15 cm, colour: RD}\n  W2: {from: F2, to: S1,", 1)},
		{"ring with two feeds", "live-behind", "F1", all["ring-feed"]},
		{"more power than there is", "no-solution", "inverter", all["starved"]},
		{"relay that breaks its own coil", "no-solution", "R1", chatter},
	} {
		t.Run(r.name, func(t *testing.T) {
			s := Assess(circuittest.Build(t, r.text))
			for i := range s.Judgments {
				if j := &s.Judgments[i]; j.Rule == r.rule && j.Part >= 0 && s.Network.Name(j.Part) == r.element {
					return
				}
			}
			t.Errorf("no %s of %s: %v", r.rule, r.element, said(s))
		})
	}
}

// said lists the judgments of a study.
func said(s *Assessment) []string {
	var list []string
	for i := range s.Judgments {
		list = append(list, s.Judgments[i].Rule+": "+s.Judgments[i].Message)
	}
	return list
}
