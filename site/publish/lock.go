package publish

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// errHeld says that another process holds a lock.
var errHeld = errors.New("held")

// A lock keeps two builds out of one folder. The system drops it when its
// process ends, however that comes about, so that a killed build never stands
// in the way of the next.
type lock struct{ file *os.File }

// lockFolder takes the lock of the site that stands, or will stand, at out. It
// fails at once where another build holds it, and says which process that is.
func lockFolder(out string) (*lock, error) {
	name := filepath.Join(filepath.Dir(out), "."+filepath.Base(out)+".baybook-lock")
	for {
		file, err := os.OpenFile(name, os.O_CREATE|os.O_RDWR, 0o644)
		if err != nil {
			return nil, err
		}
		if err := lockFile(file); err != nil {
			owner, _ := io.ReadAll(io.LimitReader(file, 20))
			file.Close()
			if !errors.Is(err, errHeld) {
				return nil, err
			}
			return nil, fmt.Errorf("process %s is building into %s now; wait until it ends, or name another folder with -out", strings.TrimSpace(string(owner)), out)
		}
		if here(file, name) {
			_ = file.Truncate(0)
			_, _ = fmt.Fprintf(file, "%d\n", os.Getpid()) // only for the message to others
			return &lock{file}, nil
		}
		file.Close() // its last owner removed it between our opening and locking
	}
}

// here reports whether a name still leads to an open file.
func here(file *os.File, name string) bool {
	open, err1 := file.Stat()
	named, err2 := os.Stat(name)
	return err1 == nil && err2 == nil && os.SameFile(open, named)
}

// release gives the lock up and removes its file.
func (l *lock) release() {
	_ = os.Remove(l.file.Name()) // while it is held, so that nobody else's is removed
	_ = l.file.Close()
}
