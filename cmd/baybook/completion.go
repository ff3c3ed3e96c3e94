package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"baybook/calculators"
	"baybook/calculators/calc"
	"baybook/calculators/circuit/report"
	"baybook/site"
)

var completionCommand = &command{
	name: "completion", use: "bash|zsh|fish", short: "print what lets a shell complete baybook's words",
	long: `
Prints a script for one shell. Load it where the shell starts:

  bash:  baybook completion bash >~/.local/share/bash-completion/completions/baybook
  zsh:   baybook completion zsh >~/.zfunc/_baybook    (with fpath+=~/.zfunc before compinit)
  fish:  baybook completion fish >~/.config/fish/completions/baybook.fish

Commands, flags, calculators, rules, lists and schemas are completed; folders and
files by the shell itself.`,
	run: completion,
}

func completion(_ context.Context, c *call) int {
	set, _ := c.flags()
	if code, done := c.parse(set); done {
		return code
	}
	var names []string
	for _, s := range shells {
		if set.NArg() == 1 && s.name == set.Arg(0) {
			var b bytes.Buffer
			s.write(&b, wordsOf(c.all))
			return c.write(b.Bytes())
		}
		names = append(names, s.name)
	}
	return c.fail(fmt.Errorf("name one shell: %s", strings.Join(names, ", ")))
}

// shells are the ones that scripts can be written for.
var shells = []struct {
	name  string
	write func(io.Writer, []commandWords)
}{{"bash", writeBash}, {"zsh", writeZsh}, {"fish", writeFish}}

// commandWords are the words that may follow a command's name.
type commandWords struct {
	name, short string
	flags       []flagWords
	// words stand without a flag before them.
	words []string
	// folder is true where a folder or file may stand.
	folder bool
}

// flagWords are the values of a flag; without any it takes a file or nothing.
type flagWords struct {
	name   string
	values []string
}

// wordsOf reads each command's flags off its own help, so that none is told
// twice.
func wordsOf(list []*command) []commandWords {
	values := flagValues()
	var out []commandWords
	for _, cmd := range list {
		w := commandWords{name: cmd.name, short: cmd.short, words: follow(cmd.name)}
		w.folder = len(w.words) == 0
		var help bytes.Buffer
		cmd.run(context.Background(), &call{command: cmd, arguments: []string{"-h"}, stdin: strings.NewReader(""), stdout: &help, stderr: io.Discard})
		_, flags, _ := strings.Cut(help.String(), "\nFlags:\n")
		for line := range strings.Lines(flags) {
			if rest, ok := strings.CutPrefix(line, "  -"); ok {
				name := strings.Fields(rest)[0]
				w.flags = append(w.flags, flagWords{"-" + name, values[name]})
			}
		}
		out = append(out, w)
	}
	return out
}

// flagValues are the words that a flag of this name takes.
func flagValues() map[string][]string {
	var rules []string
	for _, r := range site.Rules() {
		rules = append(rules, r.Name)
	}
	return map[string][]string{"format": {"text", "json", "sarif"}, "explain": rules, "list": report.ListNames()}
}

// follow are the words that may stand behind a command.
func follow(name string) []string {
	switch name {
	case "calc":
		var names []string
		for _, c := range calculators.All {
			names = append(names, c.Name)
		}
		return names
	case "schema":
		var names []string
		all, _ := schemas() // carried inside the program
		for _, s := range all {
			names = append(names, s.Name)
		}
		return names
	case "completion":
		return []string{"bash", "zsh", "fish"}
	}
	return nil
}

// inputWords are the inputs of a calculator with the equals sign that follows.
func inputWords(c *calc.Calculator) []string {
	var out []string
	for i := range c.Inputs {
		out = append(out, c.Inputs[i].Name+"=")
	}
	return out
}

func writeBash(w io.Writer, list []commandWords) {
	fmt.Fprint(w, "_baybook() {\n\tlocal word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}\n\tCOMPREPLY=()\n\tif ((COMP_CWORD == 1)); then\n")
	fmt.Fprintf(w, "\t\tCOMPREPLY=($(compgen -W %q -- \"$word\"))\n\t\treturn\n\tfi\n\tcase ${COMP_WORDS[1]} in\n", joined(names(list)))
	for _, c := range list {
		fmt.Fprintf(w, "\t%s)\n\t\tcase $before in\n", c.name)
		var flags []string
		for _, f := range c.flags {
			flags = append(flags, f.name)
			if len(f.values) > 0 {
				fmt.Fprintf(w, "\t\t%s) COMPREPLY=($(compgen -W %q -- \"$word\")); return ;;\n", f.name, joined(f.values))
			}
		}
		if c.name == "calc" {
			for _, calculator := range calculators.All {
				fmt.Fprintf(w, "\t\t%s) compopt -o nospace; COMPREPLY=($(compgen -W %q -- \"$word\")); return ;;\n", calculator.Name, joined(inputWords(calculator)))
			}
		}
		fmt.Fprintf(w, "\t\tesac\n\t\tif [[ $word == -* ]]; then COMPREPLY=($(compgen -W %q -- \"$word\")); return; fi\n", joined(flags))
		if c.folder {
			fmt.Fprint(w, "\t\tcompopt -o default\n")
		} else {
			fmt.Fprintf(w, "\t\tCOMPREPLY=($(compgen -W %q -- \"$word\"))\n", joined(c.words))
		}
		fmt.Fprint(w, "\t\t;;\n")
	}
	fmt.Fprint(w, "\tesac\n}\ncomplete -F _baybook baybook\n")
}

func writeZsh(w io.Writer, list []commandWords) {
	fmt.Fprint(w, "#compdef baybook\n\nif ((CURRENT == 2)); then\n\tlocal -a known=(\n")
	for _, c := range list {
		fmt.Fprintf(w, "\t\t%s\n", shellQuote(c.name+":"+c.short))
	}
	fmt.Fprint(w, "\t)\n\t_describe command known\n\treturn\nfi\ncase $words[2] in\n")
	for _, c := range list {
		fmt.Fprintf(w, "%s)\n\tcase $words[CURRENT-1] in\n", c.name)
		var flags []string
		for _, f := range c.flags {
			flags = append(flags, f.name)
			if len(f.values) > 0 {
				fmt.Fprintf(w, "\t%s) compadd -- %s; return ;;\n", f.name, joined(f.values))
			}
		}
		if c.name == "calc" {
			for _, calculator := range calculators.All {
				fmt.Fprintf(w, "\t%s) compadd -S '' -- %s; return ;;\n", calculator.Name, joined(inputWords(calculator)))
			}
		}
		fmt.Fprintf(w, "\tesac\n\tif [[ $PREFIX == -* ]]; then compadd -- %s; return; fi\n", joined(flags))
		if c.folder {
			fmt.Fprint(w, "\t_files\n")
		} else {
			fmt.Fprintf(w, "\tcompadd -- %s\n", joined(c.words))
		}
		fmt.Fprint(w, "\t;;\n")
	}
	fmt.Fprint(w, "esac\n")
}

func writeFish(w io.Writer, list []commandWords) {
	for _, c := range list {
		fmt.Fprintf(w, "complete -c baybook -n __fish_use_subcommand -f -a %s -d %s\n", c.name, shellQuote(c.short))
		on := shellQuote("__fish_seen_subcommand_from " + c.name)
		for _, f := range c.flags {
			fmt.Fprintf(w, "complete -c baybook -n %s -o %s", on, strings.TrimPrefix(f.name, "-"))
			if len(f.values) > 0 {
				fmt.Fprintf(w, " -x -a %s", shellQuote(joined(f.values)))
			}
			fmt.Fprintln(w)
		}
		if !c.folder {
			fmt.Fprintf(w, "complete -c baybook -n %s -f -a %s\n", on, shellQuote(joined(c.words)))
		}
	}
}

func names(list []commandWords) []string {
	var out []string
	for _, c := range list {
		out = append(out, c.name)
	}
	return out
}

// joined puts words behind one another, in order.
func joined(words []string) string {
	words = slices.Clone(words)
	slices.Sort(words)
	return strings.Join(words, " ")
}

// shellQuote quotes a word for a POSIX shell, and for fish.
func shellQuote(s string) string {
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}
