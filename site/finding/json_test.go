package finding

import (
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"strings"
	"testing"
)

func TestWriteJSON(t *testing.T) {
	var b strings.Builder
	if err := WriteJSON(&b, textList(), textRules); err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Version, Errors, Warnings int
		Findings                  []map[string]any
		Rules                     []map[string]any
	}
	if err := json.Unmarshal([]byte(b.String()), &doc); err != nil {
		t.Fatal(err)
	}
	if doc.Version != 1 || doc.Errors != 2 || doc.Warnings != 1 || len(doc.Findings) != 3 || len(doc.Rules) != 2 {
		t.Errorf("head is wrong: %+v", doc)
	}
	value := doc.Findings[2]
	for key, want := range map[string]any{
		"rule": "calc-value", "severity": "error", "file": "power/battery-feed.md",
		"line": 5.0, "column": 8.0, "length": 6.0, "found": "0.43 V",
		"message": "the formula gives 0.41 V here", "do": "write 0.41 V",
		"text": "\tdrop [0.43 V](calc:wire-drop?current=6A).",
	} {
		if value[key] != want {
			t.Errorf("%s = %v, want %v", key, value[key], want)
		}
	}
	if n := len(value["notes"].([]any)); n != 2 {
		t.Errorf("%d notes", n)
	}
	edit := value["fix"].(map[string]any)["edits"].([]any)[0].(map[string]any)
	if edit["start"] != value["offset"] || edit["new"] != "0.41 V" {
		t.Errorf("edit = %v", edit)
	}
	if _, has := doc.Findings[0]["fix"]; has {
		t.Errorf("a finding without a fix has one: %v", doc.Findings[0])
	}
}

// TestJSONShape compares the shape that people read with what is written: the
// same keys, with the same kinds of values.
func TestJSONShape(t *testing.T) {
	var told, written any
	plain := regexp.MustCompile(`(?m) +// .*$`).ReplaceAllString(JSONShape, "")
	if err := json.Unmarshal([]byte(plain), &told); err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := WriteJSON(&b, textList(), textRules); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(b.String()), &written); err != nil {
		t.Fatal(err)
	}
	a, z := make(map[string]string), make(map[string]string)
	kinds(a, "", told)
	kinds(z, "", written)
	if !maps.Equal(a, z) {
		t.Errorf("told:    %v\nwritten: %v", a, z)
	}
}

// kinds lists the kind of value behind each path of keys.
func kinds(list map[string]string, path string, v any) {
	switch v := v.(type) {
	case map[string]any:
		for key, inner := range v {
			kinds(list, path+"."+key, inner)
		}
	case []any:
		for _, inner := range v {
			kinds(list, path+"[]", inner)
		}
	default:
		list[path] = fmt.Sprintf("%T", v)
	}
}

func TestWriteJSONOfNothing(t *testing.T) {
	var b strings.Builder
	if err := WriteJSON(&b, nil, textRules); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), `"findings": []`) || !strings.Contains(b.String(), `"rules": []`) {
		t.Errorf("an empty list is not an empty array:\n%s", b.String())
	}
}
