package rule

import (
	"fmt"
	"html"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// hiddenCharacter is kept by the loader for the characters themselves, and
// here for those that come in by a code.
var hiddenCharacter = &check.Rule{
	Name: "hidden-character",
	Firm: true,
	Doc: `A file holds no characters that cannot be seen

Zero-width characters and direction overrides make a text read differently from
what is written, to people and to these checks. So do letters and digits that
are written as codes (&#49;): the page shows them, and the checks do not read
them. That goes for sheets, drawings and data files.`,
	Check: func(p *check.Pass) {
		coded(p, p.Sheet.Source, func(at sheet.Span) bool {
			return slices.ContainsFunc(p.Sheet.Fences, func(f *sheet.Fence) bool { return at.Start >= f.Span.Start && at.Start < f.Span.End })
		})
		p.Facts.UnboundTexts(func(t *english.Text, at sheet.Span) { escaped(p, p.Sheet.Source, t.Source, at) })
	},
	CheckDrawing: func(p *check.Pass) { inDrawing(p, p.Drawing) },
	CheckBook: func(p *check.Pass) {
		if g := p.Book.Glossary; g != nil && g.Source != nil {
			for _, t := range g.Terms {
				escaped(p, g.Source, strings.Join(append([]string{t.Name, t.Meaning}, slices.Concat(t.Also, t.Not)...), " "), t.Span)
			}
		}
		if r := p.Book.Register; r != nil && r.Source != nil {
			for _, h := range r.Hazards {
				escaped(p, r.Source, h.ID+" "+h.Title+" "+h.Message()+" "+h.From, h.Span)
			}
		}
		if s := p.Book.Shop; s != nil && s.Source != nil {
			escaped(p, s.Source, s.Name+" "+s.Book, sheet.Span{})
		}
	},
}

// charCode is a character written as a code or by its name.
var charCode = regexp.MustCompile(`&(#[0-9]{1,7}|#[xX][0-9a-fA-F]{1,6}|[A-Za-z][A-Za-z0-9]{1,31});`)

// coded reports hidden characters, letters and digits that a file writes as
// codes, but for those that are passed over.
func coded(p *check.Pass, src *finding.Source, pass func(sheet.Span) bool) {
	text := src.Text()
	for at := 0; at < len(text); {
		next := slices.Index(text[at:], '&')
		if next < 0 {
			return
		}
		at += next
		m := charCode.FindIndex(text[at:min(len(text), at+40)])
		if m == nil || m[0] != 0 {
			at++
			continue
		}
		span := sheet.Span{Start: at, End: at + m[1]}
		at = span.End
		for _, c := range html.UnescapeString(string(text[span.Start:span.End])) {
			if pass != nil && pass(span) {
				break
			}
			if finding.Hides(c) {
				hiddenAt(p, src, c, span)
			} else if text[span.Start+1] == '#' && (unicode.IsLetter(c) || unicode.IsDigit(c)) {
				p.ReportIn(src, span, "the character “"+string(c)+"” is written as a code, which the checks do not read", "write "+string(c))
			}
		}
	}
}

// escaped reports a hidden character in a value that was read from YAML.
func escaped(p *check.Pass, src *finding.Source, text string, at sheet.Span) {
	for _, c := range text {
		if finding.Hides(c) {
			hiddenAt(p, src, c, at)
			return
		}
	}
}

// inDrawing reports hidden characters in a drawing, as they are or as codes.
// Its letters may be codes: its words are read with them.
func inDrawing(p *check.Pass, src *finding.Source) {
	text := src.Text()
	for i, c := range string(text) {
		if finding.Hides(c) && !(c == 0xFEFF && i == 0) {
			hiddenAt(p, src, c, sheet.Span{Start: i, End: i + len(string(c))})
			return
		}
	}
	for _, m := range charCode.FindAllIndex(text, -1) {
		for _, c := range html.UnescapeString(string(text[m[0]:m[1]])) {
			if finding.Hides(c) {
				hiddenAt(p, src, c, sheet.Span{Start: m[0], End: m[1]})
				return
			}
		}
	}
}

func hiddenAt(p *check.Pass, src *finding.Source, c rune, at sheet.Span) {
	p.ReportIn(src, at, fmt.Sprintf("the character U+%04X cannot be seen and can make the text read differently", c), "delete it")
}
