package main

import (
	"strings"

	goqr "github.com/piglig/go-qr"
)

// quietZone is the light border that a QR code needs (ISO/IEC 18004).
const quietZone = 4

// scanCode draws an address as a QR code for a terminal, two rows of modules
// to a line of half blocks. Light modules are the drawn ones, since most
// terminals are dark; phones read both.
func scanCode(address string) (string, error) {
	code, err := goqr.EncodeText(address, goqr.Medium)
	if err != nil {
		return "", err
	}
	halves := [2][2]string{{"█", "▀"}, {"▄", " "}} // [upper is dark][lower is dark]
	at := func(x, y int) int {
		if code.Module(x, y) {
			return 1
		}
		return 0
	}
	var b strings.Builder
	for y := -quietZone; y < code.Size()+quietZone; y += 2 {
		for x := -quietZone; x < code.Size()+quietZone; x++ {
			b.WriteString(halves[at(x, y)][at(x, y+1)])
		}
		b.WriteByte('\n')
	}
	return b.String(), nil
}
