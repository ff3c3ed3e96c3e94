package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"baybook/site/begin"
	"baybook/site/begin/notes"
)

var beginCommand = &command{
	name: "begin", use: "[-from NOTES] DIR", short: "make a small book to start from, or one of old notes",
	long: `
Makes the folder DIR with the hazard register, a short glossary, the shop's
facts, one complete sheet with a drawing and a circuit, and a job with its price.

  baybook begin mybook
  baybook serve -content mybook

Then put your shop's name into shop.yaml, copy the sheet, and write your own.
A folder that holds anything is refused.

With -from, each note of a folder of Markdown becomes a draft beside that sheet:
its headings become the sections of a sheet, a list that counts its steps, lists
of tools and materials its front matter; pictures come along. serve shows drafts,
build leaves them out. What was guessed stands at a draft's end, under "Not
settled". DIR/from-notes.txt says what went where and what was left.

  baybook begin -from oldnotes mybook`,
	run: beginBook,
}

func beginBook(_ context.Context, c *call) int {
	set, _ := c.flags()
	from := set.String("from", "", "make drafts of the notes in this `folder`: Markdown or plain text, with their pictures")
	if code, done := c.parse(set); done {
		return code
	}
	if set.NArg() != 1 {
		return c.fail(errors.New("name one folder to make, such as: baybook begin mybook"))
	}
	dir := set.Arg(0)
	entries, err := os.ReadDir(dir)
	switch {
	case err == nil && len(entries) > 0:
		return c.fail(fmt.Errorf("%s is not empty; name a folder that is not there yet", dir))
	case err != nil && !errors.Is(err, os.ErrNotExist):
		return c.fail(err)
	}
	if *from != "" {
		return c.beginFrom(*from, dir)
	}
	if err := os.CopyFS(dir, begin.Book()); err != nil {
		return c.fail(err)
	}
	fmt.Fprintf(c.stdout, `%s holds a book of one sheet and one job. Next:
  1. See it:       baybook serve -content %[1]s
  2. Make it yours: write your shop's name into %[1]s/shop.yaml
  3. Add a sheet:  copy %[1]s/power/fused-lead.md, change it, and run baybook check %[1]s
`, dir)
	return exitFine
}

// beginFrom makes a book of old notes.
func (c *call) beginFrom(from, dir string) int {
	info, err := os.Stat(from)
	if err != nil {
		return c.fail(err)
	}
	if !info.IsDir() {
		return c.fail(fmt.Errorf("%s is no folder; name the folder that holds the notes", from))
	}
	result, err := notes.From(os.DirFS(from), time.Now())
	if err != nil {
		return c.fail(err)
	}
	if result.Drafts == 0 {
		return c.fail(fmt.Errorf("%s holds no note: no file that ends in .md, .markdown or .txt", from))
	}
	if err := os.CopyFS(dir, begin.Book()); err != nil {
		return c.fail(err)
	}
	areas, err := fs.ReadFile(begin.Book(), "areas.yaml")
	if err != nil {
		return c.fail(err)
	}
	result.Files["areas.yaml"] = withAreas(areas, result.Areas)
	result.Files["from-notes.txt"] = []byte(strings.Join(result.Report, "\n") + "\n")
	for _, name := range slices.Sorted(maps.Keys(result.Files)) {
		file := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return c.fail(err)
		}
		if err := os.WriteFile(file, result.Files[name], 0o644); err != nil {
			return c.fail(err)
		}
	}
	fmt.Fprintln(c.stdout, strings.Join(result.Report, "\n"))
	fmt.Fprintf(c.stdout, `%d drafts are in %s, beside one finished sheet to copy from. Next:
  1. See them:      baybook serve -content %[2]s
  2. Ask what each lacks: baybook check %[2]s
  3. Settle a draft, take draft: true out of its head, and it is published.
`, result.Drafts, dir)
	return exitFine
}

// withAreas adds the folders of the drafts to the areas of the book.
func withAreas(file []byte, areas []notes.Area) []byte {
	var rows bytes.Buffer
	for _, a := range areas {
		if a.Folder != "power" { // the book's own
			fmt.Fprintf(&rows, "  - {folder: %s, title: %q}\n", a.Folder, a.Title)
		}
	}
	const next = "\ncalculators:\n"
	return bytes.Replace(file, []byte(next), append(rows.Bytes(), next...), 1)
}
