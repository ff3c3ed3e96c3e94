package publish

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// place is the true folder, links followed, in which a site may be made. It
// refuses a folder inside the sheets' folder, where the next build would read
// the site as sheets, one around it, which a build would exchange with
// everything in it, and one that holds something else than a site.
func place(out, content string) (string, error) {
	folder, err := truePath(out)
	if err != nil {
		return "", err
	}
	sheets, err := truePath(content)
	if err != nil {
		return "", err
	}
	switch {
	case within(folder, sheets):
		return "", fmt.Errorf("%s lies inside %s, the folder of the sheets; name a folder beside it with -out", out, content)
	case within(sheets, folder):
		return "", fmt.Errorf("%s holds %s, the folder of the sheets, and a build replaces it; name a folder beside it with -out", out, content)
	}
	return folder, mayReplace(folder, out)
}

// truePath is an absolute path with its links followed, as far as it exists.
func truePath(name string) (string, error) {
	name, err := filepath.Abs(name)
	if err != nil {
		return "", err
	}
	found, err := filepath.EvalSymlinks(name)
	if err == nil || !errors.Is(err, os.ErrNotExist) {
		return found, err
	}
	if info, err := os.Lstat(name); err == nil && info.Mode()&os.ModeSymlink != 0 {
		return "", fmt.Errorf("%s is a link that leads nowhere", name)
	}
	parent := filepath.Dir(name)
	if parent == name {
		return name, nil
	}
	if parent, err = truePath(parent); err != nil {
		return "", err
	}
	return filepath.Join(parent, filepath.Base(name)), nil
}

// within reports whether a path is a folder or lies in it.
func within(name, folder string) bool {
	rel, err := filepath.Rel(folder, name)
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator))
}

// mayReplace refuses a folder that holds something other than a site; asked is
// how it was named.
func mayReplace(out, asked string) error {
	entries, err := os.ReadDir(out)
	if errors.Is(err, os.ErrNotExist) || err == nil && len(entries) == 0 {
		return nil
	}
	if err != nil {
		return err
	}
	if _, err := os.Stat(filepath.Join(out, marker)); err != nil {
		return fmt.Errorf("%s is not empty and is not a site built here; name another folder with -out", asked)
	}
	return nil
}
