package main

import (
	"context"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"

	"baybook/site"
	"baybook/site/sheet"
)

// history returns what git knows of the sheets in a content folder: when each
// was last recorded, and its revision and date then. Where there is no git,
// no repository or no record of the folder, only today's date is known, and
// the rules that need more are left out. Nothing that the folder's own git
// configuration names is run (see repository).
func history(ctx context.Context, content string) func() site.History {
	return func() site.History {
		h := site.History{Today: time.Now()}
		r, ok := openRepository(ctx, content)
		if !ok {
			return h
		}
		defer r.close()
		log, ok := r.git(ctx, "log", "--format=%x00%cs", "--name-only", "--no-renames", "HEAD", "--", ":/"+r.prefix)
		if !ok {
			return h
		}
		h.Sheets = issues(ctx, r, content, newest(log, r.prefix))
		return h
	}
}

// newest reads a log, latest first: the day on which each sheet last changed,
// by its path in the content folder, whose own path is prefix.
func newest(log, prefix string) map[string]time.Time {
	days := make(map[string]time.Time)
	for entry := range strings.SplitSeq(log, "\x00") {
		day, files, _ := strings.Cut(entry, "\n")
		t, err := time.Parse(time.DateOnly, strings.TrimSpace(day))
		if err != nil {
			continue
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

// issues reads the recorded text of each sheet that has changed; one that has
// not is what was recorded.
func issues(ctx context.Context, r *repository, content string, days map[string]time.Time) map[string]site.Issue {
	list := make(map[string]site.Issue)
	reader := sheet.NewReader(nil)
	recorded := r.recorded(ctx)
	for file, day := range days {
		name, ok := recorded[file]
		if !ok {
			continue // it was removed since
		}
		text, err := os.ReadFile(filepath.Join(content, filepath.FromSlash(file)))
		if err != nil {
			continue // a sheet that is gone has no issue to keep to
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
