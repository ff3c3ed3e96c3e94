package mechanical

import "math"

// A Thread is a coarse metric screw thread with the holes that belong to it,
// all in mm.
type Thread struct {
	Name            string
	Diameter, Pitch float64
	// Fine, Medium and Coarse are the clearance holes of ISO 273.
	Fine, Medium, Coarse float64
}

// Threads are the sizes that an install bay keeps: diameters and pitches from
// ISO 261, clearance holes from ISO 273.
var Threads = []Thread{
	{"M3", 3, 0.5, 3.2, 3.4, 3.6},
	{"M4", 4, 0.7, 4.3, 4.5, 4.8},
	{"M5", 5, 0.8, 5.3, 5.5, 5.8},
	{"M6", 6, 1, 6.4, 6.6, 7},
	{"M8", 8, 1.25, 8.4, 9, 10},
	{"M10", 10, 1.5, 10.5, 11, 12},
	{"M12", 12, 1.75, 13, 13.5, 14.5},
}

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
// π/4·(d − 0.938194·P)², ISO 898-1.
func (t Thread) StressArea() float64 {
	d := t.Diameter - 0.938194*t.Pitch
	return math.Pi / 4 * d * d
}

// TapDrill is the drill in mm for a tapped hole, d − P.
func (t Thread) TapDrill() float64 { return t.Diameter - t.Pitch }
