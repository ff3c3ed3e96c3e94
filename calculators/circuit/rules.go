package circuit

import "baybook/calculators/calc"

// A Judgement is one thing wrong with a circuit.
type Judgement struct {
	// Rule is the name of the rule that was broken.
	Rule    string
	Verdict calc.Verdict
	// Element is the part at fault, -1 for the circuit as a whole, Entry its
	// place in the draft.
	Element, Entry int
	// State names the state in which it is so, "" where it is so in all.
	State string
	// Message says what is wrong, with its numbers; Do what to do about it.
	Message, Do string
}

// A Rule is one thing that a circuit is judged by.
type Rule struct {
	Name string
	// Doc says what is refused and why, in a sentence or two.
	Doc   string
	judge func(s *Study, say func(Judgement))
}

// Rules are all the rules, the most dangerous first.
func Rules() []Rule { return rules }

var rules = []Rule{
	{Name: "short", Doc: "In no state may a source's two terminals be joined without a load between them.", judge: judgeShort},
	{Name: "unfused", Doc: "A wire from the source has a fuse within a hand's length, and every load has one before it: a bare battery burns any wire.", judge: judgeUnfused},
	{Name: "fuse-over-wire", Doc: "The fuses before a wire may not let through more than the wire may carry: a fuse protects the wire, not the device.", judge: judgeFuseOverWire},
	{Name: "wire-burns", Doc: "A dead short at the far end of a wire must open a fuse before the wire is destroyed.", judge: judgeBurns},
	{Name: "wire-overloaded", Doc: "No wire carries more in any state than it may for good, ground wires among them.", judge: judgeOverloaded},
	{Name: "fuse-under-load", Doc: "A fuse carries at most four fifths of its rating for good, and a surge must not open it.", judge: judgeFuseUnderLoad},
	{Name: "fuse-made", Doc: "A fuse is of a rating in which its type is made, and breaks what a short can drive.", judge: judgeFuseMade},
	{Name: "drop", Doc: "What a load loses on the way there and back stays within the limit in every state, and leaves it the voltage that it needs.", judge: judgeDrop},
	{Name: "no-return", Doc: "Every load has a way from a source and a way back to it.", judge: judgeReturn},
	{Name: "reversed", Doc: "No load is connected the wrong way round.", judge: judgeReversed},
	{Name: "two-sources", Doc: "Two sources are not joined in any state: the fuller one feeds the other with all that the wire lets through.", judge: judgeTwoSources},
	{Name: "live-behind", Doc: "What lies behind a fuse is dead when the fuse is out; where another feed keeps it live, somebody will be surprised.", judge: judgeLiveBehind},
	{Name: "tap", Doc: "A fuse tap leaves its slot the room that it needs, is no larger than the slot's own fuse, and never sits on a safety circuit.", judge: judgeTap},
	{Name: "tap-turned", Doc: "A fuse tap takes its current from the feed side of its slot, or the added load runs through the vehicle's own fuse.", judge: judgeTapTurned},
	{Name: "coil-bare", Doc: "A relay's coil has something across it: switched off, it throws a pulse at whatever switches it.", judge: judgeCoilBare},
	{Name: "coil-turned", Doc: "A coil with a diode across it has its positive side on 86, or the diode is a short.", judge: judgeCoilTurned},
	{Name: "contact-over", Doc: "A contact of a relay or a connector carries no more than its rating.", judge: judgeContact},
	{Name: "shared-ground", Doc: "A device at sensor level shares no ground wire with a load of power, whose drop would be its signal.", judge: judgeSharedGround},
	{Name: "ground-stack", Doc: "At most four wires stand on one ground.", judge: judgeStack},
	{Name: "colour-twice", Doc: "One colour has one function in a drawing.", judge: judgeColours},
	{Name: "speaker-load", Doc: "The speakers on an output are a load that it bears, and bear its power.", judge: judgeSpeakers},
	{Name: "speaker-ground", Doc: "No output of an amplifier touches the ground or the supply: a bridged one dies of it.", judge: judgeSpeakerGround},
	{Name: "no-solution", Doc: "Every load can be given what it asks for, and every relay finds rest.", judge: judgeSolution},
	{Name: "standby", Doc: "Parked, the battery lasts for as long as the vehicle stands.", judge: judgeStandby},
	{Name: "wrong", Doc: "A drawing that is marked as showing a mistake shows that mistake."},
}

// RuleNames lists the names of the rules.
func RuleNames() []string {
	var names []string
	for i := range rules {
		names = append(names, rules[i].Name)
	}
	return names
}

// ruleNamed finds a rule, nil where there is none of that name.
func ruleNamed(name string) *Rule {
	for i := range rules {
		if rules[i].Name == name {
			return &rules[i]
		}
	}
	return nil
}

// judge runs every rule. A rule says one thing about one part once: the
// first state in which it is so stands for the others.
func (s *Study) judge() {
	for i := range rules {
		r := &rules[i]
		if r.judge == nil {
			continue
		}
		var said marks
		r.judge(s, func(j Judgement) {
			if !said.add(j.Element) {
				return
			}
			j.Rule, j.Entry = r.Name, -1
			if j.Element >= 0 {
				j.Entry = s.Network.Elements[j.Element].Entry
			}
			s.Judgements = append(s.Judgements, j)
		})
	}
	s.judgeWrong()
}

// judgeWrong refuses a drawing that does not show the mistake that it says it
// shows.
func (s *Study) judgeWrong() {
	for _, name := range s.Network.Wrong {
		shown := false
		for i := range s.Judgements {
			shown = shown || s.Judgements[i].Rule == name
		}
		if !shown {
			s.Judgements = append(s.Judgements, Judgement{Rule: "wrong", Verdict: calc.Stop, Element: -1, Entry: -1,
				Message: "the drawing is to show the mistake " + name + ", and that judgement is not made of it",
				Do:      "make the mistake, or take " + name + " out of wrong"})
		}
	}
}

// Meant reports a judgement of a mistake that the drawing shows on purpose.
func (s *Study) Meant(j *Judgement) bool {
	for _, name := range s.Network.Wrong {
		if name == j.Rule {
			return true
		}
	}
	return false
}

// Verdict is the gravest judgement that is not meant.
func (s *Study) Verdict() calc.Verdict {
	worst := calc.OK
	for i := range s.Judgements {
		if j := &s.Judgements[i]; !s.Meant(j) {
			worst = max(worst, j.Verdict)
		}
	}
	return worst
}
