package core

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"baybook/site/publish"
)

// Release compiles the command with the core inside, from the module whose
// root is given, into the file out.
func Release(ctx context.Context, moduleRoot, out string) error {
	core, err := Compiled(ctx, moduleRoot)
	if err != nil {
		return err
	}
	carried := filepath.Join(moduleRoot, "theme", "core.wasm")
	if err := publish.Keep(filepath.Dir(carried), carried, core.Module); err != nil {
		return err
	}
	cmd := exec.CommandContext(ctx, "go", "build", "-tags", "release", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", out, "./cmd/baybook")
	cmd.Dir = moduleRoot
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	var said bytes.Buffer
	cmd.Stderr = &said
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("compiling the program: %w\n%s", err, said.String())
	}
	return nil
}
