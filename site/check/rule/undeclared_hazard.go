package rule

import (
	"fmt"
	"slices"

	"baybook/site/check"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

var undeclaredHazard = &check.Rule{
	Name: "undeclared-hazard",
	Firm: true,
	Doc: `What the words show, the declared work gives

Hazards follow from what the steps declare. Words are the second pair of eyes:
the phrases of the register and the words of the lists of work go over all that
a reader could act on: steps, lists, tables, headings, captions, texts of
figures and links, right answers, what stands behind a usual fault. Where they
see a hazard that the work up to there does not give, the work is declared in a
link, the hazard is named in the head, or it is taken back at that step:
waive: [{hazard: its-id, step: 4, reason: why, by: name}].`,
	Check: func(p *check.Pass) {
		for _, g := range p.Facts.Glimpses() {
			where := "the declared work of the sheet does not give it"
			if g.Step != nil {
				where = fmt.Sprintf("the work of step %d (%s) does not give it", g.Step.Number, doesOf(p, g.Step))
			}
			p.Report(g.At, "“"+g.Words+"” shows the hazard “"+g.Hazard.Title+"”, and "+where, declareHazard(p, &g))
		}
	},
}

// doesOf is what a step is taken to do.
func doesOf(p *check.Pass, step *sheet.Step) string {
	i := slices.Index(p.Sheet.Steps, step)
	if i < 0 || i >= len(p.Facts.Work.Steps) {
		return "none"
	}
	text := ""
	for k, d := range p.Facts.Work.Steps[i].Does {
		if k > 0 {
			text += "; "
		}
		text += d.String()
	}
	if text == "" {
		return "nothing"
	}
	return text
}

// declareHazard says how the hazard is declared or taken back, with lines to
// copy.
func declareHazard(p *check.Pass, g *check.Glimpse) string {
	if g.Step == nil {
		return "declare it in the head: hazards: [" + g.Hazard.ID + "], or take it back: waive: [{hazard: " + g.Hazard.ID + ", reason: why it is not there, by: name}]"
	}
	back := fmt.Sprintf("take it back: waive: [{hazard: %s, step: %d, reason: why it is not there, by: name}]", g.Hazard.ID, g.Step.Number)
	if link := offeredLink(p, g); link != "" {
		return "declare it: " + link + ", or " + back
	}
	return "declare it in the head: hazards: [" + g.Hazard.ID + "], or " + back
}

// offeredLink is a link on the step's verb that declares the work so that the
// hazard follows, empty where none is near.
func offeredLink(p *check.Pass, g *check.Glimpse) string {
	i := slices.Index(p.Sheet.Steps, g.Step)
	if i < 0 || i >= len(p.Facts.Work.Steps) || len(p.Facts.Work.Steps[i].Does) == 0 {
		return ""
	}
	own := p.Facts.Work.Own[i]
	for _, d := range p.Facts.Work.Steps[i].Does {
		if fuller, ok := p.Book.Work.Fuller(g.Hazard.When, d); ok {
			if word := verbOf(p, g.Step, own, d.Act); word != "" {
				return "[" + word + "](" + work.Scheme + fuller.String() + ")"
			}
		}
	}
	return ""
}

// verbOf is the word of a step that an act is declared by: the words of its
// link, or the verb that goes by it.
func verbOf(p *check.Pass, step *sheet.Step, own *check.Passage, act string) string {
	for _, do := range p.Sheet.Does {
		if d, _ := p.Book.Work.Parse(do.Dest); do.Step == step && d.Act == act {
			return do.Words
		}
	}
	if own == nil {
		return ""
	}
	for _, u := range p.Shared.WorkWords.ReadText(own.Text) {
		for _, d := range u.Doings {
			if slices.Contains(d.Acts, act) {
				return d.Word
			}
		}
	}
	return ""
}
