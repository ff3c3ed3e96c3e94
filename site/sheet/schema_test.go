package sheet

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site/finding"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"
)

// compiledSchema compiles one of the schemas with an independent validator.
func compiledSchema(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	for _, s := range Schemas() {
		if s.Name != name {
			continue
		}
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(s.JSON))
		if err != nil {
			t.Fatal(err)
		}
		c := jsonschema.NewCompiler()
		if err := c.AddResource(name+".json", doc); err != nil {
			t.Fatal(err)
		}
		compiled, err := c.Compile(name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		return compiled
	}
	t.Fatal("no schema " + name)
	return nil
}

// asJSON reads YAML the way an editor hands it to a validator: a plain date
// stays a text.
func asJSON(t *testing.T, content []byte) any {
	t.Helper()
	var n yaml.Node
	if err := yaml.Unmarshal(content, &n); err != nil {
		t.Fatal(err)
	}
	textDates(&n)
	var v any
	if err := n.Decode(&v); err != nil {
		t.Fatal(err)
	}
	content, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	out, err := jsonschema.UnmarshalJSON(bytes.NewReader(content))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func textDates(n *yaml.Node) {
	if n.Tag == "!!timestamp" {
		n.Tag = "!!str"
	}
	for _, c := range n.Content {
		textDates(c)
	}
}

// TestShippedFilesFitTheirSchemas compares the shipped book with the schemas.
func TestShippedFilesFitTheirSchemas(t *testing.T) {
	for name, file := range map[string]string{"hazards": RegisterFile, "glossary": GlossaryFile, "words": WordsFile, "shop": ShopFile} {
		content, err := os.ReadFile(filepath.Join("../../content", file))
		if err != nil {
			t.Fatal(err)
		}
		if err := compiledSchema(t, name).Validate(asJSON(t, content)); err != nil {
			t.Errorf("%s: %v", file, err)
		}
	}
	front := compiledSchema(t, "front-matter")
	files, _ := filepath.Glob("../../content/*/*.md")
	if len(files) < 20 {
		t.Fatalf("%d sheets", len(files))
	}
	for _, file := range files {
		content, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		at, _ := splitFront(content)
		if err := front.Validate(asJSON(t, content[at.Start:at.End])); err != nil {
			t.Errorf("%s: %v", file, err)
		}
	}
}

// schemaTests are texts that the loader and the schema both take or both
// refuse.
func schemaTests() []struct{ name, text string } {
	plain := strings.TrimSuffix(strings.TrimPrefix(fuzzFront, "---\n"), "---\n")
	procedure := strings.Replace(plain, "kind: guide", "kind: procedure\ntools: [key]\nmaterials: []", 1)
	return []struct{ name, text string }{
		{"front-matter", plain}, {"front-matter", procedure},
		{"front-matter", strings.Replace(procedure, "tools: [key]\n", "", 1)},
		{"front-matter", strings.Replace(plain, "owner: Bench\n", "", 1)},
		{"front-matter", plain + "minuets: 5\n"},
		{"front-matter", plain + "order: \"17\"\n"},
		{"front-matter", strings.Replace(plain, "kind: guide", "kind: job\norder: 17\nvehicle: a van", 1)},
		{"front-matter", strings.Replace(plain, "kind: guide", "kind: guides", 1)},
		{"front-matter", strings.Replace(plain, "number: EX-01", "number: ex1", 1)},
		{"front-matter", strings.Replace(plain, "revision: A", "revision: AAA", 1)},
		{"front-matter", strings.Replace(plain, "date: 2026-01-02", "date: January", 1)},
		{"front-matter", strings.Replace(plain, "minutes: 5", "minutes: -5", 1)},
		{"front-matter", plain + "waive: [{hazard: a-b, reason: r}]\n"},
		{"front-matter", plain + "waive: [{hazard: a-b}]\n"},
		{"front-matter", plain + "approved: {by: Lead, date: 2026-01-03}\n"},
		{"front-matter", plain + "approved: {by: Lead, day: 2026-01-03}\n"},
		{"front-matter", plain + "approved: {by: Lead}\n"},
		{"front-matter", plain + "tools: key\n"},
		{"hazards", "- {id: a, title: A, word: WARNING, hurts: people, shows: {steps: [a]}, source: s}\n"},
		{"hazards", "- {id: a, title: A, word: LOUD, hurts: people, shows: {steps: [a]}, source: s}\n"},
		{"hazards", "- {id: a, title: A, word: WARNING, hurts: people, shows: {step: [a]}, source: s}\n"},
		{"hazards", "- {id: a, title: A, word: WARNING, hurts: people, harm: It burns., avoid: Let it cool., sign: W017, standing: true, shows: {steps: [a]}, source: s}\n"},
		{"hazards", "- {id: a, title: A, word: WARNING, hurts: people, sign: W999, shows: {steps: [a]}, source: s}\n"},
		{"hazards", "- {id: a, title: A, word: WARNING, hurts: people, standing: often, shows: {steps: [a]}, source: s}\n"},
		{"hazards", "- {id: a, title: A, word: WARNING, hurts: people, harm: one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen, shows: {steps: [a]}, source: s}\n"},
		{"hazards", "- {id: a, title: A, word: WARNING, hurts: people, harm: one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen, shows: {steps: [a]}, source: s}\n"},
		{"glossary", "- {term: a, meaning: b}\n"}, {"glossary", "- {term: a, meanings: b}\n"}, {"glossary", "- {meaning: b}\n"},
		{"shop", "{name: a, book: b}\n"}, {"shop", "{name: a}\n"}, {"shop", "{name: a, book: b, money: c}\n"},
	}
}

// TestSchemasAgreeWithTheLoader checks that what the loader refuses in front
// matter and data files, the schema refuses, and the other way round.
func TestSchemasAgreeWithTheLoader(t *testing.T) {
	for _, tt := range schemaTests() {
		schema := compiledSchema(t, tt.name).Validate(asJSON(t, []byte(tt.text)))
		list := loaderFinds(tt.name, tt.text)
		if (schema == nil) != (len(list) == 0) {
			t.Errorf("%s: the loader says %v, the schema %v, of\n%s", tt.name, list, schema, tt.text)
		}
	}
}

// loaderFinds is what the loader says of a text of one kind of file.
func loaderFinds(name, content string) finding.List {
	var list finding.List
	report := func(f finding.Finding) { list = append(list, f) }
	src := finding.NewSource(name, []byte(content))
	switch name {
	case "front-matter":
		readFront(src, Span{0, len(content)}, report)
	case "hazards":
		readRegister(src, report)
	case "glossary":
		readGlossary(src, report)
	case "shop":
		readShop(src, report)
	}
	return list
}

// TestSchemasHaveEveryKey checks that no key of the reader is left out of its
// schema, or explained by nothing.
func TestSchemasHaveEveryKey(t *testing.T) {
	var front struct {
		Properties map[string]struct{ Description string }
		Additional *bool `json:"additionalProperties"`
	}
	if err := json.Unmarshal(Schemas()[0].JSON, &front); err != nil {
		t.Fatal(err)
	}
	for _, name := range KeyNames() {
		if front.Properties[name].Description == "" {
			t.Errorf("the schema does not explain %s", name)
		}
	}
	if len(front.Properties) != len(KeyNames()) || front.Additional == nil || *front.Additional {
		t.Error("the schema has other keys than the reader, or takes any")
	}
}
