package audio

import (
	"math"

	"baybook/calculators/calc"
)

// Loudness answers how loud speakers are and for how long that is bearable.
var Loudness = &calc.Calculator{
	Name:     "loudness",
	Title:    "How loud, and for how long",
	Question: "How loud is it, and for how long is that safe?",
	Doc:      "The level of speakers at a distance in the open, and how long a day an unprotected ear may take it by two published rules.",
	Decides:  "level",
	Inputs: []calc.Input{
		{Name: "sensitivity", Label: "Sensitivity", Unit: "dB", Min: 70, Max: 115, Default: "90",
			Help: "At 1 m, off the data sheet; mind whether it is for 1 W or 2.83 V."},
		{Name: "basis", Label: "Given for", Kind: calc.Word, Words: []string{"1W", "2.83V"}, Default: "2.83V",
			Help: "2.83 V is 1 W into 8 ohm but 2 W into 4 ohm, which flatters a 4 ohm speaker by 3 dB."},
		{Name: "impedance", Label: "Of one speaker", Unit: "ohm", Min: 1, Max: 16, Default: "4", Help: "Nominal."},
		{Name: "power", Label: "Power into each", Unit: "W", Min: 0.01, Max: 5000, Default: "50",
			Help: "Average over the music, rms: one eighth of the amplifier's power is usual."},
		{Name: "distance", Label: "Distance", Unit: "m", Min: 0.2, Max: 20, Default: "1", Help: "From the speakers to the ear."},
		{Name: "speakers", Label: "Speakers", Kind: calc.Count, Min: 1, Max: 16, Default: "1", Help: "Playing at this distance, alike."},
		{Name: "adding", Label: "How they add", Kind: calc.Word, Words: []string{"coherent", "incoherent"}, Default: "incoherent",
			Help: "coherent: deep bass, speakers close together. incoherent: everything else."},
	},
	Outputs: []calc.Output{
		{Name: "level", Label: "Level", Unit: "dB", Places: 1, Help: "in the open, no walls"},
		{Name: "niosh", Label: "Allowed a day, NIOSH", Unit: "h"},
		{Name: "osha", Label: "Allowed a day, OSHA", Unit: "h"},
	},
	Sources: []calc.Source{
		{Text: "8 h at 85 dB(A), halved every 3 dB, NIOSH criteria document"},
		{Text: "8 h at 90 dB(A), halved every 5 dB, 29 CFR 1910.95 Appendix A"},
		{Text: "Level = sensitivity + 10·log10 P − 20·log10 r, free field", Standing: "from memory"},
		{Text: "Equal sources add 10·log10 n, or 20·log10 n in phase, acoustics textbooks", Standing: "from memory"},
	},
	Limits: []string{
		"A cabin is no free field: reflections and cabin gain make it louder than computed, bass most.",
		"The rules are for A-weighted levels, which count bass for little; levels here are unweighted.",
		"Hot coils lose a few dB at high power.",
	},
	Cautions: []string{
		"Hearing lost is lost for good. From 85 dB on wear protection, and keep passers-by away during tests.",
		"The longer OSHA time is a legal limit at work, not a safe dose.",
		"Loud music hides sirens and horns.",
	},
	Run:    loudness,
	Figure: drawLoudness,
}

// riskLevel is the level in dB(A) from which hearing is at risk over a working
// day, NIOSH criteria document.
const riskLevel = 85.0

// OneWatt turns a sensitivity for 2.83 V (√8 V, 8/R watts) into one for 1 W,
// in dB, impedance in ohm.
func OneWatt(sensitivity, impedance float64) float64 {
	return sensitivity - 10*math.Log10(8/impedance)
}

// ExposureHours is how many hours a day a level in dB(A) is allowed: 8 h at
// the criterion, and half of that for each halving dB above it.
func ExposureHours(level, criterion, halving float64) float64 {
	return 8 / math.Exp2((level-criterion)/halving)
}

func loudness(in *calc.Values, out *calc.Result) *calc.Problem {
	one := in.Num("sensitivity")
	if in.Word("basis") == "2.83V" {
		one = OneWatt(one, in.SI("impedance"))
		out.Work("For 1 W: {sensitivity} − 10·log10(8 / {impedance}) = {1:4 dB}", one)
	}
	weight, n := 10.0, float64(in.Int("speakers"))
	if in.Word("adding") == "coherent" {
		weight = 20
	}
	single := one + 10*math.Log10(in.SI("power")) - 20*math.Log10(in.SI("distance"))
	level := single + weight*math.Log10(n)
	niosh, osha := ExposureHours(level, riskLevel, 3), ExposureHours(level, 90, 5)
	out.Set("level", level)
	out.Set("niosh", niosh)
	out.Set("osha", osha)
	if calc.Over(level, riskLevel) {
		out.Check("over 85 dB hearing is harmed: without protection no more than " + clock(niosh) + " a day by NIOSH; wear protection")
	}
	out.Work("One speaker: {1:4 dB} + 10·log10({power}) − 20·log10({distance}) = {2:4 dB}", one, single)
	out.Work("{speakers} of them, {adding}: + {1:2}·log10 {speakers} = {level}", weight)
	out.Work("NIOSH: 8 h / 2^(({level} − 85 dB)/3) = " + clock(niosh))
	out.Work("OSHA: 8 h / 2^(({level} − 90 dB)/5) = " + clock(osha))
	return nil
}

// clock writes hours in the unit that a person would say.
func clock(hours float64) string {
	switch {
	case hours >= 1:
		return calc.FormatUnit(hours, 3, "h")
	case hours >= 1.0/60:
		return calc.FormatUnit(60*hours, 3, "min")
	}
	return calc.FormatUnit(3600*hours, 2, "s")
}

// drawLoudness draws the level on a scale of familiar limits.
func drawLoudness(in *calc.Values, out *calc.Result) *calc.Drawing {
	level := out.Num("level")
	d := calc.NewDrawing(320, 170, out.Fill("{speakers} at {distance} with {power} each: {level}, "+clock(out.Num("niosh"))+" a "+
		"day by NIOSH, "+clock(out.Num("osha"))+" by OSHA."))
	const left, width, top, low, high = 14.0, 292.0, 56.0, 40.0, 140.0
	at := func(db float64) float64 { return left + width*(math.Max(low, math.Min(high, db))-low)/(high-low) }
	d.Rect(calc.Point{X: left, Y: top}, width, 16, calc.Outline, calc.Empty)
	d.Rect(calc.Point{X: at(riskLevel), Y: top}, left+width-at(riskLevel), 16, calc.Outline, calc.Tint)
	for _, db := range [...]float64{40, 60, 85, 100, 120, 140} {
		d.Line(calc.Point{X: at(db), Y: top + 16}, calc.Point{X: at(db), Y: top + 22}, calc.Outline)
		d.TextWithin(calc.Point{X: at(db), Y: top + 35}, calc.Format(db, 3))
	}
	d.Arrow(calc.Point{X: at(level), Y: top - 14}, calc.Point{X: at(level), Y: top})
	d.Line(calc.Point{X: at(level), Y: top - 14}, calc.Point{X: at(level), Y: top + 16}, calc.Heavy)
	d.TextWithin(calc.Point{X: at(level), Y: top - 22}, out.Fill("{level}"))
	d.Text(calc.Point{X: left, Y: 118}, calc.Start, "Grey: hearing at risk")
	d.Text(calc.Point{X: left, Y: 138}, calc.Start, "NIOSH "+clock(out.Num("niosh"))+" a day, OSHA "+clock(out.Num("osha")))
	d.Text(calc.Point{X: left, Y: 156}, calc.Start, "without protection, in the open")
	return d
}
