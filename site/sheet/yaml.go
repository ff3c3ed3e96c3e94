package sheet

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"baybook/calculators/calc"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// A yamlReader reads the book's YAML, whose values are texts, lists and
// mappings of known keys, and reports what is not, by place.
type yamlReader struct {
	src    *finding.Source
	rule   string
	report func(finding.Finding)
	// content is the YAML; starts says where each of its lines starts in the file.
	content string
	starts  []int
}

// newYAMLReader reads a stretch of a file.
func newYAMLReader(src *finding.Source, at Span, rule string, report func(finding.Finding)) yamlReader {
	content := string(src.Text()[at.Start:at.End])
	starts := []int{at.Start}
	for i := range len(content) {
		if content[i] == '\n' {
			starts = append(starts, at.Start+i+1)
		}
	}
	return yamlReader{src: src, rule: rule, report: report, content: content, starts: starts}
}

// yamlLine finds the line that a YAML syntax error speaks of; the library
// gives it in words alone.
var yamlLine = regexp.MustCompile(`^line (\d+): (.*)`)

// document parses the YAML; nil where it is empty or refused, which is
// reported. A second document in the text is refused, since nobody would read
// it; so are aliases, since a few lines of them can stand for gigabytes.
func (r *yamlReader) document() *yaml.Node {
	decoder := yaml.NewDecoder(strings.NewReader(r.content))
	var doc, next yaml.Node
	err := decoder.Decode(&doc)
	if errors.Is(err, io.EOF) {
		return nil
	}
	if err == nil {
		if err = decoder.Decode(&next); errors.Is(err, io.EOF) {
			err = nil
		}
	}
	if err != nil {
		message, line := strings.TrimPrefix(err.Error(), "yaml: "), 1
		if m := yamlLine.FindStringSubmatch(message); m != nil {
			line, _ = strconv.Atoi(m[1])
			message = m[2]
		}
		r.faultAt(r.lineSpan(line), "this is not YAML: "+message, "write key: value lines; put quotes around a value that holds a colon")
		return nil
	}
	if next.Kind != 0 {
		r.faultAt(r.lineSpan(r.separator(&next)), "a second YAML document starts here, and nothing in it would be read", "delete the line ---; one file is one list or one set of keys")
		return nil
	}
	if len(doc.Content) == 0 {
		return nil
	}
	if alias := findAlias(&doc, 0); alias != nil {
		r.fault(alias, "an alias, an anchor or such deep nesting is not accepted", "write the value out")
		return nil
	}
	return doc.Content[0]
}

// separator is the line of the --- or ... before a second document.
func (r *yamlReader) separator(second *yaml.Node) int {
	lines := strings.Split(r.content, "\n")
	for i := min(second.Line, len(lines)) - 1; i > 0; i-- {
		if strings.HasPrefix(lines[i], "---") || strings.HasPrefix(lines[i], "...") {
			return i + 1
		}
	}
	return second.Line
}

// findAlias finds an alias, an anchor, or nesting too deep to be meant.
func findAlias(n *yaml.Node, depth int) *yaml.Node {
	const deepest = 12
	if n.Kind == yaml.AliasNode || n.Anchor != "" || depth > deepest {
		return n
	}
	for _, c := range n.Content {
		if found := findAlias(c, depth+1); found != nil {
			return found
		}
	}
	return nil
}

// span is where a node stands in the file. A node's column counts characters.
func (r *yamlReader) span(n *yaml.Node) Span {
	line := r.lineSpan(n.Line)
	text, at := r.src.Text(), line.Start
	for range n.Column - 1 {
		if at >= line.End {
			break
		}
		at++
		for at < line.End && text[at]&0xC0 == 0x80 {
			at++
		}
	}
	if n.Kind == yaml.ScalarNode && n.Style == 0 && !strings.Contains(n.Value, "\n") {
		return Span{at, max(at, min(at+len(n.Value), line.End))}
	}
	return Span{at, line.End}
}

// lineSpan is where a line of the YAML stands in the file, its line break left
// out.
func (r *yamlReader) lineSpan(line int) Span {
	start := r.starts[min(max(line, 1), len(r.starts))-1]
	rest := r.src.Text()[start:]
	if i := bytes.IndexByte(rest, '\n'); i >= 0 {
		rest = rest[:i]
	}
	return Span{start, start + len(bytes.TrimRight(rest, "\r"))}
}

// fault reports something wrong with a node.
func (r *yamlReader) fault(n *yaml.Node, message, do string) { r.faultAt(r.span(n), message, do) }

// faultAt reports something wrong with a stretch of the file.
func (r *yamlReader) faultAt(at Span, message, do string) {
	f := r.src.At(at.Start, at.End)
	f.Rule, f.Message, f.Do = r.rule, message, do
	r.report(f)
}

// text reads a text of one line that is not empty.
func (r *yamlReader) text(n *yaml.Node) string {
	if n.Kind != yaml.ScalarNode {
		r.fault(n, "a text belongs here, not a list or a mapping", "write the value on the key's own line")
		return ""
	}
	if s := strings.TrimSpace(n.Value); s != "" {
		return s
	}
	r.fault(n, "the value is empty", "fill it in, or take the line out if it is not needed")
	return ""
}

// list reads a list of texts.
func (r *yamlReader) list(n *yaml.Node) []string {
	var list []string
	for _, item := range r.items(n) {
		if s := r.text(item); s != "" {
			list = append(list, s)
		}
	}
	return list
}

// items are the entries of a list; an empty value is an empty list.
func (r *yamlReader) items(n *yaml.Node) []*yaml.Node {
	if n.Kind == yaml.SequenceNode {
		return n.Content
	}
	if n.Kind != yaml.ScalarNode || n.Value != "" {
		r.fault(n, "a list belongs here", "write [one, two] or one “- item” on each line")
	}
	return nil
}

// A field is one key of an entry: what it is for, what it holds, and how it is
// read into a T. The same tables give the schemas for editors.
type field[T any] struct {
	name, doc string
	required  bool
	holds     form
	into      func(r *yamlReader, n *yaml.Node, to *T)
}

// readFields reads an entry whose keys are those of the table.
func readFields[T any](r *yamlReader, n *yaml.Node, to *T, fields []field[T]) {
	var names []string
	for _, f := range fields {
		names = append(names, f.name)
	}
	if n.Kind != yaml.MappingNode {
		r.fault(n, "an entry with "+strings.Join(names, ", ")+" belongs here", "write key: value lines")
		return
	}
	seen := make(map[string]bool)
	for i := 0; i+1 < len(n.Content); i += 2 {
		k := n.Content[i]
		at := slices.Index(names, k.Value)
		switch {
		case at < 0:
			do := "use one of " + strings.Join(names, ", ")
			if near := calc.Nearest(k.Value, names); near != "" {
				do = "did you mean " + near + "?"
			}
			r.fault(k, "the key "+strconv.Quote(k.Value)+" is not known here", do)
		case seen[k.Value]:
			r.fault(k, "the key "+k.Value+" is given twice", "keep one of the two")
		default:
			seen[k.Value] = true
			fields[at].into(r, n.Content[i+1], to)
		}
	}
}

// readList reads a list of entries.
func readList[T any](r *yamlReader, n *yaml.Node, fields []field[T]) []T {
	var list []T
	for _, item := range r.items(n) {
		var one T
		readFields(r, item, &one, fields)
		list = append(list, one)
	}
	return list
}

// oneOf reads one of a few words.
func (r *yamlReader) oneOf(n *yaml.Node, accepted ...string) string {
	s := r.text(n)
	if s == "" || slices.Contains(accepted, s) {
		return s
	}
	do := "use one of " + strings.Join(accepted, ", ")
	if near := calc.Nearest(s, accepted); near != "" {
		do += "; did you mean " + near + "?"
	}
	r.fault(n, strconv.Quote(s)+" is not accepted here", do)
	return ""
}

// wordsUpTo reads a text of at most so many words.
func (r *yamlReader) wordsUpTo(n *yaml.Node, most int) string {
	s := strings.Join(strings.Fields(r.text(n)), " ")
	if words := len(strings.Fields(s)); words > most {
		r.fault(n, "this has "+strconv.Itoa(words)+" words, and more than "+strconv.Itoa(most)+" are not read", "say it in at most "+strconv.Itoa(most)+" words")
	}
	return s
}

// whole reads a whole number that is not negative.
func (r *yamlReader) whole(n *yaml.Node) int {
	s := r.text(n)
	v, err := strconv.Atoi(s)
	if s != "" && (err != nil || v < 0) {
		r.fault(n, strconv.Quote(s)+" is not a whole number", "write digits alone, such as 25")
		return 0
	}
	return v
}

// date reads a date as ISO 8601 has it.
func (r *yamlReader) date(n *yaml.Node) time.Time {
	s := r.text(n)
	t, err := time.Parse(time.DateOnly, s)
	if s != "" && err != nil {
		r.fault(n, strconv.Quote(s)+" is not a date", "write year-month-day, such as 2026-10-02")
	}
	return t
}
