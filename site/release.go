package site

import (
	"context"
	"os"
	"path/filepath"

	"baybook/site/core"
)

// Release makes a program that carries theme and compiled core, from the source
// that the working directory is in. It gives the program's size in bytes.
func Release(ctx context.Context, out string) (int64, error) {
	root, err := moduleRoot()
	if err != nil {
		return 0, err
	}
	if out, err = filepath.Abs(out); err != nil {
		return 0, err
	}
	if err := core.Release(ctx, root, out); err != nil {
		return 0, err
	}
	info, err := os.Stat(out)
	if err != nil {
		return 0, err
	}
	return info.Size(), nil
}
