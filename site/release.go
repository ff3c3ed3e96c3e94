package site

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"

	"baybook/site/core"
)

// fitVersion is a version as semver.org 2.0.0 has it, behind a v.
var fitVersion = regexp.MustCompile(`^v[0-9]+\.[0-9]+\.[0-9]+(-[0-9A-Za-z.-]+)?$`)

// Release makes a program that carries theme and compiled core, from the source
// that the working directory is in, and that says it is of the version, where
// one is given. The same source and toolchain give the same bytes. It gives the
// program's size in bytes.
func Release(ctx context.Context, out, version string) (int64, error) {
	stamp := ""
	if version != "" {
		if !fitVersion.MatchString(version) {
			return 0, fmt.Errorf("%q is no version; write one such as v1.2.0", version)
		}
		stamp = "-X baybook/site.released=" + version
	}
	root, err := moduleRoot()
	if err != nil {
		return 0, err
	}
	if out, err = filepath.Abs(out); err != nil {
		return 0, err
	}
	if err := core.Release(ctx, root, out, stamp); err != nil {
		return 0, err
	}
	info, err := os.Stat(out)
	if err != nil {
		return 0, err
	}
	return info.Size(), nil
}
