package circuit

import (
	"strconv"
	"unicode/utf8"

	"baybook/calculators/calc"
)

// AppendText writes a study for the prompt: tables, judgements, verdict.
func AppendText(b []byte, s *Study) []byte {
	if s.Network.Title != "" {
		b = append(b, s.Network.Title+"\n\n"...)
	}
	for _, t := range s.Tables() {
		b = append(b, t.Heading+"\n"...)
		b = appendColumns(b, &t)
		b = append(b, '\n')
	}
	if text := s.StandbyText(); text != "" {
		b = append(b, text+"\n\n"...)
	}
	b = append(b, "Verdict: "+s.Verdict().String()+"\n"...)
	for i := range s.Judgements {
		j := &s.Judgements[i]
		b = append(b, "  "+j.Verdict.String()+" "+j.Rule+": "+j.Message+"; "+j.Do...)
		if s.Meant(j) {
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
func AppendJSON(b []byte, s *Study) []byte {
	n := s.Network
	b = append(b, `{"title":`...)
	b = calc.AppendString(b, n.Title)
	b = append(b, `,"verdict":`...)
	b = calc.AppendString(b, s.Verdict().String())
	b = append(b, `,"states":[`...)
	for i, sol := range s.Solutions {
		if i > 0 {
			b = append(b, ',')
		}
		b = s.appendState(b, sol)
	}
	b = append(b, `],"shorts":[`...)
	for i := range s.Shorts {
		if i > 0 {
			b = append(b, ',')
		}
		b = s.appendShort(b, &s.Shorts[i])
	}
	b = append(b, `],"judgements":[`...)
	for i := range s.Judgements {
		if i > 0 {
			b = append(b, ',')
		}
		b = s.appendJudgement(b, &s.Judgements[i])
	}
	b = append(b, `],"parts":[`...)
	for i, p := range n.Parts() {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendTexts(b, "{", "what", p.What, "amount", p.Amount, "for", p.For)
		b = append(b, '}')
	}
	return append(b, `]}`...)
}

func (s *Study) appendState(b []byte, sol *Solution) []byte {
	n := s.Network
	b = appendTexts(b, "{", "state", n.States[sol.State].Name)
	b = append(b, `,"settled":`...)
	b = strconv.AppendBool(b, sol.Settled)
	b = append(b, `,"parts":[`...)
	for i, f := range sol.Flows {
		if i > 0 {
			b = append(b, ',')
		}
		br := &n.Branches[i]
		b = appendTexts(b, "{", "part", n.of(br).Name, "way", br.Part)
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

func (s *Study) appendShort(b []byte, short *Short) []byte {
	n := s.Network
	fuse := ""
	if short.Fuse >= 0 {
		fuse = n.Elements[short.Fuse].Name
	}
	b = appendTexts(b, "{", "wire", n.Elements[short.Wire].Name, "setting", short.Setting, "fuse", fuse)
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

func (s *Study) appendJudgement(b []byte, j *Judgement) []byte {
	element := ""
	if j.Element >= 0 {
		element = s.Network.Elements[j.Element].Name
	}
	b = appendTexts(b, "{", "rule", j.Rule, "verdict", j.Verdict.String(), "part", element, "state", j.State, "message", j.Message, "do", j.Do)
	b = append(b, `,"meant":`...)
	b = strconv.AppendBool(b, s.Meant(j))
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
