package main

import (
	"strings"
	"testing"

	goqr "github.com/piglig/go-qr"
)

// Read back from its half blocks, the code is that of the address, with the
// quiet zone of ISO/IEC 18004 all round.
func TestScanCode(t *testing.T) {
	const address = "http://192.168.178.20:8025/"
	drawn, err := scanCode(address)
	if err != nil {
		t.Fatal(err)
	}
	code, err := goqr.EncodeText(address, goqr.Medium)
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]bool // true is dark
	for line := range strings.Lines(drawn) {
		var upper, lower []bool
		for _, c := range strings.TrimSuffix(line, "\n") {
			upper = append(upper, c == '▄' || c == ' ')
			lower = append(lower, c == '▀' || c == ' ')
		}
		rows = append(rows, upper, lower)
	}
	side := code.Size() + 2*quietZone
	if len(rows) < side || len(rows[0]) != side {
		t.Fatalf("%d x %d modules, want %d each way", len(rows[0]), len(rows), side)
	}
	for y := range side {
		for x := range side {
			if want := code.Module(x-quietZone, y-quietZone); rows[y][x] != want {
				t.Fatalf("module %d, %d is dark: %v", x, y, !want)
			}
		}
	}
}
