// Package publish puts a site on disk: all of it or nothing. It bundles the
// theme, compiles the core, prepares figures and photographs, and is the only
// writer of files.
package publish

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"
)

// A Folder is a site being written beside the one that stands. Nothing of
// the old site changes until Commit, and after it nothing of the old is left;
// a build killed half way leaves the old site as it was.
type Folder struct {
	out  string
	temp string
	mu   sync.Mutex
	made map[string]bool
}

// newMark is in the name of every folder being written, so that one that a
// killed build left behind is known and removed by the next.
const newMark = ".baybook-new-"

// marker is the file that says that a folder is a site of ours, so that a
// mistyped -out never sweeps away somebody's own folder.
const marker = ".baybook-site"

// Begin starts a new site that will stand at out.
func Begin(out string) (*Folder, error) {
	out, err := filepath.Abs(out)
	if err != nil {
		return nil, err
	}
	if err := mayReplace(out); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return nil, err
	}
	sweep(out)
	var salt [6]byte
	_, _ = rand.Read(salt[:]) // never fails
	temp := filepath.Join(filepath.Dir(out), "."+filepath.Base(out)+newMark+hex.EncodeToString(salt[:]))
	if err := os.Mkdir(temp, 0o755); err != nil {
		return nil, err
	}
	f := &Folder{out: out, temp: temp, made: map[string]bool{".": true}}
	if err := f.Put(marker, []byte("This folder is a site built by baybook; the next build replaces it whole.\n")); err != nil {
		f.Abort()
		return nil, err
	}
	return f, nil
}

// mayReplace refuses a folder that holds something other than a site.
func mayReplace(out string) error {
	entries, err := os.ReadDir(out)
	if errors.Is(err, os.ErrNotExist) || err == nil && len(entries) == 0 {
		return nil
	}
	if err != nil {
		return err
	}
	if _, err := os.Stat(filepath.Join(out, marker)); err != nil {
		return fmt.Errorf("%s is not empty and is not a site built here; name another folder with -out", out)
	}
	return nil
}

// sweep removes what killed builds left beside out.
func sweep(out string) {
	left, _ := filepath.Glob(filepath.Join(filepath.Dir(out), "."+filepath.Base(out)+newMark+"*"))
	for _, dir := range left {
		_ = os.RemoveAll(dir) // what cannot be removed does no harm there
	}
}

// Put writes one file of the new site; name is slash-separated, from the
// site's root. It may be called from many goroutines.
func (f *Folder) Put(name string, data []byte) error {
	if !validName(name) {
		return fmt.Errorf("%q is not the name of a file in the site", name)
	}
	dir := path.Dir(name)
	f.mu.Lock()
	if !f.made[dir] {
		if err := os.MkdirAll(filepath.Join(f.temp, filepath.FromSlash(dir)), 0o755); err != nil {
			f.mu.Unlock()
			return err
		}
		f.made[dir] = true
	}
	f.mu.Unlock()
	return os.WriteFile(filepath.Join(f.temp, filepath.FromSlash(name)), data, 0o644)
}

// validName reports whether a name stays inside the site.
func validName(name string) bool {
	return name != "" && !strings.HasPrefix(name, "/") && path.Clean(name) == name && name != ".." && !strings.HasPrefix(name, "../") && !strings.Contains(name, `\`)
}

// Commit makes the new site stand in the old one's place.
func (f *Folder) Commit() error {
	if err := swap(f.temp, f.out); err != nil {
		f.Abort()
		return err
	}
	return nil
}

// Abort removes the new site, the old one untouched.
func (f *Folder) Abort() { _ = os.RemoveAll(f.temp) }

// swap puts the folder at fresh in the place of old and removes what was
// there. Where the system can exchange two names at once, readers never meet
// a moment without a site.
func swap(fresh, old string) error {
	if _, err := os.Stat(old); errors.Is(err, os.ErrNotExist) {
		return os.Rename(fresh, old)
	}
	if exchange(fresh, old) == nil {
		return os.RemoveAll(fresh)
	}
	aside := fresh + "-old"
	if err := os.Rename(old, aside); err != nil {
		return err
	}
	if err := os.Rename(fresh, old); err != nil {
		return errors.Join(err, os.Rename(aside, old))
	}
	return os.RemoveAll(aside)
}
