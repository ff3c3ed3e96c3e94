package calc_test

import (
	"slices"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

func sweep(t *testing.T, query string) calc.Sweep {
	t.Helper()
	s, problems := lamp.ParseSweep(pairsOf(t, query))
	if len(problems) > 0 {
		t.Fatalf("%s: %v", query, problems[0])
	}
	return s
}

func TestParseSweep(t *testing.T) {
	s := sweep(t, "voltage=6, 12,24&current=1..4A&lamps=2&marks=1,2&wire=16AWG,1.5mm2")
	if len(s.Lists) != 2 || s.Lists[0].Input.Name != "voltage" || !slices.Equal(s.Lists[0].Values, []string{"6", "12", "24"}) ||
		s.Lists[1].Input.Name != "wire" {
		t.Errorf("lists %+v", s.Lists)
	}
	if len(s.Ranges) != 1 || s.Ranges[0].Low != 1 || s.Ranges[0].Top != 4 || s.Ranges[0].Unit.Symbol != "A" {
		t.Errorf("ranges %+v", s.Ranges)
	}
	if len(s.Fixed) != 2 || s.Fixed[1].Key != "marks" {
		t.Errorf("fixed %+v: an input that is a list by nature is no sweep", s.Fixed)
	}
	if r := sweep(t, "current=500..1500mA").Ranges[0]; calc.Over(r.Low, 0.5) || calc.Under(r.Top, 1.5) || r.Unit.Symbol != "mA" {
		t.Errorf("range in mA: %+v", r)
	}
	for _, test := range []struct{ query, says string }{
		{"current=4..1A", "does not rise"},
		{"current=1..40A", "outside"},
		{"current=1..", "nothing given"},
		{"current=..4", "nothing given"},
		{"current=1..4V", "a voltage"},
		{"current=1,40", "outside"},
		{"wire=16..18AWG", "cannot be drawn"},
		{"cap=push..screw", "cannot be drawn"},
		{"fuse=5..10", "cannot be drawn"},
		{"voltage=6,12&voltage=7", "given twice"},
		{"amps=1..4", "not an input"},
	} {
		if _, problems := lamp.ParseSweep(pairsOf(t, test.query)); len(problems) == 0 || !strings.Contains(problems[0].Error(), test.says) {
			t.Errorf("%s: %v, want a problem that says %q", test.query, problems, test.says)
		}
	}
}

func TestTabulate(t *testing.T) {
	s := sweep(t, "voltage=6,12&current=0,10,20")
	table, p := s.Tabulate([]int{0})
	if p != nil {
		t.Fatal(p)
	}
	if table.Corner != "Voltage / Current" || !slices.Equal(table.Heads, []string{"0 A", "10 A", "20 A"}) {
		t.Errorf("corner %q, heads %q", table.Corner, table.Heads)
	}
	want := [][]string{{"0 W", "60 W", "120 W"}, {"0 W", "120 W", "240 W"}}
	for i, row := range table.Rows {
		for k, cell := range row.Cells {
			if cell.Text != want[i][k] {
				t.Errorf("row %s, column %s is %q, want %q", row.Head, table.Heads[k], cell.Text, want[i][k])
			}
		}
	}
	if v := table.Rows[1].Cells[2].Verdict; v != calc.Stop {
		t.Errorf("240 W is %v", v)
	}
	html := string(calc.AppendTable(nil, table, "Watts & volts"))
	for _, piece := range []string{"<caption>Watts &amp; volts</caption>", `data-verdict="check">120 W<`, "240 W (stop)"} {
		if !strings.Contains(html, piece) {
			t.Errorf("no %q in %s", piece, html)
		}
	}
	for query, says := range map[string]string{
		"voltage=6":                         "one or two inputs",
		"voltage=6,7&current=1,2&lamps=1,2": "one or two inputs",
	} {
		one := sweep(t, query)
		if _, p := one.Tabulate([]int{0}); p == nil || !strings.Contains(p.Error(), says) {
			t.Errorf("%s: %v", query, p)
		}
	}
	if _, p := s.Tabulate([]int{0, 1}); p == nil {
		t.Error("two lists and two outputs make no table")
	}
}

// TestTableNotes: a cell without a value says why.
func TestTableNotes(t *testing.T) {
	s := sweep(t, "lamps=6,7&cap=screw")
	table, p := s.Tabulate([]int{0, 1})
	if p != nil || table.Rows[1].Cells[0].Text != "" || !slices.Contains(table.Notes, "lamps: seven do not screw") {
		t.Errorf("%+v, %v", table, p)
	}
	s = sweep(t, "current=0,1")
	table, p = s.Tabulate([]int{3})
	if p != nil || table.Rows[0].Cells[0].Text != "" || table.Rows[1].Cells[0].Text != "-0.08 dB" ||
		!slices.Contains(table.Notes, "shine is left out: it is dark") {
		t.Errorf("%+v, %v", table, p)
	}
}
