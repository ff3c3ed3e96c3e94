package circuit

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/electrical"
)

// judgeTwoSources finds states in which metal joins two sources.
func judgeTwoSources(s *Study, say func(Judgement)) {
	n := s.Network
	sources := n.sourceBranches()
	for _, set := range s.sets {
		if set.state < 0 {
			continue
		}
		metal := func(k int) bool { return !set.open[k] && s.graph.metal(k) }
		for i, a := range sources {
			plus := s.graph.reach([]int{n.Branches[a].To}, metal)
			minus := s.graph.reach([]int{n.Branches[a].From}, metal)
			for _, b := range sources[i+1:] {
				other := &n.Branches[b]
				if !plus[other.To] || !minus[other.From] {
					continue
				}
				passes := math.Abs(s.Solutions[set.state].Flows[b].Current)
				say(Judgement{Verdict: calc.Stop, Element: other.Element, State: set.name,
					Message: n.of(&n.Branches[a]).Name + " and " + n.of(other).Name + " are joined in the state " + set.name + "; " + amps(passes) + " passes through " + n.of(other).Name,
					Do:      "put a relay or another isolator between them that is open in this state"})
			}
		}
	}
}

// judgeLiveBehind says which fuses do not make dead what is behind them.
func judgeLiveBehind(s *Study, say func(Judgement)) {
	for _, b := range s.Blown {
		if len(b.Live) > 0 {
			e := &s.Network.Elements[b.Fuse]
			say(Judgement{Verdict: calc.Check, Element: b.Fuse,
				Message: "with " + e.Name + " out, what is behind it stays live through " + s.Network.names(b.Live),
				Do:      "say so on the fuse label, and pull both before work"})
		}
	}
}

// judgeTap asks the calculator of fuse taps about every tap.
func judgeTap(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e := n.of(b)
		if e.Kind != Fuse || b.Part != "" || e.Taps == "" {
			continue
		}
		slot := n.Element(e.Taps)
		if calc.Over(e.Rating, slot.Rating) {
			say(Judgement{Verdict: calc.Stop, Element: b.Element, Message: e.Name + " of " + amps(e.Rating) + " is larger than the " + amps(slot.Rating) + " of its slot " + slot.Name,
				Do: "take a tap fuse for the new wire, no larger than the slot's own"})
			continue
		}
		added, _ := s.most(i)
		_, result, problems := electrical.FuseTap.Answer([]calc.Pair{
			{Key: "slot_fuse", Value: decimal(slot.Rating)},
			{Key: "existing", Value: decimal(math.Min(s.existing(slot, e, added), 40))},
			{Key: "added", Value: decimal(math.Max(added, 0.01))},
			{Key: "wire", Value: decimal(s.thinnestBehind(i)*1e6) + "mm2"},
			{Key: "circuit", Value: slot.Slot},
		})
		for _, p := range problems {
			say(Judgement{Verdict: calc.Check, Element: b.Element, Message: e.Name + " cannot be judged as a fuse tap: " + p.Error(), Do: "judge its room by hand"})
		}
		if result != nil && result.Verdict != calc.OK {
			say(Judgement{Verdict: result.Verdict, Element: b.Element,
				Message: e.Name + " on " + slot.Name + ": " + strings.Join(result.Reasons, "; "), Do: "take another slot, or a relay fed from the battery"})
		}
	}
}

// existing is what a slot carries besides a tap: what is measured there, and
// what the drawing hangs on it.
func (s *Study) existing(slot, tap *Element, added float64) float64 {
	through := 0.0
	for i := range s.Network.Branches {
		if b := &s.Network.Branches[i]; s.Network.of(b) == slot && b.Part == "" {
			through, _ = s.most(i)
		}
	}
	if turned(slot, tap) {
		through -= added
	}
	return math.Max(math.Max(through, 0), slot.Feeds)
}

// turned reports a tap that hangs on the load side of its slot.
func turned(slot, tap *Element) bool { return tap.node("in") == slot.node("out") }

// thinnestBehind is the area in m2 of the thinnest wire between a fuse and
// the next; 18 AWG where there is none.
func (s *Study) thinnestBehind(fuse int) float64 {
	n := s.Network
	b := &n.Branches[fuse]
	reach := s.graph.reach([]int{b.To}, func(k int) bool { return k != fuse && s.graph.metal(k) && n.of(&n.Branches[k]).Kind != Fuse })
	thinnest := math.Inf(1)
	for i := range n.Branches {
		if w := n.of(&n.Branches[i]); w.Kind == Wire && !w.Vehicle && reach[n.Branches[i].From] {
			thinnest = math.Min(thinnest, copperArea(w))
		}
	}
	if math.IsInf(thinnest, 1) {
		return calc.AWGArea(18) * 1e-6
	}
	least, most := calc.AWGArea(26)*1e-6, calc.AWGArea(-3)*1e-6
	return math.Min(math.Max(thinnest, least), most)
}

// judgeTapTurned finds taps on the load side of their slot.
func judgeTapTurned(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range n.Elements {
		e := &n.Elements[i]
		if e.Kind != Fuse || e.Taps == "" {
			continue
		}
		slot := n.Element(e.Taps)
		switch {
		case turned(slot, e):
			say(Judgement{Verdict: calc.Stop, Element: i, Message: e.Name + " hangs on the load side of " + slot.Name + ": the added load runs through the vehicle's own fuse and can take its circuit down",
				Do: "turn the tap round, its single leg on the side that is live with the fuse out"})
		case e.node("in") != slot.node("in"):
			say(Judgement{Verdict: calc.Stop, Element: i, Message: e.Name + " is said to tap " + slot.Name + " and is not on its slot",
				Do: "take out from:, or write from: " + slot.Name + ".in"})
		}
	}
}

// judgeCoilBare finds coils with nothing across them.
func judgeCoilBare(s *Study, say func(Judgement)) {
	for i := range s.Network.Elements {
		if e := &s.Network.Elements[i]; e.Kind == Relay && e.Suppression == "none" && !e.Vehicle {
			say(Judgement{Verdict: calc.Stop, Element: i, Message: "nothing is across the coil of " + e.Name + "; switched off, it throws a pulse of tens of volts at its trigger",
				Do: "take a relay with a diode or a resistor inside, or fit a diode with its band to 86, and say suppression: diode"})
		}
	}
}

// judgeCoilTurned finds coils whose diode conducts.
func judgeCoilTurned(s *Study, say func(Judgement)) {
	n := s.Network
	for state, sol := range s.Solutions {
		for i := range n.Branches {
			b := &n.Branches[i]
			e := n.of(b)
			if b.Part == "coil" && (e.Suppression == "diode" || e.Suppression == "zener") && sol.Flows[i].Drop < -0.01*n.supply() {
				say(Judgement{Verdict: calc.Stop, Element: b.Element, State: n.States[state].Name,
					Message: "85 of " + e.Name + " is positive in the state " + n.States[state].Name + ": its diode shorts the trigger",
					Do:      "exchange 85 and 86"})
			}
		}
	}
}

// judgeContact compares contacts with their rating.
func judgeContact(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e := n.of(b)
		if e.Rating == 0 || e.Kind != Connector && (e.Kind != Relay || b.Part == "coil" || b.Part == "damping") {
			continue
		}
		if carries, state := s.most(i); calc.Over(carries, e.Rating) {
			say(Judgement{Verdict: calc.Stop, Element: b.Element, State: n.States[state].Name,
				Message: "the " + b.Part + " of " + e.Name + " carries " + amps(carries) + " in the state " + n.States[state].Name + ", more than its " + amps(e.Rating),
				Do:      "take a larger one, or divide the load"})
		}
	}
}

// judgeColours finds a colour with two functions. What returns to the source
// is ground where nothing else is said.
func judgeColours(s *Study, say func(Judgement)) {
	n := s.Network
	var first marks // the wires that have a colour first
	function := func(i int) string {
		e := &n.Elements[i]
		if e.Function != "" {
			return e.Function
		}
		if s.returns(e) {
			return "ground"
		}
		return ""
	}
	for i := range n.Elements {
		e := &n.Elements[i]
		if e.Kind != Wire || e.Vehicle || function(i) == "" {
			continue
		}
		other := -1
		for _, k := range first {
			if n.Elements[k].Colour == e.Colour {
				other = k
			}
		}
		switch {
		case other < 0:
			first.add(i)
		case !calc.SameWord(function(i), function(other)):
			say(Judgement{Verdict: calc.Stop, Element: i,
				Message: e.Colour + " is " + function(i) + " in " + e.Name + " and " + function(other) + " in " + n.Elements[other].Name,
				Do:      "give one of them another colour, or a stripe"})
		}
	}
}

// returns reports a wire on the way back to the source in every setting.
func (s *Study) returns(e *Element) bool {
	for _, set := range s.sets {
		if set.feed[e.Pins[0].Node] || !set.ret[e.Pins[0].Node] {
			return false
		}
	}
	return true
}
