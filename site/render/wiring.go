package render

import (
	"strconv"
	"strings"

	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/report"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// wiring is the markup of a circuit fence: the drawing solved and judged at
// build time, with a form that asks the core again when a state is chosen or
// a load or length is changed.
func wiring(c *sheet.Circuit, number int) string {
	assessed := c.Assessment()
	if assessed == nil {
		return ""
	}
	id := "circuit-" + strconv.Itoa(number)
	title := c.Draft.Title
	if title == "" {
		title = "Wiring drawing"
	}
	var b strings.Builder
	b.WriteString(`<section class="wiring" id="` + id + `" data-circuit="` + escape(c.Draft.Encode()) + `" data-block="` + escape(c.Block.Title+"\t"+c.Block.Number+"\t"+c.Block.Revision+"\t"+c.Block.Date) + `" aria-labelledby="` + id + `-h"><h3 id="` + id + `-h">` + escape(title) + `</h3><div class="display"><p class="sum" role="status">` + escape(report.Summary(assessed, draw.View{})) + `</p></div><form class="inputs">`)
	view := draw.View{Block: c.Block}
	writeStates(&b, id, assessed, view)
	b.WriteString(`<details class="more"><summary>Try other values</summary>`)
	for _, a := range c.Draft.Adjustments() {
		in := a.Input
		in.Name, in.Label = a.Key, a.Label
		value, msg := in.Read(a.Value)
		if msg == "" {
			b.WriteString(fieldMarkup(id, &in, value, false))
		}
	}
	b.WriteString(`</details>`)
	writeReadings(&b, id, assessed)
	b.WriteString(`</form><noscript><p class="plain">Without scripts the drawing shows one state; the tables under it show them all.</p></noscript><div class="answer">`)
	b.Write(report.AppendMarkup(nil, assessed, view))
	b.WriteString(`</div></section>`)
	return b.String()
}

// writeReadings writes the fields for what is read with a meter at a few
// points, from which the core tells which fault explains it.
func writeReadings(b *strings.Builder, id string, assessed *judge.Assessment) {
	points := report.ReadingPoints(assessed)
	b.WriteString(`<details class="more"><summary>What do you read?</summary><p class="plain">Choose the state, hold the black lead on the battery’s negative post, and type what the meter shows at one to three points.</p>`)
	for i := 1; i <= report.ReadingCount; i++ {
		number := strconv.Itoa(i)
		field := id + "-point" + number
		b.WriteString(`<div class="field"><label for="` + field + `">Point ` + number + `</label>`)
		writeSelect(b, ` id="`+field+`" name="point`+number+`"`, points, points[min(i-1, len(points)-1)])
		field = id + "-volts" + number
		b.WriteString(`<label for="` + field + `">Reading ` + number + ` in V</label><input id="` + field + `" name="volts` + number + `" inputmode="decimal" autocomplete="off" aria-describedby="` + field + `-e"><p class="error" id="` + field + `-e"></p></div>`)
	}
	b.WriteString(`</details>`)
}

// writeStates writes the choice of state, where there is one to make.
func writeStates(b *strings.Builder, id string, assessed *judge.Assessment, view draw.View) {
	var names []string
	for i := range assessed.Network.States {
		names = append(names, assessed.Network.States[i].Name)
	}
	if len(names) < 2 {
		return
	}
	b.WriteString(`<div class="field"><label for="` + id + `-state">State</label>`)
	writeSelect(b, ` id="`+id+`-state" name="state" aria-describedby="`+id+`-state-e"`, names, names[view.StateOf(assessed)])
	b.WriteString(`<p class="error" id="` + id + `-state-e"></p></div>`)
}

// circuitNumber counts the circuits of a sheet up to a node, from 1.
func circuitNumber(n ast.Node) int {
	number := 0
	_ = ast.Walk(n.OwnerDocument(), func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if f, ok := c.(*sheet.Fence); ok && entering && f.Circuit != nil {
			number++
		}
		if c == n {
			return ast.WalkStop, nil
		}
		return ast.WalkContinue, nil
	}) // the walker above returns no error
	return number
}
