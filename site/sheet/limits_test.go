package sheet_test

import (
	"strings"
	"testing"
	"time"
)

const limitSheet = "---\ntitle: One\nnumber: A-05\n---\nRead [at most 50 mA](reading:rest?limit=parked), lamp off [50 mA](limit:parked).\n"

func limitRow(value string) string {
	return "- id: parked\n  what: While parked\n  value: " + value + "\n  source: Bay\n  standing: memory\n"
}

// A sheet is read again when the register changes that it judges by, and only
// then.
func TestReloadFollowsTheRegisterOfLimits(t *testing.T) {
	files := folder()
	old := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	save(files, "a/five.md", limitSheet, old)
	save(files, "limits.yaml", limitRow("at most 50 mA"), old)
	first, _ := load(t, nil, files)
	if got := first.Sheet("a/five").Readings[0].Limit.String(); got != "at most 50 mA" {
		t.Fatalf("the reading is judged by %q", got)
	}
	save(files, "limits.yaml", limitRow("at most 40 mA"), old.AddDate(0, 1, 0))
	second, found := load(t, first, files)
	if got := second.Sheet("a/five").Readings[0].Limit.String(); got != "at most 40 mA" {
		t.Errorf("the reading is judged by %q; found %s", got, found)
	}
	if got := first.Sheet("a/five").Readings[0].Limit.String(); got != "at most 50 mA" {
		t.Errorf("the earlier reading of the book now judges by %q", got)
	}
	if first.Sheet("a/one") != second.Sheet("a/one") {
		t.Error("a sheet that names no limit was read again")
	}
	delete(files, "limits.yaml")
	if _, found := load(t, second, files); !strings.Contains(found, "no register of limits") {
		t.Errorf("without a register, found %s", found)
	}
}

func TestLimitsAreRead(t *testing.T) {
	for value, want := range map[string]string{
		"300 mm":           "300 mm",
		"at least 11.8 V":  "at least 11.8 V",
		"13.5 to 14.8 V":   "13.5 V to 14.8 V",
		"13.5 V to 14.8 V": "13.5 V to 14.8 V",
		// Ohm's law with a 14 AWG wire of 2.08 mm2: 0.0083 ohm/m both ways.
		`"at most calc:wire-drop?current=6A&length=4m&wire=14AWG#drop"`: "at most 0.406 V",
	} {
		files := folder()
		save(files, "limits.yaml", limitRow(value), time.Time{})
		book, found := load(t, nil, files)
		if l := book.Limits.Named("parked"); l == nil || l.String() != want {
			t.Errorf("%s is read as %v, want %s; found %s", value, l, want, found)
		}
	}
	for _, value := range []string{"much", "15 V to 13 V", "5 V to 10 mm", "5 volts", "calc:wire-drop?current=6A", "calc:nothing#x", "calc:wire-drop?length=-4m#drop"} {
		files := folder()
		save(files, "limits.yaml", limitRow(value), time.Time{})
		if book, found := load(t, nil, files); len(book.Limits.Limits) != 0 || !strings.Contains(found, "limits.yaml") {
			t.Errorf("%s is taken; found %s", value, found)
		}
	}
}
