package finding

import "io"

// RuleInfo describes a rule to a writer. Severity is what its findings have
// unless they say otherwise.
type RuleInfo struct {
	Name     string   // id, lower-kebab
	Short    string   // one sentence
	Help     string   // why, a bad example, a good one; Markdown; Short when empty
	Severity Severity // of its findings
}

// Format is one way to write a list of findings.
type Format struct {
	Name  string // what a person types to choose it
	Doc   string // who it is for, in a few words
	Write func(w io.Writer, list List, rules []RuleInfo) error
}

// Formats lists every format, the one for people first. SARIF names the tool,
// the program that looked. The list given to a
// writer should be in order ([List.Dedupe]); writers leave the order alone.
func Formats(tool Tool) []Format {
	return []Format{
		{Name: "text", Doc: "for people, with the line and the words marked", Write: WriteText},
		{Name: "json", Doc: "for programs", Write: WriteJSON},
		{Name: "sarif", Doc: "SARIF 2.1.0, for tools that collect findings", Write: func(w io.Writer, list List, rules []RuleInfo) error {
			return WriteSARIF(w, list, rules, tool)
		}},
	}
}
