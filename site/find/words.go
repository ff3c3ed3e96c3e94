package find

import "strings"

// stopWords are in nearly every text and tell nothing; they are left out of the
// index and of a query. Words such as on, off, in, out, up and no stay: in this
// trade they carry meaning. Sorted.
var stopWords = [...]string{
	"a", "an", "and", "are", "as", "at", "be", "by", "can", "do", "does", "for",
	"from", "how", "i", "is", "it", "its", "my", "of", "or", "that", "the", "then",
	"this", "to", "what", "when", "where", "which", "with", "you", "your",
}

func isStop(word string) bool {
	for _, w := range stopWords {
		if w == word {
			return true
		}
	}
	return false
}

// plurals lists words that the rules of singular would get wrong. Sorted.
var plurals = [...][2]string{
	{"axes", "axis"}, {"buses", "bus"}, {"busses", "bus"}, {"chassis", "chassis"},
	{"feet", "foot"}, {"gases", "gas"}, {"halves", "half"}, {"knives", "knife"},
	{"lens", "lens"}, {"lenses", "lens"}, {"shelves", "shelf"}, {"series", "series"},
	{"teeth", "tooth"},
}

// esEndings lose es in the singular: boxes, switches, brushes, glasses.
var esEndings = [...]string{"sses", "shes", "ches", "xes", "zes"}

// singular gives the form under which a word and its plural are both filed. It
// may be no English word; all that counts is that both come to the same.
func singular(word string) string {
	n := len(word)
	if n < 4 {
		return word
	}
	for i := range plurals {
		if plurals[i][0] == word {
			return plurals[i][1]
		}
	}
	if word[n-1] != 's' || isDigit(rune(word[n-2])) {
		return word
	}
	if n > 4 && strings.HasSuffix(word, "ies") {
		return word[:n-3] + "y"
	}
	for _, end := range esEndings {
		if strings.HasSuffix(word, end) {
			return word[:n-2]
		}
	}
	if strings.IndexByte("sui", word[n-2]) >= 0 {
		return word // glass, bus, chassis
	}
	return word[:n-1]
}

// forms gives other forms that a word of a text may have: drill for drilling,
// fuse for fusing and fused, fit for fitting, and the other way round. Some are
// no words; those are simply not found.
func forms(word string) []string {
	var out []string
	for _, end := range [...]string{"ing", "ed"} {
		root, cut := strings.CutSuffix(word, end)
		if !cut {
			bare := strings.TrimSuffix(word, "e")
			if len(bare) > 2 {
				out = append(out, bare+end)
			}
			continue
		}
		n := len(root)
		if n < 3 {
			continue
		}
		out = append(out, root, root+"e")
		if root[n-1] == root[n-2] {
			out = append(out, root[:n-1])
		}
	}
	return out
}

// oneError reports whether two words differ by at most one typing error: a letter
// too many, too few or wrong, or two neighbors swapped.
func oneError(a, b string) bool {
	for len(a) > 0 && len(b) > 0 {
		ra, n := decode(a)
		rb, m := decode(b)
		if ra != rb {
			break
		}
		a, b = a[n:], b[m:]
	}
	if a == "" || b == "" {
		return letters(a+b) <= 1
	}
	_, n := decode(a)
	_, m := decode(b)
	return a[n:] == b[m:] || a[n:] == b || a == b[m:] || swapped(a, b)
}

// swapped reports whether the first two letters of a and b are exchanged and the
// rest is the same.
func swapped(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	a1, n := decode(a)
	b1, m := decode(b)
	if len(a) == n || len(b) == m {
		return false
	}
	a2, n2 := decode(a[n:])
	b2, m2 := decode(b[m:])
	return a1 == b2 && a2 == b1 && a[n+n2:] == b[m+m2:]
}

// letters counts up to 2; it is enough to know that there is more than one.
func letters(s string) int {
	if s == "" {
		return 0
	}
	if _, n := decode(s); n == len(s) {
		return 1
	}
	return 2
}
