package find

import (
	"math/rand"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// split gives all words of a text, folded.
func split(text string) []string {
	var words []string
	s := scanner{text: text}
	for s.next() {
		words = append(words, string(s.word))
	}
	return words
}

func TestScanner(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"Drill a 3.3 mm hole.", "drill a 3.3 mm hole"},
		{"14AWG, 12V; 0.5A", "14 awg 12 v 0.5 a"},
		{"M6x16 GR-02 H7", "m6x16 gr 02 h7"},
		{"maker's maker’s 'quoted'", "makers makers quoted"},
		{"Crème brûlée CAFE\u0301 straße Øre Łódź", "creme brulee cafe strasse ore lodz"},
		{"4 Ω (ohm sign \u2126), 10 µF, 10 μF", "4 ohm ohm sign ohm 10 uf 10 uf"},
		{"re\u00adlay", "relay"},
		{"1. 2.5. .5 v1.2", "1 2.5 5 v1.2"},
		{"a/b_c+d", "a b c d"},
		{"配線 провод", "配線 провод"},
		{"\xff\xfebad\xff", "bad"},
		{"", ""},
		{"…—→", ""},
	} {
		if got := strings.Join(split(tt.text), " "); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.text, got, tt.want)
		}
	}
}

// FuzzScanner checks that words stand in order in the text, hold no space and no
// capital, and that folding twice changes nothing.
func FuzzScanner(f *testing.F) {
	f.Add("Drill 3.3 mm, GR-02: maker’s Ω é")
	f.Fuzz(func(t *testing.T, text string) {
		s := scanner{text: text}
		at := 0
		for s.next() {
			w := string(s.word)
			if s.start < at || s.end <= s.start || s.end > len(text) || w == "" || strings.ContainsAny(w, " ABCXYZ'-") {
				t.Fatalf("word %q at %d to %d after %d", w, s.start, s.end, at)
			}
			at = s.end
			if again := strings.Join(split(w), ""); utf8.ValidString(text) && again != w {
				t.Fatalf("%q folds again to %q", w, again)
			}
		}
	})
}

func TestSingular(t *testing.T) {
	for _, tt := range []struct{ one, many string }{
		{"grommet", "grommets"}, {"battery", "batteries"}, {"switch", "switches"}, {"box", "boxes"},
		{"fuse", "fuses"}, {"splice", "splices"}, {"bus", "buses"}, {"lens", "lenses"}, {"brush", "brushes"},
		{"glass", "glasses"}, {"tie", "ties"}, {"led", "leds"}, {"axis", "axes"}, {"gas", "gases"},
		{"foot", "feet"}, {"tooth", "teeth"}, {"shelf", "shelves"}, {"pass", "passes"}, {"hinge", "hinges"},
	} {
		if singular(tt.one) != singular(tt.many) {
			t.Errorf("%s is filed as %s, %s as %s", tt.one, singular(tt.one), tt.many, singular(tt.many))
		}
	}
	for _, pair := range [][2]string{{"bus", "bu"}, {"glass", "glas"}, {"lens", "len"}, {"chassis", "chassi"}} {
		if singular(pair[0]) == singular(pair[1]) {
			t.Errorf("%s and %s are filed as one", pair[0], pair[1])
		}
	}
}

func TestListsAreSorted(t *testing.T) {
	if !slices.IsSorted(stopWords[:]) {
		t.Errorf("stopWords must be sorted: they are searched by halves")
	}
}

func TestForms(t *testing.T) {
	for _, tt := range []struct{ typed, filed string }{
		{"drilling", "drill"}, {"fusing", "fuse"}, {"fused", "fuse"}, {"fitting", "fit"}, {"tapped", "tap"},
		{"crimp", "crimping"}, {"splice", "splicing"}, {"sealed", "seal"}, {"wiring", "wire"},
	} {
		if !slices.Contains(forms(tt.typed), tt.filed) {
			t.Errorf("%s does not find %s: %q", tt.typed, tt.filed, forms(tt.typed))
		}
	}
}

// distance is the optimal string alignment distance (Damerau, "A technique for
// computer detection and correction of spelling errors", Communications of the
// ACM 7 (1964), 171–176), by the usual table.
func distance(a, b []rune) int {
	d := make([][]int, len(a)+1)
	for i := range d {
		d[i] = make([]int, len(b)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(a)][len(b)]
}

func TestOneErrorAgreesWithTheDistance(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	alphabet := []rune("abéя")
	random := func() []rune {
		w := make([]rune, rnd.Intn(6))
		for i := range w {
			w[i] = alphabet[rnd.Intn(len(alphabet))]
		}
		return w
	}
	within := 0
	for range 200000 {
		a, b := random(), random()
		want := distance(a, b) <= 1
		if want {
			within++
		}
		if got := oneError(string(a), string(b)); got != want {
			t.Fatalf("oneError(%q, %q) = %v, their distance is %d", string(a), string(b), got, distance(a, b))
		}
	}
	if within < 1000 {
		t.Errorf("only %d pairs were within one error: the test tests little", within)
	}
}
