package finding

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestIn(t *testing.T) {
	list := List{
		{Pos: Position{File: "power/feed.md"}, Notes: []Note{{Pos: Position{File: "limits.yaml"}}, {}}},
		{Message: "of the whole book"},
	}
	for folder, want := range map[string]string{"content": "content/power/feed.md", ".": "power/feed.md", "../book": "../book/power/feed.md", "/srv/book": "/srv/book/power/feed.md"} {
		got := list.In(folder)
		if got[0].Pos.File != want {
			t.Errorf("in %s the file is %s", folder, got[0].Pos.File)
		}
		if got[0].Notes[1].Pos.File != "" || got[1].Pos.File != "" {
			t.Errorf("in %s a place without a file got one: %+v", folder, got)
		}
	}
	if list[0].Pos.File != "power/feed.md" || list[0].Notes[0].Pos.File != "limits.yaml" {
		t.Error("the list itself was changed")
	}
}

// The consumer of SARIF joins a relative URI to the URI that its base names
// (SARIF 2.1.0, 3.14.14); an absolute one needs no base.
func TestSARIFBase(t *testing.T) {
	list := List{{Rule: "r", Pos: Position{File: "content/my feed.md", Line: 1}, Fix: &Fix{Edits: []Edit{{0, 1, "x"}}}}, {Rule: "r", Pos: Position{File: "/srv/book/a.md", Line: 1}}}
	var b strings.Builder
	if err := WriteSARIF(&b, list, nil, Tool{Folder: "/home/a lead"}); err != nil {
		t.Fatal(err)
	}
	var log sarifLog
	if err := json.Unmarshal([]byte(b.String()), &log); err != nil {
		t.Fatal(err)
	}
	run := log.Runs[0]
	if got := run.OriginalURIBaseIDs["%SRCROOT%"].URI; got != "file:///home/a%20lead/" {
		t.Errorf("the base is %s", got)
	}
	for i, want := range []sarifArtifact{{"content/my%20feed.md", "%SRCROOT%"}, {"file:///srv/book/a.md", ""}} {
		if got := run.Results[i].Locations[0].PhysicalLocation.ArtifactLocation; got != want {
			t.Errorf("result %d is in %+v, want %+v", i, got, want)
		}
	}
	if got := run.Results[0].Fixes[0].ArtifactChanges[0].ArtifactLocation.URIBaseID; got != "%SRCROOT%" {
		t.Errorf("the fix is relative to %q", got)
	}
}
