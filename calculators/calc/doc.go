// Package calc is the kit that every calculator is made of: quantities with
// units, inputs and outputs, the query grammar, the verdict, and a result as
// text, JSON, markup and drawing.
//
// It runs in the builder, at the prompt and in the browser, and is the reason
// that a formula is written once. It knows no page, no file and no Markdown,
// and imports nothing that would weigh on the browser's download (no fmt, no
// encoding/json, no reflect).
//
// Nothing changes a Calculator, nor Values and a Result once they are made, so
// goroutines may share them. A Drawing, Plot or Labels belongs to the goroutine
// that draws it. A message that a function returns is "" where nothing is wrong.
package calc
