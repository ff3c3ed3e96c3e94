package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/CycloneDX/cyclonedx-go"
)

// The notices that the program carries are those of what is linked now.
func TestNoticesAreCurrent(t *testing.T) {
	want, err := notices("../..")
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(filepath.Join("../..", noticesFile))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("theme/notices.txt is not that of what is linked; go run ./cmd/supply notices")
	}
	for _, part := range []string{"goldmark", "esbuild", "The Go standard library", "Barlow"} {
		if !strings.Contains(string(got), part) {
			t.Errorf("the notices do not name %s", part)
		}
	}
}

// The bill is read back by the library of its standard, names every part with
// its license, and is the same each time.
func TestBill(t *testing.T) {
	var first, again bytes.Buffer
	for _, out := range []*bytes.Buffer{&first, &again} {
		if err := bill("../..", "v0.0.0-test", out); err != nil {
			t.Fatal(err)
		}
	}
	if first.String() != again.String() {
		t.Error("two bills of the same source differ")
	}
	var read cyclonedx.BOM
	if err := cyclonedx.NewBOMDecoder(&first, cyclonedx.BOMFileFormatJSON).Decode(&read); err != nil {
		t.Fatal(err)
	}
	all, err := parts("../..")
	if err != nil {
		t.Fatal(err)
	}
	if len(*read.Components) != len(all) || len(all) < 10 {
		t.Fatalf("%d components of %d parts", len(*read.Components), len(all))
	}
	for _, c := range *read.Components {
		if c.Licenses == nil || len(*c.Licenses) == 0 || strings.HasPrefix(c.PackageURL, "pkg:") && c.Version == "" {
			t.Errorf("%s %s lacks its version or license", c.Name, c.Version)
		}
	}
}
