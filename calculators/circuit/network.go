package circuit

// A Network is a circuit that can be solved: every part with its values and
// its terminals on nodes.
type Network struct {
	Title    string
	Elements []Element
	// Nodes is how many nodes there are.
	Nodes    int
	Branches []Branch
	States   []State
	Limits   Limits
	Wrong    []string
	draft    *Draft
}

// A State is one position of the switches and relays.
type State struct {
	Name string
	// Parked is true for the state in which the vehicle stands and sleeps.
	Parked bool
	// closed are the switches that are closed in it, forced the relays whose
	// armature is held by the state's own word, off what is switched off.
	closed, off marks
	forced      []hold
}

// A hold is a relay whose armature a state holds.
type hold struct {
	element int
	pulled  bool
}

// Limits are what a circuit is judged by.
type Limits struct {
	// Drop is the share of the source's voltage that may be lost on the way to
	// a load and back.
	Drop float64
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
}

// A Law is how a branch carries current.
type Law uint8

const (
	Resists  Law = iota // current in proportion to voltage
	Drives              // a voltage behind a resistance
	Takes               // a constant current
	Converts            // a constant power
	Lights              // LEDs and their resistor
)

// A Branch is a way through one part, from one node to another. Most parts
// have one; a relay has three.
type Branch struct {
	Element int
	// Part names the way where the part has several: "coil", "make", "break",
	// "way 2", "supply", "rem", "output 1", "feeds".
	Part     string
	From, To int
	Law      Law
	// Ohms of a resistance, a source or an LED string's resistor; Volts of a
	// source or of the LEDs' forward voltage in sum; Amps and Watts of a load.
	Ohms, Volts, Amps, Watts float64
	// Strings of LEDs side by side.
	Strings float64
}

// leastOhms is the resistance that any metal has: less is not found in a
// vehicle, and a ring of nothing has no one answer.
const leastOhms = 1e-6

// Element finds a part by name, nil where there is none.
func (n *Network) Element(name string) *Element {
	if i := n.named(name); i >= 0 {
		return &n.Elements[i]
	}
	return nil
}

// named is the place of a part that is written under a name, the last where
// two are, -1 where there is none.
func (n *Network) named(name string) int {
	for i := len(n.Elements) - 1; i >= 0; i-- {
		if e := &n.Elements[i]; e.Name == name && e.Entry >= 0 {
			return i
		}
	}
	return -1
}

// Draft is what the network was built from.
func (n *Network) Draft() *Draft { return n.draft }

// of is the part that a branch leads through.
func (n *Network) of(b *Branch) *Element { return &n.Elements[b.Element] }

// sourceBranches lists the branches of the sources of the supply; outputs of
// amplifiers are not among them.
func (n *Network) sourceBranches() []int {
	var list []int
	for i := range n.Branches {
		if b := &n.Branches[i]; b.Law == Drives && n.of(b).Kind == Source {
			list = with(list, i)
		}
	}
	return list
}

// passes reports a branch that leads current on to something else: all but
// sources and loads, coils among them.
func (n *Network) passes(b *Branch) bool {
	return b.Law == Resists && b.Part != "coil" && b.Part != "damping" && b.Part != "rem" &&
		n.of(b).Kind != Speaker && (n.of(b).Kind != Load || n.of(b).Type == "resistor")
}
