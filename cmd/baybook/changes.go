package main

import (
	"bufio"
	"context"
	"io"
	"path"
	"strconv"
	"strings"
	"time"
	"unicode"

	"baybook/site"
)

// A commit is one record of a change: its day, the first line of its message,
// and the sheets that it touched.
type commit struct {
	day    time.Time
	what   string
	sheets []recordedSheet
	// end is true where a shallow clone was cut off: such a commit seems to bring
	// every file.
	end bool
}

// A recordedSheet is a sheet as a commit left it: its path in the content folder
// and the name of its text, "" where the commit took it away.
type recordedSheet struct{ path, text string }

// log lists the commits that touched sheets of the content folder, the newest
// first; nil where git says no.
func (r *repository) log(ctx context.Context) []commit {
	out, ok := r.git(ctx, "log", "--format=%x00%H %cs %s", "--raw", "--no-abbrev", "--no-renames", "HEAD", "--", ":/"+r.prefix)
	if !ok {
		return nil
	}
	commits := []commit{}
	for entry := range strings.SplitSeq(out, "\x00") {
		head, files, _ := strings.Cut(entry, "\n")
		id, rest, _ := strings.Cut(head, " ")
		date, subject, _ := strings.Cut(rest, " ")
		day, err := time.Parse(time.DateOnly, date)
		if err != nil {
			continue
		}
		c := commit{day: day, what: oneLine(subject), end: r.ends[id]}
		for line := range strings.Lines(files) {
			if s, ok := r.recordedSheet(line); ok {
				c.sheets = append(c.sheets, s)
			}
		}
		commits = append(commits, c)
	}
	return commits
}

// recordedSheet reads a line of a raw difference, ":100644 100644 OLD NEW M",
// a tab, and the path.
func (r *repository) recordedSheet(line string) (recordedSheet, bool) {
	kind, file, _ := strings.Cut(strings.TrimSpace(line), "\t")
	fields := strings.Fields(kind)
	if len(fields) != 5 || path.Ext(file) != ".md" {
		return recordedSheet{}, false
	}
	s := recordedSheet{path: strings.TrimPrefix(file, r.prefix), text: fields[3]}
	if strings.Trim(s.text, "0") == "" {
		s.text = ""
	}
	return s, true
}

// oneLine is a message's first line without what no reader can see, which could
// turn the line around on the page.
func oneLine(s string) string {
	const most = 200
	s = strings.Map(func(c rune) rune {
		if !unicode.IsPrint(c) {
			return -1
		}
		return c
	}, strings.ToValidUTF8(s, ""))
	if letters := []rune(s); len(letters) > most {
		s = string(letters[:most]) + "…"
	}
	return s
}

// changes lists what each sheet went through, the newest first. What a shallow
// clone was cut off at is left out, for there nothing is known.
func changes(ctx context.Context, r *repository, commits []commit) map[string][]site.Change {
	var names []string
	seen := make(map[string]bool)
	for _, c := range commits {
		for _, s := range c.sheets {
			if s.text != "" && !c.end && !seen[s.text] {
				seen[s.text] = true
				names = append(names, s.text)
			}
		}
	}
	issues := r.titleBlocks(ctx, names)
	list := make(map[string][]site.Change)
	for i, c := range commits {
		for _, s := range c.sheets {
			block, ok := issues[s.text]
			if !c.end && ok {
				list[s.path] = append(list[s.path], site.Change{Revision: block.revision, Date: block.date, Day: c.day, What: c.what, Number: i})
			}
		}
	}
	return list
}

// A titleBlock is what tells one issue of a sheet from the next.
type titleBlock struct{ revision, date string }

// titleBlocks reads revision and date out of recorded texts, by their names.
// Only the start of each is read; one that is missing has no block.
func (r *repository) titleBlocks(ctx context.Context, names []string) map[string]titleBlock {
	blocks := make(map[string]titleBlock, len(names))
	cmd := r.command(ctx, "cat-file", "--batch")
	cmd.Stdin = strings.NewReader(strings.Join(names, "\n") + "\n")
	out, err := cmd.StdoutPipe()
	if err != nil || cmd.Start() != nil {
		return nil
	}
	in := bufio.NewReader(out)
	for {
		head, err := in.ReadString('\n')
		if err != nil {
			break
		}
		fields := strings.Fields(head)
		if len(fields) != 3 { // "NAME missing"
			continue
		}
		size, err := strconv.ParseInt(fields[2], 10, 64)
		if err != nil {
			break
		}
		text := io.LimitReader(in, size)
		const enough = 8 << 10
		start, err := io.ReadAll(io.LimitReader(text, enough))
		if err != nil {
			break
		}
		blocks[fields[0]] = readTitleBlock(string(start))
		if _, err := io.Copy(io.Discard, text); err != nil {
			break
		}
		if _, err := in.Discard(1); err != nil { // the line end behind each text
			break
		}
	}
	_, _ = io.Copy(io.Discard, in)
	_ = cmd.Wait() // what was read is told; the rest is not known
	return blocks
}

// readTitleBlock reads the two lines of the front matter. An old text may have
// faults that nobody can mend any more, so nothing else of it is read.
func readTitleBlock(text string) titleBlock {
	var b titleBlock
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(strings.TrimPrefix(line, "\ufeff"))
		if line == "---" && i > 0 {
			break
		}
		key, value, _ := strings.Cut(line, ":")
		value, _, _ = strings.Cut(value, " #")
		value = strings.Trim(strings.TrimSpace(value), `"'`)
		switch key {
		case "revision":
			b.revision = oneLine(value)
		case "date":
			b.date = oneLine(value)
		}
	}
	return b
}
