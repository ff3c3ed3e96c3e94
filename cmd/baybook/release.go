package main

import (
	"context"
	"fmt"

	"baybook/site"
)

var releaseCommand = &command{
	name: "release", use: "[-out FILE] [-version VERSION]", short: "make one program that carries everything, for shops without Go",
	long: `
Run it inside the project's source, with the Go toolchain at hand. It compiles
the formulas for the browser, puts them into the program, and writes the program
to -out. That file needs no Go and no source: copy it to any machine of the same
kind, and it builds books there. Set GOOS and GOARCH for another kind.

The same source and the same toolchain give the same bytes. .ci/release makes
the programs of all kinds of machine with their checksums and a bill of materials.

  baybook release -out baybook
  GOOS=windows GOARCH=amd64 baybook release -out baybook.exe`,
	run: release,
}

func release(ctx context.Context, c *call) int {
	set, _ := c.flags()
	out := set.String("out", "baybook", "the `file` to write the program to")
	version := set.String("version", "", "the `version` that the program says it is, such as v1.2.0")
	if code, done := c.parse(set); done {
		return code
	}
	if set.NArg() > 0 {
		return c.fail(fmt.Errorf("%q is not taken", set.Arg(0)))
	}
	size, err := site.Release(ctx, *out, *version)
	if err != nil {
		return c.fail(err)
	}
	fmt.Fprintf(c.stdout, "%s: %.1f MB\n", *out, float64(size)/1e6)
	return exitFine
}
