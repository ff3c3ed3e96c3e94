package main

import (
	"bytes"
	"strings"
)

// noticesFile is what the program and the site carry; a test holds it against
// the module cache.
const noticesFile = "theme/notices.txt"

// notices are the license texts of all parts, each under its name.
func notices(root string) ([]byte, error) {
	all, err := parts(root)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString("The program baybook and the pages that it makes carry parts of others.\nTheir licenses follow, each under the name of its part.\n")
	for _, p := range all {
		title := strings.TrimSpace(p.Name + " " + p.Version)
		b.WriteString("\n" + strings.Repeat("=", 72) + "\n" + title + "\n" + strings.Repeat("=", 72) + "\n")
		for _, text := range p.Texts {
			b.WriteString("\n" + strings.TrimSpace(text) + "\n")
		}
	}
	return b.Bytes(), nil
}
