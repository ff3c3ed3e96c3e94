package solve

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/electrical"
)

// A Standby says what is drawn while parked, and how long the battery lasts.
type Standby struct {
	// State is the parked state, -1 where none is named.
	State int
	// Added is what the drawing draws in A, Standing what the vehicle draws
	// by itself.
	Added, Standing float64
	// Days until the charge is at its floor; 0 where no capacity is given or
	// nothing draws.
	Days    float64
	Verdict calc.Verdict
	Reasons []string
}

// standby asks the calculator of that name with what the parked state draws.
func (s *Study) standby() Standby {
	out := Standby{State: -1}
	n := s.Network
	for i := range n.States {
		if n.States[i].Parked && s.Solutions[i].Solved() {
			out.State = i
		}
	}
	if out.State < 0 {
		return out
	}
	source := n.Supply()
	out.Standing = source.Standing
	out.Added = s.drain(out.State)
	if out.Added < 1e-6 { // what is computed of nothing
		out.Added = 0
	}
	if source.Capacity == 0 {
		return out
	}
	show := format.Exact
	_, result, problems := electrical.Standby.Answer([]calc.Pair{
		{Key: "battery", Value: show(source.Capacity / 3600)},
		{Key: "charge", Value: show(100 * source.Charge)},
		{Key: "floor", Value: show(100 * source.Floor)},
		{Key: "standing", Value: show(1e3 * out.Standing)},
		{Key: "added", Value: show(1e3 * out.Added)},
		{Key: "self_discharge", Value: show(n.Limits.SelfDischarge)},
		{Key: "parked", Value: show(n.Limits.Parked)},
	})
	for _, p := range problems {
		out.Verdict, out.Reasons = calc.Stop, append(out.Reasons, p.Error())
	}
	if result != nil {
		out.Verdict, out.Reasons = result.Verdict, result.Reasons
		if days := result.Get("lasts"); days.Present {
			out.Days = days.Num
		}
	}
	return out
}

// drain is what the drawing draws in a state from the first source and from
// those that are joined with it, in A, without what they feed already. What one
// battery gives another cancels out: it is no drain.
func (s *Study) drain(state int) float64 {
	n, flows := s.Network, s.Solutions[state].Flows
	with := s.Graph.Reach([]int{n.Supply().Node("+")}, func(k int) bool { return !flows[k].Open && s.Graph.Metal(k) })
	sum := 0.0
	for i := range n.Branches {
		b := &n.Branches[i]
		switch {
		case b.IsSource() && with[b.To]:
			sum += flows[i].Current
		case b.Kind == circuit.SourceKind && b.Role == circuit.Feeding && with[b.From]:
			sum -= flows[i].Current
		}
	}
	return sum
}
