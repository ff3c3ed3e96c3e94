package sheet_test

import (
	"strings"
	"testing"

	"baybook/site/sheet"
)

// A line of dashes in a list is easily left over from a pasted sheet, and what
// follows it would go unread: a hazard that nobody warns of.
func TestSecondDocumentIsRefused(t *testing.T) {
	texts := map[string]string{
		"hazards.yaml":  "- id: one\n  title: One\n---\n- id: two\n  title: Two\n",
		"glossary.yaml": "- term: ground\n  meaning: The return.\n...\n---\n- term: fuse\n  meaning: It melts.\n",
		"shop.yaml":     "name: County library\nbook: Bay book\n--- \nlanguage: en\n",
	}
	for name, text := range texts {
		t.Run(name, func(t *testing.T) {
			files := folder()
			files[name].Data = []byte(text)
			_, found := load(t, nil, files)
			if !strings.Contains(found, "second YAML document") || !strings.Contains(found, name) {
				t.Errorf("found %s", found)
			}
		})
	}
	const circuit = "sources: {battery: {volts: 12.6}}\n---\nfuses: {f1: {amps: 10}}\n"
	_, list := sheet.ReadCircuits("feed.yaml", []byte(circuit))
	if len(list) != 1 || list[0].Pos.Line != 2 || !strings.Contains(list[0].Message, "second YAML document") {
		t.Errorf("of a circuit: %v", list)
	}
}

// One document may open and close with its marks.
func TestOneMarkedDocumentIsRead(t *testing.T) {
	files := folder()
	files["glossary.yaml"].Data = []byte("---\n- term: ground\n  meaning: The return.\n...\n")
	book, found := load(t, nil, files)
	if len(book.Glossary.Terms) != 1 {
		t.Errorf("%d terms; found %s", len(book.Glossary.Terms), found)
	}
}
