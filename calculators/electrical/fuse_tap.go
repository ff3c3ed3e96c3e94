package electrical

import (
	"slices"

	"baybook/calculators/calc"
)

// FuseTap answers whether a fused slot has room for one more load.
var FuseTap = &calc.Calculator{
	Name:     "fuse-tap",
	Title:    "Room on a fused slot",
	Question: "Is there room on this slot?",
	Doc:      "What a fuse tap adds to the slot that it plugs into, how much room is left, and the fuse for the tapped wire.",
	Decides:  "spare",
	Inputs: []calc.Input{
		{Name: "slot_fuse", Label: "Slot's fuse", Unit: "A", OneOf: slotRatings, Min: slotRatings[0], Max: slotRatings[len(slotRatings)-1], Default: "10",
			Help: "The rating that the vehicle's fuse chart gives for the slot, not what somebody plugged in."},
		{Name: "existing", Label: "Load already there", Unit: "A", Min: 0, Max: 40, Default: "2",
			Help: "Measured: everything on the slot switched on, read over the fuse's test points or with a clamp."},
		{Name: "added", Label: "Load to add", Unit: "A", Min: 0.01, Max: 30, Default: "1",
			Help: "Off the data sheet of what is added, at its most."},
		{Name: "wire", Label: "Tapped wire", Kind: calc.Wire, Min: leastRatedArea, Max: mostRatedArea, Default: "18 AWG",
			Help: "The thinnest copper wire behind the tap, its own pigtail counted."},
		{Name: "circuit", Label: "What it feeds", Kind: calc.Word, Words: []string{"accessory", "lighting", "safety"}, Default: "accessory",
			Help: "accessory: radio, socket, mirror. lighting: lamps that the law asks for. safety: airbags, brakes, steering, engine, data gateway."},
		fuseAir,
	},
	Outputs: []calc.Output{
		{Name: "total", Label: "Load together", Unit: "A"},
		{Name: "spare", Label: "Room left", Unit: "A", Help: "under what the slot's fuse carries for good: 80 % of it, less in hot air"},
		{Name: "tap_fuse", Label: "Fuse of the tap", Unit: "A"},
		{Name: "wire_limit", Label: "Wire may carry", Unit: "A", Help: "one wire, 105 C insulation, 40 C air"},
	},
	Sources: slices.Concat(fuseSources, ampacitySources, []calc.Source{
		{Text: "Limits for fuse taps", Standing: "common practice, no source"},
	}),
	Limits: []string{
		"The slot's own terminal, wire and relay carry the sum too; an old or loose terminal carries less than its fuse.",
		"Insulation under 105 °C, hotter air or a full loom lower what the wire carries: see “Fuse for a load and its wire”.",
		"A slot that sleeps wakes late or drops out in a crank; measure when it is live.",
	},
	Cautions: []string{
		"Never tap a slot of airbags, belts, brakes, steering, engine or driver assistance.",
		"Plug the tap with its single leg on the feed side of the slot, the side still live with the fuse out. Turned round, the " +
			"added load runs through the slot's fuse too, and may take the vehicle's circuit down with it.",
		"Follow the vehicle maker's service information and local code.",
	},
	Run:    fuseTap,
	Figure: drawFuseTap,
}

// slotRatings are the ratings that a fuse box slot for a tap may have.
var slotRatings = ratings[:12]

// Conditions for which a tap's wire is judged, °C.
const (
	tapInsulation = 105.0
	tapAmbient    = 40.0
)

func fuseTap(in *calc.Values, out *calc.Result) *calc.Problem {
	slot, added := in.SI("slot_fuse"), in.SI("added")
	total := in.SI("existing") + added
	share := FuseShare(in.SI("fuse_air"))
	tap, _ := FuseInAir(added, in.SI("fuse_air")) // 30 A at most, so there is one
	limit, _ := WireLimit(in.SI("wire"), tapInsulation, tapAmbient, 1)
	usable := share * slot
	out.SetSI("total", total)
	out.SetSI("spare", usable-total)
	out.SetSI("tap_fuse", tap)
	out.SetSI("wire_limit", limit)
	judgeTap(in, out, usable, total, tap, limit)
	out.Work("Together: {existing} + {added} = {total:4}")
	out.Work("Usable in air of {fuse_air}: {1:3} × {slot_fuse} = {2:4 A}; left: {spare:4}", share, usable)
	workFuse(in, out, "added", "tap_fuse")
	base, _ := TableAmpacity(in.SI("wire"), tapInsulation)
	out.Work("Wire: {1:4 A} at 30 C × {2:4} for 40 C = {wire_limit:4}", base, AmbientFactor(tapInsulation, tapAmbient))
	return nil
}

func judgeTap(in *calc.Values, out *calc.Result, usable, total, tap, limit float64) {
	slot := in.SI("slot_fuse")
	if in.Word("circuit") == "safety" {
		out.Stop("a safety circuit is never tapped; find an accessory slot or feed from the battery with a fuse of its own")
	}
	if calc.Over(total, usable) {
		out.Stop("together {total}, over the {1:3 A} that {slot_fuse} may carry for good; take another slot or a relay fed from the battery", usable)
	}
	if calc.Over(tap, slot) {
		out.Stop("the tap would need {tap_fuse:4}, more than the slot's own fuse")
	}
	if calc.Over(tap, limit) {
		out.Stop("a tap fuse of {tap_fuse:4} is more than the {wire_limit} that this wire may carry; " + thicker(tap, tapInsulation, tapAmbient, 1))
	}
	if in.Word("circuit") == "lighting" {
		out.Check("lamps hang on this slot: if the added load opens the fuse they go dark; an accessory slot is better")
	}
	if calc.Over(total+0.1*slot, usable) && !calc.Over(total, usable) {
		out.Check("only {spare} of room is left, under a tenth of the slot's fuse; measure the existing load again with everything on")
	}
}
