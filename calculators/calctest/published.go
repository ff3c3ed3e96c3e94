// Package calctest is the test kit of the calculators: published values with
// their sources and tolerances, the validator of the list, random inputs, and
// what must hold for every result and every figure.
//
// Published values stand in testdata/published/NAME.csv, one file a
// calculator, a row each:
//
//	query,output,expected,unit,tolerance,source
//	current=10A&length=5m&wire=2.5mm2,drop,0.798,V,3e-2,"IEC 60228 Table 3, class 5"
//
// expected is a number in unit, or words for an output in words, "absent" for
// an output that must not exist, "refused" (output empty) for a query that
// must not compute. The output may also be "verdict". tolerance is relative,
// or absolute in unit with the suffix abs ("0.05abs"). source names where the
// value was published, and says so where it is from memory, common practice
// or computed from something published.
package calctest

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// A Row is one published value.
type Row struct {
	Line                    int
	Query, Output, Expected string
	Unit                    string
	// Tolerance is relative, or in Unit where Absolute.
	Tolerance float64
	Absolute  bool
	Source    string
}

var columns = []string{"query", "output", "expected", "unit", "tolerance", "source"}

// ReadPublished reads a calculator's rows. The error names the line.
func ReadPublished(fsys fs.FS, calculator string) ([]Row, error) {
	name := calculator + ".csv"
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.FieldsPerRecord = len(columns)
	r.Comment = '#'
	head, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if strings.Join(head, ",") != strings.Join(columns, ",") {
		return nil, fmt.Errorf("%s:1: the first line must read %s", name, strings.Join(columns, ","))
	}
	var rows []Row
	records, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	for i, rec := range records {
		row, err := parseRow(rec)
		if err != nil {
			return nil, fmt.Errorf("%s: row %d: %w", name, i+1, err)
		}
		row.Line = i + 1
		rows = append(rows, row)
	}
	return rows, nil
}

func parseRow(rec []string) (Row, error) {
	row := Row{Query: rec[0], Output: rec[1], Expected: rec[2], Unit: rec[3], Source: rec[5]}
	if strings.TrimSpace(row.Source) == "" {
		return row, errors.New("no source")
	}
	if row.Expected == "" {
		return row, errors.New("nothing expected")
	}
	if rec[4] == "" { // words need none; Check refuses a number without one
		return row, nil
	}
	text, absolute := strings.CutSuffix(rec[4], "abs")
	t, err := strconv.ParseFloat(text, 64)
	if err != nil || !(t >= 0) {
		return row, fmt.Errorf("tolerance %q is not a number of 0 or more, nor one with the suffix abs", rec[4])
	}
	if !absolute && t > 0.1 {
		return row, fmt.Errorf("tolerance %q accepts anything", rec[4])
	}
	row.Tolerance, row.Absolute = t, absolute
	return row, nil
}

// Check computes the row's query and compares.
func (row Row) Check(c *calc.Calculator) error {
	pairs, msg := calc.ParseQuery(row.Query)
	if msg != "" {
		return errors.New(msg)
	}
	_, result, problems := c.Answer(pairs)
	if row.Output == "" || result == nil {
		return row.checkRefusal(result, problems)
	}
	if row.Output == "verdict" {
		return same(result.Verdict.String(), row.Expected, strings.Join(result.Reasons, "; "))
	}
	o := c.Output(row.Output)
	if o < 0 {
		return fmt.Errorf("%s has no output %q", c.Name, row.Output)
	}
	answer := result.Outputs[o]
	if row.Expected == "absent" {
		if answer.Present {
			return fmt.Errorf("%s is %s, want it absent", row.Output, c.Outputs[o].Format(answer))
		}
		return nil
	}
	if !answer.Present {
		return fmt.Errorf("%s is absent: %s", row.Output, strings.Join(result.Reasons, "; "))
	}
	return row.compare(&c.Outputs[o], answer)
}

func (row Row) checkRefusal(result *calc.Result, problems []*calc.Problem) error {
	switch {
	case row.Output == "" && row.Expected != "refused":
		return errors.New(`a row without an output must expect "refused"`)
	case row.Output == "" && result != nil:
		return errors.New("computed, want it refused")
	case row.Output == "":
		return nil
	}
	var all []string
	for _, p := range problems {
		all = append(all, p.Error())
	}
	return errors.New("refused: " + strings.Join(all, "; "))
}

func (row Row) compare(o *calc.Output, answer calc.Answer) error {
	want, err := strconv.ParseFloat(row.Expected, 64)
	if o.Text || err != nil {
		return same(answer.Text, row.Expected, "")
	}
	from, ok := calc.LookupUnit(row.Unit)
	to, _ := calc.LookupUnit(o.Unit)
	if !ok || from.Dim != to.Dim {
		return fmt.Errorf("unit %q does not convert into %q, the unit of %s", row.Unit, o.Unit, o.Name)
	}
	if row.Tolerance == 0 && !row.Absolute {
		return errors.New("a number needs a tolerance")
	}
	got := calc.Convert(answer.Num, to, from)
	if !Near(got, want, row.Tolerance, row.Absolute) {
		return fmt.Errorf("%s is %.8g %s, published %s, off by %.2g of %s", row.Output, got, row.Unit, row.Expected,
			offBy(got, want, row.Absolute), strconv.FormatFloat(row.Tolerance, 'g', -1, 64))
	}
	return nil
}

func same(got, want, why string) error {
	if got != want {
		return fmt.Errorf("%q, want %q (%s)", got, want, why)
	}
	return nil
}
