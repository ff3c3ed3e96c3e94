package main

import (
	"context"
	"os"
	"strings"

	"baybook/site"
)

var interfaceCommand = &command{
	name: "interface", use: "[DIR]", short: "print the words of the pages, to be put into another language",
	long: `
Prints the file interface.yaml whole: what the pages say beside the sheets' own
words, how they write days and prices, and what the book in DIR has of it
already. Save it as interface.yaml at the top of the book, fill in what follows
as:, and set language: in shop.yaml. A word without as: stays English.

  baybook interface > interface.yaml

Write to another file than the one that is read.`,
	run: printInterface,
}

func printInterface(_ context.Context, c *call) int {
	set, content := c.flags()
	if code, done := c.parse(set); done {
		return code
	}
	if err := takeFolder(set, content); err != nil {
		return c.fail(err)
	}
	var text strings.Builder
	if err := site.WriteInterface(&text, os.DirFS(*content)); err != nil {
		return c.fail(err)
	}
	return c.write([]byte(text.String()))
}
