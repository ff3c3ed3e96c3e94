package rule

import (
	"path"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/sheet"
)

var link = &check.Rule{
	Name: "link",
	Firm: true,
	Doc: `A link within the book leads to a sheet or a file that is there

Links are relative to the sheet's own file, as every Markdown viewer follows
them: [text](../area/file.md). None leads out of the content folder.`,
	Check: func(p *check.Pass) {
		for _, l := range p.Sheet.Links {
			insideLink(p, l)
		}
	},
}

// insideLink checks a link that stays in the book.
func insideLink(p *check.Pass, l *sheet.Link) {
	t := p.Sheet.Resolve(l.Dest)
	switch {
	case t.Outside:
		return
	case l.Dest == "":
		p.Report(l.Span, "the link leads nowhere", "put the path of a sheet between its brackets")
	case strings.HasPrefix(l.Dest, "/") || strings.HasPrefix(t.File, "../") || t.File == ".." || strings.Contains(l.Dest, `\`) || strings.Contains(strings.ToLower(l.Dest), "%2e%2e"):
		p.Report(l.Span, "the link leads out of the content folder", "write a path relative to this sheet, such as ../area/file.md")
	case path.Ext(t.File) == ".md":
		if p.Book.Sheet(strings.TrimSuffix(t.File, ".md")) == nil {
			p.Report(l.Span, "there is no sheet "+t.File, nearSheet(p, t.File))
		}
	case p.Book.Files[t.File] == nil:
		p.Report(l.Span, "there is no file "+t.File, nearFile(p, t.File, "link to a sheet (.md), or put the file into the content folder"))
	}
}

// nearFile suggests the file whose name differs in capitals alone, as old cameras
// and some systems write them; otherwise it says what to do without one.
func nearFile(p *check.Pass, file, otherwise string) string {
	for name := range p.Book.Files {
		if strings.EqualFold(name, file) {
			return "did you mean " + name + "? Capitals count in a file's name"
		}
	}
	return otherwise
}

// nearSheet suggests the sheet that a broken link may have meant.
func nearSheet(p *check.Pass, file string) string {
	var known []string
	for _, s := range p.Book.Sheets {
		known = append(known, s.File)
		if path.Base(s.File) == path.Base(file) {
			return "did you mean " + s.File + "?"
		}
	}
	if near := calc.Nearest(file, known); near != "" {
		return "did you mean " + near + "?"
	}
	return "correct the path, or write that sheet"
}
