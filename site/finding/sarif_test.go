package finding

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"io/fs"
	"net/url"
	"os"
	"strings"
	"testing"

	"baybook/calculators/calctest"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// The schema of SARIF 2.1.0 is 137 KB; it comes with a development dependency of
// theme/ instead of standing in the tree.
var sarifSchemaFile = flag.String("sarif-schema",
	"../../theme/node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json",
	"JSON schema that SARIF output is validated against")

func sarifOf(t *testing.T, list List, rules []RuleInfo) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WriteSARIF(&b, list, rules, Tool{Version: "v1.2.3", Properties: map[string]string{"commit": "1a2b3c", "core": ""}}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// hardList holds what a schema could object to: odd file names, unknown places,
// findings of many lines, edits elsewhere, rules nobody described.
func hardList() List {
	src := NewSource("Ü b/50% [x]#1?.md", []byte("é配 one\ntwo {0} [a](1)\n"))
	long := src.At(6, 17)
	long.Rule, long.Message = "calc-value", "runs over {a line} and [links](1)"
	long.Fix = &Fix{Message: "two places", Edits: []Edit{{6, 9, "1"}, {10, 13, ""}}}
	whole := Finding{Rule: "undescribed", Message: "no place at all"}
	file := Finding{Rule: "no-should", Message: "whole file", Pos: Position{File: "C:/x.md"}, Severity: Warning}
	file.Notes = []Note{{Pos: Position{File: "other.md"}, Text: "see"}, {Text: "no place"}, {Pos: Position{File: "o.md", Line: 2, Column: 3}, Text: "a line"}}
	return append(List{long, whole, file, {}}, textList()...)
}

// TestSARIFSchema validates against the schema of OASIS SARIF 2.1.0. It is
// skipped by hand where the schema is not installed.
func TestSARIFSchema(t *testing.T) {
	raw, err := os.ReadFile(*sarifSchemaFile)
	if errors.Is(err, fs.ErrNotExist) {
		calctest.Missing(t, "SARIF output is not validated: no schema at %s; run npm ci in theme/", *sarifSchemaFile)
	}
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("sarif.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("sarif.json")
	if err != nil {
		t.Fatal(err)
	}
	for name, out := range map[string][]byte{
		"nothing":  sarifOf(t, nil, nil),
		"no rules": sarifOf(t, textList(), nil),
		"ordinary": sarifOf(t, textList(), textRules),
		"hard":     sarifOf(t, hardList(), append(textRules, textRules...)),
	} {
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(out))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(v); err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
	broken := bytes.Replace(sarifOf(t, textList(), nil), []byte(`"level": "error"`), []byte(`"level": "fatal"`), 1)
	if v, err := jsonschema.UnmarshalJSON(bytes.NewReader(broken)); err != nil || schema.Validate(v) == nil {
		t.Errorf("the schema accepts a level that SARIF does not know (%v)", err)
	}
}

// sarifRead is what a reader of SARIF looks for.
type sarifRead struct {
	Version string
	Runs    []struct {
		ColumnKind string
		Tool       struct {
			Driver struct {
				Rules []struct {
					ID                     string
					ShortDescription, Help struct{ Text string }
				}
			}
		}
		Results []struct {
			RuleID    string
			RuleIndex *int
			Level     string
			Message   struct{ Text string }
			Locations []struct {
				PhysicalLocation struct {
					ArtifactLocation struct{ URI string }
					Region           *struct{ StartLine, StartColumn, EndLine, EndColumn int }
				}
			}
			Fixes []struct {
				ArtifactChanges []struct {
					Replacements []struct {
						DeletedRegion   map[string]int
						InsertedContent *struct{ Text string }
					}
				}
			}
		}
	}
}

func readSARIF(t *testing.T, raw []byte) sarifRead {
	t.Helper()
	var log sarifRead
	if err := json.Unmarshal(raw, &log); err != nil {
		t.Fatal(err)
	}
	return log
}

func TestSARIFContent(t *testing.T) {
	run := readSARIF(t, sarifOf(t, textList(), textRules)).Runs[0]
	if run.ColumnKind != "unicodeCodePoints" || len(run.Tool.Driver.Rules) != 3 || len(run.Results) != 3 {
		t.Fatalf("run = %+v", run)
	}
	if r := run.Tool.Driver.Rules[1]; r.ID != "no-should" || r.Help.Text != r.ShortDescription.Text {
		t.Errorf("rule = %+v", r)
	}
	value := run.Results[2]
	if value.RuleID != "calc-value" || *value.RuleIndex != 0 || value.Level != "error" ||
		value.Message.Text != "the formula gives 0.41 V here; write 0.41 V" {
		t.Errorf("result = %+v", value)
	}
	place := value.Locations[0].PhysicalLocation
	if place.ArtifactLocation.URI != "power/battery-feed.md" || place.Region.StartLine != 5 || place.Region.StartColumn != 8 || place.Region.EndColumn != 14 {
		t.Errorf("place = %+v %+v", place, place.Region)
	}
	edit := value.Fixes[0].ArtifactChanges[0].Replacements[0]
	if edit.InsertedContent.Text != "0.41 V" || edit.DeletedRegion["startColumn"] != 8 || edit.DeletedRegion["endColumn"] != 14 {
		t.Errorf("edit = %+v", edit)
	}
	if run.Results[0].RuleIndex != nil {
		t.Errorf("a rule that is not described has an index")
	}
}

func TestSARIFHardPlaces(t *testing.T) {
	results := readSARIF(t, sarifOf(t, hardList(), textRules)).Runs[0].Results
	long := results[0]
	r := long.Locations[0].PhysicalLocation.Region
	// é and 配 are 5 bytes and 2 code points; the words end after "two {0}" in line 2.
	if r.StartLine != 1 || r.StartColumn != 4 || r.EndLine != 2 || r.EndColumn != 8 {
		t.Errorf("region over two lines = %+v", r)
	}
	if want := `runs over {{a line}} and \[links\](1)`; long.Message.Text != want {
		t.Errorf("message %q, want %q", long.Message.Text, want)
	}
	edits := long.Fixes[0].ArtifactChanges[0].Replacements
	if edits[0].DeletedRegion["startColumn"] != 4 || edits[0].DeletedRegion["endColumn"] != 7 {
		t.Errorf("edit in the line = %v", edits[0].DeletedRegion)
	}
	if edits[1].DeletedRegion["byteOffset"] != 10 || edits[1].DeletedRegion["byteLength"] != 3 || edits[1].InsertedContent != nil {
		t.Errorf("edit in another line = %v", edits[1])
	}
	if results[1].Locations != nil {
		t.Errorf("a finding of no file has a place")
	}
	if results[2].Locations[0].PhysicalLocation.Region != nil {
		t.Errorf("a finding about a whole file has a region")
	}
}

// TestURIReference reads the references back with net/url, which follows RFC 3986.
func TestURIReference(t *testing.T) {
	for _, tt := range []struct{ file, want string }{
		{"power/battery-feed.md", "power/battery-feed.md"},
		{"a b/100%.md", "a%20b/100%25.md"},
		{"q?#[x].md", "q%3F%23%5Bx%5D.md"},
		{"Tür.md", "T%C3%BCr.md"},
		{`power\feed.md`, "power/feed.md"},
		{"a:b/c.md", "./a:b/c.md"},
		{"a/b:c.md", "a/b:c.md"},
	} {
		got := uriReference(tt.file)
		if got != tt.want {
			t.Errorf("uriReference(%q) = %q, want %q", tt.file, got, tt.want)
		}
		u, err := url.Parse(got)
		if err != nil || u.Scheme != "" || strings.TrimPrefix(u.Path, "./") != strings.ReplaceAll(tt.file, `\`, "/") {
			t.Errorf("%q reads back as %+v, %v", got, u, err)
		}
	}
}
