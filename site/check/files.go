package check

import (
	"maps"
	"path"
	"slices"
	"strings"

	"baybook/site/finding"
	"baybook/site/sheet"
)

var fileKind = &Rule{
	Name: "file-kind",
	Firm: true,
	Doc: `The content folder holds sheets, pictures and plain documents

Whatever lies in the content folder would be published beside the sheets. A web
page or a script among them would run on every reader's phone.

Bad:

	-- area/page.html --
	<script>alert(1)</script>

Good:

	-- area/list.csv --
	slot,rating
	4,15
`,
	CheckBook: func(p *Pass) {
		for _, name := range slices.Sorted(maps.Keys(p.Book.Files)) {
			switch strings.ToLower(path.Ext(name)) {
			case ".svg", ".png", ".jpg", ".jpeg", ".pdf", ".csv", ".txt", ".json", ".yaml", ".yml", ".stl", ".dxf":
			default:
				p.ReportIn(finding.NewSource(name, nil), sheet.Span{}, "a file of this kind is not published", "keep it outside the content folder; pictures are SVG, PNG or JPEG")
			}
		}
	},
}

var unusedFigure = &Rule{
	Name:     "unused-figure",
	Severity: finding.Warning,
	Doc: `Every drawing and photograph is shown by a sheet

A picture that no sheet shows is a leftover, or a figure whose line was lost.

Bad:

	-- area/lost.svg --
	<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"/>

Good:

	The drawing below is shown.

	![Two wires side by side, the left one with a fuse.](drawing.svg "With a fuse and without")
`,
	CheckBook: func(p *Pass) {
		used := make(map[string]bool)
		for _, s := range p.Book.Sheets {
			for _, f := range s.Figures {
				used[f.File] = true
			}
			for _, l := range s.Links {
				used[s.Resolve(l.Dest).File] = true
			}
		}
		for _, name := range slices.Sorted(maps.Keys(p.Book.Files)) {
			if isPicture(name) && !used[name] {
				p.ReportIn(finding.NewSource(name, nil), sheet.Span{}, "no sheet shows this picture", "show it, or delete it")
			}
		}
	},
}
