package rule

import (
	"strings"
	"testing"

	"baybook/calculators/circuit/judge"
)

// TestEveryCircuitRuleIsPassedOn compares the rules here with those of package
// judge, both ways.
func TestEveryCircuitRuleIsPassedOn(t *testing.T) {
	here := make(map[string]bool)
	for _, r := range Checks {
		if name, ok := strings.CutPrefix(r.Name, "circuit-"); ok {
			here[name] = true
		}
	}
	for _, name := range judge.RuleNames() {
		if !here[name] {
			t.Errorf("what is judged by %s reaches no rule", name)
		}
		delete(here, name)
	}
	for name := range here {
		t.Errorf("circuit-%s passes on a rule that there is not", name)
	}
}
