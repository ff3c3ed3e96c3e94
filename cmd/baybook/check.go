package main

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"baybook/calculators/calc"
	"baybook/site"
	"baybook/site/finding"
)

var checkCommand = &command{
	name: "check", use: "[-fix] [-format text|json|sarif] [-work SHEET] [-trace SHEET] [-waivers]", short: "check the book and publish nothing",
	long: `
Checks every sheet and says, for each fault, where it is, what is wrong and what
to do. Errors stop publishing; warnings do not.

-fix rewrites the numbers that the formulas contradict and the terms for which
the glossary has a preferred name, and nothing else.

-work says, for each step of one sheet, what the build takes it to do and the
hazards that follow; -trace also says what is so at the vehicle before it.

-waivers lists what the sheets set aside, with reason and name.

-format sarif writes what code scanners read (OASIS SARIF 2.1.0). -format json
writes one object for a program of your own, without the remarks:

` + finding.JSONShape,
	run: check,
}

func check(ctx context.Context, c *call) int {
	set, content := c.flags()
	format := set.String("format", "text", "how to write the findings: text, json or sarif (OASIS SARIF 2.1.0)")
	fix := set.Bool("fix", false, "rewrite what has one right answer: computed numbers and preferred terms")
	explain := set.String("explain", "", "say what a `rule` is for, with a bad and a good example")
	of := set.String("work", "", "say what each step of a `sheet` does, and the hazards that follow")
	trace := set.String("trace", "", "say the same, and the state of the vehicle before each step of a `sheet`")
	waivers := set.Bool("waivers", false, "list what the sheets set aside, why, and who says so")
	if code, done := c.parse(set); done {
		return code
	}
	if set.NArg() > 0 {
		return c.fail(fmt.Errorf("%q is not taken; the folder of the sheets is named with -content", set.Arg(0)))
	}
	if *explain != "" {
		text, ok := site.Explain(*explain)
		if !ok {
			return c.fail(fmt.Errorf("there is no rule %q; %s", *explain, nearestRule(*explain)))
		}
		fmt.Fprintln(c.stdout, text)
		return exitFine
	}
	if *of != "" || *trace != "" {
		return c.work(*content, cmp.Or(*trace, *of), *trace != "")
	}
	if *waivers {
		text, err := site.Waivers(site.Options{Content: *content})
		if err != nil {
			return c.fail(err)
		}
		fmt.Fprint(c.stdout, text)
		return exitFine
	}
	write := writerOf(*format)
	if write == nil { // before anything is rewritten
		return c.fail(fmt.Errorf("the format %q is not known; use text, json or sarif", *format))
	}
	tuneGC()
	book, list, err := site.Check(site.Options{Content: *content, History: history(ctx, *content)})
	if err == nil && *fix {
		if err = applyFixes(*content, list); err == nil {
			book, list, err = site.Check(site.Options{Content: *content, History: history(ctx, *content)})
		}
	}
	if err != nil {
		return c.fail(err)
	}
	if err := write(c.stdout, list, site.Rules()); err != nil {
		return c.fail(err)
	}
	if *format == "text" {
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
	for _, f := range finding.Formats(site.ReadVersion().Tool()) {
		if f.Name == format {
			return f.Write
		}
	}
	return nil
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

// applyFixes rewrites each file that has fixes, whole or not at all.
func applyFixes(content string, list finding.List) error {
	done := make(map[string]bool)
	for i := range list {
		file := list[i].Pos.File
		if done[file] || list[i].Fix == nil {
			continue
		}
		done[file] = true
		name := filepath.Join(content, filepath.FromSlash(file))
		before, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		after, err := finding.Apply(before, list.Fixes(file))
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := replaceFile(name, after); err != nil {
			return err
		}
	}
	return nil
}

// replaceFile writes a file beside the old one and puts it in its place, so
// that no sheet is ever half written.
func replaceFile(name string, data []byte) error {
	info, err := os.Stat(name)
	if err != nil {
		return err
	}
	temp, err := os.CreateTemp(filepath.Dir(name), ".fix-")
	if err != nil {
		return err
	}
	defer os.Remove(temp.Name())
	if _, err := temp.Write(data); err != nil {
		_ = temp.Close()
		return err
	}
	if err := temp.Chmod(info.Mode().Perm()); err != nil {
		_ = temp.Close()
		return err
	}
	if err := temp.Close(); err != nil {
		return err
	}
	return os.Rename(temp.Name(), name)
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
