package main

import (
	"context"
	"encoding/json"
	"fmt"

	"baybook/site"
)

var versionCommand = &command{
	name: "version", use: "[-json]", short: "print which build of baybook this is",
	long: `
Prints the module's version, the commit of the source, the Go version, and the
hash of the calculators' core. The same line stands in every page
(<meta name="generator">), in the tool section of SARIF, and on the house rules.
A program run from changed source says +dirty; one run with "go run" has no
commit. The hash is left out until the core has been compiled.`,
	run: version,
}

func version(_ context.Context, c *call) int {
	set, _ := c.flags()
	asJSON := set.Bool("json", false, "print one JSON object")
	if code, done := c.parse(set); done {
		return code
	}
	if set.NArg() > 0 {
		return c.fail(fmt.Errorf("%q is not taken", set.Arg(0)))
	}
	v := site.ReadVersion()
	if *asJSON {
		enc := json.NewEncoder(c.stdout)
		enc.SetIndent("", "  ")
		if err := enc.Encode(v); err != nil {
			return c.fail(err)
		}
		return exitFine
	}
	fmt.Fprintf(c.stdout, "baybook %s\n", v)
	return exitFine
}
