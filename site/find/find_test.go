package find

import (
	"slices"
	"strings"
	"testing"
)

// findTests are queries as a person in the bay types them. Want are the first
// answers in order, each as the end of its address.
var findTests = []struct {
	query string
	want  []string
}{
	// A number jumps there.
	{"GR-02", []string{"ground-point.html"}},
	{"gr02", []string{"ground-point.html"}},
	{"gr 2", []string{"ground-point.html"}},
	{"GR-02 step 4", []string{"ground-point.html#step-4", "ground-point.html"}},
	{"gr-02#step-4", []string{"ground-point.html#step-4", "ground-point.html"}},
	{"gr02 3", []string{"ground-point.html#step-3"}},
	{"GR-02 step 40", []string{"ground-point.html"}}, // no such step: the sheet
	{"gr-02 torque", []string{"ground-point.html#step-4"}},
	{"PA-0", []string{"door-boot.html"}}, // being typed

	// Titles before steps.
	{"fuse tap", []string{"fuse-tap.html"}},
	{"fuse size", []string{"fuse-size.html"}},
	{"battery", []string{"battery-disconnect.html"}},
	{"grommet", []string{"bulkhead-grommet.html"}},
	{"camera", []string{"rear-camera.html", "aim-and-prove.html"}},
	{"wire drop", []string{"wire-drop.html"}},

	// Steps are answers.
	{"pilot hole depth stop", []string{"ground-point.html#step-2"}},
	{"drip loop", []string{"bulkhead-grommet.html#step-2"}},
	{"terminal 87", []string{"relay-feed.html#step-3"}},
	{"step bit", []string{"new-hole.html#step-2"}},
	{"prove drop ring terminal", []string{"ground-point.html#prove-it"}},
	{"3.3 m", []string{"aim-and-prove.html#step-1"}},
	{"12V trigger", []string{"rear-camera.html#step-3"}},
	{"m6 torque", []string{"ground-point.html#step-4"}},

	// The sheet's title helps its steps; the steps help their sheet.
	{"door boot slack", []string{"door-boot.html#step-3"}},
	{"awl silicone drip", []string{"bulkhead-grommet.html#step-1"}}, // each in another step

	// Plurals, other forms, hyphens, accents, case.
	{"Grommets", []string{"bulkhead-grommet.html"}},
	{"batteries", []string{"battery-disconnect.html"}},
	{"crimping a splice", []string{"splice-and-crimp.html"}},
	{"drilling pilot", []string{"drill-size.html", "new-hole.html#step-2", "ground-point.html#step-2"}},
	{"heat shrink", []string{"heat-shrink.html"}},
	{"heatshrink", []string{"heat-shrink.html"}},
	{"HEAT-SHRINK", []string{"heat-shrink.html"}},
	{"cámera", []string{"rear-camera.html"}},
	{"makers service", []string{"battery-disconnect.html#step-3"}},

	// The last word may be half typed.
	{"gromm", []string{"bulkhead-grommet.html"}},
	{"rear cam", []string{"rear-camera.html"}},
	{"standby c", []string{"standby-current.html"}},

	// One typing error.
	{"gromet", []string{"bulkhead-grommet.html"}},
	{"grommte", []string{"bulkhead-grommet.html"}},
	{"speeker", []string{"fit-adapter.html"}},
	{"camrea mirror", []string{"rear-camera.html"}},
	{"polarty", []string{"fit-adapter.html#step-3"}},
	{"disconect", []string{"battery-disconnect.html"}},
	{"bulkhaed grom", []string{"bulkhead-grommet.html"}},

	// The trade's other names, from the glossary and from the sheets.
	{"earth point", []string{"ground-point.html"}},
	{"gnd point", []string{"ground-point.html"}},
	{"ground strap", []string{"hinge-strap.html"}},
	{"quiescent current", []string{"standby-current.html"}},
	{"crimp connector", []string{"splice-and-crimp.html"}},
	{"backup camera", []string{"rear-camera.html"}},
	{"parasitic", []string{"standby-current.html"}},
	{"bellows", []string{"door-boot.html"}},

	// Words that tell nothing do not get in the way.
	{"how do I disconnect the battery", []string{"battery-disconnect.html"}},
	{"what is the fuse tap for", []string{"fuse-tap.html"}},

	// Most of the words, when none has them all.
	{"grommet banana", []string{"bulkhead-grommet.html"}},
	{"gr-99 relay feed", []string{"relay-feed.html"}},

	// Nothing.
	{"banana", nil},
	{"zz-12", nil},
	{"", nil},
	{"  -- ", nil},
	{"1234", nil}, // a number is not another one mistyped
}

func TestFind(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	for _, tt := range findTests {
		hits := x.Find(tt.query, 10)
		var got []string
		for _, h := range hits {
			got = append(got, h.Address)
		}
		ok := len(got) >= len(tt.want) && (len(tt.want) > 0 || len(got) == 0)
		for i := range tt.want {
			ok = ok && strings.HasSuffix(got[i], "/"+tt.want[i])
		}
		if !ok {
			t.Errorf("%q finds %q, want first %q", tt.query, got, tt.want)
		}
	}
}

// addresses gives all that a query finds, sorted.
func addresses(x *Index, query string) []string {
	var list []string
	for _, h := range x.Find(query, x.Len()) {
		list = append(list, h.Address)
	}
	slices.Sort(list)
	return list
}

func TestSynonymsFindTheSame(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	want := addresses(x, "ground ")
	if len(want) < 3 {
		t.Fatalf("ground finds only %q", want)
	}
	for _, q := range []string{"earth ", "gnd ", "ground strap ", "Ground straps ", "GND"} {
		if got := addresses(x, q); !slices.Equal(got, want) {
			t.Errorf("%q finds\n%q, ground finds\n%q", q, got, want)
		}
	}
	// A phrase finds the same and, beside it, what has its words one by one.
	got := addresses(x, "earthing point ")
	for _, a := range want {
		if !slices.Contains(got, a) {
			t.Errorf("earthing point does not find %q", a)
		}
	}
}

func TestWithoutSynonymsTheyDoNot(t *testing.T) {
	x := Build(testDocs(), nil)
	if got := addresses(x, "gnd"); !slices.Equal(got, []string{"camera/rear-camera.html#step-4"}) {
		t.Errorf("gnd without a glossary finds %q", got)
	}
}

func TestPartial(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	if hits := x.Find("grommet banana", 5); len(hits) == 0 || !hits[0].Partial {
		t.Errorf("half an answer is not said to be one: %+v", hits)
	}
	if hits := x.Find("bulkhead grommet", 5); len(hits) == 0 || hits[0].Partial {
		t.Errorf("a whole answer is said to be half: %+v", hits)
	}
	if hits := x.Find("grommet banana orange", 5); len(hits) == 0 || !hits[0].Partial {
		t.Errorf("one word of three is no answer, or a whole one: %+v", hits)
	}
}

func TestASpaceEndsTheLastWord(t *testing.T) {
	x := Build([]Doc{
		{Sheet: 0, Kind: Sheet, Title: "Tap", Address: "tap.html"},
		{Sheet: 1, Kind: Sheet, Title: "Tape", Address: "tape.html"},
	}, nil)
	if got := addresses(x, "tap"); len(got) != 2 {
		t.Errorf("tap as a start finds %q", got)
	}
	if got := addresses(x, "tap "); !slices.Equal(got, []string{"tap.html"}) {
		t.Errorf("tap as a whole word finds %q", got)
	}
}

func TestHitSaysWhatItIs(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	h := x.Find("serrated washer", 1)[0]
	want := Hit{
		Doc: 4, Kind: Step, Score: h.Score, Title: "Ground point on painted steel", Number: "GR-02", Step: "4",
		Address: "ground/ground-point.html#step-4",
		Excerpt: "Tighten the M6 bolt with its serrated washer to the torque of the table.",
	}
	if h.Doc != want.Doc || h.Kind != want.Kind || h.Title != want.Title || h.Number != want.Number ||
		h.Step != want.Step || h.Address != want.Address || h.Excerpt != want.Excerpt || h.Score <= 0 {
		t.Errorf("got  %+v\nwant %+v", h, want)
	}
	var marked []string
	for _, s := range h.ExcerptMarks {
		marked = append(marked, h.Excerpt[s.Start:s.End])
	}
	if !slices.Equal(marked, []string{"serrated", "washer"}) && !slices.Equal(marked, []string{"serrated washer"}) {
		t.Errorf("marked %q", marked)
	}
}

// A sheet is one answer, by its best step.
func TestASheetIsOneAnswer(t *testing.T) {
	var docs []Doc
	for sheet := range int32(3) {
		docs = append(docs, Doc{Sheet: sheet, Kind: Sheet, Title: "Sheet", Address: string(rune('a'+sheet)) + ".html"})
		for range 9 {
			docs = append(docs, Doc{Sheet: sheet, Kind: Step, Title: "Sheet", Address: string(rune('a'+sheet)) + ".html#step-1", Text: "Seal the cable."})
		}
	}
	x := Build(docs, nil)
	seen := map[byte]int{}
	for _, h := range x.Find("seal cable", 9) {
		seen[h.Address[0]]++
	}
	if seen['a'] != 1 || seen['b'] != 1 || seen['c'] != 1 {
		t.Errorf("answers by sheet: %v", seen)
	}
}

func TestLimit(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	for _, limit := range []int{0, 1, 2, 7} {
		if n := len(x.Find("the cable", limit)); n > limit || limit > 0 && n == 0 {
			t.Errorf("limit %d: %d answers", limit, n)
		}
	}
}
