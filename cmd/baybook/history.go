package main

import (
	"context"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"

	"baybook/site"
	"baybook/site/sheet"
)

// history returns what git knows of the sheets in a content folder: when each
// was last changed, and its revision and date in the last commit, or in the one
// at which the work parted from since. Where there is no git, no repository or
// no record of the folder, only today's date is known, and the rules that need
// more are left out. Nothing that the folder's own git configuration names is
// run (see repository).
func history(ctx context.Context, content, since string) func() site.History {
	return func() site.History {
		h := site.History{Today: time.Now()}
		r, ok := openRepository(ctx, content)
		if !ok {
			return h
		}
		defer r.close()
		if since != "" && r.compareWith(ctx, content, since) != nil {
			return h // told before: see checkSince
		}
		log, ok := r.git(ctx, "log", "--format=%x00%H %cs", "--name-only", "--no-renames", "HEAD", "--", ":/"+r.prefix)
		if !ok {
			return h
		}
		h.Sheets = issues(ctx, r, content, newest(log, r.prefix, r.ends), h.Today)
		return h
	}
}

// checkSince says what is wrong with a commit to compare with.
func checkSince(ctx context.Context, content, since string) error {
	r, ok := openRepository(ctx, content)
	if !ok {
		return fmt.Errorf("-since needs a folder that is kept in git, with a commit; %s is not", content)
	}
	defer r.close()
	return r.compareWith(ctx, content, since)
}

// shallow reports a clone whose history was cut off.
func shallow(ctx context.Context, content string) bool {
	r, ok := openRepository(ctx, content)
	if !ok {
		return false
	}
	defer r.close()
	return len(r.ends) > 0
}

// newest reads a log, latest first: the day on which each sheet last changed,
// by its path in the content folder, whose own path is prefix. A shallow clone's
// last commits seem to bring every file; what they say is passed over, and the
// day of a sheet that only they name is the zero time, not known.
func newest(log, prefix string, ends map[string]bool) map[string]time.Time {
	days := make(map[string]time.Time)
	for entry := range strings.SplitSeq(log, "\x00") {
		head, files, _ := strings.Cut(entry, "\n")
		commit, day, _ := strings.Cut(head, " ")
		t, err := time.Parse(time.DateOnly, strings.TrimSpace(day))
		if err != nil {
			continue
		}
		if ends[commit] {
			t = time.Time{}
		}
		for file := range strings.Lines(files) {
			file = strings.TrimPrefix(strings.TrimSpace(file), prefix)
			if _, seen := days[file]; !seen && path.Ext(file) == ".md" {
				days[file] = t
			}
		}
	}
	return days
}

// issues reads the text of each sheet in the commit to compare with, where it
// has changed since.
func issues(ctx context.Context, r *repository, content string, days map[string]time.Time, today time.Time) map[string]site.Issue {
	list := make(map[string]site.Issue)
	reader := sheet.NewReader(nil)
	last := r.recorded(ctx, "HEAD")
	before := last
	if r.base != "HEAD" {
		before = r.recorded(ctx, r.base)
	}
	for file, name := range before {
		text, err := os.ReadFile(filepath.Join(content, filepath.FromSlash(file)))
		if err != nil || path.Ext(file) != ".md" {
			continue // a sheet that is gone has no issue to keep to
		}
		day := days[file]
		if !r.same(text, last[file]) {
			day = today
		}
		if r.same(text, name) {
			if strings.Contains(string(text), "\napproved:") { // its past matters to its approval alone
				front := sheetFront(reader, file, string(text))
				list[file] = site.Issue{Revision: front.Revision, Date: front.Date, Newest: day}
			}
			continue
		}
		old, ok := r.git(ctx, "cat-file", "blob", name)
		if !ok {
			continue
		}
		front := sheetFront(reader, file, old)
		list[file] = site.Issue{Revision: front.Revision, Date: front.Date, Changed: true, Newest: day}
	}
	return list
}

func sheetFront(reader *sheet.Reader, file, text string) sheet.Front {
	s, _ := reader.Parse(file, []byte(text)) // faults of an issue gone by are nobody's now
	return s.Front
}
