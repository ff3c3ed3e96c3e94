package circuit

// An Element is one part of a circuit. Numbers are in SI units, shares in
// parts of one and temperatures in degrees Celsius; which of them a part has
// is said by its class.
type Element struct {
	Kind Kind
	Name string
	// Entry is the part's place in the draft, -1 for metal of the body that
	// was taken for granted.
	Entry int
	// Vehicle is true for what the vehicle already has: nothing to buy.
	Vehicle bool
	Pins    []Pin
	// From and To are the names of points or parts, where the class has them.
	From, To string

	// A source: open-circuit voltage, resistance inside, what it feeds
	// already with the key on and with the key off, and as a battery its
	// capacity in Ah, its charge and the lowest charge accepted.
	Volts, Internal, Feeds, Standing float64
	Capacity, Charge, Floor          float64

	// A fuse: rating in A, type, the slot that it taps and what the slot is for.
	Rating     float64
	Type       string
	Taps, Slot string

	// Resistance in ohm: of a fuse, a contact, a load, a joint, a coil, a
	// speaker or the body.
	Ohms float64
	// A relay: coil in ohm, voltage at which it pulls in, what is across the
	// coil, and the ohms of that where it is a resistor.
	Coil, PullIn, Damping float64
	Suppression           string

	// A wire: area in m2, length in m, both as written too, colour, conductor,
	// insulation rating in °C, wires in the same loom, covered or bare, and
	// what it is for.
	Area, Length float64
	Size, Run    string
	Colour       string
	Conductor    string
	Insulation   float64
	Bundled      int
	Sheathed     bool
	Function     string
	// Ways of a connector, channels of an amplifier, LEDs in a string.
	Count int
	// Strings of LEDs side by side, and the forward voltage of one LED.
	Strings int
	Forward float64

	// A load: one of current, power and Ohms; its surge and how long that
	// lasts; what it draws asleep; the least voltage that it works at; its own
	// limit of drop; whether it works at sensor level.
	Current, Power float64
	Inrush, Surge  float64
	Sleeps, Least  float64
	Drop           float64
	Signal         bool
	// An amplifier: power of one output in W into Ohms, the least load that
	// it bears, the current of its switch-on lead.
	Output, LeastLoad, Remote float64
	// A ground's point of the body; what a link carries.
	Point, Carries string
}

// A Pin is a terminal of a part and the node that it lies on.
type Pin struct {
	Name string
	Node int
}

// Pin finds a terminal by name, nil where the part has none of that name.
func (e *Element) Pin(name string) *Pin {
	for i := range e.Pins {
		if e.Pins[i].Name == name {
			return &e.Pins[i]
		}
	}
	return nil
}

// node is the node of a terminal that the class is known to have.
func (e *Element) node(pin string) int { return e.Pin(pin).Node }

// Word names the sort of part: "fuse".
func (e *Element) Word() string { return class(e.Kind).Word }

// isLoad reports a part that uses current from the supply.
func (e *Element) isLoad() bool {
	return e.Kind == Load && e.Type != "resistor" || e.Kind == LEDs || e.Kind == Amplifier
}
