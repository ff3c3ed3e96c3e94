package main

import (
	"cmp"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"baybook/calculators/calc"
	"baybook/site"
	"baybook/site/finding"
)

var checkCommand = &command{
	name: "check", use: "[DIR] [-fix [-dry-run]] [-format text|json|sarif] [-work SHEET] [-trace SHEET] [-since REF] [-waivers]", short: "check the book and publish nothing",
	long: `
Checks every sheet and says, for each fault, where it is, what is wrong and what
to do. Errors stop publishing; warnings do not.

-fix rewrites the numbers that the formulas contradict and the terms for which
the glossary has a preferred name, and nothing else. It prints each change as
before → after; with -dry-run it prints them and changes nothing.

-fix -work SHEET writes the links that declare the work of that sheet's steps,
where the words leave no doubt.

-work says, for each step of one sheet, what the build takes it to do and the
hazards that follow; -trace also says what is so at the vehicle before it.

-since compares each sheet with the commit at which the present work parted from
a branch, tag or commit, and not with the last commit: a step that changed under
an old revision is found in a branch's check too (baybook check -since origin/main).

-waivers lists what the sheets set aside, with reason and name.

-messages lists the safety messages that the build writes from the register, each
with the work that brings it and the condition of its row.

-format sarif writes what code scanners read (OASIS SARIF 2.1.0). -format json
writes one object for a program of your own, without the remarks:

` + finding.JSONShape,
	run: check,
}

func check(ctx context.Context, c *call) int {
	set, content := c.flags()
	asked := checkFlags(set)
	if code, done := c.parse(set); done {
		return code
	}
	if err := takeFolder(set, content); err != nil {
		return c.fail(err)
	}
	if *asked.dryRun && !*asked.fix {
		return c.fail(errors.New("-dry-run goes with -fix: baybook check -fix -dry-run"))
	}
	if *asked.fix && *asked.of != "" {
		return c.declare(*content, *asked.of, *asked.dryRun)
	}
	if text, listed, err := asked.listing(*content); err != nil {
		return c.fail(err)
	} else if listed {
		fmt.Fprint(c.stdout, text)
		return exitFine
	}
	if *asked.of != "" || *asked.trace != "" {
		return c.work(*content, cmp.Or(*asked.trace, *asked.of), *asked.trace != "")
	}
	return c.checked(ctx, *content, asked)
}

// A checking is what check was asked for.
type checking struct {
	format, since, explain, of, trace *string
	fix, dryRun, messages, waivers    *bool
}

// checkFlags adds the flags of check to a set.
func checkFlags(set *flag.FlagSet) checking {
	return checking{
		format:   set.String("format", "text", "how to write the findings: text, json or sarif (OASIS SARIF 2.1.0)"),
		fix:      set.Bool("fix", false, "rewrite what has one right answer: computed numbers and preferred terms"),
		dryRun:   set.Bool("dry-run", false, "with -fix: print what would be rewritten, and rewrite nothing"),
		since:    set.String("since", "", "compare sheets with the commit at which this work parted from a `branch`, tag or commit"),
		explain:  set.String("explain", "", "say what a `rule` is for, with a bad and a good example"),
		of:       set.String("work", "", "say what each step of a `sheet` does, and the hazards that follow"),
		messages: set.Bool("messages", false, "list the safety messages that the build writes, each with its reason"),
		trace:    set.String("trace", "", "say the same, and the state of the vehicle before each step of a `sheet`"),
		waivers:  set.Bool("waivers", false, "list what the sheets set aside, why, and who says so"),
	}
}

// listing is the text of what is only to be listed, if that was asked for.
func (asked checking) listing(content string) (text string, listed bool, err error) {
	switch {
	case *asked.explain != "":
		text, ok := site.Explain(*asked.explain)
		if !ok {
			return "", false, fmt.Errorf("there is no rule %q; %s", *asked.explain, nearestRule(*asked.explain))
		}
		return text + "\n", true, nil
	case *asked.waivers:
		text, err = site.Waivers(site.Options{Content: content})
	case *asked.messages:
		text, err = site.Messages(site.Options{Content: content})
	default:
		return "", false, nil
	}
	return text, err == nil, err
}

// checked checks the book, mends what is to be mended, and writes what was
// found.
func (c *call) checked(ctx context.Context, content string, asked checking) int {
	write := writerOf(*asked.format)
	if write == nil { // before anything is rewritten
		return c.fail(fmt.Errorf("the format %q is not known; use text, json or sarif", *asked.format))
	}
	if *asked.since != "" {
		if err := checkSince(ctx, content, *asked.since); err != nil {
			return c.fail(err)
		}
	}
	if shallow(ctx, content) {
		fmt.Fprintln(c.stderr, "baybook check: this clone is shallow, so when its oldest sheets last changed is not known, and their approvals are taken as given; git fetch --unshallow brings the rest")
	}
	tuneGC()
	options := func() site.Options {
		return site.Options{Content: content, History: history(ctx, content, *asked.since)}
	}
	book, list, err := site.Check(options())
	if err == nil && *asked.fix {
		told := c.stdout
		if *asked.format != "text" {
			told = c.stderr // the findings are read by a program
		}
		if err = applyFixes(content, list, *asked.dryRun, told); err == nil && !*asked.dryRun {
			book, list, err = site.Check(options())
		}
	}
	if err != nil {
		return c.fail(err)
	}
	if err := write(c.stdout, list.In(fromHere(content)), site.Rules()); err != nil {
		return c.fail(err)
	}
	if *asked.format == "text" {
		fmt.Fprintln(c.stdout, "read: "+book.Holds())
	}
	if len(list) > 0 {
		return exitFindings
	}
	return exitFine
}

// writerOf returns what writes findings in a format; nil where the format is
// not known.
func writerOf(format string) func(io.Writer, finding.List, []finding.RuleInfo) error {
	for _, f := range finding.Formats(tool()) {
		if f.Name == format {
			return f.Write
		}
	}
	return nil
}

// fromHere names a folder from the working folder where it lies in it, so that
// an editor or a code scanner finds the files; else as it was typed.
func fromHere(dir string) string {
	here, err := os.Getwd()
	if err != nil || !filepath.IsAbs(dir) {
		return dir
	}
	if inner, err := filepath.Rel(here, dir); err == nil && filepath.IsLocal(inner) {
		return inner
	}
	return dir
}

// tool is this build of the program, at work in the working folder.
func tool() finding.Tool {
	t := site.ReadVersion().Tool()
	if dir, err := os.Getwd(); err == nil { // without it paths have no base, and are right all the same
		t.Folder = dir
	}
	return t
}

// nearestRule helps with a rule's name that is not known.
func nearestRule(name string) string {
	var names []string
	for _, r := range site.Rules() {
		names = append(names, r.Name)
	}
	if near := calc.Nearest(name, names); near != "" {
		return "did you mean " + near + "?"
	}
	return "the name stands in brackets in a finding"
}

// applyFixes rewrites each file that has fixes, whole or not at all, and tells
// each change.
func applyFixes(content string, list finding.List, dryRun bool, told io.Writer) error {
	files, err := rewrites(content, list)
	if err != nil {
		return err
	}
	for _, f := range files {
		f.tell(told)
		if dryRun {
			continue
		}
		if err := f.write(); err != nil {
			return err
		}
	}
	return nil
}

// declare writes the links of a sheet's steps that its words leave no doubt of.
func (c *call) declare(content, name string, dryRun bool) int {
	list, ok, err := site.CertainWork(site.Options{Content: content}, name)
	if err == nil && ok {
		err = applyFixes(content, list, dryRun, c.stdout)
	}
	switch {
	case err != nil:
		return c.fail(err)
	case !ok:
		return c.fail(fmt.Errorf("the book has no sheet %q; name it as in power/battery-feed", name))
	}
	fmt.Fprintf(c.stdout, "%d links are certain\n", len(list))
	return exitFine
}

// work says what the steps of a sheet do.
func (c *call) work(content, name string, trace bool) int {
	text, ok, err := site.Work(site.Options{Content: content}, name, trace)
	switch {
	case err != nil:
		return c.fail(err)
	case !ok:
		return c.fail(fmt.Errorf("the book has no sheet %q; name it as in power/battery-feed", name))
	}
	fmt.Fprint(c.stdout, text)
	return exitFine
}
