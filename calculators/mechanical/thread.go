package mechanical

import "math"

// A Thread is a screw thread with the holes that belong to it, all in mm.
type Thread struct {
	Name            string
	Diameter, Pitch float64
	// Fine, Medium and Coarse are the clearance holes of ISO 273, or close,
	// normal and loose of ASME B18.2.8.
	Fine, Medium, Coarse float64
	// Tap is the drill for an inch thread from the tap chart and TapName what
	// it is called; a metric thread has none, for its drill is d − P.
	Tap     float64
	TapName string
}

// inch is one inch in mm.
const inch = 25.4

// Threads are the sizes that an install bay keeps. Metric: diameters and
// coarse pitches from ISO 261, clearance holes from ISO 273. Inch: UNC and UNF
// diameters and threads an inch from ASME B1.1 (from memory), tap drills for
// about 75 % of the thread from the tap chart, clearance holes from ASME
// B18.2.8: 8, 10 and 1/4 in as restated by a handbook, larger ones from memory.
var Threads = []Thread{
	{Name: "M3", Diameter: 3, Pitch: 0.5, Fine: 3.2, Medium: 3.4, Coarse: 3.6},
	{Name: "M4", Diameter: 4, Pitch: 0.7, Fine: 4.3, Medium: 4.5, Coarse: 4.8},
	{Name: "M5", Diameter: 5, Pitch: 0.8, Fine: 5.3, Medium: 5.5, Coarse: 5.8},
	{Name: "M6", Diameter: 6, Pitch: 1, Fine: 6.4, Medium: 6.6, Coarse: 7},
	{Name: "M8", Diameter: 8, Pitch: 1.25, Fine: 8.4, Medium: 9, Coarse: 10},
	{Name: "M10", Diameter: 10, Pitch: 1.5, Fine: 10.5, Medium: 11, Coarse: 12},
	{Name: "M12", Diameter: 12, Pitch: 1.75, Fine: 13, Medium: 13.5, Coarse: 14.5},
	inchThread("8-32", 0.164, 32, 0.180, 0.196, 0.213, 0.136, "No. 29"),
	inchThread("10-24", 0.190, 24, 0.206, 0.221, 0.238, 0.1495, "No. 25"),
	inchThread("10-32", 0.190, 32, 0.206, 0.221, 0.238, 0.159, "No. 21"),
	inchThread("1/4-20", 0.250, 20, 0.266, 0.281, 0.297, 0.201, "No. 7"),
	inchThread("1/4-28", 0.250, 28, 0.266, 0.281, 0.297, 0.213, "No. 3"),
	inchThread("5/16-18", 0.3125, 18, 0.328, 0.344, 0.359, 0.257, "letter F"),
	inchThread("5/16-24", 0.3125, 24, 0.328, 0.344, 0.359, 0.272, "letter I"),
	inchThread("3/8-16", 0.375, 16, 0.391, 0.406, 0.422, 0.3125, "5/16 in"),
	inchThread("3/8-24", 0.375, 24, 0.391, 0.406, 0.422, 0.332, "letter Q"),
	inchThread("1/2-13", 0.500, 13, 0.531, 0.562, 0.609, 0.4219, "27/64 in"),
	inchThread("1/2-20", 0.500, 20, 0.531, 0.562, 0.609, 0.4531, "29/64 in"),
}

// inchThread is a thread whose sizes are given in inches and threads an inch.
func inchThread(name string, diameter, perInch, close, normal, loose, tap float64, drill string) Thread {
	return Thread{Name: name, Diameter: diameter * inch, Pitch: inch / perInch,
		Fine: close * inch, Medium: normal * inch, Coarse: loose * inch, Tap: tap * inch, TapName: drill}
}

// Inch reports whether the thread is of the inch series.
func (t Thread) Inch() bool { return t.TapName != "" }

// ThreadNamed finds a thread; M6 where the name is unknown.
func ThreadNamed(name string) Thread {
	for _, t := range Threads {
		if t.Name == name {
			return t
		}
	}
	return Threads[3]
}

// threadNames are the words that a thread input accepts.
func threadNames() []string {
	var names []string
	for _, t := range Threads {
		names = append(names, t.Name)
	}
	return names
}

// StressArea is the area in mm2 that carries the load of a bolt:
// π/4·(d − 0.938194·P)², ISO 898-1; ASME B1.1 has 0.9743·P for inch threads.
func (t Thread) StressArea() float64 {
	d := t.Diameter - t.rootFactor()*t.Pitch
	return math.Pi / 4 * d * d
}

func (t Thread) rootFactor() float64 {
	if t.Inch() {
		return 0.9743
	}
	return 0.938194
}

// TapDrill is the drill in mm for a tapped hole: d − P, or the chart's for an
// inch thread.
func (t Thread) TapDrill() float64 {
	if t.Inch() {
		return t.Tap
	}
	return t.Diameter - t.Pitch
}
