package mechanical

import (
	"strings"

	"baybook/calculators/calc"
)

// BoltTorque answers how hard to tighten a bolt.
var BoltTorque = &calc.Calculator{
	Name:     "bolt-torque",
	Title:    "Tightening torque of a bolt",
	Question: "How tight does the bolt go?",
	Doc:      "The torque that pulls a plain bolt up to a share of its proof load. For bolts of your own work only: the vehicle maker's figure always goes first.",
	Decides:  "torque",
	Inputs: []calc.Input{
		{Name: "thread", Label: "Thread", Kind: calc.Word, Words: threadNames(), Default: "M6",
			Help: "Metric coarse, or UNC and UNF: 1/4-20 is a quarter inch with 20 threads an inch. Measure across the threads: M6 measures just under 6 mm."},
		{Name: "class", Label: "Property class or grade", Kind: calc.Word, Words: classNames(), Default: "8.8",
			Help: "Stamped on a metric head; no stamp counts as 4.6. Inch heads have lines: none is grade2, three are grade5, six are grade8."},
		{Name: "k", Label: "Nut factor", Min: 0.08, Max: 0.4, Default: "0.2",
			Help: "What friction makes of the torque: about 0.2 clean and dry, 0.15 oiled. Zinc is 0.17 to 0.35, dry steel 0.18 to 0.27. Stainless on stainless can pass 0.3."},
		{Name: "share", Label: "Share of proof load", Unit: "%", Min: 10, Max: 90, Default: "75",
			Help: "75 % is usual for a joint that will be opened again. Less for a soft part between."},
	},
	Outputs: []calc.Output{
		{Name: "torque", Label: "Torque", Unit: "Nm", Figures: 4},
		{Name: "preload", Label: "Clamping force", Unit: "kN"},
		{Name: "proof_load", Label: "Proof load", Unit: "kN", Help: "that the bolt bears without staying longer"},
		{Name: "stress_area", Label: "Stress area", Unit: "mm2", Help: "of the thread"},
	},
	Sources: []calc.Source{
		{Text: "Stress area and proof stress 225, 380, 580 and 830 MPa, ISO 898-1", Standing: "read as restated"},
		{Text: "UNC and UNF sizes and stress area, ASME B1.1; proof stress 55, 85 and 120 ksi of grades 2, 5 and 8, SAE J429", Standing: "from memory"},
		{Text: "Coarse pitches, ISO 261", Standing: "from memory"},
		{Text: "Torque = k·d·preload and 75 % of proof load for reuse, Shigley, Mechanical Engineering Design", Standing: "from memory"},
		{Text: "Nut factors of zinc, dry and oiled steel, one maker's engineering data"},
		{Text: "The other nut factors in the help", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Friction scatters: the same torque gives a clamping force up to 30 % more or less with one known finish, and half of it where zinc binds.",
		"A rivet nut, a plastic part or a thread in sheet metal strips far below this.",
		"8.8 is taken at 580 MPa, which holds up to M16.",
		"Hot-dip galvanized bolts carry less.",
	},
	Cautions: []string{
		"Never use this for seats, belts, restraints, steering, brakes or anything the vehicle maker gives a torque for. Use the maker's figure.",
		"A threadlocker or oil changes the nut factor, and the torque with it.",
	},
	Run: boltTorque,
}

// A Class is a property class of steel bolts.
type Class struct {
	Name string
	// Proof is the proof stress in MPa for diameters up to 16 mm.
	Proof float64
}

// Classes are the classes met on vehicles, ISO 898-1, and the grades of inch
// bolts, SAE J429 (from memory; grade 2 up to 3/4 in).
var Classes = []Class{{"4.6", 225}, {"5.8", 380}, {"8.8", 580}, {"10.9", 830},
	{"grade2", 55 * ksi}, {"grade5", 85 * ksi}, {"grade8", 120 * ksi}}

// ksi is a thousand pounds-force a square inch in MPa.
const ksi = 6.894757

// ClassNamed finds a class; 8.8 where the name is unknown.
func ClassNamed(name string) Class {
	for _, c := range Classes {
		if c.Name == name {
			return c
		}
	}
	return Classes[2]
}

func classNames() []string {
	var names []string
	for _, c := range Classes {
		names = append(names, c.Name)
	}
	return names
}

// Torque is the torque in Nm for a nut factor, a diameter in m and a preload
// in N.
func Torque(k, diameter, preload float64) float64 { return k * diameter * preload }

func boltTorque(in *calc.Values, out *calc.Result) *calc.Problem {
	t, class := ThreadNamed(in.Word("thread")), ClassNamed(in.Word("class"))
	area := t.StressArea()
	proof := class.Proof * area // MPa·mm2 = N
	preload := in.SI("share") * proof
	torque := Torque(in.Num("k"), t.Diameter*1e-3, preload)
	out.Set("stress_area", area)
	out.SetSI("proof_load", proof)
	out.SetSI("preload", preload)
	out.SetSI("torque", torque)
	if t.Inch() != strings.HasPrefix(class.Name, "grade") {
		out.Check("metric bolts have a class (8.8), inch bolts a grade (grade5): {class} is not what the head of {thread} says; look again")
	}
	out.Work("Stress area: π/4 × ({1:4 mm} − {2:6} × {3:4 mm})² = {stress_area:4}", t.Diameter, t.rootFactor(), t.Pitch)
	out.Work("Proof load: {1:3 MPa} × {stress_area:4} = {proof_load:4}", class.Proof)
	out.Work("Clamping force: {share} of it = {preload:4}")
	out.Work("Torque: {k} × {1:4 mm} × {preload:4} = {torque:4}", t.Diameter)
	return nil
}
