package main

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"baybook/site/find"
)

// pageAnswer is an answer as the page reads it.
type pageAnswer struct {
	OK      bool   `json:"ok"`
	Read    bool   `json:"read"`
	HTML    string `json:"html"`
	Say     string `json:"say"`
	Query   string `json:"query"`
	Verdict string `json:"verdict"`
	Faults  []struct {
		Input string `json:"input"`
		Text  string `json:"text"`
	} `json:"faults"`
}

// through asks a question by the door itself, as a page does.
func through(t *testing.T, words ...string) pageAnswer {
	t.Helper()
	message := strings.Join(words, "\x00")
	room(int32(len(message)))
	copy(door.in, message)
	n := ask(int32(len(message)))
	if int(n) != len(door.out) || n > 0 && reply() == 0 {
		t.Fatalf("the answer is said to have %d bytes and has %d", n, len(door.out))
	}
	var a pageAnswer
	if err := json.Unmarshal(door.out, &a); err != nil {
		t.Fatalf("%q is answered with what is no JSON: %v\n%s", message, err, door.out)
	}
	return a
}

func TestDoorComputes(t *testing.T) {
	a := through(t, "compute", "wire-drop", "current=8A&length=4m")
	if !a.OK || a.Verdict != "check" || !strings.Contains(a.HTML, `data-output="drop"`) || !strings.Contains(a.Say, "Voltage drop") {
		t.Errorf("compute: %+v", a)
	}
	a = through(t, "compute", "wire-drop", "length=90m&wire=16&foo=1")
	if a.OK || len(a.Faults) != 3 || a.Faults[0].Input != "length" || a.Faults[1].Input != "wire" {
		t.Errorf("three faults are answered with %+v", a)
	}
	if a = through(t, "compute", "no-such", ""); a.OK || a.Say == "" {
		t.Errorf("an unknown calculator is answered with %+v", a)
	}
}

func TestDoorMarksAndDraws(t *testing.T) {
	drawn := through(t, "draw", "ground-test", "drop=10..60mV&current=5A", "resistance", "7")
	if !drawn.OK || !strings.Contains(drawn.Query, "drop=") {
		t.Fatalf("draw: %+v", drawn)
	}
	if a := through(t, "mark", "ground-test", "drop=20mV&current=5A", "resistance", "0.004 ohm"); !a.Read || a.Verdict != "ok" {
		t.Errorf("20 mV at 5 A is 4 mohm (Ohm's law), and 0.004 ohm is marked %+v", a)
	}
	if a := through(t, "mark", "ground-test", "drop=20mV&current=5A", "resistance", "5"); !a.Read || a.Verdict != "check" {
		t.Errorf("a wrong answer is marked %+v", a)
	}
	if a := through(t, "mark", "ground-test", "drop=20mV&current=5A", "resistance", "five"); a.Read {
		t.Errorf("an answer that is no number is marked %+v", a)
	}
}

func TestDoorJudges(t *testing.T) {
	for _, c := range []struct{ typed, verdict string }{{"90", "ok"}, {"100 mV", "ok"}, {"0.1001 V", "stop"}, {"lots", "check"}} {
		if a := through(t, "judge", "max=100mV", c.typed); a.Verdict != c.verdict {
			t.Errorf("%s against at most 100 mV: %+v", c.typed, a)
		}
	}
}

func TestDoorFinds(t *testing.T) {
	data := find.Build([]find.Doc{{Title: "Ground point", Number: "GR-01", Address: "ground/ground-point.html"}}, [][]string{{"ground", "earth"}}).Encode()
	room(int32(len(data)))
	copy(door.in, data)
	if index(int32(len(data))) != 1 {
		t.Fatal("the index is refused")
	}
	if a := through(t, "find", "earth", "../"); !a.OK || !strings.Contains(a.HTML, `href="../ground/ground-point.html"`) {
		t.Errorf("find: %+v", a)
	}
	copy(door.in, "no index at all")
	if index(15) != 0 {
		t.Error("a damaged index is taken")
	}
}

func TestDoorSchedulesAndRefuses(t *testing.T) {
	if a := through(t, "schedule", "2 2.5 6", "4"); a.Query != "3 2.5000 15" || a.Verdict != "ok" {
		t.Errorf("schedule: %+v", a)
	}
	if a := through(t, "schedule", "x", "4"); a.OK {
		t.Errorf("a card that is none: %+v", a)
	}
	if a := through(t, "no-such-question"); a.OK || a.Say == "" {
		t.Errorf("an unknown question: %+v", a)
	}
	if a := through(t, "circuit", "no circuit", ""); a.OK || len(a.Faults) == 0 {
		t.Errorf("a circuit that is none: %+v", a)
	}
}

// The page's half of the door lists the same questions with as many words.
func TestProtocolIsTheSame(t *testing.T) {
	text, err := os.ReadFile("../../theme/scripts/protocol.ts")
	if err != nil {
		t.Fatal(err)
	}
	listed := regexp.MustCompile(`(?m)^  (\w+): \[(.*)\];$`).FindAllStringSubmatch(string(text), -1)
	if len(listed) != len(questions) {
		t.Fatalf("protocol.ts lists %d questions, the core %d", len(listed), len(questions))
	}
	for i, q := range questions {
		if name, parts := listed[i][1], strings.Count(listed[i][2], ",")+1; name != q.name || parts != q.parts {
			t.Errorf("question %d: protocol.ts has %s with %d words, the core %s with %d", i, name, parts, q.name, q.parts)
		}
	}
}
