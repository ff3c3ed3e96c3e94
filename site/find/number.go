package find

import (
	"slices"
	"strconv"
	"strings"
)

// numberKey gives a document number in the form that is compared: letters and
// digits alone, without leading zeros. GR-02, gr02 and Gr 2 come to gr2. It is
// empty unless there are both letters and digits, letters first.
func numberKey(number string) string {
	b := joinedOf(number)
	n := 0
	for n < len(b) && !isDigit(rune(b[n])) {
		n++
	}
	digits := strings.TrimLeft(b[n:], "0")
	if n == 0 || digits == "" || strings.ContainsFunc(digits, func(r rune) bool { return !isDigit(r) }) {
		return ""
	}
	return b[:n] + digits
}

// jump finds the sheets whose number a query begins with, and the query's other
// words. There are none when the number is the whole of it or a step of the sheet
// is all that follows; then the documents begin with that step.
func (x *Index) jump(terms []term) (docs []int32, rest []term) {
	for words := min(2, len(terms)); words > 0; words-- {
		number := ""
		for _, t := range terms[:words] {
			number += t.raw
		}
		key := numberKey(number)
		if key == "" || words == 2 && !isDigit(rune(terms[1].raw[0])) {
			continue
		}
		at, found := slices.BinarySearchFunc(x.number, key, func(n numbered, k string) int { return strings.Compare(n.key, k) })
		if !found {
			continue
		}
		rest = terms[words:]
		step, isStep := stepOf(rest)
		for ; at < len(x.number) && x.number[at].key == key; at++ {
			sheet := x.number[at].doc
			if isStep {
				docs = x.appendStep(docs, sheet, step)
			}
			docs = append(docs, sheet)
		}
		if isStep {
			rest = nil
		}
		return docs, rest
	}
	return nil, terms
}

// stepOf reads "step 4" or "4".
func stepOf(terms []term) (int, bool) {
	if len(terms) == 2 && terms[0].word == "step" {
		terms = terms[1:]
	}
	if len(terms) != 1 {
		return 0, false
	}
	n, err := strconv.Atoi(terms[0].raw)
	return n, err == nil
}

// appendStep adds a step of a sheet, if the sheet has it.
func (x *Index) appendStep(docs []int32, sheet int32, step int) []int32 {
	for i, p := range x.parent {
		if p == sheet && x.kind[i] == Step && stepNumber(x.record(i).address) == step {
			return append(docs, int32(i))
		}
	}
	return docs
}

// stepNumber reads the number at the end of a step's address, #step-4; 0 if it
// has none.
func stepNumber(address string) int {
	_, fragment, _ := strings.Cut(address, "#")
	digits, ok := strings.CutPrefix(fragment, "step-")
	n, err := strconv.Atoi(digits)
	if !ok || err != nil || n < 0 {
		return 0
	}
	return n
}
