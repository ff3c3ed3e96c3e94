package core

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
)

// buildFlags compile a WASI reactor without debugging data. -l turns inlining
// off: nothing in the core is hot enough to need it, and it saves a sixth of
// the packed size. The names of functions stay (no -s) for shrink to read, and
// go with it.
var buildFlags = []string{"build", "-buildmode=c-shared", "-trimpath", "-buildvcs=false",
	"-gcflags=all=-l", "-ldflags=-w"}

// compile runs the Go toolchain on cmd/browser and shrinks what it gives. A
// module that shrink does not understand, as after a change of the linker's
// layout, is used as the toolchain made it: a quarter larger, and just as
// right.
func compile(ctx context.Context, moduleRoot string) ([]byte, error) {
	module, err := compilePlain(ctx, moduleRoot)
	if err != nil {
		return nil, err
	}
	small, err := shrink(module)
	if err != nil {
		return plain(module), nil
	}
	return small, nil
}

// plain is a module as the toolchain writes it with -s: without names.
func plain(module []byte) []byte {
	list, err := sections(module)
	if err != nil {
		return module
	}
	return assemble(withoutNames(list))
}

// Plain returns the core as the Go toolchain writes it, without names and
// without its script. It computes the same as Compiled's and is larger; nothing
// is cached.
func Plain(ctx context.Context, moduleRoot string) (Core, error) {
	module, err := compilePlain(ctx, moduleRoot)
	return Core{Module: plain(module)}, err
}

// compilePlain gives the core as the toolchain writes it.
func compilePlain(ctx context.Context, moduleRoot string) ([]byte, error) {
	temp, err := os.MkdirTemp("", "baybook-core-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(temp)
	out := filepath.Join(temp, "core.wasm")
	cmd := exec.CommandContext(ctx, "go", slices.Concat(buildFlags, []string{"-o", out, "./cmd/browser"})...)
	cmd.Dir = moduleRoot
	cmd.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=")
	var said bytes.Buffer
	cmd.Stderr = &said
	err = cmd.Run()
	if errors.Is(err, exec.ErrNotFound) {
		return nil, errors.New("the Go toolchain is needed to compile the core and was not found; install Go, or use a release binary, which carries the core inside")
	}
	if err != nil {
		return nil, fmt.Errorf("compiling the core: %w\n%s", err, said.String())
	}
	return os.ReadFile(out)
}
