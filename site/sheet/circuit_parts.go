package sheet

import (
	"strconv"
	"strings"

	"baybook/calculators/circuit"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// parts reads the parts of a section: a mapping of names, or a list of names
// or of parts without one, which are numbered.
func (r *circuitReader) parts(body *yaml.Node, word string, add func(name string, keys []circuit.Key, at circuitPlace)) {
	one := func(name string, at Span, keys *yaml.Node) {
		place := circuitPlace{name: at, keys: make(map[string][2]Span)}
		var list []circuit.Key
		if keys != nil {
			list = r.keys(keys, place.keys)
		}
		add(name, list, place)
	}
	switch {
	case body.Kind == yaml.MappingNode:
		for i := 0; i+1 < len(body.Content); i += 2 {
			key, keys := body.Content[i], body.Content[i+1]
			name, _, open := strings.Cut(key.Value, "{")
			if open {
				name, keys = strings.TrimSpace(name), nil
				r.fault(key, "“"+name+"” has no colon after it", "write "+name+": {key: value, key: value}")
			}
			one(name, r.span(key), keys)
		}
	case body.Kind == yaml.SequenceNode:
		for i, n := range body.Content {
			if n.Kind == yaml.ScalarNode {
				one(n.Value, r.span(n), nil)
			} else {
				one(word+" "+strconv.Itoa(i+1), r.span(n), n)
			}
		}
	case !empty(body):
		r.fault(body, "parts belong here, one on each line", "write name: {key: value, key: value}")
	}
}

// keys reads the keys of a part as text, and notes where they stand.
func (r *circuitReader) keys(body *yaml.Node, places map[string][2]Span) []circuit.Key {
	if body.Kind != yaml.MappingNode {
		if !empty(body) {
			r.fault(body, "keys and values belong here", "write {key: value, key: value}")
		}
		return nil
	}
	var keys []circuit.Key
	for i := 0; i+1 < len(body.Content); i += 2 {
		key, value := body.Content[i], body.Content[i+1]
		if empty(value) && r.slipped(body, i) {
			continue
		}
		text := value.Value
		switch value.Kind {
		case yaml.SequenceNode:
			var names []string
			for _, n := range r.names(value) {
				names = append(names, n.Value)
			}
			text = strings.Join(names, ",")
		case yaml.MappingNode:
			r.fault(value, "one value belongs here, not keys of its own", "write "+key.Value+": and the value")
			continue
		}
		if _, twice := places[key.Value]; !twice {
			places[key.Value] = [2]Span{r.span(key), r.span(value)}
		}
		// YAML lets a value go on over lines; a circuit's stands on one.
		keys = append(keys, circuit.Key{Name: key.Value, Value: strings.Join(strings.Fields(text), " ")})
	}
	return keys
}

// slipped reports a key without a value that is no key at all: what follows a
// decimal comma, or a key and its value without their colon.
func (r *circuitReader) slipped(body *yaml.Node, i int) bool {
	key := body.Content[i]
	if i > 0 {
		before := body.Content[i-1]
		if digit(key.Value, 0) && digit(before.Value, len(before.Value)-1) {
			r.fault(before, "“"+before.Value+","+key.Value+"” has a decimal comma, and a comma ends the value here", "write "+before.Value+"."+key.Value)
			return true
		}
	}
	name, rest, ok := strings.Cut(key.Value, " ")
	if ok {
		r.fault(key, "“"+key.Value+"” has no colon", "write "+name+": "+strings.TrimSpace(rest))
	}
	return ok
}

// digit reports a text that has a digit at a place.
func digit(s string, at int) bool { return at >= 0 && at < len(s) && s[at] >= '0' && s[at] <= '9' }

// names reads a list of names, or one name.
func (r *circuitReader) names(n *yaml.Node) []*yaml.Node {
	if n.Kind == yaml.ScalarNode && !empty(n) {
		return []*yaml.Node{n}
	}
	var list []*yaml.Node
	for _, item := range n.Content {
		if item.Kind != yaml.ScalarNode || n.Kind != yaml.SequenceNode {
			r.fault(item, "a name belongs here", "write [one, two]")
			continue
		}
		if strings.Contains(item.Value, ",") {
			r.fault(item, "a name holds no comma", "write [one, two]")
			continue
		}
		list = append(list, item)
	}
	return list
}

// empty reports whether a value is left out.
func empty(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// place reports a problem of the draft where it stands.
func (r *circuitReader) place(p circuit.Problem) {
	at := r.lineSpan(1)
	var place *circuitPlace
	switch p.In {
	case circuit.InEntry:
		place = &r.out.entries[p.Index]
	case circuit.InState:
		place = &r.states[p.Index]
	case circuit.InLimits:
		place = &r.limits
	case circuit.InWrong:
		at = r.out.wrong[p.Index]
	}
	if place != nil {
		at = place.name
		if spans, ok := place.keys[p.Key]; ok {
			at = spans[1]
			if p.OnKey || spans[1].Start == spans[1].End {
				at = spans[0]
			}
		}
	}
	r.faultAt(at, p.Message, p.Do)
}

// circuitOf reads the circuit of a fenced block, of whose lines each starts at
// a place of the file.
func circuitOf(src *finding.Source, f *Fence, starts []int, report func(finding.Finding)) *Circuit {
	if len(starts) == 0 {
		starts = []int{f.Span.Start}
	}
	c := readCircuit(yamlReader{src: src, rule: circuitRule, report: report, content: f.Code, starts: starts})
	c.Span = f.Span
	return c
}
