package rule

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"baybook/site/check"
)

var ruleValue = regexp.MustCompile(`(?m)^var \w+ = &check.Rule\{`)

// TestEveryRuleHasItsFile checks that each rule stands in the file of its
// name, and that no rule that is written is left out of the list; those of the
// loader stand in loader_rules.go and circuit.go.
func TestEveryRuleHasItsFile(t *testing.T) {
	listed := make(map[string]bool)
	for _, r := range Checks {
		if strings.HasPrefix(r.Name, circuitPrefix) {
			continue // its own room holds it: calculators/circuit/judge
		}
		file := strings.ReplaceAll(r.Name, "-", "_") + ".go"
		listed[file] = true
		content, err := os.ReadFile(file)
		if err != nil {
			t.Errorf("%s does not stand in %s", r.Name, file)
			continue
		}
		if strings.Count(string(content), "= &check.Rule{") != 1 {
			t.Errorf("%s holds more than its rule", file)
		}
	}
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := f.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || name == "loader_rules.go" || name == "circuit.go" || listed[name] {
			continue
		}
		content, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if ruleValue.Match(content) {
			t.Errorf("the rule in %s is not in the list", name)
		}
	}
}

// TestSafetyIsFirm checks that no waiver sets aside a rule that keeps people
// from harm.
func TestSafetyIsFirm(t *testing.T) {
	for _, r := range Safety {
		if check.Waivable(r) {
			t.Errorf("a waiver can set %s aside", r.Name)
		}
	}
}
