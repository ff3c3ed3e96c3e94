package calc_test

import (
	"slices"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

func TestParseQuery(t *testing.T) {
	pairs, msg := calc.ParseQuery("current=6A&limit=3%25&length=4%20m&note=a+b")
	want := []calc.Pair{{Key: "current", Value: "6A"}, {Key: "limit", Value: "3%", Offset: 11}, {Key: "length", Value: "4 m", Offset: 22},
		{Key: "note", Value: "a+b", Offset: 35}}
	if msg != "" || !slices.Equal(pairs, want) {
		t.Errorf("read as %+v: %s", pairs, msg)
	}
	if pairs, msg := calc.ParseQuery(""); msg != "" || len(pairs) != 0 {
		t.Errorf("an empty query reads as %v: %s", pairs, msg)
	}
	for _, test := range []struct{ query, says string }{
		{"current", "not name=value"},
		{"=6A", "not name=value"},
		{"a=1&&b=2", "missing between"},
		{"a=1&", "missing between"},
		{"limit=3%", "write % as %25"},
		{"limit=3%2", "write % as %25"},
		{"li%zzmit=3", "write % as %25"},
	} {
		if _, msg := calc.ParseQuery(test.query); !strings.Contains(msg, test.says) {
			t.Errorf("%q: %q, want a refusal that says %q", test.query, msg, test.says)
		}
	}
}

// FuzzQuery: a query that is read, written and read again gives the same
// names and values.
func FuzzQuery(f *testing.F) {
	f.Add("current=6A&limit=3%25&length=4%20m")
	f.Add("a=%00%ff&b=%C3%A4=")
	f.Fuzz(func(t *testing.T, raw string) {
		pairs, msg := calc.ParseQuery(raw)
		if msg != "" {
			return
		}
		again, msg := calc.ParseQuery(calc.FormatQuery(pairs))
		if msg != "" || len(again) != len(pairs) {
			t.Fatalf("%q: written as %q, which reads as %v (%s)", raw, calc.FormatQuery(pairs), again, msg)
		}
		for i := range pairs {
			if pairs[i].Key != again[i].Key || pairs[i].Value != again[i].Value {
				t.Errorf("%q: %v became %v", raw, pairs[i], again[i])
			}
		}
	})
}
