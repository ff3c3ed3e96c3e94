package publish

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

// A Core is the compiled WebAssembly core, and the same as a classic script.
type Core struct{ Module, Script []byte }

// coreFolders are what the core is compiled from.
var coreFolders = []string{"calculators", "site/find", "site/study", "cmd/browser"}

// Compiled gives the core of the module whose root is given, compiled with
// the Go toolchain and kept in the user's cache by a hash of its source, so
// that it is compiled only when a formula or the toolchain has changed.
func Compiled(ctx context.Context, moduleRoot string) (Core, error) {
	key, err := sourceHash(moduleRoot)
	if err != nil {
		return Core{}, fmt.Errorf("the core's source: %w", err)
	}
	dir := cacheFolder()
	file := filepath.Join(dir, "core-"+key+".wasm")
	module, err := os.ReadFile(file)
	if err != nil {
		if module, err = compile(ctx, moduleRoot); err != nil {
			return Core{}, err
		}
		if err := keep(dir, file, module); err != nil {
			return Core{}, err
		}
	}
	script, err := os.ReadFile(file + ".js")
	if err != nil {
		if script, err = AsScript(module); err != nil {
			return Core{}, err
		}
		if err := keep(dir, file+".js", script); err != nil {
			return Core{}, err
		}
	}
	return Core{Module: module, Script: script}, nil
}

// cacheFolder is where what is dear to make is kept between builds.
func cacheFolder() string {
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	return filepath.Join(cache, "baybook")
}

// coreFlags make the core small. No call is replaced by the body of what it
// calls, which nothing here is so hot as to need. The standard library does
// without the checks by which it would find its own mistakes; the formulas
// keep theirs.
var coreFlags = []string{"build", "-buildmode=c-shared", "-trimpath", "-buildvcs=false",
	"-gcflags=all=-l", "-gcflags=std=-l -B -d=disablenil=1", "-ldflags=-s -w"}

// coreExperiment leaves out of the core a collector made for many processors.
// A toolchain that no longer has the choice compiles without it.
const coreExperiment = "nogreenteagc"

// recipe changes whenever the same source would give another module.
var recipe = strings.Join(coreFlags, " ") + " " + coreExperiment + " slim 2 unsaid 2"

// compile runs the Go toolchain and slims what it gives.
func compile(ctx context.Context, moduleRoot string) ([]byte, error) {
	temp, err := os.MkdirTemp("", "baybook-core-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(temp)
	over, err := overlay(moduleRoot, temp)
	if err != nil {
		return nil, fmt.Errorf("the core's source: %w", err)
	}
	out := filepath.Join(temp, "core.wasm")
	said, err := compileInto(ctx, moduleRoot, out, coreExperiment, "-overlay="+over)
	if err != nil && strings.Contains(said, "GOEXPERIMENT") {
		said, err = compileInto(ctx, moduleRoot, out, "", "-overlay="+over)
	}
	if errors.Is(err, exec.ErrNotFound) {
		return nil, errors.New("the Go toolchain is needed to compile the core and was not found; install Go, or use a release binary, which carries the core inside")
	}
	if err != nil {
		return nil, fmt.Errorf("compiling the core: %w\n%s", err, said)
	}
	module, err := os.ReadFile(out)
	if err != nil {
		return nil, err
	}
	if module, err = slim(module); err != nil {
		return nil, fmt.Errorf("compiling the core: %w", err)
	}
	return module, nil
}

// compileInto compiles the core into a file, and gives what the toolchain said.
func compileInto(ctx context.Context, moduleRoot, out, experiment string, flags ...string) (string, error) {
	cmd := exec.CommandContext(ctx, "go", slices.Concat(coreFlags, flags, []string{"-o", out, "./cmd/browser"})...)
	cmd.Dir = moduleRoot
	cmd.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=", "GOEXPERIMENT="+experiment)
	var said bytes.Buffer
	cmd.Stderr = &said
	err := cmd.Run()
	return said.String(), err
}

// keep writes a file of the cache so that no reader meets half of it.
func keep(dir, file string, data []byte) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	temp, err := os.CreateTemp(dir, "new-")
	if err != nil {
		return err
	}
	_, err = temp.Write(data)
	if err := errors.Join(err, temp.Close()); err != nil {
		_ = os.Remove(temp.Name())
		return err
	}
	return os.Rename(temp.Name(), file)
}

// sourceHash is a hash of everything that the core is compiled from, the
// toolchain's version and the flags included.
func sourceHash(moduleRoot string) (string, error) {
	h := sha256.New()
	fmt.Fprintln(h, runtime.Version(), recipe)
	var files []string
	for _, folder := range coreFolders {
		err := filepath.WalkDir(filepath.Join(moduleRoot, filepath.FromSlash(folder)), func(name string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
				files = append(files, name)
			}
			return err
		})
		if err != nil {
			return "", err
		}
	}
	slices.Sort(files)
	for _, name := range files {
		content, err := os.ReadFile(name)
		if err != nil {
			return "", err
		}
		rel, _ := filepath.Rel(moduleRoot, name)
		fmt.Fprintf(h, "%s %d\n", filepath.ToSlash(rel), len(content))
		h.Write(content)
	}
	return hex.EncodeToString(h.Sum(nil)[:12]), nil
}
