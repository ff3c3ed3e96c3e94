package publish

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// lockFile locks an open file, or gives errHeld where another process has. The
// locked byte lies behind the text, so that others can read who holds it.
func lockFile(f *os.File) error {
	const behind = 1 << 20
	at := &windows.Overlapped{Offset: behind}
	err := windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, at)
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return errHeld
	}
	return err
}
