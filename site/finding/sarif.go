package finding

import (
	"io"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// A Tool says which build of the program looked at a book.
type Tool struct {
	// Version is the module's version; "" is left out.
	Version string
	// Properties are further names and values, such as the commit; those
	// without a value are left out.
	Properties map[string]string
	// Folder is the working folder, an absolute path to which the findings'
	// files are relative; "" says nothing of it.
	Folder string
}

// sourceRoot is the name that SARIF consumers know for the folder of the
// sources.
const sourceRoot = "%SRCROOT%"

// properties is the SARIF property bag, nil where it would be empty.
func (t Tool) properties() map[string]string {
	bag := make(map[string]string, len(t.Properties))
	for name, value := range t.Properties {
		if value != "" {
			bag[name] = value
		}
	}
	if len(bag) == 0 {
		return nil
	}
	return bag
}

// WriteSARIF writes findings in the OASIS Static Analysis Results Interchange
// Format, version 2.1.0. Every given rule is described in the run, broken or not.
// Columns count Unicode code points, as the run's columnKind says, and are worked
// out from the finding's line; file names become relative URI references. The
// tool says which version of the program looked.
func WriteSARIF(w io.Writer, list List, rules []RuleInfo, tool Tool) error {
	run := sarifRun{ColumnKind: "unicodeCodePoints", Results: make([]sarifResult, 0, len(list))}
	if tool.Folder != "" {
		run.OriginalURIBaseIDs = map[string]sarifArtifact{sourceRoot: {URI: folderURI(tool.Folder)}}
	}
	run.Tool.Driver.Name = "Baybook"
	run.Tool.Driver.Version = tool.Version
	run.Tool.Driver.Properties = tool.properties()
	run.Tool.Driver.Rules = make([]sarifRule, 0, len(rules))
	index := make(map[string]int, len(rules))
	for _, r := range rules {
		if _, twice := index[r.Name]; !twice {
			index[r.Name] = len(run.Tool.Driver.Rules)
			run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRuleOf(r))
		}
	}
	for i := range list {
		run.Results = append(run.Results, sarifResultOf(&list[i], index))
	}
	if tool.Folder != "" {
		for i := range run.Results {
			run.Results[i].relativeTo(sourceRoot)
		}
	}
	return encode(w, sarifLog{Schema: sarifSchema, Version: "2.1.0", Runs: []sarifRun{run}})
}

func sarifRuleOf(r RuleInfo) sarifRule {
	help := r.Help
	if help == "" {
		help = r.Short
	}
	out := sarifRule{
		ID:               r.Name,
		ShortDescription: sarifText{Text: r.Short},
		FullDescription:  sarifText{Text: help},
		Help:             sarifText{Text: help, Markdown: help},
	}
	out.DefaultConfiguration.Level = r.Severity.String()
	return out
}

func sarifResultOf(f *Finding, index map[string]int) sarifResult {
	text := f.Message
	if f.Do != "" {
		text += "; " + f.Do
	}
	out := sarifResult{
		RuleID:  f.Rule,
		Level:   f.Severity.String(),
		Message: sarifText{Text: messageText(text)},
	}
	if i, ok := index[f.Rule]; ok {
		out.RuleIndex = &i
	}
	if f.Pos.File != "" {
		out.Locations = []sarifLocation{{PhysicalLocation: physical(f.Pos, regionOf(f))}}
	}
	for i, n := range f.Notes {
		if n.Pos.File == "" {
			continue
		}
		var region *sarifRegion
		if n.Pos.Line > 0 {
			// A note has no text of its line: the line alone is certain.
			region = &sarifRegion{StartLine: n.Pos.Line}
		}
		out.RelatedLocations = append(out.RelatedLocations, sarifLocation{
			ID: i + 1, PhysicalLocation: physical(n.Pos, region), Message: &sarifText{Text: messageText(n.Text)},
		})
	}
	if f.Fix != nil && len(f.Fix.Edits) > 0 && f.Pos.File != "" {
		out.Fixes = []sarifFix{sarifFixOf(f)}
	}
	return out
}

// relativeTo names the folder that a result's relative files start from.
func (r *sarifResult) relativeTo(base string) {
	for _, list := range [][]sarifLocation{r.Locations, r.RelatedLocations} {
		for i := range list {
			list[i].PhysicalLocation.ArtifactLocation.relativeTo(base)
		}
	}
	for _, fix := range r.Fixes {
		for i := range fix.ArtifactChanges {
			fix.ArtifactChanges[i].ArtifactLocation.relativeTo(base)
		}
	}
}

func (a *sarifArtifact) relativeTo(base string) {
	if !strings.HasPrefix(a.URI, "file:") {
		a.URIBaseID = base
	}
}

// folderURI is an absolute folder as a URI that relative ones are appended to
// (RFC 8089).
func folderURI(dir string) string {
	return strings.TrimSuffix(uriReference("/"+strings.TrimPrefix(filepath.ToSlash(dir), "/")), "/") + "/"
}

func physical(pos Position, region *sarifRegion) sarifPhysical {
	return sarifPhysical{ArtifactLocation: sarifArtifact{URI: uriReference(pos.File)}, Region: region}
}

// regionOf says where the words stand, or nil for a whole file.
func regionOf(f *Finding) *sarifRegion {
	if f.Pos.Line < 1 {
		return nil
	}
	if f.Pos.Column < 1 {
		return &sarifRegion{StartLine: f.Pos.Line}
	}
	start := f.Pos.Column - 1
	r := &sarifRegion{StartLine: f.Pos.Line, StartColumn: codePoints(f.Line, start) + 1}
	if i := strings.LastIndexByte(f.Found, '\n'); i >= 0 && len(f.Found) == f.Length {
		r.EndLine = f.Pos.Line + strings.Count(f.Found, "\n")
		r.EndColumn = utf8.RuneCountInString(f.Found[i+1:]) + 1
		return r
	}
	r.EndColumn = codePoints(f.Line, start+f.Length) + 1
	return r
}

// codePoints counts those in the first n bytes of a line. Without the line's
// text a byte counts as one.
func codePoints(line string, n int) int {
	if line == "" {
		return n
	}
	return utf8.RuneCountInString(line[:min(n, len(line))])
}

func sarifFixOf(f *Finding) sarifFix {
	change := sarifChange{ArtifactLocation: sarifArtifact{URI: uriReference(f.Pos.File)}}
	for _, e := range f.Fix.Edits {
		r := sarifReplacement{DeletedRegion: editRegion(f, e)}
		if e.New != "" {
			r.InsertedContent = &sarifText{Text: e.New}
		}
		change.Replacements = append(change.Replacements, r)
	}
	out := sarifFix{ArtifactChanges: []sarifChange{change}}
	if f.Fix.Message != "" {
		out.Description = &sarifText{Text: messageText(f.Fix.Message)}
	}
	return out
}

// editRegion places an edit by line and column when it lies in the finding's own
// line, whose text is known, and by bytes otherwise.
func editRegion(f *Finding, e Edit) sarifRegion {
	lineStart := f.Pos.Offset - (f.Pos.Column - 1)
	from, to := e.Start-lineStart, e.End-lineStart
	if f.Pos.Line < 1 || f.Pos.Column < 1 || from < 0 || to > len(f.Line) {
		length := e.End - e.Start
		return sarifRegion{ByteOffset: &e.Start, ByteLength: &length}
	}
	return sarifRegion{
		StartLine:   f.Pos.Line,
		StartColumn: codePoints(f.Line, from) + 1,
		EndColumn:   codePoints(f.Line, to) + 1,
	}
}

// messageText writes a message as SARIF 2.1.0 section 3.11 reads it: braces are
// doubled because single ones hold an argument, and what would read as an
// embedded link is escaped.
func messageText(s string) string {
	s = strings.NewReplacer("{", "{{", "}", "}}").Replace(s)
	if strings.Contains(s, "](") {
		s = strings.NewReplacer(`\`, `\\`, "[", `\[`, "]", `\]`).Replace(s)
	}
	return s
}

// uriReference writes a file name as a relative reference of RFC 3986: bytes that
// a path segment may not hold are percent-encoded, and a colon in the first
// segment is kept from reading as a scheme (section 4.2). An absolute name
// becomes a file URI (RFC 8089).
func uriReference(file string) string {
	const hex = "0123456789ABCDEF"
	file = strings.ReplaceAll(file, `\`, "/")
	b := make([]byte, 0, len(file)+8)
	if strings.HasPrefix(file, "/") {
		b = append(b, "file://"...)
	} else if first, _, _ := strings.Cut(file, "/"); strings.Contains(first, ":") {
		b = append(b, "./"...)
	}
	for i := 0; i < len(file); i++ {
		c := file[i]
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || strings.IndexByte("-._~!$&'()*+,;=:@/", c) >= 0 {
			b = append(b, c)
		} else {
			b = append(b, '%', hex[c>>4], hex[c&15])
		}
	}
	return string(b)
}
