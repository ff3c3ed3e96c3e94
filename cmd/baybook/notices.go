package main

import (
	"context"
	"fmt"

	"baybook/theme"
)

var noticesCommand = &command{
	name: "notices", use: "", short: "print the licenses of what the program and the pages carry",
	long: `
Prints the license texts of every library and typeface that this program and the
pages that it makes carry. The same text stands in each site at
assets/notices.txt.`,
	run: notices,
}

func notices(_ context.Context, c *call) int {
	set, _ := c.flags()
	if code, done := c.parse(set); done {
		return code
	}
	if set.NArg() > 0 {
		return c.fail(fmt.Errorf("%q is not taken", set.Arg(0)))
	}
	text, err := theme.Files.ReadFile("notices.txt")
	if err != nil {
		return c.fail(err)
	}
	if _, err := c.stdout.Write(text); err != nil {
		return c.fail(err)
	}
	return exitFine
}
