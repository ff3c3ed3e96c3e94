package serve

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

// Editors write a file in several strokes, and a checkout writes many files. A
// build starts when nothing has moved for quiet, or at the latest after
// longest.
const (
	quiet   = 12 * time.Millisecond
	longest = 250 * time.Millisecond
)

// pollEach is how often a folder is looked at that the system cannot watch.
const pollEach = time.Second

// watch tells, until the context ends, that something in a folder or below it
// has changed.
func watch(ctx context.Context, folder string) (<-chan struct{}, error) {
	w, err := watcher(folder)
	if err != nil {
		if _, missing := os.Stat(folder); missing != nil {
			return nil, missing
		}
		return poll(ctx), nil // no watching here, or more folders than the system lets one watch
	}
	changes := make(chan struct{}, 1)
	go follow(ctx, folder, w, changes)
	return changes, nil
}

// watcher watches a folder and all below it.
func watcher(folder string) (*fsnotify.Watcher, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	if err := addFolders(w, folder); err != nil {
		_ = w.Close()
		return nil, err
	}
	return w, nil
}

// poll tells at a steady pace; what has not changed costs a build little.
func poll(ctx context.Context) <-chan struct{} {
	changes := make(chan struct{}, 1)
	go func() {
		ticker := time.NewTicker(pollEach)
		defer ticker.Stop()
		for {
			select {
			case <-ticker.C:
				tell(changes)
			case <-ctx.Done():
				return
			}
		}
	}()
	return changes
}

// tell notes a change; one that is noted already stands for both.
func tell(changes chan<- struct{}) {
	select {
	case changes <- struct{}{}:
	default:
	}
}

// follow gathers the strokes of a save into one change. A watch goes with its
// folder: one that has gone and come back, or been put in the place of another,
// is watched anew.
func follow(ctx context.Context, folder string, w *fsnotify.Watcher, changes chan<- struct{}) {
	defer func() { _ = w.Close() }()
	watched, _ := os.Stat(folder) // nil where it has gone by now
	look := time.NewTicker(pollEach)
	defer look.Stop()
	var settled <-chan time.Time
	var first time.Time
	for {
		select {
		case e := <-w.Events:
			if e.Has(fsnotify.Chmod) && e.Op == fsnotify.Chmod || hidden(e.Name) && e.Name != folder {
				continue
			}
			if e.Has(fsnotify.Create) {
				_ = addFolders(w, e.Name) // gone again, or no folder: nothing to watch
			}
			if settled == nil {
				first = time.Now()
			}
			settled = time.After(min(quiet, longest-time.Since(first)))
		case <-w.Errors: // events were lost: look at everything
			settled = time.After(quiet)
		case <-settled:
			settled = nil
			tell(changes)
		case <-look.C:
			now, err := os.Stat(folder)
			if err != nil {
				if watched != nil {
					watched = nil
					tell(changes)
				}
				continue
			}
			if watched != nil && os.SameFile(watched, now) {
				continue
			}
			if anew, err := watcher(folder); err == nil {
				_ = w.Close()
				w, watched = anew, now
				tell(changes)
			}
		case <-ctx.Done():
			return
		}
	}
}

// hidden reports whether a file is one that no book reads, such as an editor's
// own.
func hidden(name string) bool {
	base := filepath.Base(name)
	return strings.HasPrefix(base, ".") || strings.HasSuffix(base, "~")
}

// addFolders watches a folder and all below it.
func addFolders(w *fsnotify.Watcher, folder string) error {
	return filepath.WalkDir(folder, func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case !d.IsDir():
			return nil
		case name != folder && hidden(name):
			return fs.SkipDir
		}
		return w.Add(name)
	})
}
