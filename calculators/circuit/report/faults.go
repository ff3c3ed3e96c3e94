package report

import (
	"math"
	"strconv"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/faults"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/judge"
)

// Faults lists what every single fault changes, in every state: the loads that
// get another voltage and the points that read one.
func Faults(t *faults.Table) Table {
	out := Table{Heading: "Faults", Columns: Row{"Fault", "State", "Blows", "Loads", "Reads"}}
	sound := &t.Faults[0]
	for i := 1; i < len(t.Faults); i++ {
		for state := range t.Network.States {
			is, was := &t.Faults[i].States[state], &sound.States[state]
			row := Row{t.Faults[i].Name, t.Network.States[state].Name, t.Network.Names(is.Opened), "no solution", ""}
			if is.Solved && was.Solved {
				row[3] = changes(len(t.Loads), was.Loads, is.Loads, func(i int) string { return t.Network.NameOf(&t.Network.Branches[t.Loads[i]]) })
				row[4] = changes(len(t.Points), was.Points, is.Points, func(i int) string { return t.Points[i].Name })
			}
			out.Rows = append(out.Rows, row)
		}
	}
	return out
}

// changes names what has another voltage than before, with the new one.
func changes(count int, before, after []float64, name func(i int) string) string {
	var list []string
	for i := range count {
		if math.Abs(after[i]-before[i]) > 0.05 {
			list = append(list, name(i)+" "+format.NodeVolts(after[i]))
		}
	}
	if len(list) == 0 {
		return "as before"
	}
	return strings.Join(list, ", ")
}

// AppendFaultsJSON writes the table as a JSON array: every fault in every
// state, in V.
func AppendFaultsJSON(b []byte, t *faults.Table) []byte {
	b = append(b, '[')
	for i := range t.Faults {
		for state := range t.Network.States {
			if len(b) > 1 {
				b = append(b, ',')
			}
			at := &t.Faults[i].States[state]
			b = appendTexts(b, "{", "fault", t.Faults[i].Name, "state", t.Network.States[state].Name, "blows", t.Network.Names(at.Opened))
			b = strconv.AppendBool(append(b, `,"solved":`...), at.Solved)
			b = appendVolts(append(b, `,"loads":{`...), at.Loads, func(i int) string { return t.Network.NameOf(&t.Network.Branches[t.Loads[i]]) })
			b = appendVolts(append(b, `},"points":{`...), at.Points, func(i int) string { return t.Points[i].Name })
			b = append(b, `}}`...)
		}
	}
	return append(b, ']')
}

func appendVolts(b []byte, volts []float64, name func(i int) string) []byte {
	for i, v := range volts {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(calc.AppendString(b, name(i)), ':')
		b = strconv.AppendFloat(b, v+0, 'g', -1, 64)
	}
	return b
}

// mostReadings is how many readings a page asks for, mostSuspects how many
// faults it answers with.
const (
	mostReadings = 3
	mostSuspects = 6
)

// A reading is a place and what is read there, as they are typed.
type reading struct{ point, volts string }

// readingVolts reads what a meter shows.
var readingVolts = calc.Input{Name: "volts", Unit: "V", Min: -100, Max: 100}

// read takes a pair of a query that belongs to the readings: point1, volts1
// and so on.
func (r *readings) read(pair calc.Pair) bool {
	for i := range r {
		switch pair.Key {
		case "point" + strconv.Itoa(i+1):
			r[i].point = pair.Value
			return true
		case "volts" + strconv.Itoa(i+1):
			r[i].volts = pair.Value
			return true
		}
	}
	return false
}

type readings [mostReadings]reading

// appendSuspects writes which single faults explain what is read in a state;
// nothing where nothing is read.
func (r *readings) appendSuspects(b []byte, a *judge.Assessment, state int) ([]byte, []*calc.Problem) {
	points := faults.Points(a.Network)
	var list []faults.Reading
	for i, one := range r {
		if strings.TrimSpace(one.volts) == "" {
			continue
		}
		v, msg := readingVolts.Read(one.volts)
		at := -1
		for k := range points {
			if points[k].Name == one.point {
				at = k
			}
		}
		if at < 0 && msg == "" {
			msg = "choose the point at which that is read"
		}
		if msg != "" {
			return b, []*calc.Problem{calc.NewProblem("volts"+strconv.Itoa(i+1), msg)}
		}
		list = append(list, faults.Reading{Point: at, Volts: v.Num})
	}
	if len(list) == 0 {
		return b, nil
	}
	return appendRanking(b, faults.ForState(a.Study, state), state, list), nil
}

// appendRanking writes the faults that explain some readings.
func appendRanking(b []byte, t *faults.Table, state int, list []faults.Reading) []byte {
	ranked := t.Explain(state, list)
	if len(ranked) == 0 {
		return b
	}
	explain := 0
	for explain < len(ranked) && ranked[explain].Misfit <= 1 {
		explain++
	}
	b = put(b, `<section class="suspects"><p><strong>`)
	switch {
	case explain == 0:
		b = put(b, "No single fault explains what you read. These come nearest:")
	case t.Faults[ranked[0].Fault].Kind == faults.None:
		b = put(b, "Nothing need be broken for what you read. It also fits:")
	default:
		b = put(b, "What explains it:")
	}
	b = put(b, `</strong></p><ol>`)
	for i := range min(max(explain, 3), mostSuspects, len(ranked)) {
		b = put(b, `<li>`)
		b = calc.AppendEscaped(b, t.Faults[ranked[i].Fault].Name)
		b = put(b, `</li>`)
		if i+1 >= explain && explain > 0 {
			break
		}
	}
	b = put(b, `</ol>`)
	if len(ranked) > 1 && explain != 1 {
		if point, gives := t.Next(state, ranked[0], ranked[1], list); point >= 0 {
			b = put(b, `<p>Read next at <strong>`)
			b = calc.AppendEscaped(b, t.Points[point].Name)
			b = put(b, `</strong>: `)
			b = calc.AppendEscaped(b, format.NodeVolts(gives[0])+" if it is "+t.Faults[ranked[0].Fault].Name+", "+format.NodeVolts(gives[1])+" if it is "+t.Faults[ranked[1].Fault].Name+".")
			b = put(b, `</p>`)
		}
	}
	return put(b, `<p>Computed for one fault at a time, read against the battery's negative post. Replace no fuse before its cause is found.</p></section>`)
}

// ReadingPoints are the places at which a page asks for readings.
func ReadingPoints(a *judge.Assessment) []string {
	var names []string
	for _, p := range faults.Points(a.Network) {
		names = append(names, p.Name)
	}
	return names
}

// ReadingCount is how many readings Ask takes: point1 and volts1, point2 and
// volts2 and so on.
const ReadingCount = mostReadings
