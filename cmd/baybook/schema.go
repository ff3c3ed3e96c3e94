package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"baybook/calculators/calc"
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
	names, err := schemaNames()
	if err != nil {
		return c.fail(err)
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
	name := set.Arg(0)
	text, err := fs.ReadFile(theme.Files, path.Join("schemas", name+".json"))
	if err != nil {
		msg := fmt.Sprintf("there is no schema %q", name)
		if near := calc.Nearest(name, names); near != "" {
			msg += "; did you mean " + near + "?"
		}
		return c.fail(fmt.Errorf("%s (baybook schema lists them)", msg))
	}
	return c.write(text)
}

// schemaNames lists the schemas that the theme carries.
func schemaNames() ([]string, error) {
	entries, err := fs.ReadDir(theme.Files, "schemas")
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), ".json"))
	}
	return names, err
}
