package publish

import (
	"errors"
	"os"
	"path/filepath"
)

// CacheFolder is where what is dear to make is kept between builds: the user's
// cache, or the system's temporary folder where there is none.
func CacheFolder() string {
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	return filepath.Join(cache, "baybook")
}

// Keep writes a file beside its name and renames it there, so that no reader
// meets half of it. It makes the folder dir where that is missing.
func Keep(dir, file string, data []byte) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	temp, err := os.CreateTemp(dir, "new-")
	if err != nil {
		return err
	}
	_, err = temp.Write(data)
	if err := errors.Join(err, temp.Close()); err != nil {
		_ = os.Remove(temp.Name())
		return err
	}
	return os.Rename(temp.Name(), file)
}
