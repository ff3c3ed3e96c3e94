package report

import (
	"strings"
	"testing"

	"baybook/calculators/circuit/circuittest"
)

// TestReadings asks as a page does: the feed's voltage on both terminals of a
// lamp is a ground that is lost (common practice), and what is no reading is
// refused beside its field.
func TestReadings(t *testing.T) {
	encoded := circuittest.Draft(t, circuittest.Circuits(t)["light"]).Encode()
	markup, problems := Ask(encoded, "state=key%20on&point1=lamp%2B&volts1=12.5&point2=lamp-&volts2=12.5V&point3=G1&volts3=")
	if len(problems) > 0 {
		t.Fatal(problems[0])
	}
	text := string(markup)
	for _, want := range []string{"What explains it:", "<li>W4 open</li>", "<li>G1 lost</li>", "Read next at <strong>body at "} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in the answer: %.600s", want, text)
		}
	}
	if strings.Contains(text, "<li>W3 open</li>") {
		t.Error("an open feed is said to put voltage on the lamp")
	}
	if markup, _ = Ask(encoded, "state=key%20on&point1=lamp%2B&volts1=5"); !strings.Contains(string(markup), "No single fault explains") {
		t.Errorf("5 V at the lamp is explained: %.400s", markup)
	}
	for query, at := range map[string]string{"point1=lamp%2B&volts1=ten": "volts1", "point2=nowhere&volts2=1": "volts2"} {
		if _, problems := Ask(encoded, query); len(problems) != 1 || problems[0].Input != at {
			t.Errorf("%s: %v, want one problem at %s", query, problems, at)
		}
	}
}
