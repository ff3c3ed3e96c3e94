package publish

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// marker is the file that says that a folder is a site of ours, so that a
// mistyped -out never sweeps away somebody's own folder. It lists the files of
// the build that made it; what it does not list is the shop's own and stays.
const marker = ".baybook-site"

// markerHead is the marker's first line.
const markerHead = "This folder is a site built by baybook. The next build replaces these files and leaves others alone:\n"

// markerText lists the files of a build.
func markerText(names []string) []byte {
	names = slices.Sorted(slices.Values(names))
	return []byte(markerHead + strings.Join(names, "\n") + "\n")
}

// ownFiles are the files in a site that its build did not make, by their
// slash-separated names. A site whose marker lists nothing, as older builds
// wrote it, has none.
func ownFiles(site string) ([]string, error) {
	text, err := os.ReadFile(filepath.Join(site, marker))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	listed, ok := strings.CutPrefix(string(text), markerHead)
	if !ok {
		return nil, nil
	}
	made := map[string]bool{marker: true}
	for name := range strings.Lines(listed) {
		made[strings.TrimSuffix(name, "\n")] = true
	}
	var own []string
	err = filepath.WalkDir(site, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(site, name)
		if rel = filepath.ToSlash(rel); err == nil && !made[rel] {
			own = append(own, rel)
		}
		return err
	})
	return own, err
}

// takeOver puts the shop's own files of the old site into the new one, by hard
// link where the system makes them. A name that the new site uses itself is
// refused: neither file may vanish.
func (f *Folder) takeOver() error {
	own, err := ownFiles(f.out)
	if err != nil {
		return err
	}
	for _, name := range own {
		if f.files[name] {
			return fmt.Errorf("%s is a file of your own, and the new site has one of that name; move it away and build again", filepath.Join(f.out, filepath.FromSlash(name)))
		}
		from, to := filepath.Join(f.out, filepath.FromSlash(name)), filepath.Join(f.temp, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		if os.Link(from, to) == nil {
			continue
		}
		data, err := os.ReadFile(from)
		if err != nil {
			return err
		}
		if err := os.WriteFile(to, data, 0o644); err != nil {
			return err
		}
	}
	return nil
}
