//go:build unix

package publish

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// lockFile locks an open file, or gives errHeld where another process has.
func lockFile(f *os.File) error {
	err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return errHeld
	}
	return err
}
