package browsertest

import (
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"baybook/calculators/calctest"
)

// validator is the HTML validator that npm ci brings into theme/.
const validator = "../../theme/node_modules/html-validate/bin/html-validate.mjs"

// validRules are the validator's own, by the WHATWG HTML standard and WCAG,
// less those that are a matter of taste or of size, each with its reason.
var validRules = map[string]any{
	"root":    true,
	"extends": []string{"html-validate:standard", "html-validate:document", "html-validate:a11y"},
	"rules": map[string]string{
		"no-trailing-whitespace":  "off", // the minifier's business
		"require-sri":             "off", // the files are the site's own, and opened from a folder they cannot be checked
		"wcag/h32":                "off", // the search answers as one types; Enter sends it
		"no-implicit-button-type": "off", // a button that sends its form is the standard's default
		"prefer-native-element":   "off", // a table that scrolls is a region within the section of its heading
		"unique-landmark":         "off", // axe-core judges landmarks, in the page as it is shown
		"no-raw-characters":       "off", // a raw > in text is valid (WHATWG HTML, section 13.1.3)
		"long-title":              "off", // a title says number, name and book
	},
}

// TestEveryPageIsValid validates every page of the shipped book.
func TestEveryPageIsValid(t *testing.T) {
	t.Parallel()
	if _, err := os.Stat(validator); err != nil {
		calctest.Missing(t, "the HTML validator is not there; run npm ci in theme/")
	}
	dir := shipped(t)
	config := filepath.Join(t.TempDir(), "valid.json")
	rules, err := json.Marshal(validRules)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(config, rules, 0o644); err != nil {
		t.Fatal(err)
	}
	script, err := filepath.Abs(validator)
	if err != nil {
		t.Fatal(err)
	}
	// One page that is wrong, so that a validator that finds nothing fails.
	wrong := filepath.Join(t.TempDir(), "wrong.html")
	if err := os.WriteFile(wrong, []byte(`<!doctype html><html lang="en"><head><title>x</title></head><body><p id="a b"></body></html>`), 0o644); err != nil {
		t.Fatal(err)
	}
	arguments := []string{script, "--config", config, "--formatter", "json", wrong}
	pages := 0
	err = fs.WalkDir(os.DirFS(dir), ".", func(name string, _ fs.DirEntry, err error) error {
		if filepath.Ext(name) == ".html" {
			arguments = append(arguments, filepath.Join(dir, name))
			pages++
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	works := false
	for _, r := range validated(t, arguments) {
		for _, m := range r.Messages {
			if r.FilePath == wrong {
				works = true
				continue
			}
			t.Errorf("%s:%d:%d: %s (%s)", strings.TrimPrefix(r.FilePath, dir), m.Line, m.Column, m.Message, m.RuleID)
		}
	}
	if !works || pages < 50 {
		t.Errorf("the validator found the wrong page wrong: %v; %d pages", works, pages)
	}
}

// A validity is what the validator finds in one file.
type validity struct {
	FilePath string
	Messages []struct {
		RuleID, Message string
		Line, Column    int
	}
}

// validated runs the validator under Node. It ends with an error code where it
// finds something, which is no failure here.
func validated(t *testing.T, arguments []string) []validity {
	t.Helper()
	out, err := exec.Command("node", arguments...).Output()
	var ended *exec.ExitError
	if err != nil && !errors.As(err, &ended) {
		t.Fatal(err)
	}
	var results []validity
	if err := json.Unmarshal(out, &results); err != nil {
		t.Fatalf("%v: %.300s", err, out)
	}
	return results
}
