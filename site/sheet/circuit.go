package sheet

import (
	"path"
	"strconv"
	"strings"
	"sync"
	"time"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/judge"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// A Circuit is a wiring drawing, read. It stands in a sheet as a fenced block
// with the info string circuit, or is a YAML file of its own.
type Circuit struct {
	// Span is the whole of its text.
	Span  Span
	Draft *circuit.Draft
	// Block is the title block of the drawing, with the number, the revision
	// and the date of the sheet that it stands in.
	Block draw.TitleBlock
	// Network is nil where the draft is no circuit; the findings say why.
	Network *circuit.Network

	entries  []circuitPlace
	wrong    []Span
	once     sync.Once
	assessed *judge.Assessment
}

// A circuitPlace is where a part and its keys stand.
type circuitPlace struct {
	name Span
	keys map[string][2]Span // of the key's name, of its value
}

// Assessment solves and judges the circuit, once; nil where there is no
// network. Goroutines may ask for it at the same time.
func (c *Circuit) Assessment() *judge.Assessment {
	c.once.Do(func() {
		if c.Network != nil {
			c.assessed = judge.Assess(c.Network)
		}
	})
	return c.assessed
}

// Place is where the part that a judgment speaks of is named; the first line
// of the drawing where it speaks of the whole.
func (c *Circuit) Place(j *judge.Judgment) Span {
	switch {
	case j.Entry >= 0 && j.Entry < len(c.entries):
		return c.entries[j.Entry].name
	case j.Rule == "wrong" && len(c.wrong) > 0:
		return c.wrong[0]
	}
	return Span{c.Span.Start, c.Span.Start}
}

// ReadCircuits reads the circuits of a file: a sheet's fenced blocks, or a
// YAML file that is a circuit. It is what the command line reads.
func ReadCircuits(file string, content []byte) ([]*Circuit, finding.List) {
	if path.Ext(file) == ".md" {
		s, list := NewReader(nil).Parse(file, content)
		var circuits []*Circuit
		var own finding.List
		for _, f := range s.Fences {
			if f.Circuit != nil {
				f.Circuit.Block = titleBlock(f.Circuit, &s.Front)
				circuits = append(circuits, f.Circuit)
			}
		}
		for _, f := range list {
			if f.Rule == circuitRule {
				own = append(own, f)
			}
		}
		return circuits, own
	}
	var list finding.List
	report := func(f finding.Finding) { list = append(list, f) }
	src := finding.NewSource(file, content)
	if !readable(src, report) {
		return nil, list
	}
	c := readCircuit(newYAMLReader(src, Span{0, len(content)}, circuitRule, report))
	c.Block.Title = c.Draft.Title
	return []*Circuit{c}, list
}

// titleBlock is the title block of a drawing in a sheet.
func titleBlock(c *Circuit, front *Front) draw.TitleBlock {
	block := draw.TitleBlock{Title: c.Draft.Title, Number: front.Number, Revision: front.Revision}
	if block.Title == "" {
		block.Title = front.Title
	}
	if !front.Date.IsZero() {
		block.Date = front.Date.Format(time.DateOnly)
	}
	return block
}

// circuitRule is the rule under which the loader reports what is no circuit.
const circuitRule = "circuit"

// A circuitReader reads the YAML of a circuit. It only sorts what is written
// into sections, parts and keys; what they mean and which there are is the
// business of package circuit.
type circuitReader struct {
	yamlReader
	out    *Circuit
	states []circuitPlace
	limits circuitPlace
}

// readCircuit reads a circuit.
func readCircuit(text yamlReader) *Circuit {
	out := &Circuit{Span: Span{text.starts[0], text.lineSpan(len(text.starts)).End}, Draft: &circuit.Draft{}}
	found, report := false, text.report
	text.report = func(f finding.Finding) { found = true; report(f) }
	r := &circuitReader{yamlReader: text, out: out}
	root := r.circuit()
	if root == nil {
		if !found {
			r.faultAt(r.lineSpan(1), "the circuit is empty", "write sources:, wires: and the other sections")
		}
		return out
	}
	r.sections(root)
	network, problems := judge.Build(out.Draft)
	for _, p := range problems {
		r.place(p)
	}
	if !found {
		out.Network = network
	}
	return out
}

// circuit parses the YAML; nil where it is refused or no mapping.
func (r *circuitReader) circuit() *yaml.Node {
	root := r.document()
	if root == nil {
		return nil
	}
	if root.Kind != yaml.MappingNode {
		r.fault(root, "a circuit is sections such as sources: and wires:", "start with sources: and one part on each line under it")
		return nil
	}
	return root
}

// sections reads every section of the circuit.
func (r *circuitReader) sections(root *yaml.Node) {
	seen := make(map[string]bool)
	for i := 0; i+1 < len(root.Content); i += 2 {
		key, body := root.Content[i], root.Content[i+1]
		section, known := circuitSection(key.Value)
		switch {
		case !known:
			do := "use one of " + strings.Join(CircuitSections(), ", ")
			if near := calc.Nearest(key.Value, CircuitSections()); near != "" {
				do = "did you mean " + near + "?"
			}
			r.fault(key, strconv.Quote(key.Value)+" is not a section of a circuit", do)
		case seen[section]:
			r.fault(key, "the section "+section+" is given twice", "put the parts of both under one")
		default:
			seen[section] = true
			r.section(section, body)
		}
	}
}

// CircuitSections lists the sections that a circuit may have.
func CircuitSections() []string {
	return append([]string{"title", "states", "limits", "wrong"}, circuit.SectionNames()...)
}

// circuitSection finds a section by its name; one part may stand under the
// name of one: "source" for "sources".
func circuitSection(name string) (section string, known bool) {
	for _, c := range circuit.Classes() {
		if name == c.Section || name == c.Word {
			return c.Section, true
		}
	}
	for _, s := range CircuitSections() {
		if s == name {
			return name, true
		}
	}
	return "", false
}

// section reads one section.
func (r *circuitReader) section(name string, body *yaml.Node) {
	d := r.out.Draft
	switch name {
	case "title":
		if body.Kind != yaml.ScalarNode {
			r.fault(body, "a title is a text", "write title: and a few words")
			return
		}
		d.Title = strings.Join(strings.Fields(body.Value), " ")
	case "limits":
		r.limits.keys = make(map[string][2]Span)
		d.Limits = r.keys(body, r.limits.keys)
	case "wrong":
		for _, n := range r.names(body) {
			d.Wrong = append(d.Wrong, n.Value)
			r.out.wrong = append(r.out.wrong, r.span(n))
		}
	case "states":
		r.parts(body, "state", func(name string, keys []circuit.Key, at circuitPlace) {
			d.States = append(d.States, circuit.StateEntry{Name: name, Keys: keys})
			r.states = append(r.states, at)
		})
	default:
		for _, c := range circuit.Classes() {
			if c.Section == name {
				r.parts(body, c.Word, func(name string, keys []circuit.Key, at circuitPlace) {
					d.Entries = append(d.Entries, circuit.Entry{Kind: c.Kind, Name: name, Keys: keys})
					r.out.entries = append(r.out.entries, at)
				})
			}
		}
	}
}
