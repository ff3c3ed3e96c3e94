package main

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"baybook/calculators"
	"baybook/calculators/calctest"
	built "baybook/site/core"
	"baybook/site/find"
)

// queriesEach is how many random computations of every calculator are
// compared.
const queriesEach = 14

// TestParity asks the same questions here and of the compiled core, as Node
// runs it: of the module that a book is published with, and of the plain one
// that stands in for it when the linker's layout is not known. The processor
// and WebAssembly may differ in the last bits of some functions; at the digits
// shown, answers must be equal.
func TestParity(t *testing.T) {
	t.Run("published", func(t *testing.T) { compareAnswers(t, built.Compiled) })
	t.Run("plain", func(t *testing.T) { compareAnswers(t, built.Plain) })
}

func compareAnswers(t *testing.T, build func(context.Context, string) (built.Core, error)) {
	node := nodeOrSkip(t)
	door.load(testIndex())
	questions := parityQuestions()
	var input bytes.Buffer
	for _, q := range questions {
		line, err := json.Marshal(q)
		if err != nil {
			t.Fatal(err)
		}
		input.Write(append(line, '\n'))
	}
	cmd := exec.CommandContext(t.Context(), node, "--no-warnings", "testdata/ask.mjs", compiledCore(t, build), written(t, "index", testIndex()))
	cmd.Stdin = &input
	var said bytes.Buffer
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("node: %v\n%s", err, said.String())
	}
	answers := strings.Split(strings.TrimSuffix(string(out), "\n"), "\n")
	if len(answers) != len(questions) {
		t.Fatalf("%d questions have %d answers", len(questions), len(answers))
	}
	refused := 0
	for i, q := range questions {
		here := string(door.answer(q))
		if !sameShown(here, answers[i]) {
			t.Errorf("%q\nhere:    %s\nthere:   %s", q, here, answers[i])
		}
		if strings.HasPrefix(here, `{"ok":false`) {
			refused++
		}
	}
	t.Logf("%d questions, %d of them refused", len(questions), refused)
	if refused > len(questions)/2 {
		t.Error("more than half of the questions are refused, which compares little")
	}
}

// nodeOrSkip finds Node. Where every check must run it has to be there.
func nodeOrSkip(t *testing.T) string {
	t.Helper()
	node, err := exec.LookPath("node")
	if err == nil {
		return node
	}
	calctest.Missing(t, "node is not installed, so the compiled core is not run")
	return ""
}

// compiledCore is the file of a core.
func compiledCore(t *testing.T, build func(context.Context, string) (built.Core, error)) string {
	t.Helper()
	core, err := build(t.Context(), filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	return written(t, "core.wasm", core.Module)
}

func written(t *testing.T, name string, data []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

// testIndex is a small search index.
func testIndex() []byte {
	return find.Build([]find.Doc{
		{Sheet: 1, Kind: find.Sheet, Title: "Ground point on painted steel", Number: "GR-02", Address: "feed/ground.html", Area: "feed", Text: "A ring terminal on bare steel carries the return."},
		{Sheet: 1, Kind: find.Step, Title: "Ground point on painted steel", Number: "GR-02", Address: "feed/ground.html#step-2", Area: "feed", Text: "Drill 5 mm and deburr both sides of the hole."},
		{Sheet: 2, Kind: find.Sheet, Title: "Kamera und Spiegel: Müller’s door", Number: "KA-7", Address: "camera/k.html", Area: "camera", Text: "Prüfe die Verkabelung & «Ω» <vorher>."},
	}, [][]string{{"ground", "earth", "chassis return"}}).Encode()
}

// parityQuestions are questions of every kind.
func parityQuestions() [][]string {
	r := rand.New(rand.NewPCG(11, 12))
	var list [][]string
	ask := func(words ...string) { list = append(list, words) }
	for _, c := range calculators.All {
		for i := range queriesEach {
			query := calctest.RandomQuery(r, c)
			output := c.Outputs[r.IntN(len(c.Outputs))].Name
			ask("compute", c.Name, query)
			ask("mark", c.Name, query, output, strconv.Itoa(i))
		}
		ask("compute", c.Name, "")
		ask("compute", c.Name, c.Inputs[0].Name+"=zz&nothing=4")
	}
	for seed := range 20 {
		ask("draw", "wire-drop", "current=4..12A&length=2..6m&wire=14AWG", "drop", strconv.Itoa(seed*seed))
		ask("judge", "max=100mV", strconv.Itoa(seed*7)+" mV")
		ask("schedule", "3 2."+strconv.Itoa(seed)+" 12", strconv.Itoa(seed%6))
	}
	for _, words := range []string{"gro", "earth", "gr-02 step 2", "mullers", "Ω", "drill hole derbur", "<vorher", ""} {
		ask("find", words, "../")
	}
	for _, query := range []string{"", "load.lamp.current=7A", "wire.W3.length=9m&state=key on&width=640", "fuse.F1.rating=zz"} {
		ask("circuit", parityCircuit, query)
	}
	return append(list, []string{"nothing"}, []string{"compute", "nothing", ""})
}

// parityCircuit is a reading light as a page holds it.
const parityCircuit = "title\tReading light\n" +
	"source\tbattery\tvolts=12.6\tinternal=8 mohm\n" +
	"fuse\tF1\trating=5 A\ttype=C\n" +
	"switch\tkey\n" +
	"load\tlamp\tcurrent=2 A\ttype=lamp\n" +
	"ground\tG1\tpoint=rear rail\n" +
	"ground\tG0\tpoint=battery tray\n" +
	"wire\tW1\tfrom=battery+\tto=F1\tsize=16 AWG\tlength=15 cm\tcolour=RD\n" +
	"wire\tW2\tfrom=F1\tto=key\tsize=16 AWG\tlength=2 m\tcolour=RD\n" +
	"wire\tW3\tfrom=key\tto=lamp\tsize=16 AWG\tlength=4 m\tcolour=RDYE\n" +
	"wire\tW4\tfrom=lamp\tto=G1\tsize=16 AWG\tlength=30 cm\tcolour=BK\n" +
	"wire\tW5\tfrom=battery-\tto=G0\tsize=4 AWG\tlength=40 cm\tcolour=BK\n" +
	"state\tkey off\tparked=yes\n" +
	"state\tkey on\tclosed=key\n"

var (
	drawings = regexp.MustCompile(`<svg.*?</svg>`)
	numbers  = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)
)

// sameShown compares two answers: words and numbers must be equal, and
// coordinates in drawings equal to the hundredth of a pixel that they are
// rounded to.
func sameShown(a, b string) bool {
	if a == b {
		return true
	}
	if drawings.ReplaceAllString(a, "") != drawings.ReplaceAllString(b, "") {
		return false
	}
	of, and := drawings.FindAllString(a, -1), drawings.FindAllString(b, -1)
	for i := range of {
		if i >= len(and) || numbers.ReplaceAllString(of[i], "") != numbers.ReplaceAllString(and[i], "") {
			return false
		}
		x, y := numbers.FindAllString(of[i], -1), numbers.FindAllString(and[i], -1)
		for k := range x {
			p, _ := strconv.ParseFloat(x[k], 64)
			q, _ := strconv.ParseFloat(y[k], 64)
			if math.Abs(p-q) > 0.0101 {
				return false
			}
		}
	}
	return len(of) == len(and)
}

// TestSameShown: what the comparison lets pass and what it does not.
func TestSameShown(t *testing.T) {
	const a = `{"html":"<svg><line x1=\"1.23\"/></svg><dd>0.83 V</dd>"}`
	for b, same := range map[string]bool{
		a:                                            true,
		strings.Replace(a, "1.23", "1.24", 1):        true,
		strings.Replace(a, "1.23", "1.25", 1):        false,
		strings.Replace(a, "0.83", "0.84", 1):        false,
		strings.Replace(a, "line", "rect", 1):        false,
		strings.Replace(a, "<dd>", "<svg></svg>", 1): false,
	} {
		if sameShown(a, b) != same {
			t.Errorf("%s counts as the same: %v", b, !same)
		}
	}
}
