package calc

// A Table is a computation run over one or two lists.
type Table struct {
	// Corner names the rows, and the columns behind them.
	Corner string
	Heads  []string
	Rows   []TableRow
	// Notes are reasons that some cell is empty or must not be used.
	Notes []string
}

// A TableRow is a row's head and cells.
type TableRow struct {
	Head  string
	Cells []TableCell
}

// A TableCell is one result; Text is empty where there is none.
type TableCell struct {
	Text    string
	Verdict Verdict
}

// Tabulate computes every combination of a sweep's one or two lists. With
// one list the columns are the outputs named; with two, the second list, and
// exactly one output may be named.
func (s *Sweep) Tabulate(outputs []int) (*Table, *Problem) {
	if len(s.Lists) == 0 || len(s.Lists) > 2 {
		return nil, NewProblem("", "a table needs one or two inputs with a list of values")
	}
	if len(outputs) == 0 {
		return nil, NewProblem("", "a table needs #output behind its query")
	}
	if len(s.Lists) == 2 && len(outputs) > 1 {
		return nil, NewProblem("", "a table over two lists shows one output")
	}
	c, t := s.Calculator, &Table{}
	rows := s.Lists[0]
	t.Corner = rows.Input.Label
	columns := []string{""}
	if len(s.Lists) == 2 {
		columns = s.Lists[1].Values
		t.Corner += " / " + s.Lists[1].Input.Label
		for _, v := range columns {
			t.Heads = append(t.Heads, textOf(s.Lists[1].Input, v))
		}
	} else {
		for _, o := range outputs {
			t.Heads = append(t.Heads, c.Outputs[o].Label)
		}
	}
	for _, rowValue := range rows.Values {
		row := TableRow{Head: textOf(rows.Input, rowValue)}
		for _, columnValue := range columns {
			pairs := append(append([]Pair(nil), s.Fixed...), Pair{Key: rows.Input.Name, Value: rowValue})
			if len(s.Lists) == 2 {
				pairs = append(pairs, Pair{Key: s.Lists[1].Input.Name, Value: columnValue})
			}
			row.Cells = append(row.Cells, t.compute(c, pairs, outputs)...)
		}
		t.Rows = append(t.Rows, row)
	}
	return t, nil
}

// compute fills one computation's cells, one for each output.
func (t *Table) compute(c *Calculator, pairs []Pair, outputs []int) []TableCell {
	cells := make([]TableCell, len(outputs))
	_, r, problems := c.Answer(pairs)
	for _, p := range problems {
		t.note(p.Error())
	}
	if r == nil {
		return cells
	}
	for i, o := range outputs {
		if a := r.Outputs[o]; a.Present {
			cells[i] = TableCell{Text: c.Outputs[o].Format(a), Verdict: r.Verdict}
			continue
		}
		for _, reason := range r.Reasons {
			t.note(reason)
		}
	}
	return cells
}

func (t *Table) note(text string) {
	for _, n := range t.Notes {
		if n == text {
			return
		}
	}
	t.Notes = append(t.Notes, text)
}

// textOf tidies a value as its input writes it.
func textOf(in *Input, value string) string {
	v, _ := in.Read(value)
	return v.Text
}

// AppendTable writes a table as HTML. The class names are the page's to style.
func AppendTable(b []byte, t *Table, caption string) []byte {
	b = AppendForm(b, `<table class="computed"><caption>%</caption><thead><tr><th scope="col">%</th>`, caption, t.Corner)
	for _, h := range t.Heads {
		b = AppendForm(b, `<th scope="col">%</th>`, h)
	}
	b = append(b, `</tr></thead><tbody>`...)
	for _, row := range t.Rows {
		b = AppendForm(b, `<tr><th scope="row">%</th>`, row.Head)
		for _, cell := range row.Cells {
			b = AppendForm(b, `<td data-verdict="%">%</td>`, cell.Verdict.String(), cell.said())
		}
		b = append(b, `</tr>`...)
	}
	b = append(b, `</tbody></table>`...)
	return appendItems(b, "notes", t.Notes)
}

// said is what a cell shows: a dash where there is no result, and the verdict
// where it must not be used.
func (c TableCell) said() string {
	text := c.Text
	if text == "" {
		text = "–"
	}
	if c.Verdict == Stop {
		text += " (stop)"
	}
	return text
}
