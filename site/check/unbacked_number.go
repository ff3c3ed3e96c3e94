package check

import (
	"math"
	"strings"
	"sync"

	"baybook/calculators/calc"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var unbackedNumber = &Rule{
	Name:     "unbacked-number",
	Severity: finding.Warning,
	Doc: `A number with a unit says where it comes from

A reader can then tell a computed number from a sourced and a remembered one.
A number in the opening, the preparation, the steps, the proof, the hand-over, a
message or a caption is backed where it is computed (calc:), read (reading:), an
input of a computation of the page, or on the list of tools and materials; where
its paragraph names a source or says "common practice", "example", "arithmetic"
or "from memory"; where the Sources section gives the same number; or where the
register's own message on the hazard does.

Bad:

	## Steps

	1. Put the lamp 250 mm from the glass.

Good:

	## Steps

	1. Put the lamp 250 mm from the glass (common practice).
`,
	Check: func(p *Pass) {
		backed := sync.OnceValue(p.backing) // most sheets back every number beside it
		for _, t := range p.facts.passages {
			if !p.mustBack(t) {
				continue
			}
			list := t.quantities()
			if len(list) == 0 || t.sourced(p.reader.lexicon) || t.kind == cell && p.saysExampleIn(t.step) {
				continue
			}
			for i, q := range list {
				if q.Bare || q.Unit.Symbol == "" || isLink(t, q.number) || isGauge(&q) || backed().has(&q) || isNominal(t.Source, &q) || i > 0 && restates(t.Source, &list[i-1], &q) || inFault(t, &q) {
					continue
				}
				p.Report(t.prose.Span(q.all.Start, q.all.End), "nothing says where "+q.String()+" comes from", "compute it (calc:), name its source here or in Sources, or say (common practice)")
			}
		}
	},
}

// isGauge reports a wire gauge, which is a name of a size.
func isGauge(q *quantity) bool { return q.Unit.Symbol == "AWG" }

// isNominal reports the name of a system, "the 12 V battery", which measures
// nothing.
func isNominal(text string, q *quantity) bool {
	if q.Unit.Symbol != "V" || q.Value != 12 && q.Value != 24 && q.Value != 48 {
		return false
	}
	after := strings.Fields(text[q.all.End:])
	if len(after) == 0 {
		return false
	}
	switch strings.Trim(strings.ToLower(after[0]), ".,;:)") {
	case "battery", "batteries", "system", "systems", "supply", "socket", "side", "feed", "vehicle", "vehicles", "device", "lamp", "lamps", "adapter", "outlet", "led", "leds", "string":
		return true
	}
	return false
}

// inFault reports a number in a sentence about what people do wrong.
func inFault(t *passage, q *quantity) bool {
	for _, s := range t.Sentences {
		if tellsFault(t.In(s)) {
			return q.number.Start >= t.Words[s.First].Start
		}
	}
	return false
}

// saysExampleIn reports whether the text of a step says that its numbers are
// an example.
func (p *Pass) saysExampleIn(step *sheet.Step) bool {
	for _, t := range p.facts.passages {
		if step != nil && t.step == step && (strings.Contains(t.Source, "example") || strings.Contains(t.Source, "invented") || strings.Contains(t.Source, "practice")) {
			return true
		}
	}
	return false
}

// A backing is the numbers of a sheet that something stands behind.
type backing []calc.Quantity

// has reports whether the same quantity is among them, in whatever unit.
func (b backing) has(q *quantity) bool {
	for _, k := range b {
		if v, ok := within(k.Value, k.Unit, q.Unit); ok && math.Abs(math.Abs(v)-math.Abs(q.Value)) <= 1e-6*math.Max(math.Abs(v), 1e-9) {
			return true
		}
	}
	return false
}

// backing collects what is computed, read, put in, listed or sourced.
func (p *Pass) backing() backing {
	var b backing
	add := func(text string) {
		for _, q := range quantities(text) {
			b = append(b, q.Quantity)
		}
	}
	for _, t := range [...][]string{p.Sheet.Front.Tools, p.Sheet.Front.Materials} {
		add(strings.Join(t, "; "))
	}
	for _, t := range p.facts.passages {
		list := t.quantities()
		if len(list) > 0 && (t.in("Sources") || t.step == nil && t.message == nil && t.sourced(p.reader.lexicon)) {
			for _, q := range list {
				b = append(b, q.Quantity)
			}
		}
	}
	for _, m := range p.Sheet.Messages {
		for _, h := range p.namedIn(m) {
			if h != nil {
				add(h.Message) // the register's row has its own source
			}
		}
	}
	for _, r := range p.Sheet.Readings {
		add(r.Limit.String())
	}
	p.computations(func(c *sheet.Computation) {
		for _, pair := range c.Pairs {
			for value := range strings.SplitSeq(pair.Value, ",") {
				add(value)
			}
		}
	})
	for _, v := range p.Sheet.Values {
		add(v.Words)
	}
	return b
}

// computations runs over every calc: link of the sheet.
func (p *Pass) computations(do func(*sheet.Computation)) {
	for _, c := range p.Sheet.Computations() {
		do(c)
	}
}

// sourceWords name a kind of source, or say that there is none.
var sourceWords = []string{
	"practice", "from memory", "arithmetic", "Ohm's law", "example", "invented", "handbook", "data sheet", "datasheet", "maker", "manufacturer", "as measured",
	"shop limit", "shop's limit", "house limit", "book limit", "training text", "by the table", "Council", "catalogue",
	"CFR", "ISO", "IEC", "DIN", "SAE", "ANSI", "ASTM", "FMVSS", "HSE", "NIOSH", "NFPA", "EN ", "UL ", "ABYC", "AC 43", "USC", "MIL-", "AES", "OSHA", "NHTSA", "FAA", "O*NET", "Title 13", "W3C", "ECE", "UN R",
}

// sourced reports whether the passage says where its numbers come from; it is
// found out once.
func (p *passage) sourced(l *lexicon) bool {
	if p.source == unasked {
		p.source = unsourced
		if l.namesSource(p.Source) {
			p.source = sourced
		}
	}
	return p.source == sourced
}

// An answer is what is known of a question that is asked once.
type answer uint8

const (
	unasked answer = iota
	sourced
	unsourced
)

// namesSource reports whether a text says where its numbers come from.
func (l *lexicon) namesSource(text string) bool {
	for i := range len(text) {
		for _, w := range l.sources[text[i]] {
			if strings.HasPrefix(text[i:], w) {
				return true
			}
		}
	}
	return false
}

// mustBack reports a passage in which a number has to say where it comes from:
// wherever a procedure or a guide tells of the work, and under its figures.
// What explains, in sections of the sheet's own, is left to its Sources.
func (p *Pass) mustBack(t *passage) bool {
	switch {
	case t.step != nil || t.in("Prove it") || t.message != nil:
		return true
	case p.Sheet.Front.Kind != sheet.Procedure && p.Sheet.Front.Kind != sheet.Guide:
		return false
	case t.kind == caption && !t.in("Sources"):
		return true
	}
	return t.kind == opening || t.kind == body && (t.in("Before you start") || t.in("Hand over"))
}
