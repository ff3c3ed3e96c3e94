package rule

import (
	"maps"
	"path"
	"slices"
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var fileKind = &check.Rule{
	Name: "file-kind",
	Firm: true,
	Doc: `The content folder holds sheets, pictures and plain documents

Whatever lies in the content folder would be published beside the sheets. A web
page or a script among them would run on every reader's phone.`,
	CheckBook: func(p *check.Pass) {
		for _, name := range slices.Sorted(maps.Keys(p.Book.Files)) {
			switch strings.ToLower(path.Ext(name)) {
			case ".svg", ".png", ".jpg", ".jpeg", ".pdf", ".csv", ".txt", ".json", ".yaml", ".yml", ".stl", ".dxf":
			default:
				p.ReportIn(finding.NewSource(name, nil), sheet.Span{}, "a file of this kind is not published", "keep it outside the content folder; pictures are SVG, PNG or JPEG")
			}
		}
	},
}
