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
// root is given, into the file out. stamp is what the linker is told of the
// program's version.
func Release(ctx context.Context, moduleRoot, out, stamp string) error {
	core, err := Compiled(ctx, moduleRoot)
	if err != nil {
		return err
	}
	carried := filepath.Join(moduleRoot, "theme", "core.wasm")
	if err := publish.Keep(filepath.Dir(carried), carried, core.Module); err != nil {
		return err
	}
	cmd := exec.CommandContext(ctx, "go", "build", "-tags", "release", "-trimpath", "-buildvcs=false", "-ldflags=-s -w -buildid= "+stamp, "-o", out, "./cmd/baybook")
	cmd.Dir = moduleRoot
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	var said bytes.Buffer
	cmd.Stderr = &said
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("compiling the program: %w\n%s", err, said.String())
	}
	return nil
}
