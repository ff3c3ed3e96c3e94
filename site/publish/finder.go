package publish

import (
	"bytes"
	"encoding/binary"
)

// Beside the table of functions a Go program has a finder: for every stretch
// of 4096 addresses, and each sixteenth of it, the first function there. In
// WebAssembly a function has 65536 addresses, so the finder is a megabyte that
// counts up by one every 320 bytes. The runtime only starts from what the
// finder says and goes on from there, so one entry for sixteen functions does,
// and packs to next to nothing.
const (
	stretch       = 4096
	functionRoom  = 65536
	finderEntry   = 20 // a function's number in 4 bytes, then 16 to add to it
	finderApart   = 16 // functions
	programTable  = 128
	programFinder = 152 // where the runtime's own record of a program has it
	programLow    = 160
	programHigh   = 168
	programSize   = 176
)

// starts is the number under which the i-th function stands in the program.
func (t functionTable) starts(i uint64) uint64 { return t.word(t.part(headTable) + 8*i) }

// coarsen thins the finder out, if it is found and understood.
func (t functionTable) coarsen(s segment) {
	list := t.finder(s)
	for len(list) > 0 {
		first := binary.LittleEndian.Uint32(list)
		clear(list[:finderEntry])
		binary.LittleEndian.PutUint32(list, first-first%finderApart)
		list = list[finderEntry:]
	}
}

// finder is the finder of the table in the same piece of memory, nil where the
// runtime's record of the program is not there or an entry of it is not right.
func (t functionTable) finder(s segment) []byte {
	start := binary.LittleEndian.AppendUint64(nil, t.at) // the record begins with the table and its names
	start = binary.LittleEndian.AppendUint64(start, t.at+t.part(headNames))
	at := bytes.Index(s.bytes, start)
	if at < 0 || at+programSize > len(s.bytes) {
		return nil
	}
	field := func(offset int) uint64 { return binary.LittleEndian.Uint64(s.bytes[at+offset:]) }
	low, high, finder := field(programLow), field(programHigh), field(programFinder)-uint64(s.at)
	entries := (high - low) / stretch // a last part may have none
	if field(programTable) != t.at+t.part(headTable) || high < low || finder > uint64(len(s.bytes)) ||
		entries > (uint64(len(s.bytes))-finder)/finderEntry {
		return nil
	}
	list := s.bytes[finder : finder+entries*finderEntry]
	for i := range entries {
		first := uint64(binary.LittleEndian.Uint32(list[i*finderEntry:]))
		if first >= t.part(headFunctions) || t.starts(first) > (low+i*stretch)/functionRoom {
			return nil
		}
	}
	return list
}
