package rule

import (
	"slices"
	"strings"
	"sync"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var unbackedNumber = &check.Rule{
	Name:     "unbacked-number",
	Severity: finding.Warning,
	Doc: `A number with a unit says where it comes from

A reader can then tell a computed number from a sourced and a remembered one.
A number in the opening, the preparation, the hand-over or a message is backed
where it is computed (calc:), read (reading:), an input of a computation of the
page, on the list of tools and materials, or called nominal by [12 V](about:);
where its paragraph names a source or says "common practice", "example", "arithmetic"
or "from memory"; where the Sources section gives the same number; or where the
register's own message on the hazard does.`,
	Check: func(p *check.Pass) {
		backed := sync.OnceValue(func() check.NumberList { return backingOf(p) }) // most sheets back every number beside it
		stray := sync.OnceValue(func() []strayInput { return strayInputs(p) })
		for _, t := range p.Facts.Passages {
			if !mustBack(p, t) {
				continue
			}
			list := t.Quantities()
			if len(list) == 0 || t.NamesSource(p.Shared.Lexicon) || t.Kind == check.Cell && saysExampleIn(p, t.Step) {
				continue
			}
			for i, q := range list {
				if q.Bare || q.Unit.Symbol == "" || t.Computes(&q) || q.IsGauge() || backed().Has(&q) || isNominal(t.Source, &q) || t.Nominal(&q) || i > 0 && english.Restates(t.Source, &list[i-1], &q) || inFault(t, &q) {
					continue
				}
				if sizes, what := p.Facts.Parts().Of(t.Source, &q); sizes != nil && !sizes.Has(&q) && !computesFuse(p, what) {
					continue // the rule on parts says it
				}
				if slices.ContainsFunc(stray(), func(s strayInput) bool { return s.passage == t && s.quantity.Start == q.Start }) {
					continue // the rule on inputs says it
				}
				p.Report(t.Prose.Span(q.Start, q.End), "nothing says where "+q.String()+" comes from", "compute it (calc:), name its source here or in Sources, or say (common practice)")
			}
		}
	},
}

// isNominal reports the name of a system, "the 12 V battery", which measures
// nothing.
func isNominal(text string, q *english.Quantity) bool {
	if q.Unit.Symbol != "V" || q.Value != 12 && q.Value != 24 && q.Value != 48 {
		return false
	}
	after := strings.Fields(text[q.End:])
	if len(after) == 0 {
		return false
	}
	switch strings.Trim(strings.ToLower(after[0]), ".,;:)") {
	case "battery", "batteries", "system", "systems", "supply", "socket", "side", "feed", "vehicle", "vehicles", "device", "lamp", "lamps", "adapter", "outlet", "led", "leds", "string":
		return true
	}
	return false
}

// inFault reports whether a number stands in a sentence about what people do
// wrong.
func inFault(t *check.Passage, q *english.Quantity) bool {
	for _, s := range t.Sentences {
		if english.TellsFault(t.In(s)) {
			return q.Start >= t.Words[s.First].Start
		}
	}
	return false
}

// saysExampleIn reports whether the text of a step says that its numbers are
// an example.
func saysExampleIn(p *check.Pass, step *sheet.Step) bool {
	for _, t := range p.Facts.Passages {
		if step != nil && t.Step == step && (strings.Contains(t.Source, "example") || strings.Contains(t.Source, "invented") || strings.Contains(t.Source, "practice")) {
			return true
		}
	}
	return false
}

// backingOf collects what is computed, read, put in, listed or sourced.
func backingOf(p *check.Pass) check.NumberList {
	list := slices.Clone(p.Facts.Inputs())
	add := func(text string) { list.Add(english.Quantities(text)) }
	for _, t := range [...][]string{p.Sheet.Front.Tools, p.Sheet.Front.Materials} {
		add(strings.Join(t, "; "))
	}
	for _, t := range p.Facts.Passages {
		if t.Under(sheet.Sources) || t.Step == nil && t.Message == nil && len(t.Quantities()) > 0 && t.NamesSource(p.Shared.Lexicon) {
			list.Add(t.Quantities())
		}
	}
	for _, m := range p.Sheet.Messages {
		for _, h := range p.Facts.HazardsNamed(m) {
			if h != nil {
				add(h.Message()) // the register's row has its own source
			}
		}
	}
	for _, v := range p.Sheet.Values {
		add(v.Words)
	}
	return list
}

// mustBack reports a passage in which a number has to say where it comes from:
// messages, and wherever a procedure or a guide tells of the work outside its
// steps. What explains, in sections of the sheet's own, is left to its Sources.
func mustBack(p *check.Pass, t *check.Passage) bool {
	switch {
	case mustStand(p, t):
		return false // the rule on typed numbers asks for more
	case t.Message != nil:
		return true
	case p.Sheet.Front.Kind != sheet.Procedure && p.Sheet.Front.Kind != sheet.Guide:
		return false
	}
	return t.Kind == check.Opening || t.Kind == check.Body && (t.Under(sheet.BeforeYouStart) || t.Under(sheet.HandOver))
}
