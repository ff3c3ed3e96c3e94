package electrical

import (
	"slices"

	"baybook/calculators/calc"
)

// The inputs that fuse-size and feed-plan share.
var (
	insulationInput = calc.Input{Name: "insulation", Label: "Insulation rating", Unit: "C", OneOf: insulations, Min: insulations[0], Max: insulations[len(insulations)-1], Default: "105",
		Help: "Printed on the insulation or in the wire's data sheet. Where nothing is printed take 60 °C."}
	ambientInput = calc.Input{Name: "ambient", Label: "Air around the wire", Unit: "C", Min: -40, Max: 120, Default: "40",
		Help: "Around the hottest part of the run. A closed roof in the sun is well above 40 °C, an engine bay near 100 °C."}
	bundledInput = calc.Input{Name: "bundled", Label: "Wires together", Kind: calc.Count, Min: 1, Max: 30, Default: "1",
		Help: "Current-carrying wires in the same loom or sleeve, this one counted. Signal wires do not count."}
)

// FuseSize answers which fuse protects a wire and carries its load.
var FuseSize = &calc.Calculator{
	Name:     "fuse-size",
	Title:    "Fuse for a load and its wire",
	Question: "Which fuse?",
	Decides:  "fuse",
	Doc:      "The smallest standard fuse that carries the load for good, and whether the wire behind it may carry what the fuse lets through.",
	Inputs: []calc.Input{
		{Name: "load", Label: "Load", Unit: "A", Min: 0.05, Max: 240, Default: "5",
			Help: "The largest lasting current. Read it off the data sheet, or measure it with a clamp meter."},
		{Name: "wire", Label: "Wire size", Kind: calc.Wire, Min: leastRatedArea, Max: mostRatedArea, Default: "16 AWG",
			Help: "The thinnest copper wire behind the fuse, printed on the insulation or the reel. Copper-clad aluminium carries less: count it two AWG sizes thinner."},
		insulationInput, ambientInput, bundledInput, fuseAir,
	},
	Outputs: []calc.Output{
		{Name: "fuse", Label: "Fuse", Unit: "A", Help: "smallest standard rating of which the load is at most 80 %"},
		{Name: "colour", Label: "Blade color", Text: true, Help: "body of a blade fuse of that rating: type C, or type E from 50 A"},
		{Name: "wire_limit", Label: "Wire may carry", Unit: "A", Help: "at this insulation, air and bundle"},
		{Name: "loading", Label: "Fuse used", Unit: "%", Help: "load as a share of the rating"},
	},
	Sources: slices.Concat(fuseSources, ampacitySources, []calc.Source{
		{Text: "Blade colors, ISO 8820-3", Standing: "from memory"},
	}),
	Limits: []string{
		"A fuse protects the wire behind it, not the device; a device that asks for a smaller fuse gets the smaller one.",
		"The table for warm air is for small blade fuses (type F); larger ones lose a little less. Motors and amplifiers that surge may need another type of fuse.",
		"SAE wire is up to a tenth thinner than the same AWG number: give its area in mm2 where it is printed.",
		"A wire that the fuse protects may still lose too much voltage: see “Voltage drop in a wire run”.",
	},
	Cautions: []string{
		"A fuse above what the wire may carry lets the wire burn before the fuse opens.",
		"Fit the fuse close to the battery or feed point, within 7 in (178 mm) as 33 CFR 183.455 asks on boats, and never bridge one.",
		"Follow the vehicle maker's service information and local code.",
	},
	Run:    fuseSize,
	Figure: drawFuseSize,
}

func fuseSize(in *calc.Values, out *calc.Result) *calc.Problem {
	load, insulation, ambient := in.SI("load"), in.SI("insulation"), in.SI("ambient")
	if !calc.Under(ambient, insulation) {
		return ambientProblem(out)
	}
	limit, _ := WireLimit(in.SI("wire"), insulation, ambient, in.Int("bundled"))
	fuse, ok := FuseInAir(load, in.SI("fuse_air"))
	out.SetSI("wire_limit", limit)
	noteThinWire(in.SI("wire"), out)
	workWireLimit(in, out)
	if !ok {
		out.Stop(noFuse)
		return nil
	}
	out.SetSI("fuse", fuse)
	out.SetSI("loading", load/fuse)
	setColor(out, fuse)
	if calc.Over(fuse, limit) {
		out.Stop("a fuse of {fuse:4} is more than the {wire_limit} that this wire may carry here; " + thicker(fuse, insulation, ambient, in.Int("bundled")))
	}
	workFuse(in, out, "load", "fuse")
	out.Work("Used: {load} / {fuse:4} = {loading:3}")
	return nil
}

// ambientProblem refuses air that is as hot as the insulation may be.
func ambientProblem(out *calc.Result) *calc.Problem {
	return calc.NewProblem("ambient", out.Fill("{ambient} is not below the insulation's rating of {insulation}; no current is safe "+
		"there, take a better insulation or a cooler route"))
}

// setColour gives the body color of a blade fuse, or says that there is none.
func setColor(out *calc.Result, fuse float64) {
	if color := FuseColor(fuse); color != "" {
		out.SetText("colour", color)
	} else {
		out.Note("no color: no blade fuse has a rating of {fuse:4}; take a bolt-down fuse")
	}
}

// noteThinWire says where the table of the law does not reach; area in m².
func noteThinWire(area float64, out *calc.Result) {
	if area < gaugeArea(ampacities[0].gauge) {
		out.Note("the table of the law starts at 18 AWG; what this thinner wire may carry is taken in proportion to its area (common practice, no source)")
	}
}

// thicker says which stocked AWG size would carry a fuse.
func thicker(fuse, insulation, ambient float64, bundled int) string {
	s, ok := smallest(GaugeSizes(), func(area float64) bool {
		amps, rated := WireLimit(area, insulation, ambient, bundled)
		return rated && !calc.Over(fuse, amps)
	})
	if !ok {
		return "no size up to 4/0 AWG carries it: split the load, or use a better insulation or a cooler way"
	}
	return "the smallest size that carries it is " + s.Name
}

// workWireLimit writes the way to wire_limit.
func workWireLimit(in *calc.Values, out *calc.Result) {
	insulation, ambient := in.SI("insulation"), in.SI("ambient")
	base, _ := TableAmpacity(in.SI("wire"), insulation)
	out.Work("At 30 °C, {wire} ({1:4 mm2}) with {insulation} insulation carries {2:4 A}", in.Num("wire"), base)
	out.Work("Air: sqrt(({1:4} − {2:4}) / ({1:4} − 30)) = {3:4}", insulation, ambient, AmbientFactor(insulation, ambient))
	out.Work("Wires together: {bundled}, factor {1:4}", BundlingFactor(in.Int("bundled")))
	out.Work("Wire may carry: {1:4 A} × {2:4} × {3:4} = {wire_limit:4}", base, AmbientFactor(insulation, ambient), BundlingFactor(in.Int("bundled")))
}

// workFuse writes the way from a load to its fuse, both by name.
func workFuse(in *calc.Values, out *calc.Result, load, fuse string) {
	share := FuseShare(in.SI("fuse_air"))
	out.Work("Fuse in air of {fuse_air}: {"+load+"} / {1:3} = {2:4 A}, next standard rating {"+fuse+":4}", share, in.Num(load)/share)
}
