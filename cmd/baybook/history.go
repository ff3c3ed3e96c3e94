package main

import (
	"context"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"
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
	return readHistory(ctx, content, since, false)
}

// historyForPages is history with every change of the sheets, which pages tell
// of and checks do not need.
func historyForPages(ctx context.Context, content string) func() site.History {
	return readHistory(ctx, content, "", true)
}

// changesForPages is what pages tell of earlier issues, and today's date. It is
// read once: what is recorded while the book is written shows at the next start.
func changesForPages(ctx context.Context, content string) func() site.History {
	read := sync.OnceValue(func() map[string][]site.Change {
		r, ok := openRepository(ctx, content)
		if !ok {
			return nil
		}
		defer r.close()
		return changes(ctx, r, r.log(ctx))
	})
	return func() site.History { return site.History{Today: time.Now(), Changes: read()} }
}

func readHistory(ctx context.Context, content, since string, pages bool) func() site.History {
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
		commits := r.log(ctx)
		if commits == nil {
			return h
		}
		h.Sheets = issues(ctx, r, content, newest(commits), h.Today)
		if pages {
			h.Changes = changes(ctx, r, commits)
		}
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

// newest is the day on which each sheet last changed, by its path in the content
// folder. A shallow clone's last commits seem to bring every file; what they say
// is passed over, and the day of a sheet that only they name is the zero time,
// not known.
func newest(commits []commit) map[string]time.Time {
	days := make(map[string]time.Time)
	for _, c := range commits {
		day := c.day
		if c.end {
			day = time.Time{}
		}
		for _, f := range c.sheets {
			if _, seen := days[f.path]; !seen {
				days[f.path] = day
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
