package main

import (
	"os"
	"runtime/debug"
)

// What a command that ends within seconds may hold before it looks for what it
// no longer needs. A book's trees stay until the end, so that looking at each
// doubling is work for nothing; ten thousand sheets still fit into a GiB.
const (
	gcPercent   = 400
	memoryLimit = 980 << 20
)

// tuneGC gives the collector room, where the environment does not say
// otherwise.
func tuneGC() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(gcPercent)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memoryLimit)
	}
}
