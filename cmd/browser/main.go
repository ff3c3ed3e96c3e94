// Command browser is the WebAssembly door to the calculators and to find: the
// page asks in words, the core answers in words and markup. theme/scripts/
// protocol.ts is its other half.
//
// It is a reactor (GOOS=wasip1, -buildmode=c-shared): it starts once, then
// each question is one call. Questions and answers pass through one buffer,
// since that needs nothing of the browser but WebAssembly itself.
package main

import (
	"strings"
	"unsafe"
)

// door is the one core of a page; a page asks one question at a time.
var door core

func main() {}

// room grows the buffer to at least size bytes and returns its address.
//
//go:wasmexport room
func room(size int32) int32 {
	if int(size) > len(door.in) {
		door.in = make([]byte, size)
	}
	return address(door.in)
}

// ask reads a question of size bytes from the buffer, its parts set apart by
// zero bytes, and says how long the answer is.
//
//go:wasmexport ask
func ask(size int32) int32 {
	door.out = door.answer(strings.Split(string(door.in[:size]), "\x00"))
	return int32(len(door.out))
}

// reply says where the answer is. It stands there until the next question.
//
//go:wasmexport reply
func reply() int32 { return address(door.out) }

// index takes the search index out of the buffer; 0 where it is damaged.
//
//go:wasmexport index
func index(size int32) int32 {
	if door.load(door.in[:size]) {
		return 1
	}
	return 0
}

// address is where a buffer starts in the core's memory, 0 for an empty one.
func address(b []byte) int32 {
	if len(b) == 0 {
		return 0
	}
	return int32(uintptr(unsafe.Pointer(unsafe.SliceData(b))))
}
