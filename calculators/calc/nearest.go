package calc

import "strings"

// Nearest finds the name that is most like word, or "" where none is near
// enough to be worth offering: at most a third of its letters differ and some
// letter is the same, or it is the only one that begins with the word.
func Nearest(word string, names []string) string {
	best, least := "", 1+max(1, len(word)/3)
	for _, n := range names {
		if d := distance(folded(word), folded(n)); d < least && d < max(len(word), len(n)) {
			best, least = n, d
		}
	}
	if best == "" && len(word) >= 2 {
		best = onlyBeginning(folded(word), names)
	}
	return best
}

// onlyBeginning is the one name that begins with a word, "" where none or
// several do.
func onlyBeginning(word string, names []string) string {
	found := ""
	for _, n := range names {
		if strings.HasPrefix(folded(n), word) {
			if found != "" {
				return ""
			}
			found = n
		}
	}
	return found
}

// distance is the number of letters inserted, left out, changed or exchanged
// with their neighbor (optimal string alignment).
func distance(a, b string) int {
	before := make([]int, len(b)+1)
	last := make([]int, len(b)+1)
	now := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
		}
		before, last, now = last, now, before
	}
	return last[len(b)]
}
