package circuit

import (
	"strconv"

	"baybook/calculators/circuit/intset"
)

// A Law says how the current of a branch depends on its voltage.
type Law uint8

const (
	Resistance    Law = iota // current in proportion to voltage
	VoltageSource            // a voltage behind a resistance
	CurrentLoad              // a constant current
	PowerLoad                // a constant power
	LEDString                // LEDs and their resistor, or a diode
	Regulated                // a voltage behind a resistance, from no current up to a largest one
)

// A Role says which way through its part a branch is.
type Role uint8

const (
	Through      Role = iota // the only way, or the main one
	Feeding                  // what a source or a slot feeds already
	Coil                     // a relay from 86 to 85
	CoilDamping              // the resistor across a coil
	MakeContact              // a relay from 30 to 87
	BreakContact             // a relay from 30 to 87a
	Way                      // a way of a connector
	SupplyInput              // an amplifier from + to -
	RemoteInput              // its switch-on lead
	Output                   // one of its outputs
	Position                 // a contact of a switch that has several
	Converted                // the output of a converter
)

// roleNames are the roles as tables and JSON have them.
var roleNames = [...]string{Through: "", Feeding: "feeds", Coil: "coil", CoilDamping: "damping", MakeContact: "make", BreakContact: "break",
	Way: "way", SupplyInput: "supply", RemoteInput: "rem", Output: "output", Position: "way", Converted: "output"}

// A Branch is a way through one part, from one node to another. Most parts
// have one; a relay has three.
type Branch struct {
	// Part is the index of the part, Kind its kind.
	Part int
	Kind Kind
	Role Role
	// Number counts the ways of a connector or switch and the outputs of an amplifier
	// from 1, 0 for every other branch.
	Number   int
	From, To int
	Law      Law
	// Ohms of a resistance, a source or an LED string's resistor; Volts of a
	// source or of the LEDs' forward voltage in sum; Amps and Watts of a load.
	Ohms, Volts, Amps, Watts float64
	// Strings of LEDs side by side.
	Strings float64
	// Floor is the voltage in V under which a load of constant current or power
	// is a resistance: half of what feeds it.
	Floor float64
}

// Label names the way where the part has several: "coil", "way 2"; "" where
// it has one.
func (b *Branch) Label() string {
	if b.Number > 0 {
		return roleNames[b.Role] + " " + strconv.Itoa(b.Number)
	}
	return roleNames[b.Role]
}

// Of is the part that a branch leads through.
func (n *Network) Of(b *Branch) Part { return n.Parts[b.Part] }

// NameOf is the name of the part that a branch leads through.
func (n *Network) NameOf(b *Branch) string { return n.Name(b.Part) }

// SourceBranches lists the branches of the sources of the supply; outputs of
// amplifiers are not among them.
func (n *Network) SourceBranches() []int {
	var list []int
	for i := range n.Branches {
		if n.Branches[i].IsSource() {
			list = intset.Append(list, i)
		}
	}
	return list
}

// IsSource reports a branch that is a source of the supply.
func (b *Branch) IsSource() bool {
	return b.Law == VoltageSource && b.Kind == SourceKind || b.Law == Regulated
}

// Drives reports a branch with a voltage of its own: a source or an output of
// an amplifier.
func (b *Branch) Drives() bool { return b.Law == VoltageSource || b.Law == Regulated }

// IsFuse reports whether a branch is a fuse element.
func (b *Branch) IsFuse() bool { return b.Kind == FuseKind && b.Role == Through }

// Plus and Minus list the nodes of the terminals of the sources of the supply.
func (n *Network) Plus() []int {
	var list []int
	for _, i := range n.SourceBranches() {
		list = intset.Append(list, n.Branches[i].To)
	}
	return list
}

func (n *Network) Minus() []int {
	var list []int
	for _, i := range n.SourceBranches() {
		list = intset.Append(list, n.Branches[i].From)
	}
	return list
}

// Pushes reports a branch that is a feed of its own: one that drives, and that
// is no alternator, which hangs on the feed of a battery.
func (b *Branch) Pushes() bool { return b.Drives() && b.Kind != AlternatorKind }

// Passes reports a branch that leads current on to something else: all but
// sources and loads, coils among them.
func (n *Network) Passes(b *Branch) bool {
	if b.Kind == DiodeKind {
		return true
	}
	if b.Law != Resistance || b.Role == Coil || b.Role == CoilDamping || b.Role == RemoteInput || b.Kind == SpeakerKind {
		return false
	}
	return b.Kind != LoadKind || DemandOf(n.Of(b)) == nil
}

// IsMetal reports whether a branch is bare metal: wire, fuse, contact, joint,
// body.
func (n *Network) IsMetal(b *Branch) bool { return b.Kind != LoadKind && n.Passes(b) }

// Draws reports whether a load gets its supply through the branch.
func (n *Network) Draws(b *Branch) bool {
	return !b.Drives() && b.Role != RemoteInput && DemandOf(n.Of(b)) != nil
}
