package find

import "strings"

// numberMark begins the entry of the vocabulary under which a sheet is filed by
// its number; no word of a text begins so.
const numberMark = "#"

// numberKey gives a document number in the form that is compared: letters and
// digits alone, without leading zeros. GR-02, gr02 and Gr 2 come to gr2. It is
// empty unless there are both letters and digits, letters first.
func numberKey(number string) string {
	b := joinedOf(number)
	n := 0
	for n < len(b) && !isDigit(rune(b[n])) {
		n++
	}
	digits := withoutZeros(b[n:])
	if n == 0 || digits == "" || !allDigits(digits) {
		return ""
	}
	return b[:n] + digits
}

func allDigits(s string) bool {
	for i := range len(s) {
		if !isDigit(rune(s[i])) {
			return false
		}
	}
	return s != ""
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
		entry, found := x.lookup(numberMark + key)
		if !found {
			continue
		}
		rest = terms[words:]
		step := stepOf(rest)
		for p := x.postings(entry); p.next(); {
			if step != "" {
				docs = x.appendStep(docs, p.doc, "step-"+step)
			}
			docs = append(docs, p.doc)
		}
		if step != "" {
			rest = nil
		}
		return docs, rest
	}
	return nil, terms
}

// stepOf reads "step 4" or "4", and gives the number without leading zeros.
func stepOf(terms []term) string {
	if len(terms) == 2 && terms[0].word == "step" {
		terms = terms[1:]
	}
	if len(terms) != 1 || !allDigits(terms[0].raw) {
		return ""
	}
	return withoutZeros(terms[0].raw)
}

// withoutZeros leaves out the zeros that a number begins with.
func withoutZeros(digits string) string {
	for digits != "" && digits[0] == '0' {
		digits = digits[1:]
	}
	return digits
}

// appendStep adds the step of a sheet that has the fragment, if there is one.
func (x *Index) appendStep(docs []int32, sheet int32, fragment string) []int32 {
	for i, p := range x.parent {
		if p == sheet && x.kind[i] == Step && fragmentOf(x.record(i).address) == fragment {
			return append(docs, int32(i))
		}
	}
	return docs
}

// stepNumber reads the number at the end of a step's address, #step-4; it is
// empty if there is none.
func stepNumber(address string) string {
	digits, ok := strings.CutPrefix(fragmentOf(address), "step-")
	if !ok || !allDigits(digits) {
		return ""
	}
	return digits
}

func fragmentOf(address string) string {
	_, fragment, _ := strings.Cut(address, "#")
	return fragment
}
