package check_test

import (
	"bufio"
	"os"
	"slices"
	"strings"
	"testing"

	"baybook/calculators"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

// TestNeedsAndEnds runs, for each need of the shipped lists, steps in an order
// that a master installer would not sign and steps in one that they would; and
// for each state that no sheet may leave, one that leaves it and one that does
// not. Lines of the table are need or end, bad or good, and the steps, set
// apart by >. The need's own reason and source stand in content/work.yaml and
// are part of each failure.
func TestNeedsAndEnds(t *testing.T) {
	book, _, err := sheet.Load(os.DirFS("../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	file, err := os.Open("../../testdata/needs.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lists, shown := book.Work.Lists, make(map[string]map[string]bool)
	for scan := bufio.NewScanner(file); scan.Scan(); {
		line := scan.Text()
		part := strings.Split(line, " | ")
		if line == "" || line[0] == '#' {
			continue
		}
		if len(part) != 3 || part[1] != "bad" && part[1] != "good" {
			t.Fatalf("not a line of the table: %s", line)
		}
		var steps []work.Step
		for one := range strings.SplitSeq(part[2], " > ") {
			does, faults := lists.ParseAll(one)
			if len(faults) > 0 {
				t.Fatalf("%s: %s", line, faults[0].Message)
			}
			steps = append(steps, work.Step{Does: does})
		}
		moments, end := lists.Run(steps, nil)
		found, why := breaks(lists, part[0], moments, end)
		if found != (part[1] == "bad") {
			t.Errorf("%s: found is %v; %s", line, found, why)
		}
		if shown[part[0]] == nil {
			shown[part[0]] = make(map[string]bool)
		}
		shown[part[0]][part[1]] = true
	}
	for _, n := range lists.Needs {
		if len(shown[n.ID]) != 2 || n.Why == "" || n.Source == "" {
			t.Errorf("the need %s lacks a bad or a good order in the table, or its reason or source", n.ID)
		}
	}
	for _, e := range lists.Ends {
		if len(shown[e.State]) != 2 || e.Why == "" || e.Source == "" {
			t.Errorf("the end %s lacks a bad or a good way in the table, or its reason or source", e.State)
		}
	}
}

// breaks reports whether a need is not met or an end is left, and why it is
// asked for.
func breaks(lists *work.Lists, id string, moments []work.Moment, end []string) (bool, string) {
	for _, e := range lists.Ends {
		if e.State == id {
			left := lists.Left(end, nil, nil)
			return slices.ContainsFunc(left, func(x *work.End) bool { return x.State == id }), e.Why + " (" + e.Source + ")"
		}
	}
	why := "no such need"
	for _, n := range lists.Needs {
		if n.ID == id {
			why = n.Why + " (" + n.Source + ")"
		}
	}
	for _, m := range moments {
		if slices.ContainsFunc(m.Misses, func(x work.Miss) bool { return x.Need.ID == id }) {
			return true, why
		}
	}
	return false, why
}
