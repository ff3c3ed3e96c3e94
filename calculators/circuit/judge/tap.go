package judge

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
	"baybook/calculators/electrical"
)

var tap = Rule{Name: "tap", judge: judgeTap}

var tapManual = Manual{
	Rule:  "tap",
	Firm:  true,
	Title: "A fuse tap leaves its slot the room that it needs",
	Why: `It is judged by the calculator fuse-tap: what the slot feeds already and what
is added stay under four fifths of the slot's fuse, the tap's fuse is no larger
than the slot's own, and a safety circuit is never tapped.`,
	Good: `sources:
  battery: {volts: 12.6, internal: 8 mohm}
fuses:
  slot 12: {rating: 10 A, feeds: 4 A, vehicle: yes, from: battery+}
  tap: {rating: 2 A, taps: slot 12}
loads:
  camera: {current: 300 mA}
wires:
  W1: {from: tap, to: camera, size: 18 AWG, length: 3 m, colour: YE}
  W2: {from: camera, to: battery-, size: 18 AWG, length: 3 m, colour: BK}
`,
	Mistake: []string{
		`  slot 12: {rating: 10 A, feeds: 4 A, vehicle: yes, from: battery+}
`,
		`  slot 12: {rating: 10 A, feeds: 7.9 A, vehicle: yes, from: battery+}
`,
	},
}

// judgeTap asks the calculator of fuse taps about every tap.
func judgeTap(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e, ok := n.Of(b).(*circuit.Fuse)
		if !ok || b.Role != circuit.Through || e.Taps == "" {
			continue
		}
		slot := n.Part(e.Taps).(*circuit.Fuse)
		if calc.Over(e.Rating, slot.Rating) {
			say(Judgment{Verdict: calc.Stop, Part: b.Part, Message: e.Name + " of " + format.Amps(e.Rating) + " is larger than the " + format.Amps(slot.Rating) + " of its slot " + slot.Name,
				Do: "take a tap fuse for the new wire, no larger than the slot's own"})
			continue
		}
		added, _ := s.Peak(i)
		_, result, problems := electrical.FuseTap.Answer([]calc.Pair{
			{Key: "slot_fuse", Value: format.Exact(slot.Rating)},
			{Key: "existing", Value: format.Exact(math.Min(existing(s, slot, e, added), 40))},
			{Key: "added", Value: format.Exact(math.Max(added, 0.01))},
			{Key: "wire", Value: format.Exact(thinnestBehind(s, i)*1e6) + "mm2"},
			{Key: "circuit", Value: slot.Slot},
		})
		for _, p := range problems {
			say(Judgment{Verdict: calc.Check, Part: b.Part, Message: e.Name + " cannot be judged as a fuse tap: " + p.Error(), Do: "judge its room by hand"})
		}
		if result != nil && result.Verdict != calc.OK {
			say(Judgment{Verdict: result.Verdict, Part: b.Part,
				Message: e.Name + " on " + slot.Name + ": " + strings.Join(result.Reasons, "; "), Do: "take another slot, or a relay fed from the battery"})
		}
	}
}

// existing is what a slot carries besides a tap: what is measured there, and
// what the drawing hangs on it.
func existing(s *solve.Study, slot, tap *circuit.Fuse, added float64) float64 {
	through := 0.0
	for i := range s.Network.Branches {
		if b := &s.Network.Branches[i]; s.Network.Of(b) == slot && b.Role == circuit.Through {
			through, _ = s.Peak(i)
		}
	}
	if turned(slot, tap) {
		through -= added
	}
	return math.Max(math.Max(through, 0), slot.Feeds)
}

// thinnestBehind is the area in m2 of the thinnest wire between a fuse and
// the next; 18 AWG where there is none.
func thinnestBehind(s *solve.Study, fuse int) float64 {
	n := s.Network
	b := &n.Branches[fuse]
	reach := s.Graph.Reach([]int{b.To}, func(k int) bool { return k != fuse && s.Graph.Metal(k) && n.Branches[k].Kind != circuit.FuseKind })
	thinnest := math.Inf(1)
	for i := range n.Branches {
		if w, ok := n.Of(&n.Branches[i]).(*circuit.Wire); ok && !w.Vehicle && reach[n.Branches[i].From] {
			thinnest = math.Min(thinnest, w.CopperArea())
		}
	}
	if math.IsInf(thinnest, 1) {
		return calc.AWGArea(18) * 1e-6
	}
	least, most := calc.AWGArea(26)*1e-6, calc.AWGArea(-3)*1e-6
	return math.Min(math.Max(thinnest, least), most)
}
