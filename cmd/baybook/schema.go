package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/sheet"
	"baybook/theme"
)

var schemaCommand = &command{
	name: "schema", use: "[NAME]", short: "print the JSON Schema of a file that the book reads or writes",
	long: `
Without a name, lists the schemas. With one, prints it (JSON Schema 2020-12).
An editor that knows the schema of a file completes its keys and marks mistakes
while you type.

  baybook schema hazards > hazards.schema.json`,
	run: schema,
}

func schema(_ context.Context, c *call) int {
	set, _ := c.flags()
	if code, done := c.parse(set); done {
		return code
	}
	all, err := schemas()
	if err != nil {
		return c.fail(err)
	}
	var names []string
	for _, s := range all {
		names = append(names, s.Name)
	}
	switch set.NArg() {
	case 0:
		for _, n := range names {
			fmt.Fprintln(c.stdout, n)
		}
		return exitFine
	case 1:
	default:
		return c.fail(errors.New("name one schema"))
	}
	for _, s := range all {
		if s.Name == set.Arg(0) {
			return c.write(s.JSON)
		}
	}
	msg := fmt.Sprintf("there is no schema %q", set.Arg(0))
	if near := calc.Nearest(set.Arg(0), names); near != "" {
		msg += "; did you mean " + near + "?"
	}
	return c.fail(fmt.Errorf("%s (baybook schema lists them)", msg))
}

// schemas lists those of the files that a lead writes, then those that the
// theme carries for what the site saves.
func schemas() ([]sheet.Schema, error) {
	all := sheet.Schemas()
	entries, err := fs.ReadDir(theme.Files, "schemas")
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		text, err := fs.ReadFile(theme.Files, path.Join("schemas", e.Name()))
		if err != nil {
			return nil, err
		}
		all = append(all, sheet.Schema{Name: strings.TrimSuffix(e.Name(), ".json"), File: e.Name(), JSON: text})
	}
	return all, nil
}
