package finding

import (
	"cmp"
	"fmt"
	"slices"
)

// Edit replaces the bytes from Start up to End of a file by New. With Start equal
// to End it inserts.
type Edit struct {
	Start, End int
	New        string
}

// Fix is a set of edits of the finding's own file that puts it right.
type Fix struct {
	Message string // what the fix does, an imperative: "write 0.41 V"
	Edits   []Edit
}

// Apply makes the edits of all fixes in a copy of src; every byte outside them
// stays as it was. The same edit asked for twice is made once. Edits that
// overlap, two different insertions at one place, and edits outside the text are
// refused with an error, and nothing is changed.
func Apply(src []byte, fixes []Fix) ([]byte, error) {
	var edits []Edit
	grow := 0
	for _, f := range fixes {
		edits = append(edits, f.Edits...)
	}
	slices.SortFunc(edits, func(a, b Edit) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.End, b.End), cmp.Compare(a.New, b.New))
	})
	edits = slices.Compact(edits)
	for i, e := range edits {
		if e.Start < 0 || e.End < e.Start || e.End > len(src) {
			return nil, fmt.Errorf("edit of bytes %d to %d does not lie in a text of %d bytes; check the file again and fix what is found then", e.Start, e.End, len(src))
		}
		if i > 0 && overlap(edits[i-1], e) {
			p := edits[i-1]
			return nil, fmt.Errorf("two fixes overlap: bytes %d to %d become %q and bytes %d to %d become %q; make one of the changes by hand, then fix again", p.Start, p.End, p.New, e.Start, e.End, e.New)
		}
		grow += len(e.New)
	}
	out := make([]byte, 0, len(src)+grow)
	at := 0
	for _, e := range edits {
		out = append(out, src[at:e.Start]...)
		out = append(out, e.New...)
		at = e.End
	}
	return append(out, src[at:]...), nil
}

// overlap reports whether two sorted edits touch the same bytes, or are two
// insertions at one place, of which nobody could say which comes first.
func overlap(a, b Edit) bool {
	return b.Start < a.End || a.Start == b.Start && a.End == b.End
}
