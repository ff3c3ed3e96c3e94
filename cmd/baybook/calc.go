package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"

	"baybook/calculators"
	"baybook/calculators/calc"
)

var calcCommand = &command{
	name: "calc", use: "[NAME [input=value ...]]", short: "compute at the prompt with the book's own formulas",
	long: `
Without a name, lists the calculators. With a name alone, says what it takes
and gives. With inputs, computes; inputs left out stand at their defaults.

  baybook calc wire-drop current=8A length=4m
  baybook calc wire-drop current=8A wire=2.5mm2 -json
  baybook calc hinge-slack swing=70 -figure loop.svg

A number carries its unit (4m, 13ft, 250mA, 3%); a bare one has the input's own.
A wire is never bare: say 16AWG or 1.5mm2. Use a decimal point.`,
	run: calculate,
}

func calculate(_ context.Context, c *call) int {
	set, _ := c.flags()
	asJSON := set.Bool("json", false, "print one JSON object")
	figure := set.String("figure", "", "write the result's drawing to this SVG `file`")
	var words []string
	c.arguments, words = sortWords(c.arguments)
	if code, done := c.parse(set); done {
		return code
	}
	words = append(words, set.Args()...)
	if len(words) == 0 {
		listCalculators(c.stdout)
		return exitFine
	}
	calculator := calculators.Named(words[0])
	if calculator == nil {
		msg := fmt.Sprintf("there is no calculator %q", words[0])
		if near := calc.Nearest(words[0], calculators.Names()); near != "" {
			msg += "; did you mean " + near + "?"
		}
		return c.fail(fmt.Errorf("%s (baybook calc lists them)", msg))
	}
	if len(words) == 1 && *figure == "" {
		if *asJSON {
			return c.write(append(calc.AppendDescription(nil, calculator), '\n'))
		}
		describe(c.stdout, calculator)
		return exitFine
	}
	return c.compute(calculator, words[1:], *asJSON, *figure)
}

// sortWords lets flags stand behind inputs, as people type them.
func sortWords(arguments []string) (flags, words []string) {
	for i := 0; i < len(arguments); i++ {
		a := arguments[i]
		if !strings.HasPrefix(a, "-") || a == "-" {
			words = append(words, a)
			continue
		}
		flags = append(flags, a)
		takesNext := a == "-figure" || a == "--figure" || a == "-content" || a == "--content"
		if takesNext && i+1 < len(arguments) {
			i++
			flags = append(flags, arguments[i])
		}
	}
	return flags, words
}

// compute runs a calculator and writes its answer.
func (c *call) compute(calculator *calc.Calculator, words []string, asJSON bool, figure string) int {
	var pairs []calc.Pair
	for _, w := range words {
		key, value, ok := strings.Cut(w, "=")
		if !ok {
			return c.fail(fmt.Errorf("%q is not input=value", w))
		}
		pairs = append(pairs, calc.Pair{Key: strings.TrimSpace(key), Value: value})
	}
	values, result, problems := calculator.Answer(pairs)
	if result == nil {
		for _, p := range problems {
			fmt.Fprintln(c.stderr, p.Error())
		}
		return exitWrongUse
	}
	if figure != "" {
		if calculator.Figure == nil {
			return c.fail(fmt.Errorf("%s draws no figure", calculator.Name))
		}
		svg := append(calculator.Figure(values, result).AppendSVG(nil), '\n')
		if err := os.WriteFile(figure, svg, 0o644); err != nil {
			return c.fail(err)
		}
	}
	if asJSON {
		return c.write(append(calc.AppendJSON(nil, values, result), '\n'))
	}
	return c.write(calc.AppendText(nil, values, result))
}

func (c *call) write(b []byte) int {
	if _, err := c.stdout.Write(b); err != nil {
		return c.fail(err)
	}
	return exitFine
}

func listCalculators(w io.Writer) {
	for _, c := range calculators.All {
		fmt.Fprintf(w, "%-16s %s\n", c.Name, c.Question)
	}
	fmt.Fprint(w, "\nbaybook calc NAME says what one takes and gives.\n")
}

func describe(w io.Writer, c *calc.Calculator) {
	fmt.Fprintf(w, "%s: %s\n%s\n\nTakes:\n", c.Name, c.Title, c.Doc)
	for i := range c.Inputs {
		in := &c.Inputs[i]
		fmt.Fprintf(w, "  %-18s %s (%s). %s\n", in.Name, in.Accepts(), in.Default, in.Help)
	}
	fmt.Fprint(w, "\nGives:\n")
	for i := range c.Outputs {
		o := &c.Outputs[i]
		fmt.Fprintf(w, "  %-18s %s", o.Name, o.Label)
		if o.Unit != "" {
			fmt.Fprintf(w, ", %s", calc.ShownUnit(o.Unit))
		}
		if o.Help != "" {
			fmt.Fprintf(w, ": %s", o.Help)
		}
		fmt.Fprintln(w)
	}
	for _, part := range []struct {
		head  string
		lines []string
	}{{"Limits", c.Limits}, {"Cautions", c.Cautions}} {
		fmt.Fprintf(w, "\n%s:\n", part.head)
		for _, l := range part.lines {
			fmt.Fprintf(w, "  - %s\n", l)
		}
	}
	fmt.Fprint(w, "\nSources:\n")
	for _, s := range c.Sources {
		fmt.Fprintf(w, "  - %s", s.Text)
		if s.Standing != "" {
			fmt.Fprintf(w, " (%s)", s.Standing)
		}
		fmt.Fprintln(w)
	}
}
