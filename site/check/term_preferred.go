package check

import (
	"strings"
	"unicode"

	"baybook/site/check/phrase"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// A glossary is the names that no sheet may use, ready to be looked for.
type glossary struct {
	not    *phrase.Set
	terms  []string // by phrase
	names  []string // the name not used, by phrase, in small letters
	faults []string
}

func readGlossary(from *sheet.Glossary, stems *phrase.Stems) *glossary {
	g := &glossary{}
	if from == nil {
		from = &sheet.Glossary{}
	}
	var list []phrase.Pattern
	for _, t := range from.Terms {
		for _, n := range t.Not {
			p, msg := phrase.Parse(strings.ReplaceAll(n, "-", " "), stems)
			if msg != "" {
				g.faults = append(g.faults, msg)
				continue
			}
			list, g.terms = append(list, p), append(g.terms, t.Name)
			g.names = append(g.names, strings.ToLower(n))
		}
	}
	g.not = phrase.NewSet(list)
	return g
}

var termPreferred = &Rule{
	Name:     "term-preferred",
	Severity: finding.Warning,
	Doc: `One thing has one name

content/glossary.yaml gives each thing the name that the book uses, and the
names that it does not. A tech who meets two names looks for two things. The
names not used are still found by search. The fix writes the book's name.

Bad:

	## Steps

	1. Close the firewall.

Good:

	## Steps

	1. Close the bulkhead.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.in("Sources") {
				continue // titles are quoted as they are
			}
			for _, s := range t.Sentences {
				p.otherNames(t, s, -1)
			}
		}
	},
}

// otherNames reports the names in a stretch of text that the book does not
// use, or only the one of a number, each as often as it stands there.
func (p *Pass) otherNames(t *passage, in phrase.Sentence, only int) {
	for _, hit := range p.reader.glossary.not.Find(t.Text, in, phrase.Said) {
		if only < 0 || hit.Pattern == only {
			p.otherName(t, hit)
			p.otherNames(t, phrase.Sentence{First: hit.Last, Last: in.Last}, hit.Pattern)
		}
	}
}

// otherName reports one use of a name that the book does not use.
func (p *Pass) otherName(t *passage, hit phrase.Hit) {
	term := p.reader.glossary.terms[hit.Pattern]
	start, end := t.Words[hit.First].Start, t.Words[hit.Last-1].End
	found := t.Source[start:end]
	if !sameName(found, p.reader.glossary.names[hit.Pattern]) {
		return
	}
	written := likeFound(term, found)
	span := t.prose.Span(start, end)
	extra := func(*finding.Finding) {}
	if span.End-span.Start == end-start { // no markup in between
		extra = withFix("write "+written, span, written)
	}
	p.Report(span, "this book calls “"+found+"” "+term, "write "+written, extra)
}

// sameName reports whether words are a name or its plural, and not merely
// words of the same stems.
func sameName(found, name string) bool {
	plain := strings.ToLower(strings.ReplaceAll(strings.Join(strings.Fields(found), " "), "-", " "))
	name = strings.ReplaceAll(name, "-", " ")
	return plain == name || plain == name+"s" || plain == name+"es"
}

// likeFound gives a term the capital and the plural of the name that it
// replaces.
func likeFound(term, found string) string {
	out := term
	if strings.HasSuffix(found, "s") && !strings.HasSuffix(found, "ss") && !strings.HasSuffix(term, "s") {
		out += "s"
	}
	first := []rune(found)[0]
	if unicode.IsUpper(first) {
		r := []rune(out)
		r[0] = unicode.ToUpper(r[0])
		out = string(r)
	}
	return out
}
