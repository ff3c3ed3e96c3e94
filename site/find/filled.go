package find

import "strings"

// An offer is a calculator that takes values which a query names: 12A 5m fills
// in the load and the length of a feed.
type offer struct {
	page   string
	inputs []input
}

// An input is a calculator's input and the unit by which a query fills it.
type input struct{ unit, name string }

// offers are tried in order; each of its inputs must be named.
var offers = []offer{
	{"calculators/feed-plan.html", []input{{"A", "current"}, {"m", "length"}}},
	{"calculators/feed-plan.html", []input{{"A", "current"}, {"ft", "length"}}},
	{"calculators/fuse-size.html", []input{{"A", "load"}, {"AWG", "wire"}}},
	{"calculators/battery-run.html", []input{{"Ah", "capacity"}, {"A", "load"}}},
	{"calculators/gain-voltage.html", []input{{"W", "power"}, {"ohm", "load"}}},
}

// unitWords are the units as a hand in the bay writes them.
var unitWords = [...][2]string{
	{"a", "A"}, {"amp", "A"}, {"ampere", "A"}, {"m", "m"}, {"meter", "m"}, {"metre", "m"}, {"ft", "ft"}, {"foot", "ft"},
	{"w", "W"}, {"watt", "W"}, {"ohm", "ohm"}, {"ah", "Ah"}, {"awg", "AWG"}, {"ga", "AWG"}, {"gauge", "AWG"},
}

// filled is the address of a calculator that the query's values fill in, and the
// calculator's document; doc is negative where no calculator takes them.
func (x *Index) filled(query string) (address string, doc int32) {
	values := readValues(query)
	if len(values) < 2 {
		return "", -1
	}
	for _, o := range offers {
		pairs := ""
		for _, in := range o.inputs {
			for _, v := range values {
				if v.unit == in.unit {
					pairs += "&" + in.name + "=" + v.number + v.unit
					break
				}
			}
		}
		if strings.Count(pairs, "&") < len(o.inputs) {
			continue
		}
		for i, kind := range x.kind {
			if kind == Calculator && x.record(i).address == o.page {
				return o.page + "#calculator-1?" + pairs[1:], int32(i)
			}
		}
	}
	return "", -1
}

// A value is a number of a query with the unit behind it.
type value struct{ number, unit string }

// readValues finds the numbers with units in a query, each unit once.
func readValues(query string) (list []value) {
	number := ""
	s := scanner{text: query}
	for s.next() {
		word := string(s.word)
		if isDigit(rune(word[0])) {
			number = word
			continue
		}
		if number != "" {
			word = singular(word)
			for _, u := range unitWords {
				if u[0] == word {
					list = append(list, value{number, u[1]})
				}
			}
		}
		number = ""
	}
	return list
}
