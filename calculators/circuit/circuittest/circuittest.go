// Package circuittest holds circuits to test with, and reads them.
package circuittest

import (
	"embed"
	"path"
	"strings"
	"testing"

	"baybook/calculators/circuit"

	"go.yaml.in/yaml/v3"
)

// Draft reads a test circuit. Package sheet has the real reader, which reports
// errors by place; this one reads only correct circuits.
func Draft(t testing.TB, text string) *circuit.Draft {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(text), &doc); err != nil {
		t.Fatal(err)
	}
	d := &circuit.Draft{}
	root := doc.Content[0]
	for i := 0; i < len(root.Content); i += 2 {
		section, body := root.Content[i].Value, root.Content[i+1]
		switch section {
		case "title":
			d.Title = body.Value
		case "states":
			for j := 0; j < len(body.Content); j += 2 {
				d.States = append(d.States, circuit.StateEntry{Name: body.Content[j].Value, Keys: readKeys(body.Content[j+1])})
			}
		case "limits":
			d.Limits = readKeys(body)
		case "wrong":
			d.Wrong = circuit.List(flat(body))
		default:
			c := classNamed(section)
			if c == nil {
				t.Fatalf("no section %s", section)
			}
			if body.Kind == yaml.SequenceNode {
				for _, name := range body.Content {
					d.Entries = append(d.Entries, circuit.Entry{Kind: c.Kind, Name: name.Value})
				}
				continue
			}
			for j := 0; j < len(body.Content); j += 2 {
				d.Entries = append(d.Entries, circuit.Entry{Kind: c.Kind, Name: body.Content[j].Value, Keys: readKeys(body.Content[j+1])})
			}
		}
	}
	return d
}

func readKeys(n *yaml.Node) []circuit.Key {
	var keys []circuit.Key
	for i := 0; i+1 < len(n.Content); i += 2 {
		keys = append(keys, circuit.Key{Name: n.Content[i].Value, Value: flat(n.Content[i+1])})
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

// Build builds a network from a test circuit.
func Build(t testing.TB, text string) *circuit.Network {
	t.Helper()
	n, problems := Draft(t, text).Build()
	for _, f := range problems {
		t.Errorf("%v: %s; %s", f.Key, f.Message, f.Do)
	}
	if n == nil {
		t.FailNow()
	}
	return n
}

// Circuits are the test circuits by name.
func Circuits(t testing.TB) map[string]string {
	t.Helper()
	files, err := testdata.ReadDir("testdata")
	if err != nil || len(files) == 0 {
		t.Fatalf("no test circuits: %v", err)
	}
	all := make(map[string]string)
	for _, f := range files {
		text, err := testdata.ReadFile("testdata/" + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		all[strings.TrimSuffix(path.Base(f.Name()), ".yaml")] = string(text)
	}
	return all
}

//go:embed testdata/*.yaml
var testdata embed.FS

// classNamed finds a class by its section, nil where there is none.
func classNamed(section string) *circuit.Class {
	for i := range circuit.Classes() {
		if c := &circuit.Classes()[i]; c.Section == section {
			return c
		}
	}
	return nil
}

// LoadBranch is the branch by which a load gets its supply, -1 where there is
// none of that name.
func LoadBranch(n *circuit.Network, name string) int {
	for i := range n.Branches {
		if n.NameOf(&n.Branches[i]) == name && n.Draws(&n.Branches[i]) {
			return i
		}
	}
	return -1
}
