package electrical

import "baybook/calculators/calc"

// ratings are the fuse ratings in A that can be bought, smallest first.
var ratings = []float64{2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80,
	100, 125, 150, 175, 200, 225, 250, 300}

// FuseLoading is the share of a fuse's rating that a lasting load may use in
// air of up to 40 °C, common practice.
const FuseLoading = 0.8

// derating is the share of its rating that a blade fuse carries for good, by
// the temperature in °C of the air around it: one maker's sheet for type F
// (MINI 297, 2024), restated. It is flat below and linear between.
var derating = []struct{ air, share float64 }{{40, FuseLoading}, {60, 0.733}, {80, 0.68}, {85, 0.667}}

// FuseShare is the share of its rating that a lasting load may use of a fuse
// in air of the given temperature in °C, up to 85 °C.
func FuseShare(air float64) float64 {
	last := derating[0]
	for _, next := range derating {
		if air <= next.air {
			if next == last {
				return next.share
			}
			t := (air - last.air) / (next.air - last.air)
			return last.share + t*(next.share-last.share)
		}
		last = next
	}
	return last.share
}

// FuseFor is the smallest standard rating in A that a load in A uses to no
// more than FuseLoading; ok is false where none is large enough.
func FuseFor(load float64) (rating float64, ok bool) { return FuseInAir(load, derating[0].air) }

// FuseInAir is FuseFor with the fuse in air of the given temperature in °C:
// its rating is at least load/FuseShare(air).
func FuseInAir(load, air float64) (rating float64, ok bool) {
	least := load / FuseShare(air)
	for _, r := range ratings {
		if !calc.Under(r, least) {
			return r, true
		}
	}
	return 0, false
}

// fuseAir is the input that every calculator which picks a fuse has.
var fuseAir = calc.Input{Name: "fuse_air", Label: "Air around the fuse", Unit: "C", Min: -40, Max: 85, Default: "40",
	Help: "Where the fuse holder sits, not where the wire runs. Up to 40 °C changes nothing; behind a dash in the sun 60 °C, in an engine bay up to 85 °C."}

// The sources that every calculator which picks a fuse has.
var fuseSources = []calc.Source{
	{Text: "A fuse of at least 125 % of the lasting load, which then uses at most 80 % of it, US Navy NEETS Module 3"},
	{Text: "Less in warm air: 73.3 % at 60 °C, 68 % at 80 °C, 66.7 % at 85 °C, one maker's sheet for small blade fuses (type F)", Standing: "read as restated"},
}

// The sources of what a wire may carry.
var ampacitySources = []calc.Source{
	{Text: "Current of a conductor at 30 °C, 33 CFR 183.425 Table 5"},
	{Text: "Correction for other air temperatures, the form of NEC 310.15", Standing: "from memory"},
	{Text: "Factors for wires run together, NEC 310.15(B)(3)(a), 2014 numbering"},
	{Text: "Under 18 AWG, down to 26 AWG: the 18 AWG current in proportion to area, a cautious value", Standing: "common practice, no source"},
	{Text: "AWG areas, ASTM B258", Standing: "read as restated"},
}

// noFuse is the reason where no standard rating is large enough.
const noFuse = "no fuse is named: none of the standard ratings, up to 300 A, carries this load in this air; split the load or bring the fuse into cooler air"

// colors are the body colors of blade fuses by rating in A: type C (medium)
// first, then what only type E (high current) has, ISO 8820-3.
var colors = []struct {
	rating float64
	name   string
}{
	{2, "grey"}, {3, "violet"}, {4, "pink"}, {5, "tan"}, {7.5, "brown"}, {10, "red"},
	{15, "blue"}, {20, "yellow"}, {25, "natural"}, {30, "green"}, {35, "blue-green"}, {40, "orange"},
	{50, "red"}, {60, "blue"}, {70, "tan or brown"}, {80, "clear"},
}

// FuseColor is the color of a blade fuse's body, "" where the rating in A
// has none.
func FuseColor(rating float64) string {
	for _, c := range colors {
		if c.rating == rating {
			return c.name
		}
	}
	return ""
}
