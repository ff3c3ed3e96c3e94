package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"time"

	"baybook/site"
	"baybook/site/sheet"
)

// history gives what git knows of the sheets in a content folder: when each
// was last recorded, and its revision and date then. Where there is no git,
// no repository or no record of the folder, only today's date is known, and
// the rules that need more are left out.
func history(ctx context.Context, content string) func() site.History {
	return func() site.History {
		h := site.History{Today: time.Now()}
		prefix, ok := git(ctx, content, "rev-parse", "--show-prefix")
		if !ok {
			return h
		}
		log, ok := git(ctx, content, "log", "--format=%x00%cs", "--name-only", "--relative", "--", ".")
		if !ok {
			return h
		}
		changed, _ := git(ctx, content, "status", "--porcelain", "-z", "--no-renames", "--", ".")
		h.Sheets = issues(ctx, content, strings.TrimSpace(prefix), newest(log), changedFiles(changed, strings.TrimSpace(prefix)))
		return h
	}
}

// git runs git in a folder; false where it is not there or says no.
func git(ctx context.Context, dir string, arguments ...string) (string, bool) {
	cmd := exec.CommandContext(ctx, "git", append([]string{"-C", dir, "-c", "core.quotepath=off"}, arguments...)...)
	var out bytes.Buffer
	cmd.Stdout = &out
	err := cmd.Run()
	return out.String(), err == nil
}

// newest reads a log, latest first: the day on which each file last changed.
func newest(log string) map[string]time.Time {
	days := make(map[string]time.Time)
	for entry := range strings.SplitSeq(log, "\x00") {
		day, files, _ := strings.Cut(entry, "\n")
		t, err := time.Parse(time.DateOnly, strings.TrimSpace(day))
		if err != nil {
			continue
		}
		for file := range strings.Lines(files) {
			file = strings.TrimSpace(file)
			if _, seen := days[file]; !seen && path.Ext(file) == ".md" {
				days[file] = t
			}
		}
	}
	return days
}

// changedFiles reads a status: the files that are no longer as recorded, by
// their path in the content folder.
func changedFiles(status, prefix string) map[string]bool {
	changed := make(map[string]bool)
	for entry := range strings.SplitSeq(status, "\x00") {
		if len(entry) > 3 && entry[:2] != "??" {
			changed[strings.TrimPrefix(entry[3:], prefix)] = true
		}
	}
	return changed
}

// issues reads the recorded text of each sheet that has changed; one that has
// not is what was recorded.
func issues(ctx context.Context, content, prefix string, days map[string]time.Time, changed map[string]bool) map[string]site.Issue {
	recorded := make(map[string]site.Issue)
	var unchanged []string
	reader := sheet.NewReader(nil)
	for file, day := range days {
		if !changed[file] {
			unchanged = append(unchanged, file)
			continue
		}
		text, ok := git(ctx, content, "show", "HEAD:"+prefix+file)
		if !ok {
			continue
		}
		front := sheetFront(reader, file, text)
		recorded[file] = site.Issue{Revision: front.Revision, Date: front.Date, Changed: true, Newest: day}
	}
	for _, file := range unchanged {
		text, err := os.ReadFile(filepath.Join(content, filepath.FromSlash(file)))
		if err != nil || !strings.Contains(string(text), "\napproved:") {
			continue // an unchanged sheet's past matters to its approval alone
		}
		front := sheetFront(reader, file, string(text))
		recorded[file] = site.Issue{Revision: front.Revision, Date: front.Date, Newest: days[file]}
	}
	return recorded
}

func sheetFront(reader *sheet.Reader, file, text string) sheet.Front {
	s, _ := reader.Parse(file, []byte(text)) // faults of an issue gone by are nobody's now
	return s.Front
}
