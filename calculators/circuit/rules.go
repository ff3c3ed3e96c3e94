package circuit
type Rule struct{Name string}
func ruleNamed(string) *Rule { return nil }
func RuleNames() []string { return nil }
