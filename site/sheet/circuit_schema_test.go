package sheet

import (
	"os"
	"path/filepath"
	"testing"

	"go.yaml.in/yaml/v3"
)

// TestCircuitSchemaKnowsEveryKey walks the circuits that the solver is tested
// with: every section and key of them is in the schema, and none lacks one
// that the schema requires.
func TestCircuitSchemaKnowsEveryKey(t *testing.T) {
	schema := circuitForm()
	files, _ := filepath.Glob("../../calculators/circuit/circuittest/testdata/*.yaml")
	if len(files) < 30 {
		t.Fatalf("only %d test circuits", len(files))
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		var sections map[string]any
		if err := yaml.Unmarshal(text, &sections); err != nil {
			t.Fatal(err)
		}
		for name, body := range sections {
			section, ok := schema.Properties[name]
			if !ok {
				t.Errorf("%s: the schema has no section %s", f, name)
				continue
			}
			parts, _ := body.(map[string]any)
			for part, keys := range parts {
				form := section
				if p, ok := section.Patterns[""]; ok {
					form = p
				}
				given, _ := keys.(map[string]any)
				for key := range given {
					if _, ok := form.Properties[key]; !ok {
						t.Errorf("%s: %s.%s has a key %s that the schema has not", f, name, part, key)
					}
				}
				for _, required := range form.Required {
					if _, ok := given[required]; !ok {
						t.Errorf("%s: %s.%s lacks %s, which the schema requires", f, name, part, required)
					}
				}
			}
		}
	}
}
