package circuit
type Rule struct{Name string}
func ruleNamed(string) *Rule { return &Rule{} }
func RuleNames() []string { return nil }
