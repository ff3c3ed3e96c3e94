package circuit

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"
)

// readDraft reads a test circuit. The real reader, with its places and its
// refusals, belongs to package sheet; this one takes only what is right.
func readDraft(t testing.TB, text string) *Draft {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(text), &doc); err != nil {
		t.Fatal(err)
	}
	d := &Draft{}
	root := doc.Content[0]
	for i := 0; i < len(root.Content); i += 2 {
		section, body := root.Content[i].Value, root.Content[i+1]
		switch section {
		case "title":
			d.Title = body.Value
		case "states":
			for j := 0; j < len(body.Content); j += 2 {
				d.States = append(d.States, StateEntry{body.Content[j].Value, readKeys(body.Content[j+1])})
			}
		case "limits":
			d.Limits = readKeys(body)
		case "wrong":
			d.Wrong = List(flat(body))
		default:
			c := classNamed(section)
			if c == nil {
				t.Fatalf("no section %s", section)
			}
			if body.Kind == yaml.SequenceNode {
				for _, name := range body.Content {
					d.Entries = append(d.Entries, Entry{c.Kind, name.Value, nil})
				}
				continue
			}
			for j := 0; j < len(body.Content); j += 2 {
				d.Entries = append(d.Entries, Entry{c.Kind, body.Content[j].Value, readKeys(body.Content[j+1])})
			}
		}
	}
	return d
}

func readKeys(n *yaml.Node) []Key {
	var keys []Key
	for i := 0; i+1 < len(n.Content); i += 2 {
		keys = append(keys, Key{n.Content[i].Value, flat(n.Content[i+1])})
	}
	return keys
}

func flat(n *yaml.Node) string {
	if n.Kind != yaml.SequenceNode {
		return n.Value
	}
	var items []string
	for _, c := range n.Content {
		items = append(items, c.Value)
	}
	return strings.Join(items, ",")
}

// build builds a network from a test circuit.
func build(t testing.TB, text string) *Network {
	t.Helper()
	n, faults := readDraft(t, text).Build()
	for _, f := range faults {
		t.Errorf("%v: %s; %s", f.Key, f.Message, f.Do)
	}
	if n == nil {
		t.FailNow()
	}
	return n
}

// circuits are the test circuits by name.
func circuits(t testing.TB) map[string]string {
	t.Helper()
	files, err := filepath.Glob("testdata/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no test circuits: %v", err)
	}
	all := make(map[string]string)
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		all[strings.TrimSuffix(filepath.Base(f), ".yaml")] = string(text)
	}
	return all
}
