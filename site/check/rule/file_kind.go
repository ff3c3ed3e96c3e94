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

A file that a sheet links to is published beside it. A web page or a script
among them would run on every reader's phone. Documents have 20 MB at most.`,
	CheckBook: func(p *check.Pass) {
		for _, name := range slices.Sorted(maps.Keys(p.Book.Files)) {
			at := finding.NewSource(name, nil)
			switch ending := strings.ToLower(path.Ext(name)); {
			case !isPicture(name) && !slices.Contains(sheet.Documents, ending):
				p.ReportIn(at, sheet.Span{}, "a file of this kind is not published", "keep it outside the content folder; pictures are SVG, PNG or JPEG")
			case !isPicture(name) && p.Book.Files[name].Size() > mostDocument:
				p.ReportIn(at, sheet.Span{}, "the document is larger than 20 MB, and every reader's phone keeps the whole book", "save it smaller, or split it")
			}
		}
	},
}

// mostDocument is the most bytes of a document beside the sheets.
const mostDocument = 20 << 20
