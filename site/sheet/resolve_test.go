package sheet

import "testing"

// Percent-encoding: RFC 3986, section 2.1. What is no encoding stands for
// itself.
func TestResolve(t *testing.T) {
	s := &Sheet{File: "power/feed.md"}
	for _, tt := range []struct {
		dest, file, fragment string
		outside              bool
	}{
		{"../ground/point.md#step-2", "ground/point.md", "step-2", false},
		{"My%20Order.svg", "power/My Order.svg", "", false},
		{"f%65ed.md", "power/feed.md", "", false},
		{"100%.svg", "power/100%.svg", "", false},
		{"%2e%2e/%2e%2e/secret", "../secret", "", false},
		{"#step-1", "power/feed.md", "step-1", false},
		{"mailto:x", "", "", true},
		{"//host/a", "", "", true},
	} {
		got := s.Resolve(tt.dest)
		if got.Outside != tt.outside || !tt.outside && got.File != tt.file || got.Fragment != tt.fragment {
			t.Errorf("Resolve(%q) = %+v", tt.dest, got)
		}
	}
}
