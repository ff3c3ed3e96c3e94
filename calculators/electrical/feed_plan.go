package electrical

import (
	"slices"

	"baybook/calculators/calc"
)

// FeedPlan answers which wire and which fuse a load at a distance needs, in
// one answer.
var FeedPlan = &calc.Calculator{
	Name:     "feed-plan",
	Title:    "Wire and fuse for a new feed",
	Question: "Which wire and which fuse does this load need?",
	Doc:      "The fuse for a load, and the smallest wire that the fuse protects and that keeps the voltage drop within its limit.",
	Decides:  "awg",
	Inputs: []calc.Input{
		{Name: "current", Label: "Current", Unit: "A", Min: 0.05, Max: 240, Default: "10",
			Help: "The largest lasting current. Read it off the data sheet, or measure it with a clamp meter at full load."},
		lengthInput, backInput, bodyResistanceInput, supplyInput, dropLimitInput,
		insulationInput, ambientInput, bundledInput, fuseAir,
	},
	Outputs: []calc.Output{
		{Name: "fuse", Label: "Fuse", Unit: "A", Help: "smallest standard rating that carries the load for good"},
		{Name: "colour", Label: "Blade color", Text: true, Help: "body of a blade fuse of that rating: type C, or type E from 50 A"},
		{Name: "awg", Label: "Wire", Unit: "mm2", Help: "smallest size that keeps both rules; the value is its area"},
		{Name: "metric", Label: "Wire, metric", Unit: "mm2", Help: "smallest size that keeps both rules"},
		{Name: "drop", Label: "Voltage drop, AWG", Unit: "V", Help: "with the AWG size"},
		{Name: "drop_percent", Label: "Voltage drop, share", Unit: "%", Help: "with the AWG size"},
		{Name: "metric_drop", Label: "Voltage drop, metric", Unit: "V", Help: "with the metric size"},
		{Name: "wire_limit", Label: "Wire may carry", Unit: "A", Help: "the AWG size, at this insulation, air and bundle"},
		{Name: "governs", Label: "Decided by", Text: true, Help: "heat: the fuse alone asks for this wire; drop: the voltage drop asks for a thicker one"},
	},
	Sources: slices.Concat(fuseSources, ampacitySources, dropSources, []calc.Source{
		{Text: "Blade colors, ISO 8820-3", Standing: "from memory"},
	}),
	Limits: []string{
		"Copper only, and the conductor is taken to be as warm as the air around it.",
		"Joints, the fuse and its holder, and switches add their own drop; measure it.",
		strandLimit,
		"A device that asks for a smaller fuse in its instructions gets the smaller one.",
		"Metric sizes end at 95 mm2, where the table of what a wire may carry ends.",
	},
	Cautions: []string{
		"Fit the fuse close to the battery or feed point, within 7 in (178 mm) as 33 CFR 183.455 asks on boats, and never bridge one.",
		"Follow the vehicle maker's service information and local code.",
	},
	Run:    feedPlan,
	Figure: drawFeedPlan,
}

// A feed is what a new run must carry, in SI units.
type feed struct {
	current, supply, limit       float64
	length, body                 float64
	overBody                     bool
	insulation, ambient, fuseAir float64
	bundled                      int
}

func feedOf(in *calc.Values) feed {
	return feed{
		current: in.SI("current"), supply: in.SI("supply"), limit: in.SI("limit"),
		length: in.SI("length"), body: in.SI("body_resistance"), overBody: in.Word("back") == "body",
		insulation: in.SI("insulation"), ambient: in.SI("ambient"), fuseAir: in.SI("fuse_air"), bundled: in.Int("bundled"),
	}
}

// drop is the voltage in V that is lost in a run of wire with the given area
// in m².
func (f *feed) drop(area float64) float64 {
	return f.current * loopResistance(Materials[0], f.ambient, f.length, area, f.overBody, f.body)
}

// carries reports whether a wire with the given area in m² may carry what a
// fuse in A lets through.
func (f *feed) carries(area, fuse float64) bool {
	amps, rated := WireLimit(area, f.insulation, f.ambient, f.bundled)
	return rated && !calc.Over(fuse, amps)
}

// keeps reports whether the drop of a wire with the given area in m² is within
// its limit.
func (f *feed) keeps(area float64) bool { return !calc.Over(f.drop(area), f.limit*f.supply) }

func feedPlan(in *calc.Values, out *calc.Result) *calc.Problem {
	f := feedOf(in)
	if !calc.Under(f.ambient, f.insulation) {
		return ambientProblem(out)
	}
	fuse, ok := FuseInAir(f.current, f.fuseAir)
	workFuse(in, out, "current", "fuse")
	if !ok {
		out.Stop(noFuse + "; no wire is named without a fuse")
		return nil
	}
	out.SetSI("fuse", fuse)
	setColor(out, fuse)
	fits := func(area float64) bool { return f.carries(area, fuse) && f.keeps(area) }
	gauge, ok := smallest(GaugeSizes(), fits)
	if ok {
		f.setGauge(in, out, gauge, fuse)
	} else {
		out.Stop("no AWG size up to 4/0 AWG carries the fuse of {fuse:4} and keeps the drop: " + shortenFeed)
	}
	metric, ok := smallest(MetricSizes(), fits)
	if ok {
		out.SetNamed("metric", metric.Area, metric.Name)
		out.SetSI("metric_drop", f.drop(metric.Area*1e-6))
	} else {
		out.Stop("no metric size up to 95 mm² carries the fuse of {fuse:4} and keeps the drop: " + shortenFeed)
	}
	return nil
}

const shortenFeed = "split the load, shorten the run, or put the device that needs the current nearer to the battery"

// setGauge gives what follows from the AWG size that was picked.
func (f *feed) setGauge(in *calc.Values, out *calc.Result, size Size, fuse float64) {
	area := size.Area * 1e-6
	drop := f.drop(area)
	limit, _ := WireLimit(area, f.insulation, f.ambient, f.bundled)
	out.SetNamed("awg", size.Area, size.Name)
	out.SetSI("drop", drop)
	out.SetSI("drop_percent", drop/f.supply)
	out.SetSI("wire_limit", limit)
	alone, _ := smallest(GaugeSizes(), func(area float64) bool { return f.carries(area, fuse) })
	out.SetText("governs", "heat")
	out.Work("The fuse alone asks for " + alone.Name)
	if alone != size {
		out.SetText("governs", "drop")
		out.Work(alone.Name+" would lose {1:3 V}, over {limit} of {supply}", f.drop(alone.Area*1e-6))
	}
	out.Work(size.Name + " may carry {wire_limit:4}, at least the fuse of {fuse:4}")
	out.Work(size.Name+" at {ambient}: loop {1:4 mohm}, drop {current} × {1:4 mohm} = {drop:4}, {drop_percent} of {supply}", 1e3*drop/f.current)
	if calc.Over(drop, mostDrop*f.supply) {
		out.Stop("{drop_percent} of the supply is lost, more than the 10 % that any circuit may lose; allow less")
	}
	noteThinWire(area, out)
}
