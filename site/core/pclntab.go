package core

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// A Go program carries pclntab, the table that maps each instruction to its
// function's name, file and line, for the text that it prints when it crashes.
// Nobody reads that text in a page, and it is a tenth of the packed core, so
// this file blanks it. What the runtime needs from the same table stays: stack
// sizes, pointer maps, and whether a function belongs to the runtime.
//
// The layout is that of internal/abi, runtime/symtab.go and debug/gosym since
// Go 1.20; names below are theirs. A table whose header or records do not fit
// that layout is left as it is. When a new Go version changes the layout,
// TestShrinkBlanksNamesAndNothingElse fails and the core falls back to its
// larger form: compare runtime/symtab.go (pcHeader, _func) with the offsets
// below, mend them, and let the parity suite of cmd/browser confirm it.
const pcHeaderMagic = "\xf1\xff\xff\xff\x00\x00\x01\x08"

// Offsets in pcHeader of the number of functions and of the places of the
// tables, each 8 bytes.
const (
	headerFuncs    = 8
	headerFuncname = 32 // funcnametab: names
	headerCu       = 40 // cutab: files of a compilation unit
	headerFile     = 48 // filetab: file names
	headerPc       = 56 // pctab: values by instruction
	headerPcln     = 64 // functab, then the functions' records
	headerSize     = 72
)

// Offsets in a function's record (_func). The places of its further pctab
// values stand behind it, then those of its funcdata.
const (
	recordName      = 4
	recordPcsp      = 16 // stack size by instruction
	recordPcfile    = 20
	recordPcln      = 24
	recordNpcdata   = 28 // how many further pctab values
	recordCuOffset  = 32
	recordStartLine = 36
	recordNfuncdata = 43 // how many funcdata, one byte
	recordSize      = 44
)

// The core does without these: PCDATA_UnsafePoint and PCDATA_ArgLiveIndex tell
// where a goroutine may be interrupted, which never happens in a browser;
// FUNCDATA_ArgInfo and FUNCDATA_ArgLiveInfo tell how to print arguments.
var (
	unusedPcdata   = [...]uint64{0, 3}
	unusedFuncdata = [...]uint64{5, 6}
)

// noFuncdata stands for a funcdata that a function does not have.
const noFuncdata = 0xffffffff

// runtimeName replaces the names of all runtime functions: the runtime tells
// its own goroutines from others by this prefix.
const runtimeName = "runtime."

// blankNames blanks names, files and lines in the pclntab of a Go program, if
// the segment holds one with the known layout.
func blankNames(s segment) {
	at := bytes.Index(s.bytes, []byte(pcHeaderMagic))
	if at < 0 {
		return
	}
	t := pclntab{s.bytes[at:]}
	if t.valid() {
		t.blank()

	}
}

// A pclntab is the function table of a Go program.
type pclntab struct {
	memory []byte // begins with the pcHeader
}

// offset is a number in the header: the offset of a table, or the count of functions.
func (t pclntab) offset(head int) uint64 { return binary.LittleEndian.Uint64(t.memory[head:]) }

func (t pclntab) word(at uint64) uint64 {
	return uint64(binary.LittleEndian.Uint32(t.memory[at:]))
}

func (t pclntab) put(at uint64, v uint32) { binary.LittleEndian.PutUint32(t.memory[at:], v) }

// record is the offset of the i-th function's record.
func (t pclntab) record(i uint64) uint64 {
	return t.offset(headerPcln) + t.word(t.offset(headerPcln)+8*i+4)
}

// valid reports whether the tables lie in order and every record and every
// value that a record points at lies inside them.
func (t pclntab) valid() bool {
	size := uint64(len(t.memory))
	if size < headerSize {
		return false
	}
	before := uint64(headerSize)
	for _, head := range [...]int{headerFuncname, headerCu, headerFile, headerPc, headerPcln} {
		if t.offset(head) < before || t.offset(head) > size {
			return false
		}
		before = t.offset(head)
	}
	n := t.offset(headerFuncs)
	names := t.offset(headerCu) - t.offset(headerFuncname)
	if n == 0 || n >= (size-t.offset(headerPcln))/8 || names < uint64(len(runtimeName)+2) {
		return false
	}
	for i := range n {
		if !t.validRecord(t.record(i), names) {
			return false
		}
	}
	return true
}

// validRecord is valid for one record; names is the size of funcnametab.
func (t pclntab) validRecord(r, names uint64) bool {
	size, values := uint64(len(t.memory)), t.offset(headerPcln)-t.offset(headerPc)
	if r+recordSize > size || t.funcdata(r)+4*uint64(t.memory[r+recordNfuncdata]) > size || t.word(r+recordName) >= names {
		return false
	}
	for at := uint64(recordPcsp); at <= recordPcln; at += 4 {
		if t.word(r+at) >= values {
			return false
		}
	}
	for k := range t.word(r + recordNpcdata) {
		if t.word(r+recordSize+4*k) >= values {
			return false
		}
	}
	return true
}

// funcdata is the offset of a record's funcdata places.
func (t pclntab) funcdata(record uint64) uint64 {
	return record + recordSize + 4*t.word(record+recordNpcdata)
}

// fields are the offsets in a record that point into pctab: at values that
// the runtime needs, and at values that only a crash report shows.
func (t pclntab) fields(record uint64) (needed, shown []uint64) {
	needed = []uint64{record + recordPcsp}
	shown = []uint64{record + recordPcfile, record + recordPcln}
	for k := range t.word(record + recordNpcdata) {
		if at := record + recordSize + 4*k; slices.Contains(unusedPcdata[:], k) {
			shown = append(shown, at)
		} else {
			needed = append(needed, at)
		}
	}
	return needed, shown
}

// blank clears the names, the files, and the pctab values that are only shown.
// The linker stores equal values once, so one that the runtime needs too stays.
func (t pclntab) blank() {
	needed := make(map[uint64]bool)
	var shown []uint64
	names := t.offset(headerFuncname)
	for i := range t.offset(headerFuncs) {
		r := t.record(i)
		keep, drop := t.fields(r)
		for _, field := range keep {
			needed[t.word(field)] = true
		}
		for _, field := range drop {
			shown = append(shown, t.word(field))
			t.put(field, 0)
		}
		own := uint32(0)
		if bytes.HasPrefix(t.memory[names+t.word(r+recordName):], []byte(runtimeName)) {
			own = 1
		}
		t.put(r+recordName, own)
		t.put(r+recordCuOffset, 0)
		t.put(r+recordStartLine, 0)
		for _, k := range unusedFuncdata {
			if k < uint64(t.memory[r+recordNfuncdata]) {
				t.put(t.funcdata(r)+4*k, noFuncdata)
			}
		}
	}
	for _, at := range shown {
		if !needed[at] {
			clear(t.values(at))
		}
	}
	clear(t.memory[names:t.offset(headerPc)])
	copy(t.memory[names+1:], runtimeName)
}

// values are the bytes of one pctab entry: pairs of LEB128 numbers up to a
// first number of 0, which is an end everywhere but in the first pair.
func (t pclntab) values(from uint64) []byte {
	if from == 0 {
		return nil
	}
	all := t.memory[t.offset(headerPc)+from : t.offset(headerPcln)]
	at, first := 0, true
	for {
		value, n := binary.Uvarint(all[at:])
		if n <= 0 {
			return nil
		}
		at += n
		if value == 0 && !first {
			return all[:at]
		}
		first = false
		_, n = binary.Uvarint(all[at:])
		if n <= 0 {
			return nil
		}
		at += n
	}
}
