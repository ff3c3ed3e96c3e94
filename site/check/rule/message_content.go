package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var messageContent = &check.Rule{
	Name: "message-content",
	Firm: true,
	Doc: `A message says what the hazard does and how to avoid it

Hazard, consequence, avoidance, in that order (ANSI Z535.6): first a statement
with what may happen, to whom or to what; then an order that avoids it. A
message without consequence is not believed, one without avoidance is of no
use. Where the register says how the hazard is avoided, the build adds it.`,
	Check: func(p *check.Pass) {
		for _, m := range p.Sheet.Messages {
			consequence, avoidance := content(p, m)
			for _, h := range p.Facts.HazardsNamed(m) {
				avoidance = avoidance || h != nil && h.Avoid != "" // the build adds it
			}
			switch {
			case !consequence && !avoidance:
				p.Report(m.Span, "the message says neither what may happen nor how to avoid it", "add both behind the title")
			case !consequence:
				p.Report(m.Span, "the message does not say what may happen", "put a sentence with the consequence before the order: what it burns, breaks, crushes or costs",
					func(f *finding.Finding) {
						if m.Word == sheet.Notice {
							f.Severity = finding.Warning // a NOTICE may leave the obvious unsaid
						}
					})
			case !avoidance:
				p.Report(m.Span, "the message does not say how to avoid it", "end with an order: what to do, or what not to do")
			}
		}
	},
}

// content reports whether a message states a consequence and gives an order.
func content(p *check.Pass, m *sheet.Message) (consequence, avoidance bool) {
	for _, t := range p.Facts.MessageTexts[m] {
		for _, s := range t.Sentences {
			for _, words := range clauses(t.In(s)) {
				switch {
				case states(p, words):
					consequence = true
					avoidance = avoidance || isOrder(p, words) || givesRule(words)
				case isOrder(p, words):
					avoidance = true
					consequence = consequence || warnsBehind(p, words)
				default:
					avoidance = avoidance || givesRule(words)
				}
			}
		}
	}
	return consequence, avoidance
}

// clauses splits a sentence at its colons, semicolons, dashes and brackets.
func clauses(words []english.Word) [][]english.Word {
	var list [][]english.Word
	from := 0
	for i := 1; i < len(words); i++ {
		if words[i].Break == english.Clause {
			list = append(list, words[from:i])
			from = i
		}
	}
	return append(list, words[from:])
}

// states reports whether a clause states what may happen: it has a word of
// harm and is no order. Words that can be both a verb and a thing ("trim clips
// fly") are taken for the thing where a word of harm follows without an
// article after the first.
func states(p *check.Pass, words []english.Word) bool {
	if !tellsHarm(p, words) {
		return false
	}
	at, ok := english.Action(words)
	if !ok {
		return true
	}
	rest := words[at:]
	if !p.Shared.Lexicon.Orders(rest) {
		return true
	}
	if len(rest) < 2 || !alsoThing(rest[0].Lower) || english.Determines(rest[1].Lower) || !tellsHarm(p, rest[1:]) {
		return false
	}
	return !prepositional(rest[1].Lower) || thirdPerson(p, rest[1:]) || hasFinite(rest[1:])
}

// hasFinite reports a finite verb in the main part of a clause: before its
// comma, and outside what if, when or that lead in.
func hasFinite(words []english.Word) bool {
	for _, w := range words {
		switch {
		case w.Break >= english.Comma, w.Lower == "if", w.Lower == "when", w.Lower == "where", w.Lower == "that", w.Lower == "until", w.Lower == "unless", w.Lower == "as":
			return false
		case english.Finite(w.Lower):
			return true
		}
	}
	return false
}

// thirdPerson reports whether a word can be a verb of a statement: gives,
// takes.
func thirdPerson(p *check.Pass, words []english.Word) bool {
	for _, w := range words {
		if base, ok := strings.CutSuffix(w.Lower, "s"); ok && (p.Shared.Lexicon.Verbs[base] || p.Shared.Lexicon.Verbs[strings.TrimSuffix(base, "e")]) {
			return true
		}
	}
	return false
}

// warnsBehind reports whether an order carries its consequence: "..., or it
// burns".
func warnsBehind(p *check.Pass, words []english.Word) bool {
	for i, w := range words {
		if i > 0 && (w.Lower == "or" || w.Lower == "because" || w.Lower == "for" || w.Lower == "otherwise") && tellsHarm(p, words[i:]) && w.Break >= english.Comma {
			return true
		}
	}
	return false
}

// tellsHarm reports a word of harm, or something that does not do what it is
// for.
func tellsHarm(p *check.Pass, words []english.Word) bool {
	for i, w := range words {
		if p.Shared.Lexicon.Harms[w.Stem] || w.Lower == "not" && i > 0 && (english.Finite(words[i-1].Lower) || words[i-1].Lower == "do") && i > 1 {
			return true
		}
	}
	return false
}

// isOrder reports whether a clause is an order, a condition before it or not.
func isOrder(p *check.Pass, words []english.Word) bool { return p.Shared.Lexicon.IsOrder(words) }

// alsoThing reports whether a verb also names a thing or a quality, so that it
// can open a statement.
func alsoThing(lower string) bool {
	switch lower {
	case "trim", "cut", "saw", "drill", "glue", "tape", "reverse", "lead", "test", "screw", "light", "level", "clip", "paint", "dust", "solder",
		"grease", "file", "brush", "clamp", "wet", "dry", "empty", "clean", "open", "loose", "free", "water", "heat", "supply", "noise", "stop", "lock",
		"tap", "feed", "ground", "fuse", "plug", "spray", "load", "smoke", "flash", "slip", "strain", "drain", "press", "hook", "seal", "weld", "tin", "charge", "wire", "route", "guide", "note", "work", "power", "sleeve":
		return true
	}
	return false
}

func prepositional(lower string) bool {
	switch lower {
	case "to", "at", "in", "on", "off", "out", "up", "down", "from", "with", "behind", "under", "through", "away", "only", "by", "over":
		return true
	}
	return false
}

// givesRule reports whether words give a rule without the form of an order:
// "No flame in the vehicle", "Hearing protection on", "One person drives,
// another operates".
func givesRule(words []english.Word) bool {
	if len(words) == 0 {
		return false
	}
	for i, w := range words {
		switch w.Lower {
		case "must", "never", "only", "nobody", "none", "outdoors", "static", "otherwise":
			return true
		case "no", "not", "first":
			if i == 0 || w.Break >= english.Comma {
				return true
			}
		case "stands", "stand", "stays", "drives", "works", "comes", "goes", "refer", "operates":
			if i > 0 && (isPerson(words[i-1].Lower) || w.Lower == "operates") {
				return true
			}
		}
	}
	return len(words) > 1 && !finiteAny(words)
}

func isPerson(lower string) bool {
	switch lower {
	case "person", "helper", "spotter", "somebody", "specialist", "another", "everybody", "everything", "vehicle":
		return true
	}
	return false
}

// finiteAny reports whether any word makes the words a statement.
func finiteAny(words []english.Word) bool {
	for _, w := range words {
		if english.Finite(w.Lower) {
			return true
		}
		if n := len(w.Lower); n > 3 && w.Lower[n-1] == 's' && w.Lower[n-2] != 's' && w.Stem != w.Lower {
			return true // a verb or a plural; to be on the safe side a statement
		}
	}
	return false
}
