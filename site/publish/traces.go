package publish

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// A Go program carries the name, file and line of every instruction, for the
// text that it prints when it crashes. Nobody reads that text in a page, and
// it is a tenth of the packed core, so it is left out of the module. What the
// runtime itself needs of the same table stays: stack sizes, pointer maps, and
// whether a function is the runtime's own.
//
// The table is laid out as debug/gosym and runtime/symtab.go have it since Go
// 1.20. A table that begins otherwise is left as it is.
const tableMagic = "\xf1\xff\xff\xff\x00\x00\x01\x08"

// Where the header has the places of the parts, each 8 bytes.
const (
	headFunctions = 8
	headNames     = 32
	headUnits     = 40
	headFiles     = 48
	headRuns      = 56
	headTable     = 64
	headSize      = 72
)

// Where a function's record has what is forgotten or must be kept. Behind the
// record stand the places of more runs, then those of pieces of data.
const (
	recordName   = 4
	recordStack  = 16 // the run of stack sizes
	recordFile   = 20 // the run of files
	recordLine   = 24 // the run of lines
	recordExtra  = 28 // how many more runs
	recordUnit   = 32
	recordStart  = 36 // the line that it starts on
	recordPieces = 43 // how many pieces of data, one byte
	recordSize   = 44
)

// Of the further runs and pieces these are forgotten: where a running function
// may be stopped, which no browser does, and how to print its arguments.
var (
	forgottenRuns   = [...]uint64{0, 3}
	forgottenPieces = [...]uint64{5, 6}
)

// nowhere stands for a piece of data that a function has not.
const nowhere = 0xffffffff

// runtimeName stands for the names of all functions of the runtime, which the
// runtime tells its own goroutines by.
const runtimeName = "runtime."

// forgetNames blanks names, files and lines in the function table of a Go
// program, if a piece of memory holds one that is understood.
func forgetNames(s segment) {
	at := bytes.Index(s.bytes, []byte(tableMagic))
	if at < 0 {
		return
	}
	t := functionTable{memory: s.bytes[at:], at: uint64(s.at) + uint64(at)}
	if t.understood() {
		t.forget()
		t.coarsen(s)
	}
}

// A functionTable is the table of functions of a Go program.
type functionTable struct {
	memory []byte // that begins with it
	at     uint64 // its address
}

// part is a place in the table that its header names.
func (t functionTable) part(head int) uint64 { return binary.LittleEndian.Uint64(t.memory[head:]) }

func (t functionTable) word(at uint64) uint64 {
	return uint64(binary.LittleEndian.Uint32(t.memory[at:]))
}

func (t functionTable) put(at uint64, v uint32) { binary.LittleEndian.PutUint32(t.memory[at:], v) }

// record is the place of the i-th function's record.
func (t functionTable) record(i uint64) uint64 {
	return t.part(headTable) + t.word(t.part(headTable)+8*i+4)
}

// understood reports whether the parts of the table lie in order and every
// record lies in it.
func (t functionTable) understood() bool {
	size := uint64(len(t.memory))
	if size < headSize {
		return false
	}
	before := uint64(headSize)
	for _, head := range [...]int{headNames, headUnits, headFiles, headRuns, headTable} {
		if t.part(head) < before || t.part(head) > size {
			return false
		}
		before = t.part(head)
	}
	n := t.part(headFunctions)
	if n == 0 || n >= (size-t.part(headTable))/8 || t.part(headUnits)-t.part(headNames) < uint64(len(runtimeName)+2) {
		return false
	}
	names, runs := t.part(headUnits)-t.part(headNames), t.part(headTable)-t.part(headRuns)
	for i := range n {
		r := t.record(i)
		if r+recordSize > size || t.pieces(r)+4*uint64(t.memory[r+recordPieces]) > size || t.word(r+recordName) >= names {
			return false
		}
		for at := uint64(recordStack); at <= recordLine; at += 4 {
			if t.word(r+at) >= runs {
				return false
			}
		}
		for k := range t.word(r + recordExtra) {
			if t.word(r+recordSize+4*k) >= runs {
				return false
			}
		}
	}
	return true
}

// pieces is where the places of a record's pieces of data stand.
func (t functionTable) pieces(record uint64) uint64 {
	return record + recordSize + 4*t.word(record+recordExtra)
}

// fields are where a record has the places of runs: those that the runtime
// needs, and those that it can do without.
func (t functionTable) fields(record uint64) (needed, shown []uint64) {
	needed = []uint64{record + recordStack}
	shown = []uint64{record + recordFile, record + recordLine}
	for k := range t.word(record + recordExtra) {
		if at := record + recordSize + 4*k; slices.Contains(forgottenRuns[:], k) {
			shown = append(shown, at)
		} else {
			needed = append(needed, at)
		}
	}
	return needed, shown
}

// forget blanks the names, the files, and the runs that are only shown. Equal
// runs are stored once, so one that something else needs too is kept.
func (t functionTable) forget() {
	needed := make(map[uint64]bool)
	var shown []uint64
	names := t.part(headNames)
	for i := range t.part(headFunctions) {
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
		t.put(r+recordUnit, 0)
		t.put(r+recordStart, 0)
		for _, k := range forgottenPieces {
			if k < uint64(t.memory[r+recordPieces]) {
				t.put(t.pieces(r)+4*k, nowhere)
			}
		}
	}
	for _, run := range shown {
		if !needed[run] {
			clear(t.run(run))
		}
	}
	clear(t.memory[names:t.part(headRuns)])
	copy(t.memory[names+1:], runtimeName)
}

// run is the bytes of a run: pairs of numbers in LEB128 up to a first number
// of 0, which only the first pair may have.
func (t functionTable) run(from uint64) []byte {
	if from == 0 {
		return nil
	}
	all := t.memory[t.part(headRuns)+from : t.part(headTable)]
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
