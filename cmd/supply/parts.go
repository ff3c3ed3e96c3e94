package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// A part is something of others that a release carries.
type part struct {
	// Name and Version are a Go module's path and version, or those of data.
	Name, Version string
	// Texts are its license and notices, whole.
	Texts []string
	// module is true for a Go module.
	module bool
}

// systems are those that releases are made for: what is linked differs.
var systems = []string{"linux", "darwin", "windows"}

// programs are what a release holds: the command, and the core in it.
var programs = []string{"./cmd/baybook", "./cmd/browser"}

// licenseName matches the files in which licenses and notices stand.
var licenseName = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)([.-].*)?$`)

// parts lists what is linked into the program, the Go library with it, and the
// data that pages carry, from the source at root and the module cache.
func parts(root string) ([]part, error) {
	dirs := make(map[[2]string]string)
	for _, system := range systems {
		if err := linked(root, system, dirs); err != nil {
			return nil, err
		}
	}
	var all []part
	for module, dir := range dirs {
		texts, err := licenses(dir)
		if err != nil {
			return nil, err
		}
		all = append(all, part{module[0], module[1], texts, true})
	}
	slices.SortFunc(all, func(a, b part) int { return cmp.Compare(a.Name, b.Name) })
	library, err := standardLibrary()
	if err != nil {
		return nil, err
	}
	font, err := os.ReadFile(filepath.Join(root, "theme", "fonts", "OFL.txt"))
	if err != nil {
		return nil, err
	}
	all = append(all, library, part{Name: "Barlow and Barlow Semi Condensed (typefaces)", Texts: []string{string(font)}})
	for _, p := range all {
		if len(p.Texts) == 0 {
			return nil, fmt.Errorf("%s has no license text", p.Name)
		}
	}
	return all, nil
}

// linked adds the modules of one system's program to dirs: path and version,
// and the folder in the module cache.
func linked(root, system string, dirs map[[2]string]string) error {
	cmd := exec.Command("go", append([]string{"list", "-deps", "-tags", "release", "-e", "-json=Module"}, programs...)...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS="+system, "GOARCH=amd64", "CGO_ENABLED=0")
	out, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("listing what is linked: %w", err)
	}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p struct {
			Module *struct {
				Path, Version, Dir string
				Main               bool
			}
		}
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
		if m := p.Module; m != nil && !m.Main {
			if m.Dir == "" {
				return fmt.Errorf("%s is not in the module cache; run go mod download", m.Path)
			}
			dirs[[2]string{m.Path, m.Version}] = m.Dir
		}
	}
}

// licenses reads the license files of a folder, in the order of their names.
func licenses(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var texts []string
	for _, e := range entries {
		if e.IsDir() || !licenseName.MatchString(e.Name()) {
			continue
		}
		text, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return nil, err
		}
		texts = append(texts, strings.ReplaceAll(string(text), "\r\n", "\n"))
	}
	return texts, nil
}

// standardLibrary is the Go library, which every program carries. Its version
// is told by the bill of each release, not here.
func standardLibrary() (part, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return part{}, err
	}
	texts, err := licenses(strings.TrimSpace(string(root)))
	return part{Name: "The Go standard library", Texts: texts}, err
}

// signs are words by which the licenses are known that we take, with their
// SPDX identifiers.
var signs = []struct{ id, words string }{
	{"Apache-2.0", "Apache License"},
	{"MIT", "Permission is hereby granted, free of charge, to any person obtaining a copy of this software"},
	{"OFL-1.1", "SIL OPEN FONT LICENSE"},
	{"BSD-3-Clause", "Neither the name"},
}

// ids are the SPDX identifiers of a part's licenses; none where it is of a
// kind that nobody has looked at yet.
func (p *part) ids() []string {
	text := strings.Join(strings.Fields(strings.Join(p.Texts, " ")), " ")
	var ids []string
	for _, s := range signs {
		if strings.Contains(text, s.words) {
			ids = append(ids, s.id)
		}
	}
	return ids
}
