package sheet

import (
	"net/url"
	"path"
	"strings"
)

// A Target is where a link leads.
type Target struct {
	// Outside is true for a link that leaves the book.
	Outside bool
	// File is the path in the content folder that the link names; the sheet's
	// own for a link to a place in the same sheet. It may lead out of the
	// folder ("../x") or nowhere.
	File     string
	Fragment string
}

// Resolve says where a link of the sheet leads. What is written in percent
// signs (RFC 3986) is read as the letters that it stands for.
func (s *Sheet) Resolve(dest string) Target {
	before, fragment, _ := strings.Cut(dest, "#")
	if strings.HasPrefix(before, "//") || strings.Contains(before, ":") {
		return Target{Outside: true, Fragment: fragment}
	}
	if before == "" {
		return Target{File: s.File, Fragment: fragment}
	}
	if plain, err := url.PathUnescape(before); err == nil {
		before = plain
	}
	return Target{File: path.Join(path.Dir(s.File), before), Fragment: fragment}
}

// Linked is the sheet that a link of another sheet leads to, nil where it
// leads to none.
func (b *Book) Linked(from *Sheet, link *Link) *Sheet {
	t := from.Resolve(link.Dest)
	if t.Outside || path.Ext(t.File) != ".md" {
		return nil
	}
	return b.Sheet(strings.TrimSuffix(t.File, ".md"))
}
