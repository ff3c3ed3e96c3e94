package circuit

import "baybook/calculators/calc"

// A Kind is a sort of part.
type Kind uint8

const (
	SourceKind Kind = iota
	AlternatorKind
	ConverterKind
	FuseKind
	SwitchKind
	DiodeKind
	RelayKind
	ConnectorKind
	LoadKind
	LEDsKind
	AmplifierKind
	SpeakerKind
	SpliceKind
	GroundKind
	WireKind
	BodyKind
	LinkKind
)

// A Class is one sort of part: the section it is written in, its terminals
// and its keys.
type Class struct {
	// New makes an empty part.
	new  func() Part
	Kind Kind
	// Word names one such part, Section the section that lists them.
	Word, Section string
	// Doc says what it is.
	Doc string
	// Pins are the terminals; those of connectors and amplifiers depend on
	// how many ways and channels they have.
	Pins []string
	// In and Out are the terminals that "to: name" and "from: name" mean, ""
	// where a terminal must be named.
	In, Out string
	// Keys are what may be written about it, in lists, some of which classes
	// share.
	Keys [][]Property
}

// A Property is one key of a part.
type Property struct {
	calc.Input
	// Form is how the value is written.
	Form Form
	// Required is true where the part means nothing without it.
	Required bool
	// Live is true where a reader of the drawing may change the value.
	Live bool
	// Where the value goes: one of these, or number and text both.
	num   func(p Part) *float64
	whole func(p Part) *int
	text  func(p Part) *string
	yes   func(p Part) *bool
	// volts is where a limit goes that is given in V instead of in %.
	volts func(p Part) *float64
	// list is where several quantities go, one after the other.
	list func(p Part) *[]float64
}

// put gives a part the value of the key.
func (p *Property) put(to Part, v calc.Value) {
	if p.volts != nil && inVolts(v.Text) {
		*p.volts(to) = v.Num
		return
	}
	if p.list != nil {
		u, _ := calc.LookupUnit(p.Unit)
		for _, item := range List(v.Text) {
			one, _ := p.Read(item)
			*p.list(to) = append(*p.list(to), one.Num*u.Base)
		}
		return
	}
	if p.num != nil {
		unit := p.Unit
		if p.Kind == calc.Wire {
			unit = "mm2"
		}
		u, _ := calc.LookupUnit(unit)
		*p.num(to) = v.Num*u.Base + u.Zero
	}
	if p.whole != nil {
		*p.whole(to) = int(v.Num)
	}
	if p.text != nil {
		*p.text(to) = v.Text
	}
	if p.yes != nil {
		*p.yes(to) = v.Text == "yes"
	}
}

// A Form is how the value of a key is written.
type Form uint8

const (
	Quantity   Form = iota // a number, a word or a wire size, as calc reads it
	FreeText               // words of the writer's own
	Flag                   // yes or no
	Terminal               // the end of another part
	PartName               // the name of another part
	PointName              // a point of the body
	Color                  // letters of IEC 60757
	Insulation             // degrees Celsius, or a class letter of ISO 6722-1
	Quantities             // several numbers, with commas
)

// Classes are the sorts of part, in the order in which a person writes them.
func Classes() []Class { return classes }

var classes = []Class{
	{func() Part { return new(Source) }, SourceKind, "source", "sources", "A battery or another supply, with its inner resistance and what it feeds already.",
		[]string{"+", "-"}, "-", "+", [][]Property{sourceKeys, endKeys, partKeys}},
	{func() Part { return new(Alternator) }, AlternatorKind, "alternator", "alternators", "An alternator: it holds its voltage up to its rated current, and takes none back.",
		[]string{"+", "-"}, "-", "+", [][]Property{alternatorKeys, endKeys, partKeys}},
	{func() Part { return new(Converter) }, ConverterKind, "converter", "converters", "A converter from one voltage to another: its output holds its voltage up to its rated current.",
		[]string{"+", "-", "out+", "out-"}, "+", "", [][]Property{converterKeys, partKeys}},
	{func() Part { return &Fuse{Ohms: -1} }, FuseKind, "fuse", "fuses", "A fuse or a circuit breaker, or a fuse tap that shares the slot of another.",
		[]string{"in", "out"}, "in", "out", [][]Property{fuseKeys, endKeys, partKeys}},
	{func() Part { return new(Switch) }, SwitchKind, "switch", "switches", "A contact that the states open and close, or several with one inlet.",
		[]string{"in", "out"}, "in", "out", [][]Property{switchKeys, endKeys, partKeys}},
	{func() Part { return new(Diode) }, DiodeKind, "diode", "diodes", "A diode: current passes from in to out alone.",
		[]string{"in", "out"}, "in", "out", [][]Property{diodeKeys, endKeys, partKeys}},
	{func() Part { return new(Relay) }, RelayKind, "relay", "relays", "A relay with the terminals of DIN 72552.",
		[]string{"86", "85", "30", "87", "87a"}, "", "", [][]Property{relayKeys, partKeys}},
	{func() Part { return new(Connector) }, ConnectorKind, "connector", "connectors", "A plug and its socket, each way with its contact resistance.",
		nil, "", "", [][]Property{connectorKeys, partKeys}},
	{func() Part { return new(Load) }, LoadKind, "load", "loads", "Whatever uses current: lamp, motor, device, resistor.",
		[]string{"+", "-"}, "+", "-", [][]Property{loadKeys, endKeys, partKeys}},
	{func() Part { return new(LEDs) }, LEDsKind, "leds", "leds", "LEDs in series with a resistor, one string or several side by side.",
		[]string{"+", "-"}, "+", "-", [][]Property{ledKeys, endKeys, partKeys}},
	{func() Part { return new(Amplifier) }, AmplifierKind, "amplifier", "amplifiers", "A power amplifier: its supply, its switch-on lead and its outputs.",
		nil, "+", "-", [][]Property{amplifierKeys, endKeys, partKeys}},
	{func() Part { return new(Speaker) }, SpeakerKind, "speaker", "speakers", "A loudspeaker on an amplifier's output.",
		[]string{"+", "-"}, "+", "-", [][]Property{speakerKeys, endKeys, partKeys}},
	{func() Part { return new(Splice) }, SpliceKind, "splice", "splices", "A joint of wires.",
		[]string{"joint"}, "joint", "joint", [][]Property{partKeys}},
	{func() Part { return new(Ground) }, GroundKind, "ground", "grounds", "A ring terminal on a named point of the body.",
		[]string{"lug", "point"}, "lug", "lug", [][]Property{groundKeys, partKeys}},
	{func() Part { return new(Wire) }, WireKind, "wire", "wires", "A wire from one end to another.",
		[]string{"from", "to"}, "", "", [][]Property{wireKeys, partKeys}},
	{func() Part { return new(Body) }, BodyKind, "body", "body", "The metal between two points of the body.",
		[]string{"from", "to"}, "", "", [][]Property{bodyKeys}},
	{func() Part { return new(Link) }, LinkKind, "link", "links", "A camera, video, data or signal cable: drawn, not solved.",
		nil, "", "", [][]Property{linkKeys}},
}

// class finds the class of a kind.
func class(k Kind) *Class { return &classes[k] }

// classNamed finds a class by its section or its word, nil where there is none.
func classNamed(name string) *Class {
	for i := range classes {
		if c := &classes[i]; c.Section == name || c.Word == name {
			return c
		}
	}
	return nil
}

// each goes through the keys of a class until it is told to stop.
func (c *Class) each(visit func(p *Property) bool) {
	for _, list := range c.Keys {
		for i := range list {
			if !visit(&list[i]) {
				return
			}
		}
	}
}

// key finds a key of a class, nil where it has none of that name.
func (c *Class) key(name string) *Property {
	var found *Property
	c.each(func(p *Property) bool {
		if p.Name == name {
			found = p
		}
		return found == nil
	})
	return found
}

// keyNames lists the keys of a class.
func (c *Class) keyNames() []string {
	var names []string
	c.each(func(p *Property) bool {
		names = append(names, p.Name)
		return true
	})
	return names
}

// SectionNames lists the sections of parts.
func SectionNames() []string {
	var names []string
	for i := range classes {
		names = append(names, classes[i].Section)
	}
	return names
}
