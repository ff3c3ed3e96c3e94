package rule

import (
	"strings"
	"unicode"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var termPreferred = &check.Rule{
	Name:     "term-preferred",
	Severity: finding.Warning,
	Doc: `One thing has one name

content/glossary.yaml gives each thing the name that the book uses, and the
names that it does not. A tech who meets two names looks for two things. The
names not used are still found by search. The fix writes the book's name.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			if t.Under(sheet.Sources) {
				continue // titles are quoted as they are
			}
			for _, s := range t.Sentences {
				otherNames(p, t, s, -1)
			}
		}
	},
}

// otherNames reports the names in a stretch of text that the book does not
// use, or only the one of a number, each as often as it stands there.
func otherNames(p *check.Pass, t *check.Passage, in english.Sentence, only int) {
	for _, hit := range p.Shared.Glossary.Not.Find(t.Text, in, english.Said) {
		if only < 0 || hit.Pattern == only {
			otherName(p, t, hit)
			otherNames(p, t, english.Sentence{First: hit.Last, Last: in.Last}, hit.Pattern)
		}
	}
}

// otherName reports one use of a name that the book does not use.
func otherName(p *check.Pass, t *check.Passage, hit english.Hit) {
	term := p.Shared.Glossary.Terms[hit.Pattern]
	start, end := t.Words[hit.First].Start, t.Words[hit.Last-1].End
	found := t.Source[start:end]
	if !sameName(found, p.Shared.Glossary.Names[hit.Pattern]) {
		return
	}
	written := likeFound(term, found)
	span := t.Prose.Span(start, end)
	extra := func(*finding.Finding) {}
	if span.End-span.Start == end-start { // no markup in between
		extra = check.WithFix("write "+written, span, written)
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
