package main

import (
	"os"
	"runtime/debug"
)

// What a command that ends within seconds may hold before it looks for what it
// no longer needs. A book's trees stay until the end, so that looking at each
// doubling is work for nothing; ten thousand sheets still fit into a GiB.
const (
	roomPercent = 400
	roomLimit   = 980 << 20
)

// takeRoom gives the collector room, where the environment does not say
// otherwise.
func takeRoom() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(roomPercent)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(roomLimit)
	}
}
