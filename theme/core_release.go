//go:build release

package theme

import _ "embed"

//go:embed core.wasm
var core []byte

// Core is the compiled core.
func Core() []byte { return core }
