package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"baybook/site/finding"
)

// A rewrite is one file that fixes change.
type rewrite struct {
	name          string // of the file, as the system has it
	before, after []byte
	fixes         []finding.Fix
}

// rewrites applies the fixes of a list in memory, file by file in the list's
// order.
func rewrites(content string, list finding.List) ([]rewrite, error) {
	var out []rewrite
	done := make(map[string]bool)
	for i := range list {
		file := list[i].Pos.File
		if done[file] || list[i].Fix == nil {
			continue
		}
		done[file] = true
		name := filepath.Join(content, filepath.FromSlash(file))
		before, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		fixes := list.Fixes(file)
		after, err := finding.Apply(before, fixes)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		out = append(out, rewrite{name, before, after, fixes})
	}
	return out, nil
}

// write puts the new text in the file's place.
func (r rewrite) write() error { return replaceFile(r.name, r.after) }

// tell prints each change as place, words before and words after.
func (r rewrite) tell(w io.Writer) {
	for _, fix := range r.fixes {
		for _, e := range fix.Edits {
			line := 1 + bytes.Count(r.before[:e.Start], []byte("\n"))
			fmt.Fprintf(w, "%s:%d: %s → %s\n", r.name, line, quoted(string(r.before[e.Start:e.End])), quoted(e.New))
		}
	}
}

// longest is how many letters of a change are printed.
const longest = 60

// quoted is a text in a line of its own, cut where it is long.
func quoted(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if utf8.RuneCountInString(s) > longest {
		s = string([]rune(s)[:longest]) + "…"
	}
	if s == "" {
		return "nothing"
	}
	return "“" + strings.Map(func(c rune) rune {
		if finding.Hides(c) || c < ' ' {
			return utf8.RuneError
		}
		return c
	}, s) + "”"
}

// replaceFile writes a file beside the old one and puts it in its place, so
// that no sheet is ever half written.
func replaceFile(name string, data []byte) error {
	info, err := os.Stat(name)
	if err != nil {
		return err
	}
	temp, err := os.CreateTemp(filepath.Dir(name), ".fix-")
	if err != nil {
		return err
	}
	defer os.Remove(temp.Name())
	if _, err := temp.Write(data); err != nil {
		_ = temp.Close()
		return err
	}
	if err := temp.Chmod(info.Mode().Perm()); err != nil {
		_ = temp.Close()
		return err
	}
	if err := temp.Close(); err != nil {
		return err
	}
	return os.Rename(temp.Name(), name)
}
