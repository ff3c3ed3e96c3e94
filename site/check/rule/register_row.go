package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var registerRows = &check.Rule{
	Name: "register-row",
	Firm: true,
	Doc: `Each row of the hazard register is complete, and its own message passes

A row has an id and a title of its own, a least word that fits its harm, phrases
that show it, a message that says all that the row demands, and a source. A gap
in the register is a gap in every sheet.`,
	CheckBook: func(p *check.Pass) {
		reg := p.Book.Register
		if reg == nil || reg.Source == nil {
			return
		}
		byID, byTitle := make(map[string]bool), make(map[string]bool)
		for i, h := range reg.Hazards {
			row(p, h, i)
			if byID[h.ID] || byTitle[strings.ToLower(h.Title)] {
				p.ReportIn(reg.Source, h.Span, "the id or the title “"+h.Title+"” is used twice", "give each hazard its own")
			}
			byID[h.ID], byTitle[strings.ToLower(h.Title)] = true, true
		}
		for _, f := range p.Shared.Register.Faults {
			p.ReportIn(reg.Source, f.Hazard.Span, f.Message, "see the grammar of phrases at the top of hazards.yaml")
		}
	},
}

// row checks one hazard by itself.
func row(p *check.Pass, h *sheet.Hazard, i int) {
	src := p.Book.Register.Source
	say := func(message, do string) { p.ReportIn(src, h.Span, message, do) }
	switch {
	case h.ID == "" || sheet.Slug(h.ID) != h.ID:
		say("the hazard's id “"+h.ID+"” is not lower-case words joined by hyphens", "write it like battery-short")
	case h.Title == "" || strings.Contains(h.Title, "."):
		say("the hazard needs a title without a full stop", "the full stop parts titles in a message")
	case h.Least == sheet.NoWord:
		say("the hazard has no least signal word", "add word: WARNING, or another of DANGER, CAUTION, NOTICE")
	case h.Injury && h.Least == sheet.Notice:
		say("“"+h.Title+"” can injure, and NOTICE says that nothing can", "write CAUTION, WARNING or DANGER")
	case !h.Injury && h.Least != sheet.Notice:
		say("“"+h.Title+"” costs things only, and "+h.Least.String()+" promises injury", "write NOTICE, or hurts: people")
	case len(h.When)+len(h.Say) > 0 && (h.Harm == "" || h.Avoid == ""):
		say("the build has no message for “"+h.Title+"”: harm or avoid is missing", "write what it does, and how to avoid it")
	case len(h.Shows.Steps) == 0 && len(h.Shows.Tools) == 0:
		say("nothing shows “"+h.Title+"”", "add shows: {steps: [...]}")
	case p.Book.Work.Source != nil && p.Book.Work.Unknown(h.When) != "": // a book may do without work.yaml
		say("“"+h.Title+"” follows from “"+p.Book.Work.Unknown(h.When)+"”, which no entry of work.yaml has", "use an id or a property of work.yaml")
	case h.From == "":
		say("“"+h.Title+"” has no source", "add source: and whether it was read or comes from memory")
	}
	if h.Message() == "" {
		return
	}
	t := check.Passage{Text: english.Read(h.Message(), p.Shared.Stems)}
	for k := range p.Shared.Register.Demands[i] {
		if s := &p.Shared.Register.Demands[i][k]; !s.SaidIn([]*check.Passage{&t}) {
			say("the row's own message does not say: "+s.What, "complete the message, or the phrases under say")
		}
	}
}
