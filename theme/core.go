//go:build !release

package theme

// Core is the compiled core that a release binary carries; nil in one built
// from source, which compiles it on first use.
func Core() []byte { return nil }
