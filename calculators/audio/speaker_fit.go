package audio

import (
	"math"

	"baybook/calculators/calc"
)

// SpeakerFit answers whether a speaker clears the glass and the trim.
var SpeakerFit = &calc.Calculator{
	Name:     "speaker-fit",
	Title:    "Will the speaker fit the door?",
	Question: "Will it clear the glass and the trim?",
	Doc:      "The room behind the speaker to the lowered window and in front of it to the trim, with adapter, gasket and wedge counted.",
	Decides:  "glass_margin",
	Inputs: []calc.Input{
		{Name: "frame", Label: "Frame diameter", Unit: "mm", Min: 60, Max: 400, Default: "165",
			Help: "Outer diameter of the speaker's frame, over the ears if they stay on."},
		{Name: "cutout", Label: "Speaker's cutout", Unit: "mm", Min: 50, Max: 380, Default: "142",
			Help: "The hole that the speaker's data sheet asks for."},
		{Name: "depth", Label: "Mounting depth", Unit: "mm", Min: 15, Max: 250, Default: "60",
			Help: "From the back of the flange to the end of the magnet, off the data sheet."},
		{Name: "magnet", Label: "Magnet diameter", Unit: "mm", Min: 20, Max: 250, Default: "90",
			Help: "Over the magnet or its cover, whichever is wider."},
		{Name: "opening", Label: "Opening in the door", Unit: "mm", Min: 50, Max: 400, Default: "160",
			Help: "The hole in the door's metal, at its widest."},
		{Name: "glass", Label: "Depth to the glass", Unit: "mm", Min: 15, Max: 300, Default: "62",
			Help: "From the mounting face of the door to the window, fully down, at its nearest. Mind the glass rail too."},
		{Name: "trim", Label: "Depth to the trim", Unit: "mm", Min: 0, Max: 150, Default: "30",
			Help: "From the mounting face to the back of the trim's grille: press putty on, fit the trim, measure the putty."},
		{Name: "rise", Label: "Rise of the front", Unit: "mm", Min: 0, Max: 60, Default: "12",
			Help: "How far the surround or tweeter stands above the flange, with its cone travel."},
		{Name: "adapter", Label: "Adapter ring", Unit: "mm", Min: 0, Max: 80, Default: "12",
			Help: "Its thickness; with a wedge, its mean thickness."},
		{Name: "gasket", Label: "Gasket, squeezed", Unit: "mm", Min: 0, Max: 15, Default: "2",
			Help: "Thickness once the screws are tight."},
		{Name: "wedge", Label: "Wedge angle", Unit: "deg", Min: 0, Max: 30, Default: "0",
			Help: "How far the ring tilts the speaker; 0 for a flat ring."},
	},
	Outputs: []calc.Output{
		{Name: "glass_margin", Label: "Room to the glass", Unit: "mm"},
		{Name: "trim_margin", Label: "Room to the trim", Unit: "mm"},
		{Name: "foam_ring", Label: "Foam ring, free height", Unit: "mm", Help: "closes the gap to the trim, a quarter compressed"},
		{Name: "adapter_needed", Label: "Adapter needed", Text: true, Help: "where the opening is more than 4 mm wider than the cutout"},
	},
	Sources: []calc.Source{
		{Text: "Geometry of a tilted cylinder: depth·cos w + magnet/2·sin w behind, rise·cos w + frame/2·sin w in front"},
		{Text: "At least 3 mm to the glass and 1 mm to the trim, think again under 6 mm", Standing: "common practice, no source"},
		{Text: "A foam ring a quarter compressed", Standing: "common practice, no source"},
		{Text: "An adapter where the opening is over 4 mm wider than the cutout", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Glass swings and rattles in its channel: wind it fully down with the speaker held in place before cutting.",
		"Window regulator, rods, wiring and the side-impact bar are not in it; look for each.",
		"The magnet is taken as a plain cylinder as deep as the data sheet says.",
	},
	Cautions: []string{
		"Side airbags and their pressure sensors sit in doors. Never cut, seal or cover their openings; leave restraint parts to " +
			"the vehicle maker's service information.",
		"Glass touched by a magnet can burst when the door slams.",
		"Screws must not reach glass, wiring or window parts.",
	},
	Run:    speakerFit,
	Figure: drawSpeakerFit,
}

// Least room in mm, common practice: under glassStop or trimStop the speaker
// does not go in, under glassCheck it wants a second look.
const (
	glassStop  = 3.0
	glassCheck = 6.0
	trimStop   = 1.0
)

// foamKept is the share of its free height that a foam ring keeps once
// compressed, and ledge the most that an opening may be wider than the
// speaker's cutout, in mm; both common practice.
const (
	foamKept = 0.75
	ledge    = 4.0
)

// Behind is how far a tilted speaker reaches behind its flange: depth and
// magnet diameter in any one unit, tilt in rad.
func Behind(depth, magnet, tilt float64) float64 {
	return depth*math.Cos(tilt) + magnet/2*math.Sin(tilt)
}

// InFront is how far it reaches in front of its flange, in the same units.
func InFront(rise, frame, tilt float64) float64 {
	return rise*math.Cos(tilt) + frame/2*math.Sin(tilt)
}

func speakerFit(in *calc.Values, out *calc.Result) *calc.Problem {
	tilt := in.SI("wedge")
	spacer := in.Num("adapter") + in.Num("gasket")
	behind := Behind(in.Num("depth"), in.Num("magnet"), tilt)
	front := InFront(in.Num("rise"), in.Num("frame"), tilt)
	room := in.Num("glass") + spacer
	out.Set("glass_margin", room-behind)
	out.Set("trim_margin", in.Num("trim")-spacer-front)
	switch {
	case calc.Under(room, behind+glassStop):
		out.Stop("room to the glass is {glass_margin}, under 3 mm: the window would hit the magnet; take a thicker adapter or a shallower speaker")
	case calc.Under(room, behind+glassCheck):
		out.Check("room to the glass is {glass_margin}, under 6 mm: wind the window down past the speaker before cutting")
	}
	if calc.Under(in.Num("trim"), spacer+front+trimStop) {
		out.Stop("room to the trim is {trim_margin}, under 1 mm: the grille would touch; take a thinner adapter or a flatter speaker")
	}
	if calc.Over(in.Num("trim"), spacer+front) {
		out.Set("foam_ring", (in.Num("trim")-spacer-front)/foamKept)
	} else {
		out.Note("no foam ring: no room is left in front of the speaker")
	}
	needed := "no"
	if calc.Over(in.Num("opening"), in.Num("cutout")+ledge) {
		needed = "yes"
	}
	out.SetText("adapter_needed", needed)
	if !calc.Under(in.Num("cutout"), in.Num("frame")) {
		out.Note("the cutout is not smaller than the frame: measure both again")
	}
	if calc.Over(in.Num("frame")/2*math.Sin(tilt), spacer) {
		out.Note("the thin side of the wedge would be under the door's face: at {wedge} this frame needs a mean thickness of {1:3 "+
			"mm} or more", in.Num("frame")/2*math.Sin(tilt))
	}
	workSpeakerFit(in, out, behind, front)
	return nil
}

func workSpeakerFit(in *calc.Values, out *calc.Result, behind, front float64) {
	out.Work("Behind the flange: {depth} × cos {wedge} + {magnet}/2 × sin {wedge} = {1:4 mm}", behind)
	out.Work("Room to the glass: {glass} + {adapter} + {gasket} − {1:4 mm} = {glass_margin:4}", behind)
	out.Work("In front of the flange: {rise} × cos {wedge} + {frame}/2 × sin {wedge} = {1:4 mm}", front)
	out.Work("Room to the trim: {trim} − {adapter} − {gasket} − {1:4 mm} = {trim_margin:4}", front)
	if out.Get("foam_ring").Present {
		out.Work("Foam ring: {trim_margin:4} / 0.75 = {foam_ring:4}")
	}
	out.Work("Adapter: opening {opening} against cutout {cutout} + 4 mm: {adapter_needed}")
}
