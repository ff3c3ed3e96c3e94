package core

import (
	"encoding/binary"
	"errors"
)

// A section of a WebAssembly module: its id and what is in it.
type section struct {
	id   byte
	body []byte
}

// moduleHeader begins every module of version 1 of the core specification.
const moduleHeader = "\x00asm\x01\x00\x00\x00"

// dataSection is the id of the section that fills memory at the start.
const dataSection = 11

// opConst and opEnd are the instructions of a segment's address.
const opConst, opEnd = 0x41, 0x0b

// errModule says that bytes are no module as the Go toolchain writes one.
var errModule = errors.New("not a WebAssembly module of one plain memory")

// A segment is a piece of a module's memory as it is at the start.
type segment struct {
	at    int64
	bytes []byte
}

// end is the address behind a segment.
func (s segment) end() int64 { return s.at + int64(len(s.bytes)) }

// A moduleReader takes a module apart. After the first fault it gives zeros.
type moduleReader struct {
	rest []byte
	bad  bool
}

func (r *moduleReader) byte() byte {
	b := r.bytes(1)
	if len(b) == 0 {
		return 0
	}
	return b[0]
}

func (r *moduleReader) bytes(n uint64) []byte {
	if r.bad || n > uint64(len(r.rest)) {
		r.bad = true
		return nil
	}
	b := r.rest[:n]
	r.rest = r.rest[n:]
	return b
}

// unsigned reads a number in LEB128.
func (r *moduleReader) unsigned() uint64 {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 {
		r.bad = true
		return 0
	}
	r.rest = r.rest[n:]
	return v
}

// signed reads a number in signed LEB128, which is in two's complement.
func (r *moduleReader) signed() int64 {
	var v int64
	for shift := 0; shift < 63; shift += 7 {
		b := r.byte()
		v |= int64(b&0x7f) << shift
		if b < 0x80 {
			if b&0x40 != 0 {
				v |= -1 << (shift + 7)
			}
			return v
		}
	}
	r.bad = true
	return 0
}

func appendSigned(b []byte, v int64) []byte {
	for v < -64 || v > 63 {
		b = append(b, byte(v)|0x80)
		v >>= 7
	}
	return append(b, byte(v)&0x7f)
}

// sections takes a module apart.
func sections(module []byte) ([]section, error) {
	r := moduleReader{rest: module}
	if string(r.bytes(uint64(len(moduleHeader)))) != moduleHeader {
		return nil, errModule
	}
	var list []section
	for len(r.rest) > 0 && !r.bad {
		id := r.byte()
		list = append(list, section{id, r.bytes(r.unsigned())})
	}
	if r.bad {
		return nil, errModule
	}
	return list, nil
}

// assemble puts a module together again.
func assemble(list []section) []byte {
	out := []byte(moduleHeader)
	for _, s := range list {
		out = append(out, s.id)
		out = binary.AppendUvarint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out
}

// segments takes a data section apart; all of them must lie at fixed places
// of the one memory.
func segments(body []byte) ([]segment, error) {
	r := moduleReader{rest: body}
	var list []segment
	for n := r.unsigned(); n > 0 && !r.bad; n-- {
		active, op := r.byte(), r.byte()
		at := r.signed()
		if active != 0 || op != opConst || r.byte() != opEnd || at < 0 {
			return nil, errModule
		}
		list = append(list, segment{at, r.bytes(r.unsigned())})
	}
	if r.bad || len(r.rest) > 0 {
		return nil, errModule
	}
	return list, nil
}

// dataBody writes segments as a data section.
func dataBody(list []segment) []byte {
	out := binary.AppendUvarint(nil, uint64(len(list)))
	for _, s := range list {
		out = append(out, 0, opConst)
		out = appendSigned(out, s.at)
		out = append(out, opEnd)
		out = binary.AppendUvarint(out, uint64(len(s.bytes)))
		out = append(out, s.bytes...)
	}
	return out
}
