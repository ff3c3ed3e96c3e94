package rule

import (
	"testing"
)

// twice lists sentences for a step and for the proof. Those that disagree give
// the same quantity with two numbers; the others speak of two things, of none
// in particular, or of the same number.
var twice = []struct {
	step, proof string
	disagree    bool
}{
	{"Torque to 9 Nm.", "Bolt at 12 Nm.", true},
	{"Torque the bolt to 9 Nm.", "The bolt holds at 12 Nm.", true},
	{"Tighten the M6 bolt to 9 Nm.", "The M6 bolt is at 12 Nm.", true},
	{"Tighten the bolt to 9 Nm.", "The torque of the bolt is 12 Nm.", true},
	{"Tighten the bolt to 9 Nm.", "The bolt's torque is 12 Nm.", true},
	{"Torque the lug bolt: 9 Nm.", "The bolt holds at 12 Nm.", true},
	{"Insert the fuse 10 A.", "The fuse of 15 A is in.", true},
	{"Insert the 10 A fuse.", "The fuse reads 15 A.", true},
	{"Insert the 10 A fuse.", "The fuse is 15 A.", true},
	{"Insert the 10 A blade fuse.", "The 15 A fuse is labelled.", true},
	{"Insert the 10 A fuse for the lamp.", "The 15 A lamp fuse is labelled.", true},
	{"Fit a fuse of 10 A.", "Fuse: 15 A.", true},
	{"Fit the fuse (10 A).", "The 15 A fuse is labelled.", true},
	{"Drill the 8 mm hole.", "The hole is 9 mm.", true},
	{"Drill a hole 20 mm deep.", "The hole is 30 mm deep.", true},
	{"Cut the wire to 300 mm.", "Cut the wire to 0.4 m.", true},
	{"Set the crossover to 80 Hz.", "The crossover is at 100 Hz.", true},
	{"Set the supply to 13.8 V.", "The supply is 12.6 V.", true},
	{"Leave a gap of 2 mm at the rim.", "The gap at the rim is 5 mm.", true},
	{"Keep the drop at most 100 mV.", "The drop is at most 0.2 V.", true},
	{"Fit the resistor of 330 ohm.", "The 1000 ohm resistor is warm.", true},

	{"Torque the bolt to 9 Nm.", "The bolt holds at 9.0 Nm.", false},
	{"Torque the bolt to 9 Nm.", "The bolt holds at 80 lbf·in.", false},
	{"Torque the M6 bolt to 9 Nm.", "The M8 bolt holds at 22 Nm.", false},
	{"Torque the foot bolt to 9 Nm and the lid bolt to 3 Nm.", "The lid bolt holds at 3 Nm.", false},
	{"Torque the foot bolt to 9 Nm.", "The lid bolt holds at 3 Nm.", false},
	{"Insert the 10 A lamp fuse.", "The 15 A heater fuse is labelled.", false},
	{"Insert the 10 A fuse for the lamp.", "The 15 A fuse for the heater is labelled.", false},
	{"Insert the 10 A and the 15 A fuse.", "The 15 A fuse is labelled.", false},
	{"Insert the 10 A fuse.", "The fuse carries 6 A.", false},
	{"Insert the 10 A fuse.", "A 30 A fuse melts the wire.", false},
	{"Insert the 10 A fuse.", "No 15 A fuse is in the holder.", false},
	{"Insert the 10 A fuse, not the 15 A fuse.", "The 10 A fuse is in.", false},
	{"Insert the 10 A fuse.", "The fuse holds 0.1 V.", false},
	{"Fit a fuse of about 10 A.", "The fuse is 15 A.", false},
	{"Cut the wire to 300 mm.", "Strip the wire to 8 mm.", false},
	{"Cut the wire to 300 mm.", "The wire stands 8 mm from the edge.", false},
	{"Drill the 8 mm hole.", "The hole is 20 mm deep.", false},
	{"Drill the hole 20 mm from the edge.", "The hole is 8 mm wide.", false},
	{"Slide on the tube of 6.4 mm.", "The tube stops at 3.2 mm.", false},
	{"Hold the supply at 11 to 15 V.", "The supply is 12.6 V.", false},
	{"Where the run is short, fit the 10 A fuse.", "Where the cable is thick, the fuse is 15 A.", false},
	{"Keep the drop at most 100 mV.", "The drop is at least 2 mV.", false},
	{"Wait 10 min.", "Wait 2 min.", false},
}

func TestNumbersDisagree(t *testing.T) {
	for _, pair := range twice {
		fsys, history := exampleBook("## Steps\n\n1. " + pair.step + "\n\n## Prove it\n\n- " + pair.proof + "\n")
		found := 0
		for _, f := range checkFS(t, fsys, history) {
			if f.Rule == numbersDisagree.Name {
				found++
			}
		}
		if want := map[bool]int{true: 1}[pair.disagree]; found != want {
			t.Errorf("%d findings, want %d: %s — %s", found, want, pair.step, pair.proof)
		}
	}
}

// TestNumbersDisagreeInLists compares tools and materials with the text.
func TestNumbersDisagreeInLists(t *testing.T) {
	for tools, want := range map[string]int{"[key, 3 mm bit]": 1, "[key, 3.5 mm bit]": 0, "[key, 3 mm bit, 3.5 mm bit]": 0} {
		fsys, history := exampleBook("tools: " + tools + "\n\n## Steps\n\n1. Open the lid with the 3.5 mm bit.\n")
		found := 0
		for _, f := range checkFS(t, fsys, history) {
			if f.Rule == numbersDisagree.Name {
				found++
			}
		}
		if found != want {
			t.Errorf("%d findings for tools %s, want %d", found, tools, want)
		}
	}
}
