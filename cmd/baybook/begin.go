package main

import (
	"context"
	"errors"
	"fmt"
	"os"

	"baybook/site/begin"
)

var beginCommand = &command{
	name: "begin", use: "DIR", short: "make a small book to start from",
	long: `
Makes the folder DIR with the hazard register, a short glossary, the shop's
facts, and one complete sheet with a drawing. All of it passes every check.

  baybook begin mybook
  baybook serve -content mybook

Then put your shop's name into shop.yaml, copy the sheet, and write your own.
A folder that holds anything is refused.`,
	run: beginBook,
}

func beginBook(_ context.Context, c *call) int {
	set, _ := c.flags()
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
	if err := os.CopyFS(dir, begin.Book()); err != nil {
		return c.fail(err)
	}
	fmt.Fprintf(c.stdout, "%s holds a book of one sheet. See it: baybook serve -content %s\n", dir, dir)
	return exitFine
}
