package core

import (
	"bytes"
	"cmp"
	"slices"
)

// The Go linker starts a new data segment at every run of eight zero bytes,
// which makes tens of thousands of segments. Their addresses do not compress,
// zero bytes do: with the short runs written out, the packed core is a tenth
// smaller. A run longer than maxGap stays a gap, so that memory which starts
// empty is not sent.
const maxGap = 1 << 16

// shrink returns a module that computes the same and packs smaller: its data
// segments are merged, its function table holds only what the runtime needs,
// and functions that only write of a crash are traps. A module that is not
// laid out as the Go linker writes one is an error.
//
// Measured with brotli 11 at Go 1.26, as shares of the module as compiled: with
// segments merged and the table blanked 0.82, with the traps 0.78 (TestSize
// logs today's figure).
func shrink(module []byte) ([]byte, error) {
	list, err := sections(module)
	if err != nil {
		return nil, err
	}
	if list, err = silence(list); err != nil {
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
		data = merge(data)
		for _, s := range data {
			blankNames(s)
		}
		list[i].body = dataBody(data)
	}
	return assemble(list), nil
}

// merge sorts segments by address and writes out the short gaps between them,
// which memory has as zeros anyway. Segments that overlap stay as they are,
// because there the order in which they are written counts.
func merge(list []segment) []segment {
	ordered := slices.SortedFunc(slices.Values(list), func(a, b segment) int { return cmp.Compare(a.at, b.at) })
	var out []segment
	for _, s := range ordered {
		n := len(out) - 1
		switch {
		case n >= 0 && s.at < out[n].end():
			return list
		case n >= 0 && s.at-out[n].end() <= maxGap:
			out[n].bytes = append(append(out[n].bytes, make([]byte, s.at-out[n].end())...), s.bytes...)
		default:
			out = append(out, segment{s.at, bytes.Clone(s.bytes)})
		}
	}
	return out
}
