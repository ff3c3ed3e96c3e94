package site_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"baybook/site"
	"baybook/site/core"
)

// TestPlacesOfTheVehicle looks whether each place of the shipped book's vehicle
// leads first to the sheet that is about it, and whether the cover leads there.
func TestPlacesOfTheVehicle(t *testing.T) {
	out := filepath.Join(t.TempDir(), "dist")
	if _, list, err := site.Build(t.Context(), site.Options{
		Content: filepath.Join("..", "content"), Out: out, Core: core.Core{Module: []byte("\x00asm"), Script: []byte(";")},
	}); err != nil {
		t.Fatal(err, list)
	}
	page, err := os.ReadFile(filepath.Join(out, "places.html"))
	if err != nil {
		t.Fatal(err)
	}
	cover, err := os.ReadFile(filepath.Join(out, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	first := regexp.MustCompile(`(?s)<h2 id="?(place-\d)"?>\d ([^<]*)</h2>.*?<a href="?([a-z-]*/[a-z-]*)\.html`)
	found := make(map[string]string)
	for _, m := range first.FindAllStringSubmatch(string(page), -1) {
		found[m[2]] = m[3]
		if !strings.Contains(string(cover), "places.html#"+m[1]) {
			t.Errorf("the cover does not lead to %s", m[2])
		}
	}
	for place, want := range map[string]string{
		"Engine bay": "safety/battery-disconnect", "Dash": "access/dash-and-mirror", "Pillars": "access/pillar-and-headliner",
		"Doors": "access/door-panel", "Tailgate": "access/tailgate-panel",
	} {
		if found[place] != want {
			t.Errorf("%s leads first to %s, not %s", place, found[place], want)
		}
	}
}
