package render

import (
	"strings"
	"testing"

	"baybook/calculators/circuit"
	"baybook/site/sheet"
)

// Every word that opens a section of a circuit, or a single part, stands out.
func TestCircuitWordsAreHighlighted(t *testing.T) {
	words := sheet.CircuitSections()
	for _, c := range circuit.Classes() {
		words = append(words, c.Word)
	}
	h := newHighlighter()
	for _, word := range words {
		if got := h.markup("circuit", word+":\n"); !strings.Contains(got, `<span class="k">`+word+`</span>`) {
			t.Errorf("%s is not taken for a word of circuits: %s", word, got)
		}
	}
}
