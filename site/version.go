package site

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"runtime"
	"runtime/debug"
	"strings"

	"baybook/site/core"
	"baybook/site/finding"
	"baybook/theme"
)

// A Version says which program this is, so that a page, a report and a program
// can be matched to the source that made them.
type Version struct {
	// Module is the module's version as the Go toolchain stamped it, "(devel)"
	// where it was built without one.
	Module string `json:"module"`
	// Commit is the hash of the source's commit, with "+dirty" behind it where
	// the source was changed since; "" where the build was not stamped.
	Commit string `json:"commit,omitempty"`
	// Go is the version of the toolchain.
	Go string `json:"go"`
	// Core is the SHA-256 of the browser's core, its first 12 hexadecimal
	// digits; "" where the core has not been compiled yet.
	Core string `json:"core,omitempty"`
}

// released is the version that a release was stamped with by the linker; empty
// in every other program.
var released string

// ReadVersion tells the version of the running program. It compiles nothing.
func ReadVersion() Version {
	v := Version{Module: "(devel)", Go: runtime.Version(), Core: coreHash()}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return v
	}
	v.Module = cmp.Or(released, info.Main.Version, v.Module)
	dirty := ""
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			v.Commit = s.Value
		case "vcs.modified":
			if s.Value == "true" {
				dirty = "+dirty"
			}
		}
	}
	if v.Commit != "" {
		v.Commit += dirty
	}
	return v
}

// coreHash is the hash of the core that the program carries or has compiled.
func coreHash() string {
	module := theme.Core()
	if module == nil {
		root, err := moduleRoot()
		if err != nil {
			return ""
		}
		if module = core.Cached(root); module == nil {
			return ""
		}
	}
	return shortHash(module)
}

func shortHash(module []byte) string {
	sum := sha256.Sum256(module)
	return hex.EncodeToString(sum[:6])
}

// String is the version in one line: "(devel), commit 1a2b3c4d5e6f, go1.26.8,
// core 0123456789ab". Parts that are not known are left out.
func (v Version) String() string {
	parts := []string{v.Module}
	if v.Commit != "" {
		hash, dirty, _ := strings.Cut(v.Commit, "+")
		if dirty != "" {
			dirty = "+" + dirty
		}
		parts = append(parts, "commit "+hash[:min(len(hash), 12)]+dirty)
	}
	parts = append(parts, v.Go)
	if v.Core != "" {
		parts = append(parts, "core "+v.Core)
	}
	return strings.Join(parts, ", ")
}

// Tool describes the program for SARIF.
func (v Version) Tool() finding.Tool {
	return finding.Tool{Version: v.Module, Properties: map[string]string{"commit": v.Commit, "go": v.Go, "core": v.Core}}
}
