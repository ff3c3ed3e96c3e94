package rule

import (
	"path"
	"strings"

	"baybook/site/check"
	"baybook/site/sheet"
)

var figure = &check.Rule{
	Name: "figure",
	Firm: true,
	Doc: `A figure is there, and its alternative text says what it shows

A figure stands alone in a paragraph, is a file of the content folder (SVG,
PNG or JPEG), and has a text in its square brackets for people who cannot see
it.`,
	Check: func(p *check.Pass) {
		for _, f := range p.Sheet.Figures {
			picture(p, f.Src, f.Alt, f.Span)
		}
		for _, l := range p.Sheet.Links {
			if l.Image {
				p.Report(l.Span, "the picture stands in a line of text", "put it alone into a paragraph, with an empty line before and after")
			}
		}
	},
}

// picture checks a picture's file and its alternative text.
func picture(p *check.Pass, src, alt string, at sheet.Span) {
	t := p.Sheet.Resolve(src)
	switch {
	case t.Outside:
		p.Report(at, "the picture is fetched from outside the book", "put the file beside the sheet")
		return
	case strings.HasPrefix(src, "/") || strings.HasPrefix(t.File, "../") || t.File == ".." || strings.Contains(src, `\`):
		p.Report(at, "the picture's path leads out of the content folder", "put the file beside the sheet")
		return
	case !isPicture(t.File):
		p.Report(at, path.Base(t.File)+" is no picture that a page can show", "use SVG for a drawing, PNG or JPEG for a photograph")
		return
	case p.Book.Files[t.File] == nil:
		p.Report(at, "there is no file "+t.File, nearFile(p, t.File, "draw the figure, or correct its path"))
		return
	}
	const least = 12 // letters: shorter texts name a thing and describe nothing
	if text := strings.TrimSpace(alt); text == "" {
		p.Report(at, "the figure has no alternative text", "say in its square brackets what it shows")
	} else if len(text) < least {
		p.Report(at, "the alternative text “"+text+"” does not say what the figure shows", "describe it so that somebody could draw it")
	}
}

func isPicture(file string) bool {
	switch strings.ToLower(path.Ext(file)) {
	case ".svg", ".png", ".jpg", ".jpeg":
		return true
	}
	return false
}
