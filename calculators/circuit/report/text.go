package report

import (
	"strconv"
	"unicode/utf8"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/list"
	"baybook/calculators/circuit/solve"
)

// AppendText writes a study for the prompt: tables, judgments, verdict.
func AppendText(b []byte, a *judge.Assessment) []byte {
	if a.Network.Title != "" {
		b = append(b, a.Network.Title+"\n\n"...)
	}
	for _, t := range Tables(a) {
		b = append(b, t.Heading+"\n"...)
		b = appendColumns(b, &t)
		b = append(b, '\n')
	}
	if text := StandbyText(a); text != "" {
		b = append(b, text+"\n\n"...)
	}
	b = append(b, "Verdict: "+a.Verdict().String()+"\n"...)
	for i := range a.Judgments {
		j := &a.Judgments[i]
		b = append(b, "  "+j.Verdict.String()+" "+j.Rule+": "+j.Message...)
		if !saidBefore(a, i) {
			b = append(b, "; "+j.Do...)
		}
		if a.Meant(j) {
			b = append(b, " (shown on purpose)"...)
		}
		b = append(b, '\n')
	}
	return b
}

// appendColumns writes a table in columns.
func appendColumns(b []byte, t *Table) []byte {
	wide := make([]int, len(t.Columns))
	rows := append([]Row{t.Columns}, t.Rows...)
	for _, r := range rows {
		for i, c := range r {
			wide[i] = max(wide[i], utf8.RuneCountInString(c))
		}
	}
	for _, r := range rows {
		b = append(b, ' ', ' ')
		for i, c := range r {
			b = append(b, c...)
			if i == len(r)-1 {
				break
			}
			for range wide[i] - utf8.RuneCountInString(c) + 2 {
				b = append(b, ' ')
			}
		}
		b = append(b, '\n')
	}
	return b
}

// AppendJSON writes a study as one JSON object: numbers in SI units at full
// precision, node voltages by the terminals that lie on the node.
func AppendJSON(b []byte, a *judge.Assessment) []byte {
	n := a.Network
	b = append(b, `{"title":`...)
	b = calc.AppendString(b, n.Title)
	b = append(b, `,"verdict":`...)
	b = calc.AppendString(b, a.Verdict().String())
	b = append(b, `,"states":[`...)
	for i, sol := range a.Solutions {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendState(b, a, sol)
	}
	b = append(b, `],"shorts":[`...)
	for i := range a.Shorts {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendShort(b, a, &a.Shorts[i])
	}
	b = append(b, `],"judgements":[`...)
	for i := range a.Judgments {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendJudgment(b, a, &a.Judgments[i])
	}
	b = append(b, `],"wires":[`...)
	for i, w := range list.Wires(n) {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendWire(b, &w)
	}
	for _, l := range lists {
		if l.name == "wires" || l.name == "parts" {
			continue // they stand here as numbers
		}
		t := l.make(n)
		b = append(b, `],"`+l.name+`":`...)
		b = AppendListJSON(b, &t)
		b = b[:len(b)-1]
	}
	b = append(b, `],"parts":[`...)
	for i, p := range list.Parts(n) {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendTexts(b, "{", "what", p.What, "amount", p.Amount, "for", p.For)
		b = append(b, '}')
	}
	return append(b, `]}`...)
}

func appendState(b []byte, a *judge.Assessment, sol *solve.Solution) []byte {
	n := a.Network
	b = appendTexts(b, "{", "state", n.States[sol.State].Name)
	b = append(b, `,"settled":`...)
	b = strconv.AppendBool(b, sol.Settled)
	b = append(b, `,"parts":[`...)
	for i, f := range sol.Flows {
		if !sol.Solved() {
			break // its numbers are where the search ended
		}
		if i > 0 {
			b = append(b, ',')
		}
		br := &n.Branches[i]
		b = appendTexts(b, "{", "part", n.NameOf(br), "way", br.Label())
		b = append(b, `,"open":`...)
		b = strconv.AppendBool(b, f.Open)
		for _, v := range [...]struct {
			name string
			v    float64
		}{{"amps", f.Current}, {"drop_volts", f.Drop}, {"watts", f.Heat}, {"from_volts", sol.Volts[br.From]}, {"to_volts", sol.Volts[br.To]}} {
			b = append(b, `,"`+v.name+`":`...)
			b = strconv.AppendFloat(b, v.v+0, 'g', -1, 64)
		}
		b = append(b, '}')
	}
	return append(b, `]}`...)
}

// appendWire writes a line of the wire list: lengths in m.
func appendWire(b []byte, w *list.Wire) []byte {
	b = appendTexts(b, "{", "wire", w.Number, "from", w.From, "to", w.To, "size", w.Size, "color", w.Color, "conductor", w.Conductor, "function", w.Function)
	b = append(b, `,"length":`...)
	b = strconv.AppendFloat(b, w.Length, 'g', -1, 64)
	b = append(b, `,"cut":`...)
	b = strconv.AppendFloat(b, w.Cut, 'g', -1, 64)
	b = append(b, `,"vehicle":`...)
	b = strconv.AppendBool(b, w.Vehicle)
	return append(b, '}')
}

func appendShort(b []byte, a *judge.Assessment, short *solve.Short) []byte {
	n := a.Network
	fuse := ""
	if short.Fuse >= 0 {
		fuse = n.Name(short.Fuse)
	}
	b = appendTexts(b, "{", "wire", n.Name(short.Wire), "setting", short.Setting, "fuse", fuse)
	b = append(b, `,"amps":`...)
	b = strconv.AppendFloat(b, short.Amps, 'g', -1, 64)
	if fuse != "" && short.Opens < 1e300 {
		b = append(b, `,"opens_seconds":`...)
		b = strconv.AppendFloat(b, short.Opens, 'g', -1, 64)
	}
	if short.Bears < 1e300 {
		b = append(b, `,"bears_seconds":`...)
		b = strconv.AppendFloat(b, short.Bears, 'g', -1, 64)
	}
	b = append(b, `,"survives":`...)
	b = strconv.AppendBool(b, short.Survives)
	return append(b, '}')
}

func appendJudgment(b []byte, a *judge.Assessment, j *judge.Judgment) []byte {
	part := ""
	if j.Part >= 0 {
		part = a.Network.Name(j.Part)
	}
	b = appendTexts(b, "{", "rule", j.Rule, "verdict", j.Verdict.String(), "part", part, "state", j.State, "message", j.Message, "do", j.Do)
	b = append(b, `,"meant":`...)
	b = strconv.AppendBool(b, a.Meant(j))
	return append(b, '}')
}

// appendTexts opens an object with names and texts in turn.
func appendTexts(b []byte, open string, pairs ...string) []byte {
	b = append(b, open...)
	for i := 0; i+1 < len(pairs); i += 2 {
		if i > 0 {
			b = append(b, ',')
		}
		b = calc.AppendString(b, pairs[i])
		b = append(b, ':')
		b = calc.AppendString(b, pairs[i+1])
	}
	return b
}
