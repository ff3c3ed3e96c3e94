package sheet

import (
	"encoding/json"
	"strconv"
)

// A form is what a value looks like, in the terms of JSON Schema (2020-12).
// It is made of the same tables by which the files are read, so that an editor
// and the loader ask for the same.
type form struct {
	Schema      string          `json:"$schema,omitempty"`
	Title       string          `json:"title,omitempty"`
	Description string          `json:"description,omitempty"`
	Type        any             `json:"type,omitempty"`
	Enum        []string        `json:"enum,omitempty"`
	Pattern     string          `json:"pattern,omitempty"`
	Minimum     *int            `json:"minimum,omitempty"`
	Items       *form           `json:"items,omitempty"`
	Properties  map[string]form `json:"properties,omitempty"`
	Patterns    map[string]form `json:"patternProperties,omitempty"`
	Required    []string        `json:"required,omitempty"`
	// Closed is false where keys beyond the properties are refused.
	Closed *bool  `json:"additionalProperties,omitempty"`
	AllOf  []rule `json:"allOf,omitempty"`
	Const  string `json:"const,omitempty"`
}

// A rule is what a sheet of one kind must or must not have beside.
type rule struct {
	If   form `json:"if"`
	Then form `json:"then"`
}

// The forms that values have. YAML reads a plain 17 as a number, and the
// loader takes it for the text that it is.
var (
	oneText     = form{Type: []string{"string", "number"}}
	oneName     = form{Type: "string", Pattern: "^[a-z0-9]+(-[a-z0-9]+)*$"}
	manyTexts   = listOf(oneText)
	oneDay      = form{Type: "string", Pattern: `^\d{4}-\d{2}-\d{2}$`}
	wholeNumber = form{Type: "integer", Minimum: new(int)}
)

func oneOf(words ...string) form { return form{Type: "string", Enum: words} }

func pattern(p string) form { return form{Type: "string", Pattern: p} }

// wordsUpTo is a text of at most so many words.
func wordsUpTo(most int) form {
	return pattern(`^\s*\S+(\s+\S+){0,` + strconv.Itoa(most-1) + `}\s*$`)
}

// listOf is a list; an empty value is an empty list.
func listOf(f form) form { return form{Type: []string{"array", "null"}, Items: &f} }

// object is an entry with the keys of a table and no others.
func object[T any](fields []field[T]) form {
	f := form{Type: "object", Properties: make(map[string]form), Closed: new(bool)}
	for _, x := range fields {
		holds := x.holds
		holds.Description = x.doc
		f.Properties[x.name] = holds
		if x.required {
			f.Required = append(f.Required, x.name)
		}
	}
	return f
}

// A Schema is the JSON Schema of one kind of file, for editors.
type Schema struct {
	// Name is what the schema is asked for by; File is what it describes.
	Name, File string
	JSON       []byte
}

// Schemas lists the schemas of the front matter and of the data files.
func Schemas() []Schema {
	return []Schema{
		schemaOf("front-matter", "the lines between --- at the top of every sheet", frontForm()),
		schemaOf("hazards", RegisterFile, listOf(object(hazardFields))),
		schemaOf("glossary", GlossaryFile, listOf(object(termFields))),
		schemaOf("shop", ShopFile, object(shopFields)),
		schemaOf("areas", AreasFile, object(areasFields)),
		schemaOf("limits", LimitFile, listOf(object(limitFields))),
		schemaOf("words", WordsFile, object(wordFields)),
		schemaOf("work", WorkFile, object(workFields)),
		schemaOf("interface", InterfaceFile, object(interfaceFields)),
		schemaOf("circuit", "a fenced block named circuit, or a YAML file that is a circuit", circuitForm()),
	}
}

// frontForm is the form of front matter, with what goes for one kind alone.
func frontForm() form {
	f := form{Type: "object", Properties: make(map[string]form), Closed: new(bool)}
	procedure := rule{If: ofKind(Procedure)}
	for _, k := range keys {
		holds := k.holds
		holds.Description = k.doc
		f.Properties[k.name] = holds
		if k.required {
			f.Required = append(f.Required, k.name)
		}
		if k.neededBy(Procedure) && !k.required {
			procedure.Then.Required = append(procedure.Then.Required, k.name)
		}
		if k.only != "" {
			other := ofKind(k.only)
			f.AllOf = append(f.AllOf, rule{If: form{Required: []string{k.name}}, Then: form{Properties: other.Properties}})
		}
	}
	f.AllOf = append(f.AllOf, procedure)
	return f
}

// ofKind is the form of front matter of one kind.
func ofKind(k Kind) form {
	return form{Properties: map[string]form{"kind": {Const: string(k)}}, Required: []string{"kind"}}
}

func schemaOf(name, file string, f form) Schema {
	f.Schema, f.Title = "https://json-schema.org/draft/2020-12/schema", "Baybook: "+file
	content, err := json.MarshalIndent(f, "", "  ")
	if err != nil {
		panic("sheet: a schema cannot be written: " + err.Error())
	}
	return Schema{Name: name, File: file, JSON: append(content, '\n')}
}
