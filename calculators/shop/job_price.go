// Package shop holds the calculators of the counter.
package shop

import "baybook/calculators/calc"

// JobPrice answers what a job costs.
var JobPrice = &calc.Calculator{
	Name:     "job-price",
	Title:    "Price of a job",
	Question: "What does the job cost?",
	Doc:      "Labor with a reserve for what nobody could see, parts with their mark-up, and tax.",
	Decides:  "total",
	Inputs: []calc.Input{
		{Name: "hours", Label: "Hours", Unit: "h", Min: 0, Max: 200, Default: "3",
			Help: "The minutes of the job's sheets added up, driving and proving counted."},
		{Name: "rate", Label: "Rate an hour", Price: true, Min: 0, Max: 500, Default: "95", Help: "What the shop charges an hour, without tax."},
		{Name: "materials", Label: "Materials", Price: true, Min: 0, Max: 100000, Default: "120", Help: "What the shop pays for all parts and small stuff."},
		{Name: "markup", Label: "Mark-up", Unit: "%", Min: 0, Max: 200, Default: "30", Help: "On materials: stock, returns, warranty."},
		{Name: "contingency", Label: "Reserve", Unit: "%", Min: 0, Max: 100, Default: "10", Help: "Of labor: broken clips, seized bolts, a second look."},
		{Name: "tax", Label: "Tax", Unit: "%", Min: 0, Max: 40, Default: "0", Help: "Of all; ask the bookkeeper whether labor is taxed where you are."},
	},
	Outputs: []calc.Output{
		{Name: "total", Label: "Total", Price: true, Places: 2},
		{Name: "before_tax", Label: "Before tax", Price: true, Places: 2},
		{Name: "labour", Label: "Labor", Price: true, Places: 2},
		{Name: "parts", Label: "Parts", Price: true, Places: 2},
	},
	Sources: []calc.Source{
		{Text: "Labor = hours × rate × (1 + reserve); parts = materials × (1 + mark-up)", Standing: "common practice, no source"},
		{Text: "A reserve of a tenth and a mark-up of three tenths", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Not rounded to what your cash register rounds to.",
		"One tax on everything; where parts and labor are taxed apart, run it twice.",
	},
	Cautions: []string{
		"An estimate: say so in writing, and what happens when it is exceeded. Local law sets how far it may be.",
		"Never save the minutes that prove the work safe.",
	},
	Run: jobPrice,
}

func jobPrice(in *calc.Values, out *calc.Result) *calc.Problem {
	labour := in.Num("hours") * in.Num("rate") * (1 + in.SI("contingency"))
	parts := in.Num("materials") * (1 + in.SI("markup"))
	before := labour + parts
	total := before * (1 + in.SI("tax"))
	out.Set("labour", labour)
	out.Set("parts", parts)
	out.Set("before_tax", before)
	out.Set("total", total)
	out.Work("Labor: {hours} × {rate} × (1 + {contingency}) = {labour}")
	out.Work("Parts: {materials} × (1 + {markup}) = {parts}")
	out.Work("Before tax: {labour} + {parts} = {before_tax}")
	out.Work("Total: {before_tax} × (1 + {tax}) = {total}")
	return nil
}
