// Package core builds the browser's core: cmd/browser compiled to WebAssembly,
// made small enough for a phone, and kept in the user's cache. compile.go runs
// the Go toolchain; merge.go, pclntab.go and silent.go make the module small;
// wasm.go takes a module apart for them.
package core

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"baybook/site/publish"
)

// A Core is the compiled WebAssembly core, and the same as a classic script.
type Core struct{ Module, Script []byte }

// sources are the folders that decide what the core is: what it is compiled
// from, and this package, which makes it small.
var sources = []string{"calculators", "site/find", "site/study", "cmd/browser", "site/core"}

// Compiled returns the core of the module whose root is given, compiled with
// the Go toolchain and kept in the user's cache by a hash of its source, so
// that it is compiled only when a formula or the toolchain has changed.
func Compiled(ctx context.Context, moduleRoot string) (Core, error) {
	key, err := sourceHash(moduleRoot)
	if err != nil {
		return Core{}, fmt.Errorf("the core's source: %w", err)
	}
	file := cacheFile(key)
	dir := filepath.Dir(file)
	module, err := os.ReadFile(file)
	if err != nil {
		if module, err = compile(ctx, moduleRoot); err != nil {
			return Core{}, err
		}
		if err := publish.Keep(dir, file, module); err != nil {
			return Core{}, err
		}
	}
	script, err := os.ReadFile(file + ".js")
	if err != nil {
		if script, err = publish.AsScript(module); err != nil {
			return Core{}, err
		}
		if err := publish.Keep(dir, file+".js", script); err != nil {
			return Core{}, err
		}
	}
	return Core{Module: module, Script: script}, nil
}

// Cached returns the compiled module if the cache holds it, nil where it would
// have to be compiled first.
func Cached(moduleRoot string) []byte {
	key, err := sourceHash(moduleRoot)
	if err != nil {
		return nil
	}
	module, err := os.ReadFile(cacheFile(key))
	if err != nil {
		return nil
	}
	return module
}

// cacheFile is where the core with this source hash is kept.
func cacheFile(key string) string {
	return filepath.Join(publish.CacheFolder(), "core-"+key+".wasm")
}

// sourceHash is a hash of everything that decides what the core is: its
// sources, the toolchain's version and the flags.
func sourceHash(moduleRoot string) (string, error) {
	h := sha256.New()
	fmt.Fprintln(h, runtime.Version(), buildFlags)
	var files []string
	for _, folder := range sources {
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
