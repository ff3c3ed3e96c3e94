package rule

import (
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var fileName = &check.Rule{
	Name: "file-name",
	Firm: true,
	Doc: `A file's name is fit for every disk and server, and takes nobody's place

A sheet stands in the folder of its area, for the top of the site holds the
book's own pages: index.md would be the cover. Names are letters, digits,
hyphens, points and underscores, with the ending in small letters. Two that differ by case alone are one file on
half of all computers, and names such as con are devices on some.`,
	CheckBook: func(p *check.Pass) {
		sources := make(map[string]*finding.Source)
		for name := range p.Book.Files {
			sources[name] = finding.NewSource(name, nil)
		}
		for _, s := range p.Book.Sheets {
			sources[s.File] = s.Source
			if path.Dir(s.File) == "." {
				p.ReportIn(s.Source, sheet.Span{}, "the sheet stands at the top of the folder, where the book's own pages are", "put it into the folder of its area, such as ground/"+s.File)
			}
		}
		for _, s := range p.Book.Sheets {
			if job, cut := strings.CutSuffix(s.Path, "-quote"); cut && p.Book.Sheet(job) != nil && p.Book.Sheet(job).Front.Kind == sheet.Job {
				p.ReportIn(s.Source, sheet.Span{}, "the sheet's page would take the place of the quote of "+job+".md", "give the file another name")
			}
		}
		folded := make(map[string]string)
		for _, name := range slices.Sorted(maps.Keys(sources)) {
			if message, do := badName(name); message != "" {
				p.ReportIn(sources[name], sheet.Span{}, message, do)
			}
			key := strings.ToLower(name)
			if first, twice := folded[key]; twice {
				p.ReportIn(sources[name], sheet.Span{}, name+" and "+first+" differ by case alone", "give one of the two another name")
			}
			folded[key] = name
		}
	},
}

// ownFolders are the folders at the top of the site that the book fills
// itself.
var ownFolders = []string{"assets", "calculators", "icons", "schemas"}

// deviceNames are names that Windows keeps for devices, with any ending.
var deviceNames = regexp.MustCompile(`^(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\.|$)`)

// fitName is what a file or folder may be called.
var fitName = regexp.MustCompile(`^[\p{L}\p{N}]([\p{L}\p{N}._-]*[\p{L}\p{N}_-])?$`)

// badName says what is wrong with a path of the content folder; empty where
// nothing is.
func badName(name string) (message, do string) {
	parts := strings.Split(name, "/")
	if len(parts) > 1 && slices.Contains(ownFolders, strings.ToLower(parts[0])) {
		return "the folder " + parts[0] + " is one that the book fills itself", "give the area another folder"
	}
	for _, part := range parts {
		switch {
		case deviceNames.MatchString(part):
			return "the name " + part + " is kept for a device on some computers", "give it another name"
		case !fitName.MatchString(part):
			return "the name “" + part + "” holds something that not every disk or server takes", "use letters, digits, hyphens, points and underscores, and start and end with a letter or digit"
		case path.Ext(part) != strings.ToLower(path.Ext(part)):
			return "the ending of " + part + " has large letters, and servers go by endings in small ones", "write the ending in small letters: " + strings.ToLower(path.Ext(part))
		case len(part) > longestName:
			return "the name of " + part[:20] + "… is too long for some disks", "shorten it"
		}
	}
	return "", ""
}

// longestName is the most bytes in a name, so that an ending still fits into
// the 255 of most disks.
const longestName = 120
