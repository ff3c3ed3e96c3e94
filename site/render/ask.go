package render

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"
)

// live writes a calculator standing in a sheet: its form filled in and its
// result computed, both there before any script runs.
func (r *parts) live(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		l := n.(*sheet.EmbeddedCalculator)
		write(w, calculatorMarkup(calculatorForm{
			calculator: l.Calculator, values: l.Values, result: l.Result, number: l.Number,
			heading: l.Heading, level: 3, root: r.root, named: l.Pairs,
		}))
	}
	return ast.WalkSkipChildren, nil
}

// A calculatorForm is everything that a calculator's markup is made of.
type calculatorForm struct {
	calculator *calc.Calculator
	values     *calc.Values
	result     *calc.Result
	number     int
	heading    string
	level      int
	root       string
	// named are the inputs that the sheet's link gives; the form shows these
	// and folds the others away. Empty: all are shown.
	named []calc.Pair
	// help shows what each input is, on the calculator's own page.
	help bool
}

// calculatorMarkup writes form and result. Field names are those of the query
// grammar, so the script has nothing to translate.
func calculatorMarkup(f calculatorForm) string {
	var b strings.Builder
	id := "calculator-" + strconv.Itoa(f.number)
	heading := "h" + strconv.Itoa(f.level)
	b.WriteString(`<section class="calculator" id="` + id + `" data-calculator="` + f.calculator.Name + `" aria-labelledby="` + id + `-h">`)
	b.WriteString("<" + heading + ` id="` + id + `-h">` + escape(f.heading) + "</" + heading + ">")
	writeDisplay(&b, f.result)
	b.WriteString(`<form class="inputs">`)
	var folded strings.Builder
	for i := range f.calculator.Inputs {
		in := &f.calculator.Inputs[i]
		field := fieldMarkup(id, in, f.values.At(i), f.help)
		if len(f.named) > 0 && !isNamed(f.named, in.Name) {
			folded.WriteString(field)
			continue
		}
		b.WriteString(field)
	}
	if folded.Len() > 0 {
		b.WriteString(`<details class="more"><summary>Other inputs</summary>` + folded.String() + `</details>`)
	}
	b.WriteString(`</form><noscript><p class="plain">Without scripts this page cannot compute. The result below is for the values shown; the working under it lets you do it by hand.</p></noscript>`)
	b.WriteString(`<div class="answer">`)
	b.Write(calc.AppendMarkup(nil, f.values, f.result, f.root))
	b.WriteString(`</div><p class="below">`)
	if !f.help {
		b.WriteString(`<a href="` + f.root + CalculatorPage(f.calculator) + `">Inputs, limits and sources of ` + escape(f.calculator.Name) + `</a>`)
	}
	b.WriteString(`<button type="button" class="share live">Share</button></p></section>`)
	return b.String()
}

// writeDisplay writes what stands above the fields and stays in sight: the
// decisive output, large, and the outcome in words.
func writeDisplay(b *strings.Builder, r *calc.Result) {
	b.WriteString(`<div class="display">`)
	if o, a := r.Decisive(); o != nil {
		b.WriteString(`<p class="decisive" data-shows="` + escape(o.Name) + `"><span>` + escape(o.Label) + `</span><b>` + escape(o.Format(a)) + `</b></p>`)
	}
	b.WriteString(`<p class="sum" role="status">` + escape(calc.Summary(r)) + `</p></div>`)
}

func isNamed(pairs []calc.Pair, name string) bool {
	for _, p := range pairs {
		if p.Key == name {
			return true
		}
	}
	return false
}

// fieldMarkup writes one input with its unit choice and room for its error.
func fieldMarkup(id string, in *calc.Input, v calc.Value, help bool) string {
	var b strings.Builder
	field := id + "-" + strings.ReplaceAll(escape(in.Name), " ", "_") // an id holds no space (WHATWG HTML, section 3.2.6)
	common := ` id="` + field + `" name="` + escape(in.Name) + `" aria-describedby="` + field + `-e`
	b.WriteString(`<div class="field">`)
	if help {
		b.WriteString(`<button type="button" class="why" id="` + field + `-l" popovertarget="` + field + `-t">` + escape(in.Label) + `</button>`)
		common += ` ` + field + `-t" aria-labelledby="` + field + `-l"`
	} else {
		b.WriteString(`<label for="` + field + `">` + escape(in.Label) + `</label>`)
		common += `"`
	}
	switch {
	case in.Kind == calc.Word:
		writeSelect(&b, common, in.Words, v.Text)
	case len(in.OneOf) > 0:
		var of []string
		for _, n := range in.OneOf {
			of = append(of, calc.Format(n, 9))
		}
		writeSelect(&b, common, of, calc.Format(v.Num, 9))
		b.WriteString(`<span class="unit">` + escape(calc.ShownUnit(in.Unit)) + `</span>`)
	case in.Kind == calc.Numbers || in.Kind == calc.Bundle:
		b.WriteString(`<input` + common + ` autocomplete="off" value="` + escape(listText(v)) + `">`)
	default:
		number, unit := split(in, v)
		mode := "decimal"
		if in.Kind == calc.Count {
			mode = "numeric"
		}
		if in.Kind == calc.Wire || in.Min < 0 {
			mode = "text" // a gauge has a stroke and a cold day a minus, which number pads lack
		}
		b.WriteString(`<input` + common + ` inputmode="` + mode + `" autocomplete="off" value="` + escape(number) + `">`)
		writeUnits(&b, field, in, unit)
	}
	if help {
		b.WriteString(`<p class="help" popover id="` + field + `-t">` + escape(in.Help) + ` Takes ` + escape(in.Accepts()) + `.</p>`)
	}
	b.WriteString(`<p class="error" id="` + field + `-e"></p>`)
	b.WriteString(`</div>`)
	return b.String()
}

// listText is a list as its field holds it.
func listText(v calc.Value) string { return strings.ReplaceAll(v.Text, " × ", "x") }

// split splits a value into the number and the unit that its field shows.
func split(in *calc.Input, v calc.Value) (number, unit string) {
	if w, msg := calc.ParseWire(v.Text); in.Kind == calc.Wire && msg == "" && w.AWG {
		number, unit, _ = strings.Cut(v.Text, " ")
		return number, unit
	}
	q, msg := calc.ParseQuantity(v.Text)
	switch {
	case msg != "": // an optional input that is not given
		return v.Text, in.Unit
	case q.Bare:
		return v.Text, in.Unit
	case q.Parts != "": // 13 ft 6 in: the field has one unit
		return calc.Format(q.Value, 6), q.Unit.Symbol
	}
	return q.Number, q.Unit.Symbol
}

// writeUnits writes the unit choice: a list where there is one to make.
func writeUnits(b *strings.Builder, field string, in *calc.Input, unit string) {
	var choices []string
	if in.Kind == calc.Wire {
		choices = []string{"AWG", "mm2", "kcmil"}
	} else if u, ok := calc.LookupUnit(in.Unit); ok && u.Dim != calc.None {
		for _, other := range calc.UnitsOf(u.Dim) {
			choices = append(choices, other.Symbol)
		}
	}
	switch len(choices) {
	case 0:
	case 1:
		b.WriteString(`<span class="unit">` + escape(calc.ShownUnit(choices[0])) + `</span>`)
	default:
		writeSelect(b, ` id="`+field+`-u" class="units" aria-label="Unit of `+escape(strings.ToLower(in.Label))+`"`, choices, unit)
	}
}

// readingUnits writes the choice of units for a measured value, its own chosen.
func readingUnits(unit calc.Unit) string {
	var symbols []string
	if unit.Dim != calc.None {
		for _, u := range calc.UnitsOf(unit.Dim) {
			symbols = append(symbols, u.Symbol)
		}
	}
	if len(symbols) < 2 {
		return `<span class="unit">` + escape(calc.ShownUnit(unit.Symbol)) + `</span>`
	}
	var b strings.Builder
	writeSelect(&b, ` class="units" aria-label="Unit"`, symbols, unit.Symbol)
	return b.String()
}

func writeSelect(b *strings.Builder, attributes string, choices []string, chosen string) {
	b.WriteString(`<select` + attributes + `>`)
	for _, c := range choices {
		b.WriteString(`<option`)
		shown := calc.ShownUnit(c)
		if shown != c {
			b.WriteString(` value="` + escape(c) + `"`)
		}
		if c == chosen {
			b.WriteString(` selected`)
		}
		b.WriteString(`>` + escape(shown) + `</option>`)
	}
	b.WriteString(`</select>`)
}

// problem writes a practice problem with a first set of numbers and, folded
// away, the worked answer, so that it is of use without scripts.
func (r *parts) problem(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkSkipChildren, nil
	}
	p := n.(*sheet.Problem)
	output := &p.Calculator.Outputs[p.Outputs[0]]
	pairs := p.Sweep.Draw(uint64(p.Number), p.Outputs[0])
	values, result, _ := p.Calculator.Answer(pairs)
	if result == nil {
		return ast.WalkSkipChildren, nil
	}
	id := p.Anchor()
	write(w, `<section class="practice" id="`, id, `" data-calculator="`, p.Calculator.Name, `" data-output="`, output.Name, `" data-spread="`)
	text(w, p.Query())
	write(w, `" data-drawn="`)
	text(w, calc.FormatQuery(pairs))
	write(w, `" aria-labelledby="`, id, `-h"><h3 id="`, id, `-h">`)
	text(w, p.Question)
	write(w, `</h3><div class="given">`)
	_, _ = w.Write(calc.AppendGivens(nil, values, pairs))
	write(w, `</div><form class="try"><label for="`, id, `-a">Your answer`)
	if output.Unit != "" {
		write(w, ` in `)
		text(w, calc.ShownUnit(output.Unit))
		write(w, `, or with another unit`)
	}
	write(w, `</label><input id="`, id, `-a" name="answer" autocomplete="off"><button>Mark it</button><button type="button" class="fresh">New numbers</button></form>`)
	write(w, `<div class="marking" role="status"></div><details class="worked"><summary>Worked answer</summary><p>`)
	text(w, output.Format(result.Outputs[p.Outputs[0]]))
	write(w, `</p><ul class="lines">`)
	for _, line := range result.Working {
		write(w, "<li>")
		text(w, line)
		write(w, "</li>")
	}
	write(w, "</ul></details></section>\n")
	return ast.WalkSkipChildren, nil
}

func (r *parts) question(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	q := n.(*sheet.Question)
	if entering {
		write(w, `<fieldset class="question" id="`, q.Anchor(), `"><legend>Question `, strconv.Itoa(q.Number), `</legend>`)
		return ast.WalkContinue, nil
	}
	write(w, "</fieldset>\n")
	return ast.WalkContinue, nil
}

// option writes one answer; whether it is right is said in an attribute, for
// a script to reveal, and in words under the question's reason.
func (r *parts) option(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	o := n.(*sheet.Option)
	if entering {
		right := "no"
		if o.Right {
			right = "yes"
		}
		write(w, `<label class="option" data-right="`, right, `"><input type="checkbox"> <span>`)
		return ast.WalkContinue, nil
	}
	write(w, `</span></label>`)
	return ast.WalkContinue, nil
}

func escape(s string) string { return string(calc.AppendEscaped(nil, s)) }
