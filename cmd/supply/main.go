// Command supply writes what goes with a release: the license texts of
// everything that the program and the pages carry, and a bill of materials.
//
//	go run ./cmd/supply notices         writes theme/notices.txt
//	go run ./cmd/supply bill VERSION    prints a CycloneDX bill of materials
package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
)

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "supply:", err)
		os.Exit(2)
	}
}

func run(arguments []string, out io.Writer) error {
	switch {
	case len(arguments) == 1 && arguments[0] == "notices":
		text, err := notices(".")
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.FromSlash(noticesFile), text, 0o644)
	case len(arguments) == 2 && arguments[0] == "bill":
		return bill(".", arguments[1], out)
	}
	return fmt.Errorf("use: supply notices, or supply bill VERSION, at the top of the source")
}
