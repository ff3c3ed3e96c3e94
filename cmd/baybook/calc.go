package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"baybook/calculators"
	"baybook/calculators/calc"
	"baybook/site/sheet"
)

var calcCommand = &command{
	name: "calc", use: "[NAME [input=value ...]]", short: "compute at the prompt with the book's own formulas",
	long: `
Without a name, lists the calculators. With a name alone, says what it takes
and gives. With inputs, computes; inputs left out stand at their defaults.

  baybook calc wire-drop current=8A length=4m
  baybook calc wire-drop current=8A wire=2.5mm2 -json
  baybook calc hinge-slack swing=70 -figure loop.svg
  baybook calc 'calc:wire-drop?current=8A&length=4m#drop'

The last is a link as a sheet has it. With -content DIR, prices start from that
book's shop.yaml. A verdict of stop ends with exit code 1.

A number carries its unit (4m, 13ft, 250mA, 3%); a bare one has the input's own.
A wire is never bare: say 16AWG or 1.5mm2. Use a decimal point.`,
	run: calculate,
}

// A prompt is one use of the calc command.
type prompt struct {
	*call
	asJSON bool
	figure string
	list   []*calc.Calculator
}

func calculate(_ context.Context, c *call) int {
	set, content := c.flags()
	p := &prompt{call: c, list: calculators.All}
	set.BoolVar(&p.asJSON, "json", false, "print one JSON object")
	set.StringVar(&p.figure, "figure", "", "write the result's drawing to this SVG `file`")
	var words []string
	c.arguments, words = sortWords(c.arguments)
	if code, done := c.parse(set); done {
		return code
	}
	words = append(words, set.Args()...)
	given := false
	set.Visit(func(f *flag.Flag) { given = given || f.Name == "content" })
	if given {
		shop, faults, err := sheet.LoadShop(os.DirFS(*content))
		if err != nil {
			return p.refuse(fmt.Errorf("%s has no %s, from which prices would start: %w", *content, sheet.ShopFile, err))
		}
		if len(faults) > 0 {
			return p.refuse(fmt.Errorf("%s/%s: %s; %s", *content, sheet.ShopFile, faults[0].Message, faults[0].Do))
		}
		p.list = shop.Calculators(p.list)
	}
	return p.answer(words)
}

// answer does what the words ask for.
func (p *prompt) answer(words []string) int {
	if len(words) == 0 {
		if p.asJSON {
			return p.write(append(calc.AppendList(nil, p.list), '\n'))
		}
		listCalculators(p.stdout, p.list)
		return exitFine
	}
	name, pairs, err := readWords(words)
	if err != nil {
		return p.refuse(err)
	}
	calculator := p.named(name)
	if calculator == nil {
		msg := fmt.Sprintf("there is no calculator %q", name)
		if near := calc.Suggest(name, p.list); len(near) > 0 {
			msg += "; did you mean " + strings.Join(near, " or ") + "?"
		}
		return p.refuse(errors.New(msg + " (baybook calc lists them)"))
	}
	if len(words) == 1 && len(pairs) == 0 && p.figure == "" {
		if p.asJSON {
			return p.write(append(calc.AppendDescription(nil, calculator), '\n'))
		}
		describe(p.stdout, calculator)
		return exitFine
	}
	return p.compute(calculator, pairs)
}

func (p *prompt) named(name string) *calc.Calculator {
	for _, c := range p.list {
		if c.Name == name {
			return c
		}
	}
	return nil
}

// readWords reads a calculator's name with its inputs, or a link as a sheet
// has it: calc:wire-drop?current=8A&length=4m#drop. What stands behind # is
// passed over, for all outputs are printed.
func readWords(words []string) (name string, pairs []calc.Pair, err error) {
	link, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimSpace(words[0]), "calc:"), "#")
	name, query, _ := strings.Cut(link, "?")
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		return name, nil, errors.New(msg)
	}
	for _, w := range words[1:] {
		key, value, ok := strings.Cut(w, "=")
		if !ok {
			return name, nil, fmt.Errorf("%q is not input=value", w)
		}
		pairs = append(pairs, calc.Pair{Key: strings.TrimSpace(key), Value: value})
	}
	return name, pairs, nil
}

// refuse says what is wrong with the words, as JSON where that is asked for.
func (p *prompt) refuse(err error) int {
	if p.asJSON {
		p.problems([]*calc.Problem{calc.NewProblem("", err.Error())})
		return exitWrongUse
	}
	return p.fail(err)
}

// problems writes problems to standard error.
func (p *prompt) problems(list []*calc.Problem) {
	if p.asJSON {
		_, _ = p.stderr.Write(append(calc.AppendProblems(nil, list), '\n'))
		return
	}
	for _, problem := range list {
		fmt.Fprintln(p.stderr, problem.Error())
	}
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

// compute runs a calculator and writes its answer. A verdict of stop ends
// with exit code 1, so that a script notices.
func (p *prompt) compute(calculator *calc.Calculator, pairs []calc.Pair) int {
	values, result, problems := calculator.Answer(pairs)
	if result == nil {
		p.problems(problems)
		return exitWrongUse
	}
	if p.figure != "" {
		if calculator.Figure == nil {
			return p.refuse(fmt.Errorf("%s draws no figure", calculator.Name))
		}
		svg := append(calculator.Figure(values, result).AppendSVG(nil), '\n')
		if err := os.WriteFile(p.figure, svg, 0o644); err != nil {
			return p.refuse(err)
		}
	}
	text := calc.AppendText(nil, values, result)
	if p.asJSON {
		text = append(calc.AppendJSON(nil, values, result), '\n')
	}
	if code := p.write(text); code != exitFine || result.Verdict != calc.Stop {
		return code
	}
	return exitFindings
}

func (c *call) write(b []byte) int {
	if _, err := c.stdout.Write(b); err != nil {
		return c.fail(err)
	}
	return exitFine
}

func listCalculators(w io.Writer, list []*calc.Calculator) {
	for _, c := range list {
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
