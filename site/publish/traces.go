package publish

import (
	"bytes"
	"encoding/binary"
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

// Where a function's record has what is forgotten or must be kept.
const (
	recordName  = 4
	recordStack = 16 // the run of stack sizes
	recordFile  = 20 // the run of files
	recordLine  = 24 // the run of lines
	recordExtra = 28 // how many more runs, behind the record
	recordUnit  = 32
	recordStart = 36 // the line that it starts on
	recordSize  = 44
)

// runtimeName stands for the names of all functions of the runtime, which the
// runtime tells its own goroutines by.
const runtimeName = "runtime."

// forgetNames blanks names, files and lines in the function table of a Go
// program, if memory holds one that is understood.
func forgetNames(memory []byte) {
	at := bytes.Index(memory, []byte(tableMagic))
	if at < 0 {
		return
	}
	t := functionTable{memory: memory[at:]}
	if t.understood() {
		t.forget()
	}
}

// A functionTable is the table of functions of a Go program.
type functionTable struct{ memory []byte }

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
	if n > (size-t.part(headTable))/8 || t.part(headUnits)-t.part(headNames) < uint64(len(runtimeName)+2) {
		return false
	}
	names, runs := t.part(headUnits)-t.part(headNames), t.part(headTable)-t.part(headRuns)
	for i := range n {
		r := t.record(i)
		if r+recordSize > size || r+recordSize+4*t.word(r+recordExtra) > size || t.word(r+recordName) >= names {
			return false
		}
		for _, run := range t.kept(r) {
			if run >= runs {
				return false
			}
		}
		if t.word(r+recordFile) >= runs || t.word(r+recordLine) >= runs {
			return false
		}
	}
	return true
}

// kept are the runs of a function that the runtime needs.
func (t functionTable) kept(record uint64) []uint64 {
	runs := []uint64{t.word(record + recordStack)}
	for k := range t.word(record + recordExtra) {
		runs = append(runs, t.word(record+recordSize+4*k))
	}
	return runs
}

// forget blanks the names, the files, and the runs of files and lines. Equal
// runs are stored once, so one that something else needs too is kept.
func (t functionTable) forget() {
	needed := make(map[uint64]bool)
	var shown []uint64
	names := t.part(headNames)
	for i := range t.part(headFunctions) {
		r := t.record(i)
		for _, run := range t.kept(r) {
			needed[run] = true
		}
		shown = append(shown, t.word(r+recordFile), t.word(r+recordLine))
		own := uint32(0)
		if bytes.HasPrefix(t.memory[names+t.word(r+recordName):], []byte(runtimeName)) {
			own = 1
		}
		t.put(r+recordName, own)
		for _, field := range [...]uint64{recordFile, recordLine, recordUnit, recordStart} {
			t.put(r+field, 0)
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
