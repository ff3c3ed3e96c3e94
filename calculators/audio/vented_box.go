package audio

import (
	"math"

	"baybook/calculators/calc"
)

// VentedBox answers what a box with a port does to a driver, and how long
// the port is.
var VentedBox = &calc.Calculator{
	Name:     "vented-box",
	Title:    "Vented box for a driver",
	Question: "How long is the port, and how deep will it play?",
	Doc:      "The port for a tuning, the half-power frequency, peak and level of the driver in the vented box, and how fast the air moves in the port.",
	Decides:  "port_length",
	Inputs: []calc.Input{
		{Name: "fs", Label: "Driver's fs", Unit: "Hz", Min: 10, Max: 200, Default: "40",
			Help: "Free-air resonance, off the driver's data sheet."},
		{Name: "qts", Label: "Driver's Qts", Min: 0.1, Max: 1.5, Default: "0.45",
			Help: "Total Q, off the data sheet. Vented boxes want about 0.25 to 0.45."},
		{Name: "vas", Label: "Driver's Vas", Unit: "L", Min: 0.5, Max: 500, Default: "30",
			Help: "Equivalent air volume, off the data sheet."},
		{Name: "volume", Label: "Box, net", Unit: "L", Min: 0.5, Max: 500, Default: "20",
			Help: "Air inside, less driver, port and braces."},
		{Name: "tuning", Label: "Tuning", Unit: "Hz", Min: 10, Max: 120, Default: "38",
			Help: "Where box and port resonate: the cone moves least there."},
		{Name: "ql", Label: "Box loss QL", Min: 3, Max: 50, Default: "7",
			Help: "7 is a good start; a large or leaky box has less, a small tight one more."},
		{Name: "port_diameter", Label: "Port, inner diameter", Unit: "mm", Min: 20, Max: 300, Default: "75",
			Help: "Of one round port. For a slot take the circle of equal area."},
		{Name: "ports", Label: "Ports", Kind: calc.Count, Min: 1, Max: 4, Default: "1", Help: "Equal ports side by side."},
		{Name: "end_correction", Label: "End correction, radii", Min: 0, Max: 2, Default: "1.463",
			Help: "1.463 for one end in a panel and one free; 1.698 for both in panels; 1.227 for both free."},
		{Name: "cone_area", Label: "Cone area", Unit: "cm2", Min: 20, Max: 2000, Default: "220",
			Help: "Sd, off the data sheet."},
		{Name: "excursion", Label: "Excursion, one way", Unit: "mm", Min: 0.5, Max: 40, Default: "5",
			Help: "As far as the cone would move at tuning in a closed box of the size: Xmax is a cautious value."},
		{Name: "probe", Label: "Level asked at", Unit: "Hz", Min: 5, Max: 1000, Default: "40",
			Help: "Any frequency whose level you want to know."},
	},
	Outputs: []calc.Output{
		{Name: "port_length", Label: "Length of each port", Unit: "mm"},
		{Name: "f3", Label: "Half-power frequency", Unit: "Hz", Help: "the highest frequency where the response crosses it"},
		{Name: "peak", Label: "Peak", Unit: "dB", Places: 2},
		{Name: "level", Label: "Level at that frequency", Unit: "dB", Places: 2},
		{Name: "air_speed", Label: "Port air speed, peak", Unit: "m/s"},
		{Name: "smallest_port", Label: "Quiet port, diameter", Unit: "mm", Help: "of one round port in which the air stays at 8 m/s or less"},
	},
	Sources: []calc.Source{
		{Text: "Fourth-order high-pass with leakage loss QL, Small, Vented-Box Loudspeaker Systems, JAES 1973"},
		{Text: "Port as a Helmholtz resonator, speed of sound 343.2 m/s", Standing: "from memory"},
		{Text: "End correction of one flanged (0.849 radii) and one free end (0.613 radii), piston in a baffle; Levine and Schwinger 1948", Standing: "from memory"},
		{Text: "Smallest port diameter in m = sqrt(tuning × volume displaced by the cone), Small 1973", Standing: "from memory"},
		{Text: "Air over about 17 m/s is heard", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Small signals in free space: a cabin lifts the deep bass, and a hot coil and large excursion bend the result.",
		"Below its tuning the driver is unloaded: the cone runs free, so keep a filter under it.",
		"A port end near a wall acts longer; cut it long and trim it to the tuning.",
	},
	Cautions: []string{
		"A box thrown about in a crash kills: bolt it to the body, and keep it clear of belts, seats and airbags.",
		"Loud music harms hearing and hides sirens: see “How loud, and for how long”.",
	},
	Run:    ventedBox,
	Figure: drawVentedBox,
}

// quietAir is the port air speed in m/s above which a port is heard, common
// practice.
const quietAir = 17.0

// ventedOf reads the box from the inputs.
func ventedOf(in *calc.Values) Vented {
	return Vented{Fs: in.SI("fs"), Qts: in.Num("qts"), Alpha: in.Num("vas") / in.Num("volume"), Fb: in.SI("tuning"), Ql: in.Num("ql")}
}

func ventedBox(in *calc.Values, out *calc.Result) *calc.Problem {
	box := ventedOf(in)
	f3, peak, level := box.HalfPower(), box.Peak(), box.Level(in.SI("probe"))
	out.SetSI("f3", f3)
	out.Set("peak", peak)
	out.Set("level", level)
	judgePort(in, out)
	out.Work("h: {tuning} / {fs} = {1:4}; α: {vas} / {volume} = {2:4}", box.Fb/box.Fs, box.Alpha)
	p := box.polynomial()
	out.Work("With z = fs·fb/f², 1/|G|² = 1 + {1:4}·z + {2:4}·z² + {3:4}·z³ + z⁴", p[1], p[2], p[3])
	out.Work("Half power, 1/|G|² = 2 at the highest frequency: {f3:4}; peak {peak}")
	out.Work("At {probe}, z = {1:4}: {level}", box.Fb*box.Fs/(in.SI("probe")*in.SI("probe")))
	return nil
}

// judgePort sizes the port and judges the air in it.
func judgePort(in *calc.Values, out *calc.Result) {
	diameter, tuning, ports := in.SI("port_diameter"), in.SI("tuning"), in.Int("ports")
	correction := in.Num("end_correction") * diameter / 2
	effective := PortLength(ports, diameter, in.SI("volume"), tuning, 0)
	area := float64(ports) * math.Pi / 4 * diameter * diameter
	speed := 2 * math.Pi * tuning * in.SI("cone_area") * in.SI("excursion") / area
	out.SetSI("air_speed", speed)
	smallest := math.Sqrt(tuning * in.SI("cone_area") * in.SI("excursion"))
	out.SetSI("smallest_port", smallest)
	if calc.Over(effective, correction) {
		out.SetSI("port_length", effective-correction)
	} else {
		out.Stop("no port length: even a hole without a tube tunes this box under {tuning}; take a wider port, more ports, " +
			"a smaller box or a lower tuning")
	}
	if calc.Over(speed, quietAir) {
		out.Check("air in the port reaches {air_speed}, over 17 m/s: it will be heard; take a wider port or more of them")
	}
	if calc.Under(math.Sqrt(float64(ports))*diameter, smallest) {
		out.Note("by the rule of the paper the air is quiet for certain in one port of {smallest_port} or its equal in area; this one is smaller")
	}
	out.Work("Port area: {ports} × π/4 × ({port_diameter})² = {1:4 cm2}", 1e4*area)
	out.Work("Length: area × (343.2 m/s)² / ({volume} × (2π × {tuning})²) − {end_correction} × radius = {1:4 mm} − {2:4 "+
		"mm}", 1e3*effective, 1e3*correction)
	out.Work("Air: 2π × {tuning} × {cone_area} × {excursion} / area = {air_speed:4}")
	out.Work("Quiet port: sqrt({tuning} × {cone_area} × {excursion}) = {smallest_port:4}")
}

// drawVentedBox draws the response with half power and the level asked for,
// and says the port.
func drawVentedBox(in *calc.Values, out *calc.Result) *calc.Drawing {
	box := ventedOf(in)
	port := "no port reaches {tuning}"
	if out.Get("port_length").Present {
		port = count(in.Int("ports"), "port") + " of {port_diameter}, {port_length} long"
	}
	d := calc.NewDrawing(320, 280, out.Fill("Level over frequency in a vented box of {volume} tuned to {tuning}, "+port+": half "+
		"power at {f3}; at {probe}: {level}."))
	d.Text(calc.Point{X: 304, Y: 16}, calc.End, out.Fill("Vented box {volume}, tuned to {tuning}"))
	d.Text(calc.Point{X: 304, Y: 32}, calc.End, out.Fill(port))
	d.Text(calc.Point{X: 304, Y: 48}, calc.End, out.Fill("Dashed: half power {f3}"))
	d.Text(calc.Point{X: 304, Y: 64}, calc.End, out.Fill("Ring: {probe}: {level}"))
	response{level: box.Level, probe: in.SI("probe"), line: out.Num("f3"), peak: out.Num("peak")}.draw(d, 76, 164)
	return d
}
