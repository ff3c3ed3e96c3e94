package main

import (
	"os"
	"runtime/debug"
)

// A command ends within seconds and keeps the book's trees until then, so
// collecting at every doubling is wasted work. Ten thousand sheets still fit
// into a GiB.
const (
	gcPercent   = 400
	memoryLimit = 980 << 20
)

// tuneGC raises GOGC and sets a memory limit, unless the environment sets them.
func tuneGC() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(gcPercent)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memoryLimit)
	}
}
