package circuit

// A Part is one component of a circuit: a *Source, a *Fuse and so on. All
// numbers are in SI units, shares in parts of one, temperatures in °C. Build
// makes the parts; nothing changes them afterwards, so goroutines may share
// them.
type Part interface {
	// Basics is what every part has.
	Basics() *Base
}

// A Base is what every part has: its name and its terminals.
type Base struct {
	Kind Kind
	Name string
	// Entry is the part's place in the draft, -1 for metal of the body that
	// was taken for granted.
	Entry int
	// Vehicle is true for what the vehicle already has: nothing to buy.
	Vehicle bool
	// Label is what stands beside the name in the drawing, Harness the harness
	// that the part belongs to; "" for none.
	Label, Harness string
	Pins           []Pin
}

// Basics returns the base itself.
func (b *Base) Basics() *Base { return b }

// A Pin is a terminal of a part and the node that it lies on.
type Pin struct {
	Name string
	Node int
}

// Pin finds a terminal by name, nil where the part has none of that name.
func (b *Base) Pin(name string) *Pin {
	for i := range b.Pins {
		if b.Pins[i].Name == name {
			return &b.Pins[i]
		}
	}
	return nil
}

// Node is the node of a terminal that the class is known to have.
func (b *Base) Node(pin string) int { return b.Pin(pin).Node }

// Word names the sort of part: "fuse".
func (b *Base) Word() string { return class(b.Kind).Word }

// A Source is a battery or another supply.
type Source struct {
	Base
	// Volts is its open-circuit voltage, Internal its resistance in ohm.
	Volts, Internal float64
	// Feeds is what it feeds already with the key on, Standing what the
	// vehicle draws parked, in A.
	Feeds, Standing float64
	// Capacity in A·s, 0 where it is not given; Charge when parked and Floor,
	// the lowest charge accepted, as shares of it.
	Capacity, Charge, Floor float64
}

// An Alternator holds its voltage up to its rated current in the states in
// which it runs.
type Alternator struct {
	Base
	Volts, Ohms, Amps float64
}

// A Converter feeds its output from its input. The output holds its voltage up
// to its rated current; the input draws what that takes, and its own losses.
type Converter struct {
	Base
	Demand
	Volts, Ohms, Amps float64 // of the output
	Efficiency        float64 // output power by input power, the idle power aside
	Idle              float64 // W that it uses itself while it works
	Isolated          bool    // - and out- are apart
}

// A Diode lets current through from in to out.
type Diode struct {
	Base
	Forward, Ohms float64
	Rating        float64 // A, 0 where it is not given
}

// A Fuse is a fuse, a circuit breaker or a fuse tap.
type Fuse struct {
	Base
	Rating float64 // A
	Type   string
	// Taps names the fuse whose slot it shares, "" for none.
	Taps string
	// Slot is what the vehicle uses the slot for; Feeds is what the slot feeds
	// already, in A.
	Slot  string
	Feeds float64
	// Ohms is the cold resistance as given, below 0 where it is not.
	Ohms float64
}

// A Switch is a contact that the states open and close, or several contacts
// with one inlet.
type Switch struct {
	Base
	Type   string
	Ways   int     // contacts
	Ohms   float64 // closed
	Rating float64 // A of a contact, 0 where it is not given
}

// A Relay has a coil from 86 to 85 and a contact from 30 to 87 or 87a.
type Relay struct {
	Base
	Coil        float64 // ohm
	Suppression string  // what is across the coil
	Damping     float64 // ohm, where that is a resistor
	PullIn      float64 // V, the lowest that closes it
	Rating      float64 // A of the contact, 0 where it is not given
	Ohms        float64 // of a closed contact
}

// A Connector is a plug and its socket.
type Connector struct {
	Base
	Model  string // what the maker calls it
	Ways   int
	Ohms   float64   // of one mated contact
	Each   []float64 // ohm of each way in turn, where they differ
	Rating float64   // A of one contact, 0 where it is not given
}

// Demand is what a load asks of its supply.
type Demand struct {
	Current float64 // A, 0 where another value is given
	Power   float64 // W, the same
	// Inrush is the surge in A when it is switched on, Surge how long that
	// lasts in s.
	Inrush, Surge float64
	Sleeps        float64 // A asleep or switched off
	Least         float64 // V, the lowest that it works at
	// Drop is its own limit of voltage drop, zero where the circuit's holds.
	Drop DropLimit
}

// A Load is whatever uses current: lamp, motor, device, resistor.
type Load struct {
	Base
	Demand
	Ohms float64
	Type string
	// Count is how many stand there side by side; Current, Power, Ohms, Inrush
	// and Sleeps are of all of them.
	Count int
	// Signal is true for a device at sensor level, whose ground must be quiet.
	Signal bool
}

// LEDs are strings of LEDs side by side, each with its resistor.
type LEDs struct {
	Base
	Demand
	Forward float64 // V of one LED
	Count   int     // LEDs in a string
	Ohms    float64 // of a string's resistor
	Strings int
}

// An Amplifier is a power amplifier with its outputs.
type Amplifier struct {
	Base
	Demand
	// Output is the power of one output in W into a load of Ohms; LeastLoad is
	// the lowest impedance in ohm that it may drive.
	Output, Ohms, LeastLoad float64
	Channels                int
	Remote                  float64 // A of its switch-on lead
}

// A Speaker is a loudspeaker on an amplifier's output.
type Speaker struct {
	Base
	Ohms  float64
	Power float64 // W that it takes continuously, 0 where it is not given
}

// A Splice is a joint of wires.
type Splice struct{ Base }

// A Ground is a ring terminal on a point of the body.
type Ground struct {
	Base
	Point string
	Ohms  float64 // of the bolted joint
}

// A Wire runs from one end to another.
type Wire struct {
	Base
	Area   float64 // m2
	Length float64 // m
	// Size and Run are area and length as they are written, From and To its ends.
	Size, Run  string
	From, To   string
	Ends       [2]End
	Color      string // letters of IEC 60757
	Conductor  string
	Insulation float64 // °C that it is rated for
	// Ambient is the hottest air around it, Temperature that of its conductor
	// when drops are computed, °C.
	Ambient, Temperature float64
	Bundled              int  // wires that carry current in the same loom
	Sheathed             bool // in a sleeve of its own from the source on
	Function             string
}

// An End is a terminal of another part on which an end of a wire lies.
type End struct {
	Part int // index of the part
	Pin  string
}

// A Body is the metal between two points of the body.
type Body struct {
	Base
	From, To string // points
	Ohms     float64
}

// A Link is a cable that is drawn and not solved.
type Link struct {
	Base
	From, To string // parts
	Carries  string
}

// DemandOf is what a part asks of its supply, nil where it is no load. A
// resistor is none: it passes current on to something else.
func DemandOf(p Part) *Demand {
	switch p := p.(type) {
	case *Load:
		if p.Type != "resistor" {
			return &p.Demand
		}
	case *LEDs:
		return &p.Demand
	case *Amplifier:
		return &p.Demand
	case *Converter:
		return &p.Demand
	}
	return nil
}
