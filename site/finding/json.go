package finding

import (
	"encoding/json"
	"io"
)

// JSONShape is the shape of what WriteJSON writes, told by an example for
// people who read it with a program of their own. A test holds it against what
// is written.
const JSONShape = `{
  "version": 1,              // of this shape; it grows when a key changes meaning
  "errors": 1,               // findings that stop publishing
  "warnings": 0,
  "findings": [              // in the order of files and lines
    {
      "rule": "computed-number",
      "severity": "error",   // or "warning"
      "file": "content/power/battery-feed.md", // from where the command was run
      "line": 31,            // from 1; 0 = not known
      "column": 14,          // bytes, from 1; 0 = not known
      "offset": 902,         // bytes from the start of the file
      "length": 6,           // bytes of the words
      "found": "0.43 V",     // the words
      "message": "the formula gives 0.41 V here, not 0.43 V",
      "do": "write 0.41 V",
      "text": "Expect a drop of 0.43 V.", // the whole line; left out if not known
      "notes": [             // other places that explain it
        {"file": "content/power/battery-feed.md", "line": 12, "column": 3, "text": "given here"}
      ],
      "fix": {               // left out if there is none
        "message": "write 0.41 V",
        "edits": [{"start": 902, "end": 908, "new": "0.41 V"}] // bytes of the file
      }
    }
  ],
  "rules": [                 // those that a finding names
    {"name": "computed-number", "severity": "error", "short": "what it demands", "help": "its page"}
  ]
}`

// WriteJSON writes findings for a program: one object in the shape of
// JSONShape. Bytes that are no UTF-8 come out as U+FFFD; offset and length still
// count the bytes of the file.
func WriteJSON(w io.Writer, list List, rules []RuleInfo) error {
	doc := jsonDoc{
		Version:  1,
		Errors:   list.Errors(),
		Warnings: len(list) - list.Errors(),
		Findings: make([]jsonFinding, 0, len(list)),
		Rules:    []jsonRule{},
	}
	named := map[string]bool{}
	for i := range list {
		doc.Findings = append(doc.Findings, jsonOf(&list[i]))
		named[list[i].Rule] = true
	}
	for _, r := range rules {
		if named[r.Name] {
			doc.Rules = append(doc.Rules, jsonRule{r.Name, r.Severity.String(), r.Short, r.Help})
		}
	}
	return encode(w, doc)
}

// encode writes JSON that a person can read too: indented, < and > as they are.
func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

func jsonOf(f *Finding) jsonFinding {
	j := jsonFinding{
		Rule: f.Rule, Severity: f.Severity.String(),
		File: f.Pos.File, Line: f.Pos.Line, Column: f.Pos.Column,
		Offset: f.Pos.Offset, Length: f.Length, Found: f.Found,
		Message: f.Message, Do: f.Do, Text: f.Line,
		Notes: make([]jsonNote, 0, len(f.Notes)),
	}
	for _, n := range f.Notes {
		j.Notes = append(j.Notes, jsonNote{n.Pos.File, n.Pos.Line, n.Pos.Column, n.Text})
	}
	if f.Fix != nil {
		j.Fix = &jsonFix{Message: f.Fix.Message, Edits: make([]jsonEdit, 0, len(f.Fix.Edits))}
		for _, e := range f.Fix.Edits {
			j.Fix.Edits = append(j.Fix.Edits, jsonEdit(e))
		}
	}
	return j
}

type jsonDoc struct {
	Version  int           `json:"version"`
	Errors   int           `json:"errors"`
	Warnings int           `json:"warnings"`
	Findings []jsonFinding `json:"findings"`
	Rules    []jsonRule    `json:"rules"`
}

type jsonFinding struct {
	Rule     string     `json:"rule"`
	Severity string     `json:"severity"`
	File     string     `json:"file"`
	Line     int        `json:"line"`
	Column   int        `json:"column"`
	Offset   int        `json:"offset"`
	Length   int        `json:"length"`
	Found    string     `json:"found"`
	Message  string     `json:"message"`
	Do       string     `json:"do"`
	Text     string     `json:"text,omitempty"`
	Notes    []jsonNote `json:"notes"`
	Fix      *jsonFix   `json:"fix,omitempty"`
}

type jsonNote struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Text   string `json:"text"`
}

type jsonFix struct {
	Message string     `json:"message"`
	Edits   []jsonEdit `json:"edits"`
}

type jsonEdit struct {
	Start int    `json:"start"`
	End   int    `json:"end"`
	New   string `json:"new"`
}

type jsonRule struct {
	Name     string `json:"name"`
	Severity string `json:"severity"`
	Short    string `json:"short"`
	Help     string `json:"help"`
}
