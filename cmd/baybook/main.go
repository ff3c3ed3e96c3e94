// Command baybook builds a bay's book: it checks the sheets, computes their
// numbers, and publishes them as a static site.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"baybook/calculators/calc"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// Exit codes of every command.
const (
	exitFine     = 0
	exitFindings = 1
	exitWrongUse = 2
)

// A command is one thing that baybook does.
type command struct {
	name string
	// use is the line of use behind the name; short one line of what it does;
	// long what a tech reads after -h.
	use, short, long string
	run              func(ctx context.Context, c *call) int
}

// commands are all of them, in the order in which a person needs them.
var commands = []*command{
	beginCommand,
	serveCommand,
	checkCommand,
	buildCommand,
	calcCommand,
	circuitCommand,
	schemaCommand,
	interfaceCommand,
	releaseCommand,
	noticesCommand,
	versionCommand,
	completionCommand,
}

// A call is one run of a command: what was typed and where to answer.
type call struct {
	command *command
	// all are the commands that there are.
	all            []*command
	arguments      []string
	stdin          io.Reader
	stdout, stderr io.Writer
}

// run finds the command and runs it.
func run(ctx context.Context, arguments []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(arguments) == 0 || isHelp(arguments[0]) || arguments[0] == "help" && len(arguments) == 1 {
		usage(stdout)
		if len(arguments) == 0 {
			return exitWrongUse
		}
		return exitFine
	}
	name, rest := arguments[0], arguments[1:]
	if name == "help" {
		name, rest = arguments[1], []string{"-h"}
	}
	var names []string
	for _, c := range commands {
		if c.name == name {
			return c.run(ctx, &call{command: c, all: commands, arguments: rest, stdin: stdin, stdout: stdout, stderr: stderr})
		}
		names = append(names, c.name)
	}
	fmt.Fprintf(stderr, "baybook: there is no command %q", name)
	if near := calc.Nearest(name, names); near != "" {
		fmt.Fprintf(stderr, "; did you mean %s?", near)
	}
	fmt.Fprintf(stderr, "\nbaybook -h lists them.\n")
	return exitWrongUse
}

func isHelp(s string) bool { return s == "-h" || s == "-help" || s == "--help" }

// usage writes what baybook can do.
func usage(w io.Writer) {
	fmt.Fprint(w, "baybook makes a site of a bay's sheets, whose warnings, numbers and wiring are checked first.\n\n")
	for _, c := range commands {
		fmt.Fprintf(w, "  baybook %-34s %s\n", strings.TrimSpace(c.name+" "+c.use), c.short)
	}
	fmt.Fprint(w, "\nDIR is the folder of the sheets (content); -content DIR names it too.\nbaybook COMMAND -h says more. Exit 0: fine. 1: findings. 2: wrong use.\n")
}

// flags makes the command's flag set, with -content and a help text that a
// person can read.
func (c *call) flags() (*flag.FlagSet, *string) {
	set := flag.NewFlagSet(c.command.name, flag.ContinueOnError)
	set.SetOutput(c.stderr)
	set.Usage = func() {
		w := set.Output()
		fmt.Fprintf(w, "baybook %s\n\n%s\n", strings.TrimSpace(c.command.name+" "+c.command.use), strings.TrimSpace(c.command.long))
		fmt.Fprint(w, "\nFlags:\n")
		set.PrintDefaults()
	}
	content := set.String("content", "content", "the `folder` of the sheets")
	return set, content
}

// parse reads the flags; done is true where the command has nothing more to
// do, code then being its exit code.
func (c *call) parse(set *flag.FlagSet) (code int, done bool) {
	for _, a := range c.arguments {
		if isHelp(a) {
			set.SetOutput(c.stdout)
		}
	}
	switch err := set.Parse(c.arguments); {
	case err == flag.ErrHelp:
		return exitFine, true
	case err != nil:
		return exitWrongUse, true
	}
	return exitFine, false
}

// takeFolder reads the folder of the sheets where it is named without -content,
// as in baybook check mybook; flags may follow it.
func takeFolder(set *flag.FlagSet, content *string) error {
	folder := ""
	for set.NArg() > 0 {
		word, rest := set.Arg(0), set.Args()[1:]
		if folder != "" {
			return fmt.Errorf("%q is one word too many; one folder is named, %s", word, folder)
		}
		folder = word
		if err := set.Parse(rest); err != nil {
			return err
		}
	}
	named := false
	set.Visit(func(f *flag.Flag) { named = named || f.Name == "content" })
	switch {
	case folder == "":
	case named:
		return fmt.Errorf("the folder of the sheets is named twice, %s and %s; leave one out", *content, folder)
	default:
		*content = folder
	}
	return nil
}

// fail writes an error for a person.
func (c *call) fail(err error) int {
	fmt.Fprintf(c.stderr, "baybook %s: %v\n", c.command.name, err)
	return exitWrongUse
}

// slow says what the program is about to spend time on.
func (c *call) slow(what string) {
	fmt.Fprintf(c.stderr, "baybook %s: %s\n", c.command.name, what)
}

// interactive reports whether what is written is read on a terminal.
func interactive(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
