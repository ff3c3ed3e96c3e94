// Package publish puts a site on disk: all of it or nothing. It bundles the
// theme, prepares figures and photographs, and is the only
// writer of files.
package publish

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
)

// A Folder is a site being written beside the one that stands. Nothing of
// the old site changes until Commit, and after it nothing of the old is left;
// a build killed half way leaves the old site as it was.
type Folder struct {
	out  string
	temp string
	lock *lock

	mu      sync.Mutex
	folders map[string]bool
	files   map[string]bool
}

// newMark is in the name of every folder being written, so that one that a
// killed build left behind is known and removed by the next.
const newMark = ".baybook-new-"

// Begin starts a new site that will stand at out, made of the sheets in the
// folder content. A link at out is followed. Until Commit or Abort no other
// process can build there.
func Begin(out, content string) (*Folder, error) {
	out, err := place(out, content)
	if err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return nil, err
	}
	lock, err := lockFolder(out)
	if err != nil {
		return nil, err
	}
	sweep(out)
	var salt [6]byte
	_, _ = rand.Read(salt[:]) // never fails
	temp := filepath.Join(filepath.Dir(out), "."+filepath.Base(out)+newMark+hex.EncodeToString(salt[:]))
	if err := os.Mkdir(temp, 0o755); err != nil {
		lock.release()
		return nil, err
	}
	return &Folder{out: out, temp: temp, lock: lock, folders: map[string]bool{".": true}, files: make(map[string]bool)}, nil
}

// sweep removes what killed builds left beside out. The lock is held, so
// nothing there is still being written.
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
	f.files[name] = true
	if !f.folders[dir] {
		if err := os.MkdirAll(filepath.Join(f.temp, filepath.FromSlash(dir)), 0o755); err != nil {
			f.mu.Unlock()
			return err
		}
		f.folders[dir] = true
	}
	f.mu.Unlock()
	return os.WriteFile(filepath.Join(f.temp, filepath.FromSlash(name)), data, 0o644)
}

// validName reports whether a name stays inside the site.
func validName(name string) bool {
	return name != "" && !strings.HasPrefix(name, "/") && path.Clean(name) == name && name != ".." && !strings.HasPrefix(name, "../") && !strings.Contains(name, `\`)
}

// Commit makes the new site stand in the old one's place. Files in the old
// one that no build made are the shop's own and are taken over.
func (f *Folder) Commit() error {
	err := f.takeOver()
	if err == nil {
		err = os.WriteFile(filepath.Join(f.temp, marker), markerText(slices.Collect(maps.Keys(f.files))), 0o644)
	}
	if err == nil {
		err = swap(f.temp, f.out)
	}
	if err != nil {
		f.Abort()
		return err
	}
	f.lock.release()
	return nil
}

// Abort removes the new site, the old one untouched.
func (f *Folder) Abort() {
	_ = os.RemoveAll(f.temp)
	f.lock.release()
}

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
