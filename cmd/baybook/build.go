package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"baybook/site"
	"baybook/site/finding"
)

var buildCommand = &command{
	name: "build", use: "[DIR] [-out DIR]", short: "check the book and make the site of it",
	long: `
Checks every sheet, then makes the site in the folder -out. Where a check finds
an error nothing is written and the site that stands stays as it is. The new
site is made beside the old one and put in its place whole. Files of your own
in that folder stay; a link at -out is followed. -out may not lie inside the
folder of the sheets, nor hold it, and only one build works on it at a time.

The site is plain files: put the folder behind any web server, or on a memory
stick and open index.html.`,
	run: build,
}

func build(ctx context.Context, c *call) int {
	set, content := c.flags()
	out := set.String("out", "dist", "the `folder` to make the site in")
	compress := set.Bool("compress", false, "also write .br and .gz copies, for web servers that send them")
	if code, done := c.parse(set); done {
		return code
	}
	if err := takeFolder(set, content); err != nil {
		return c.fail(err)
	}
	tuneGC()
	start := time.Now()
	report, list, err := site.Build(ctx, site.Options{Content: *content, Slow: c.slow, Out: *out, Compress: *compress, History: historyForPages(ctx, *content)})
	if code := c.findings(*content, list, err); code != exitFine {
		return code
	}
	if interactive(c.stdout) {
		fmt.Fprintf(c.stdout, "%s: %d sheets, %d calculators, %d files, %.1f MB in %.1f s\n", *out,
			report.Sheets, report.Calculators, report.Files, float64(report.Bytes)/1e6, time.Since(start).Seconds())
	}
	return exitFine
}

// findings writes a list as text and says with which code to end; any other
// error is one of use or of the machine.
func (c *call) findings(content string, list finding.List, err error) int {
	if len(list) > 0 {
		if werr := finding.WriteText(c.stderr, list.In(fromHere(content)), site.Rules()); werr != nil {
			return c.fail(werr)
		}
	}
	var stopped *finding.ListError
	switch {
	case errors.As(err, &stopped):
		return exitFindings
	case err != nil:
		return c.fail(err)
	}
	return exitFine
}
