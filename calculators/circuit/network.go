package circuit

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/intset"
)

// A Network is a circuit that can be solved: every part with its values and
// its terminals on nodes. Nothing changes it once it is built, so goroutines
// may share it.
type Network struct {
	Title string
	Parts []Part
	// Nodes is how many nodes there are.
	Nodes    int
	Branches []Branch
	States   []State
	Limits   Limits
	// Wrong names the rules that the drawing breaks on purpose.
	Wrong []string
	draft *Draft
}

// A State is one position of the switches and relays.
type State struct {
	Name string
	// Parked is true for the state in which the vehicle stands and sleeps.
	Parked bool
	// Lasts is how long the state lasts at most, in s, where it is a short one
	// such as cranking or a stall; 0 for one that may last.
	Lasts float64
	// Closed are the switches that are closed in it, Off the loads that are
	// switched off, Forced the relays whose armature the state holds.
	Closed, Off intset.Set
	Forced      []Forced
	// Positions are the contacts that are closed of switches with several.
	Positions []Contact
	// Running are the alternators that run, Open the fuses that are out and the
	// breakers that are open.
	Running, Open intset.Set
	// Draws are the loads that draw another current in this state.
	Draws []Draw
}

// A Contact is one contact of a switch with several.
type Contact struct{ Switch, Number int }

// A Draw is what a load draws in one state: A, W or ohm, of which one is given.
type Draw struct {
	Load              int // index of the part
	Amps, Watts, Ohms float64
}

// IsClosed reports whether a contact of a switch is closed.
func (s *State) IsClosed(b *Branch) bool {
	if b.Role != Position {
		return s.Closed.Has(b.Part)
	}
	for _, c := range s.Positions {
		if c == (Contact{b.Part, b.Number}) {
			return true
		}
	}
	return false
}

// Forced is a relay whose armature a state holds.
type Forced struct {
	Relay     int // index of the part
	Energized bool
}

// Forces reports whether the state holds the armature of a relay.
func (s *State) Forces(relay int) bool {
	for _, f := range s.Forced {
		if f.Relay == relay {
			return true
		}
	}
	return false
}

// Limits are what a circuit is judged by.
type Limits struct {
	// Drop is what of the source's voltage may be lost on the way to a load and
	// back.
	Drop DropLimit
	// Ambient is the hottest air around the wires, Temperature that of the
	// conductors when drops are computed, °C.
	Ambient, Temperature float64
	// Bare and Covered are how far from the source a wire may run without a
	// fuse, in m: bare, and in a sheath of its own.
	Bare, Covered float64
	// Parked is the longest time parked, in days.
	Parked float64
	// SelfDischarge is the battery's own loss, % a month.
	SelfDischarge float64
	// Allowance is what is added to a wire's length when it is cut, as a share,
	// and Spare what is added at each end in m.
	Allowance, Spare float64
}

// A DropLimit is a limit of voltage drop: a share of the supply, or volts
// where they are given. The zero value is none.
type DropLimit struct{ Share, Volts float64 }

// IsZero reports whether no limit is given.
func (l DropLimit) IsZero() bool { return l == DropLimit{} }

// Of is the limit in V at a supply in V.
func (l DropLimit) Of(supply float64) float64 {
	if l.Volts > 0 {
		return l.Volts
	}
	return l.Share * supply
}

// String writes the limit as it is given: "3 %", "0.5 V".
func (l DropLimit) String() string {
	if l.Volts > 0 {
		return calc.FormatUnit(l.Volts, 3, "V")
	}
	return calc.FormatUnit(100*l.Share, 3, "%")
}

// Part finds a part by name, nil where there is none.
func (n *Network) Part(name string) Part {
	if i := n.Index(name); i >= 0 {
		return n.Parts[i]
	}
	return nil
}

// Index is the index of the part with a name: the last one where two share it,
// -1 where none has it.
func (n *Network) Index(name string) int {
	for i := len(n.Parts) - 1; i >= 0; i-- {
		if p := n.Parts[i].Basics(); p.Name == name && p.Entry >= 0 {
			return i
		}
	}
	return -1
}

// Name is the name of the part with an index.
func (n *Network) Name(part int) string { return n.Parts[part].Basics().Name }

// Names lists parts by their indices: "F1", "F1 and F2", "F1, F2 and F3".
func (n *Network) Names(parts []int) string {
	s := ""
	for i, p := range parts {
		switch {
		case i == 0:
		case i == len(parts)-1:
			s += " and "
		default:
			s += ", "
		}
		s += n.Name(p)
	}
	return s
}

// EndName names a terminal as a person writes it: "lamp+", "F1.out", "C1.2",
// "G1".
func (n *Network) EndName(e End) string {
	name := n.Name(e.Part)
	switch n.Parts[e.Part].(type) {
	case *Splice, *Ground:
		return name
	case *Connector:
		way, _, _ := strings.Cut(e.Pin, ".")
		return name + "." + way
	case *Source, *Load, *LEDs, *Speaker:
		return name + e.Pin
	}
	if e.Pin == "+" || e.Pin == "-" {
		return name + e.Pin
	}
	return name + "." + e.Pin
}

// Draft is what the network was built from.
func (n *Network) Draft() *Draft { return n.draft }

// First is the index of the first part of a kind, -1 where there is none.
func (n *Network) First(k Kind) int {
	for i := range n.Parts {
		if n.Parts[i].Basics().Kind == k {
			return i
		}
	}
	return -1
}

// Supply is the first source; every network has one.
func (n *Network) Supply() *Source { return n.Parts[n.First(SourceKind)].(*Source) }

// Attachments counts the terminals on every node.
func (n *Network) Attachments() []int {
	count := make([]int, n.Nodes)
	for _, p := range n.Parts {
		for _, pin := range p.Basics().Pins {
			count[pin.Node]++
		}
	}
	return count
}
