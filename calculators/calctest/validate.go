package calctest

import (
	"errors"
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strings"

	"baybook/calculators/calc"
)

var (
	kebab = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
	snake = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
)

// standings are what a source may say about how sure it is.
var standings = []string{"", "read as restated", "common practice, no source", "from memory"}

// Validate checks the whole list of calculators: names, units, defaults,
// sources, figures, and a published value for each in the folder published.
// It returns every fault.
func Validate(list []*calc.Calculator, published fs.FS) error {
	var faults []error
	seen := make(map[string]bool)
	for _, c := range list {
		before := len(faults)
		add := func(format string, a ...any) {
			faults = append(faults, fmt.Errorf(c.Name+": "+format, a...))
		}
		if seen[c.Name] {
			add("listed twice")
		}
		seen[c.Name] = true
		validateWords(c, add)
		validateInputs(c, add)
		validateOutputs(c, add)
		if len(faults) == before { // a broken list may panic when it computes
			validateDefault(c, add)
		}
		if rows, err := ReadPublished(published, c.Name); err != nil {
			add("%v", err)
		} else if len(rows) == 0 {
			add("no published value")
		}
	}
	files, _ := fs.Glob(published, "*.csv")
	for _, f := range files {
		if name := strings.TrimSuffix(f, ".csv"); !seen[name] {
			faults = append(faults, fmt.Errorf("%s: there is no calculator %s", f, name))
		}
	}
	return errors.Join(faults...)
}

func validateWords(c *calc.Calculator, add func(string, ...any)) {
	if !kebab.MatchString(c.Name) {
		add("the name is not lower-kebab")
	}
	if c.Title == "" || !strings.HasSuffix(c.Question, "?") || !strings.HasSuffix(c.Doc, ".") {
		add("wants a title, a question with its mark and a doc of whole sentences")
	}
	if len(c.Sources) == 0 || len(c.Limits) == 0 || len(c.Cautions) == 0 {
		add("wants sources, limits and cautions")
	}
	for _, s := range c.Sources {
		if s.Text == "" || !slices.Contains(standings, s.Standing) {
			add("source %q has the standing %q, want one of %q", s.Text, s.Standing, standings)
		}
	}
	if slices.Contains(drawn, c.Name) && c.Figure == nil {
		add("must have a figure")
	}
	if c.Output(c.Decides) < 0 {
		add("the output %q that decides is not among its outputs", c.Decides)
	}
	if c.Run == nil {
		add("has nothing to run")
	}
}

func validateInputs(c *calc.Calculator, add func(string, ...any)) {
	seen := make(map[string]bool)
	for i := range c.Inputs {
		in := &c.Inputs[i]
		if seen[in.Name] || !snake.MatchString(in.Name) {
			add("input %q is there twice or not lower_snake", in.Name)
		}
		seen[in.Name] = true
		if in.Label == "" || in.Help == "" {
			add("input %s wants a label and help", in.Name)
		}
		if _, ok := calc.LookupUnit(in.Unit); !ok {
			add("input %s has the unit %q, which is not known", in.Name, in.Unit)
			continue // nothing of it can be read
		}
		switch {
		case in.Kind == calc.Word:
			if len(in.Words) < 2 {
				add("input %s wants words to choose from", in.Name)
			}
		case len(in.OneOf) > 0:
			if !slices.IsSorted(in.OneOf) {
				add("the choices of input %s do not rise", in.Name)
			}
		case !(in.Min < in.Max):
			add("input %s has no range", in.Name)
		}
		if (in.Kind == calc.Numbers || in.Kind == calc.Bundle) && in.Most < 1 {
			add("input %s takes no item", in.Name)
		}
		if _, msg := in.Read(in.Default); msg != "" {
			add("the default of input %s cannot be read: %s", in.Name, msg)
		}
	}
}

func validateOutputs(c *calc.Calculator, add func(string, ...any)) {
	seen := make(map[string]bool)
	for i := range c.Outputs {
		o := &c.Outputs[i]
		if seen[o.Name] || !snake.MatchString(o.Name) || o.Name == "verdict" {
			add("output %q is there twice, not lower_snake or taken", o.Name)
		}
		seen[o.Name] = true
		if c.Input(o.Name) != nil {
			add("output %s has the name of an input, so a template could mean either", o.Name)
		}
		if o.Label == "" {
			add("output %s wants a label", o.Name)
		}
		if _, ok := calc.LookupUnit(o.Unit); !ok || o.Text && o.Unit != "" {
			add("output %s has the unit %q, which is not known or not its own", o.Name, o.Unit)
		}
	}
	if len(c.Outputs) == 0 {
		add("gives nothing")
	}
}

// validateDefault computes with nothing given, as a page does before anyone
// has typed.
func validateDefault(c *calc.Calculator, add func(string, ...any)) {
	_, r, problems := c.Answer(nil)
	if r == nil {
		add("does not compute with its defaults: %v", problems[0])
		return
	}
	if len(r.Working) == 0 {
		add("shows no working")
	}
	if err := Sound(c, ""); err != nil {
		add("%v", err)
	}
}
