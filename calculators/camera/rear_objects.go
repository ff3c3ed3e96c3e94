package camera

import (
	"math"

	"baybook/calculators/calc"
)

// RearObjects answers whether a camera and its screen show the test objects
// of the rear-visibility rule, and large enough.
var RearObjects = &calc.Calculator{
	Name:     "rear-objects",
	Title:    "The seven test objects",
	Question: "Would the driver see the seven test objects, and large enough?",
	Doc: "How much of each of the seven cylinders behind the vehicle is in the picture, and how wide the far three look to the driver, " +
		"compared with the rear-visibility rule.",
	Inputs: inputs(
		calc.Input{Name: "offset", Label: "Lens to the right", Unit: "m", Min: -1.5, Max: 1.5, Default: "0",
			Help: "From the centreline, to the right of someone who looks backwards; negative to the left."},
		calc.Input{Name: "forward", Label: "Lens forward", Unit: "m", Min: -0.5, Max: 1, Default: "0",
			Help: "How far the lens is ahead of the rearmost point of the bumper; negative behind it."},
		calc.Input{Name: "screen_width", Label: "Screen width", Unit: "mm", Min: 20, Max: 400, Default: "95",
			Help: "Of the picture on the screen or display mirror, without black bars."},
		calc.Input{Name: "screen_height", Label: "Screen height", Unit: "mm", Min: 20, Max: 400, Default: "54",
			Help: "Of the same picture."},
		calc.Input{Name: "eye", Label: "Eye to screen", Unit: "mm", Min: 200, Max: 1500, Default: "650",
			Help: "Straight from the driver's eyes, seated to drive, to the middle of the picture."},
	),
	Decides: "visible_a",
	Outputs: objectOutputs(),
	Sources: []calc.Source{
		{Text: "49 CFR 571.111 S5.5, S6.2 and S14.1: places and size of the cylinders, what of them must be seen, 5′ on average and 3′ each",
			Standing: "from memory"},
		{Text: "Touching planes: half-angle asin(0.15 m / distance); visual angle 2·atan(d/2/eye)"},
		projection,
	},
	Limits: []string{
		"Each cylinder stands for the flat upright rectangle between the lines where it is touched by sight, without its top; one that hides another, the " +
			"bumper and the body are ignored.",
		"Light, sharpness, the delay after reverse is selected and every other clause of the rule are not in it.",
		realLens,
	},
	Cautions: []string{
		"Places, sizes and limits are from memory of the rule, and meeting them here is a comparison, not a certification. " + notTheRule,
		"A camera helps; it does not see everything. Mirrors, a look round and a helper on foot stay needed.",
	},
	Run:    rearObjects,
	Figure: drawRearObjects,
}

// letters name the posts.
const letters = "abcdefg"

// posts are the cylinders A to G: 20 ft, 10 ft and 1 ft back, 5 ft aside.
var posts = [...]Post{{-1.524, 6.096}, {0, 6.096}, {1.524, 6.096}, {-1.524, 3.048}, {1.524, 3.048}, {-1.524, 0.305}, {1.524, 0.305}}

// What the rule asks, from memory.
const (
	sized      = 3     // A, B and C have a least size
	wholes     = 5     // A to E must be whole
	wholeShare = 99.9  // %, taken as whole
	stripWide  = 0.15  // m of F and G
	leastEach  = 3.0   // arcmin
	leastMean  = 5.0   // arcmin
	nearest    = 0.300 // m from the lens to an axis, or no result
)

func objectOutputs() []calc.Output {
	var all []calc.Output
	for i := range posts {
		all = append(all, calc.Output{Name: "visible_" + letters[i:i+1], Label: "Of " + capital(i) + " in the picture", Unit: "%", Figures: 4})
	}
	for i := range sized {
		all = append(all, calc.Output{Name: "angle_" + letters[i:i+1], Label: capital(i) + " looks wide", Unit: "arcmin"})
	}
	return append(all, calc.Output{Name: "angle_mean", Label: "Average angle", Unit: "arcmin", Help: "of A, B and C"})
}

// capital is the letter of a post as it is drawn.
func capital(i int) string { return "ABCDEFG"[i : i+1] }

// readRear takes the camera with its place on the vehicle.
func readRear(in *calc.Values) (Camera, *calc.Problem) {
	c, problem := read(in)
	c.X, c.Y = in.SI("offset"), -in.SI("forward")
	return c, problem
}

// add joins the letter of a post to a list.
func add(list *string, i int) {
	if *list != "" {
		*list += ", "
	}
	*list += capital(i)
}

func rearObjects(in *calc.Values, out *calc.Result) *calc.Problem {
	c, problem := readRear(in)
	if problem != nil {
		return problem
	}
	for i, p := range posts {
		if axis := math.Hypot(p.X-c.X, p.Y-c.Y); calc.Under(axis, nearest) {
			return calc.NewProblem("offset", out.Fill("with {offset} to the right and {forward} forward the lens is {1:3 m} from the axis of "+
				capital(i)+"; give a place at least 0.3 m from it", axis))
		}
	}
	var cut, narrow string
	for i, p := range posts {
		n := letters[i : i+1]
		share, strip := c.Seen(p)
		out.Set("visible_"+n, 100*share)
		axis := math.Hypot(p.X-c.X, p.Y-c.Y)
		out.Work(capital(i)+": axis {1:4 m} from the lens, touched {2:4 deg} to either side; {visible_"+n+"} in the picture, a strip of {3:4 mm} at full height",
			axis, math.Asin(postRadius/axis)*180/math.Pi, 1000*strip)
		if i < wholes && calc.Under(100*share, wholeShare) {
			add(&cut, i)
		}
		if i >= wholes && calc.Under(strip, stripWide) {
			add(&narrow, i)
		}
	}
	if cut != "" {
		out.Check("not whole in the picture: " + cut + "; all of A to E must be")
	}
	if narrow != "" {
		out.Check("no strip 150 mm wide at full height in the picture: " + narrow + "; F and G must each show one")
	}
	sizes(c, in, out)
	return nil
}

// sizes answers how wide A, B and C look to the driver.
func sizes(c Camera, in *calc.Values, out *calc.Result) {
	var small, nowhere string
	mean := 0.0
	for i := range sized {
		n := letters[i : i+1]
		apart, ok := c.OnScreen(posts[i], in.SI("screen_width"), in.SI("screen_height"))
		if !ok {
			add(&nowhere, i)
			continue
		}
		angle := 2 * math.Atan(apart/2/in.SI("eye")) * 180 / math.Pi * 60
		mean += angle / sized
		out.Set("angle_"+n, angle)
		out.Work(capital(i)+" on the screen: {1:4 mm} wide; 2 × atan(that / 2 / {eye}) = {angle_"+n+":4}", 1000*apart)
		if calc.Under(angle, leastEach) {
			add(&small, i)
		}
	}
	if small != "" {
		out.Check("looks narrower than 3 arcmin: " + small + "; take a larger screen, a narrower lens or sit nearer")
	}
	if nowhere != "" {
		out.Check("no angles for " + nowhere + " and no mean: the lens shows nothing behind it")
		return
	}
	out.Set("angle_mean", mean)
	out.Work("Average ({angle_a:4} + {angle_b:4} + {angle_c:4}) / 3 = {angle_mean:4}")
	if calc.Under(mean, leastMean) {
		out.Check("A, B and C look {angle_mean} wide on average, under 5 arcmin")
	}
}
