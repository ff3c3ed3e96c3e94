package core

import (
	"bytes"
	"encoding/binary"
	"testing"
)

// TestFallback checks that a module whose function table has another layout,
// as after a change of the Go linker, keeps its table, and that one that is no
// module of the linker's at all is refused by shrink, so that compile uses it
// as the toolchain made it.
func TestFallback(t *testing.T) {
	table := make([]byte, 400)
	copy(table, pcHeaderMagic)
	binary.LittleEndian.PutUint64(table[headerFuncs:], 3)
	small, err := shrink(moduleOf([]segment{{1024, table}}))
	if err != nil {
		t.Fatal(err)
	}
	if got := dataOf(t, small); len(got) != 1 || !bytes.Equal(got[0].bytes, table) {
		t.Error("a function table that does not fit the known layout was changed")
	}
	if _, err := shrink([]byte("\x00asm\x02\x00\x00\x00")); err == nil {
		t.Error("a module of another version was taken for one of version 1")
	}
}
