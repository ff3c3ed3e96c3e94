package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/faults"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/report"
	"baybook/calculators/circuit/solve"
	"baybook/site"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var circuitCommand = &command{
	name: "circuit", use: "[-json|-netlist|-list NAME|-faults|-figure FILE] FILE", short: "solve, judge and draw a wiring drawing",
	long: `
Reads a wiring drawing, a YAML file or a sheet that holds one in a fenced block,
and prints what flows in each state, what a short does, and what is judged.
A sheet with several drawings wants -number. Exits 1 when the verdict is stop.

-list prints what a shop works by, as comma-separated values or with -json as
JSON: wires, cuts, labels, pinouts or parts. -faults prints what each load gets
and each test point reads with one thing broken, in every state.

  baybook circuit feed.yaml
  baybook circuit -number 2 content/power/relay-feed.md
  baybook circuit -figure feed.svg -state "key on" feed.yaml
  baybook circuit -faults feed.yaml
  baybook circuit -list wires feed.yaml > wires.csv
  baybook circuit -netlist feed.yaml > feed.cir`,
	run: solveCircuit,
}

func solveCircuit(_ context.Context, c *call) int {
	set, _ := c.flags()
	asJSON := set.Bool("json", false, "print the solution as one JSON object")
	list := set.String("list", "", "print this `list`: "+strings.Join(report.ListNames(), ", "))
	broken := set.Bool("faults", false, "print what every single fault does")
	netlist := set.Bool("netlist", false, "print a SPICE deck of the circuit in one state")
	figure := set.String("figure", "", "write the drawing to this SVG `file`")
	number := set.Int("number", 1, "which of a sheet's drawings")
	state := set.String("state", "", "the `state` to draw or to write a deck of")
	if code, done := c.parse(set); done {
		return code
	}
	if set.NArg() != 1 {
		return c.fail(fmt.Errorf("name one file, a YAML file or a sheet"))
	}
	read, code := c.readCircuit(set.Arg(0), *number)
	if read == nil {
		return code
	}
	assessed := read.Assessment()
	at, ok := stateNumber(assessed.Network, *state)
	if !ok {
		return c.fail(fmt.Errorf("the circuit has no state %q; it has %s", *state, stateNames(assessed.Network)))
	}
	if *figure != "" {
		svg := append(draw.Diagram(assessed, draw.View{State: *state, Block: read.Block}).AppendSVG(nil), '\n')
		if err := os.WriteFile(*figure, svg, 0o644); err != nil {
			return c.fail(err)
		}
		return judged(assessed, exitFine)
	}
	if *broken {
		table := faults.New(assessed.Study)
		if *asJSON {
			return judged(assessed, c.write(append(report.AppendFaultsJSON(nil, table), '\n')))
		}
		rows := report.Faults(table)
		return judged(assessed, c.write(report.AppendCSV(nil, &rows)))
	}
	if *list != "" {
		table, ok := report.List(assessed.Network, *list)
		if !ok {
			return c.fail(fmt.Errorf("there is no list %q; there are %s", *list, strings.Join(report.ListNames(), ", ")))
		}
		if *asJSON {
			return judged(assessed, c.write(append(report.AppendListJSON(nil, &table), '\n')))
		}
		return judged(assessed, c.write(report.AppendCSV(nil, &table)))
	}
	if *netlist {
		return c.write(solve.AppendNetlist(nil, assessed.Network, at))
	}
	if *asJSON {
		return judged(assessed, c.write(append(report.AppendJSON(nil, assessed), '\n')))
	}
	return judged(assessed, c.write(report.AppendText(nil, assessed)))
}

// judged is the exit code of a circuit that was shown with the code given.
func judged(a *judge.Assessment, shown int) int {
	if shown == exitFine && a.Verdict() == calc.Stop {
		return exitFindings
	}
	return shown
}

// readCircuit reads one circuit of a file; nil where it has none or a broken
// one, which is then reported.
func (c *call) readCircuit(name string, number int) (*sheet.Circuit, int) {
	content, err := os.ReadFile(name)
	if err != nil {
		return nil, c.fail(err)
	}
	circuits, list := sheet.ReadCircuits(filepath.ToSlash(name), content)
	if list.Errors() > 0 {
		if err := finding.WriteText(c.stderr, list, site.Rules()); err != nil {
			return nil, c.fail(err)
		}
		return nil, exitFindings
	}
	if number < 1 || number > len(circuits) {
		return nil, c.fail(fmt.Errorf("%s holds %d circuits; there is no number %d", name, len(circuits), number))
	}
	return circuits[number-1], exitFine
}

// stateNumber is the index of a state by its name; the first where none is named.
func stateNumber(n *circuit.Network, name string) (int, bool) {
	if name == "" {
		return 0, true
	}
	for i := range n.States {
		if strings.EqualFold(n.States[i].Name, name) {
			return i, true
		}
	}
	return 0, false
}

func stateNames(n *circuit.Network) string {
	var names []string
	for i := range n.States {
		names = append(names, n.States[i].Name)
	}
	return strings.Join(names, ", ")
}
