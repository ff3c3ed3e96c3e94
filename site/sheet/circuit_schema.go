package sheet

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
)

// circuitForm is the form of a circuit's YAML, made of the classes and keys by
// which it is read.
func circuitForm() form {
	f := form{Type: "object", Properties: map[string]form{"title": oneText, "wrong": manyNames("The rules that the drawing breaks on purpose.")}, Closed: new(bool)}
	classes := circuit.Classes()
	for i := range classes {
		f.Properties[classes[i].Section] = sectionForm(&classes[i])
	}
	states, limits := form{Type: "object", Properties: make(map[string]form), Closed: new(bool)}, form{Type: "object", Properties: make(map[string]form), Closed: new(bool)}
	for _, k := range circuit.StateKeys() {
		states.Properties[k.Name] = form{Type: anyValue, Description: k.Help}
		if k.ListsParts {
			states.Properties[k.Name] = manyNames(k.Help)
		}
	}
	for _, in := range circuit.LimitKeys() {
		limits.Properties[in.Name] = valueForm(&in)
	}
	f.Properties["states"], f.Properties["limits"] = named(states), limits
	return f
}

// anyValue is what a quantity may be in YAML: 5 A is a text, 5 a number, yes a
// truth for some editors.
var anyValue = []string{"string", "number", "boolean"}

// sectionForm is the form of a section: parts by their names, or a list.
func sectionForm(c *circuit.Class) form {
	part := form{Type: []string{"object", "null"}, Properties: make(map[string]form), Closed: new(bool)}
	for _, list := range c.Keys {
		for i := range list {
			p := &list[i]
			part.Properties[p.Name] = valueForm(&p.Input)
			if p.Required {
				part.Required = append(part.Required, p.Name)
			}
		}
	}
	f := named(part)
	f.Description = c.Doc
	return f
}

// named is an object with names of the writer's own; a list takes the same.
func named(f form) form {
	return form{Type: []string{"object", "array", "null"}, Patterns: map[string]form{"": f}}
}

// valueForm is the form of one key's value.
func valueForm(in *calc.Input) form {
	return form{Type: anyValue, Description: keyHelp(in)}
}

// keyHelp is the help of a key with its unit, its words and its default.
func keyHelp(in *calc.Input) string {
	help := in.Help
	if in.Unit != "" {
		help += " In " + in.Unit + "."
	}
	for i, w := range in.Words {
		if i == 0 {
			help += " One of "
		} else {
			help += ", "
		}
		help += w
		if i == len(in.Words)-1 {
			help += "."
		}
	}
	if in.Default != "" {
		help += " Else " + in.Default + "."
	}
	return help
}

func manyNames(help string) form {
	return form{Type: []string{"array", "string", "null"}, Items: &oneText, Description: help}
}
