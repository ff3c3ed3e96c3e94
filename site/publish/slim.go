package publish

import (
	"bytes"
	"cmp"
	"slices"
)

// The Go linker cuts a module's data at every run of eight zero bytes, which
// makes tens of thousands of segments. Their addresses do not pack, zero bytes
// do: with the runs written out, the packed core is a tenth smaller. Longer
// runs than farApart stay out, so that memory which starts empty is not sent.
const farApart = 1 << 16

// slim gives a module that does the same and packs smaller: the pieces of its
// memory joined, and forgotten what only the text of a crash report would
// show. A module that is not as the Go toolchain writes one is an error.
func slim(module []byte) ([]byte, error) {
	list, err := sections(module)
	if err != nil {
		return nil, err
	}
	for i := range list {
		if list[i].id != dataSection {
			continue
		}
		data, err := segments(list[i].body)
		if err != nil {
			return nil, err
		}
		data = joined(data)
		for _, s := range data {
			forgetNames(s)
		}
		list[i].body = dataBody(data)
	}
	return assembled(list), nil
}

// joined puts segments in order and writes out the short gaps between them,
// which memory has as zeros anyway. Where some lie over others what is
// written last counts, and they stay as they are.
func joined(list []segment) []segment {
	ordered := slices.SortedFunc(slices.Values(list), func(a, b segment) int { return cmp.Compare(a.at, b.at) })
	var out []segment
	for _, s := range ordered {
		n := len(out) - 1
		switch {
		case n >= 0 && s.at < out[n].end():
			return list
		case n >= 0 && s.at-out[n].end() <= farApart:
			out[n].bytes = append(append(out[n].bytes, make([]byte, s.at-out[n].end())...), s.bytes...)
		default:
			out = append(out, segment{s.at, bytes.Clone(s.bytes)})
		}
	}
	return out
}
