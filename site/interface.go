package site

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"baybook/site/finding"
	"baybook/site/render"
	"baybook/site/sheet"
	"baybook/theme"

	"go.yaml.in/yaml/v3"
)

// WriteInterface writes a book's interface.yaml with every word that the pages
// say: those that the book has with what stands for them, the others to be
// filled in. The error says that a file cannot be read, or is not whole.
func WriteInterface(w io.Writer, content fs.FS) error {
	words, err := render.TemplateWords(theme.Files)
	if err != nil {
		return err
	}
	has := &sheet.Interface{}
	text, err := fs.ReadFile(content, sheet.InterfaceFile)
	switch {
	case err == nil:
		var wrong finding.List
		has = sheet.ReadInterface(finding.NewSource(sheet.InterfaceFile, text), func(f finding.Finding) { wrong = append(wrong, f) })
		if err := wrong.Err(); err != nil {
			return err
		}
	case !errors.Is(err, fs.ErrNotExist):
		return err
	}
	as := make(map[string]string)
	for _, word := range has.Words {
		as[word.Say] = word.As
	}
	out := &strings.Builder{}
	out.WriteString("# The words of the pages. say: is what they say in English; write behind as:\n# what they are to say, or leave it out.\n\n")
	for _, line := range [...][2]string{{"date", has.Date}, {"price", has.Price}, {"point", has.Point}, {"group", has.Group}} {
		if line[1] != "" {
			fmt.Fprintf(out, "%s: %s\n", line[0], quoted(line[1]))
		}
	}
	if has.Months != nil {
		out.WriteString("months:\n")
		for _, month := range has.Months {
			fmt.Fprintf(out, "  - %s\n", quoted(month))
		}
	}
	out.WriteString("words:\n")
	for _, word := range words {
		fmt.Fprintf(out, "  - say: %s\n", quoted(word))
		if as[word] != "" {
			fmt.Fprintf(out, "    as: %s\n", quoted(as[word]))
		} else {
			out.WriteString("    # as:\n")
		}
	}
	_, err = io.WriteString(w, out.String())
	return err
}

// quoted is a text as YAML has it, on one line.
func quoted(s string) string {
	out, err := yaml.Marshal(&yaml.Node{Kind: yaml.ScalarNode, Style: yaml.DoubleQuotedStyle, Value: s})
	if err != nil {
		return `""` // no text makes one
	}
	return strings.ReplaceAll(strings.TrimSpace(string(out)), "\n ", " ")
}
