package sheet

import (
	"cmp"
	"errors"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"time"

	"baybook/calculators/calc"
	"baybook/site/finding"
)

// A Book is a content folder, read.
type Book struct {
	// FS is the content folder.
	FS fs.FS
	// Sheets are in the order of their paths.
	Sheets []*Sheet
	// Files are the other files of the folder, figures among them, by path.
	Files map[string]fs.FileInfo
	// Drawings are the SVG files among them, read.
	Drawings map[string]*finding.Source
	Register *Register
	Glossary *Glossary
	Shop     *Shop
	Areas    *Areas
	Limits   *LimitRegister
	Work     *Work
	Words    *Words
	// Interface is the words of the pages in the shop's language; nil where the
	// book brings none.
	Interface *Interface
	// Calculators are those that links resolve to: the list that the book was
	// loaded with, job-price starting from the shop's own figures.
	Calculators []*calc.Calculator

	byPath, byNumber map[string]*Sheet
	// entries are what each file came to when it was read at begun, for the
	// next reading of the folder.
	entries map[string]*entry
	begun   time.Time
}

// Sheet finds a sheet by its path without ending, nil where there is none.
func (b *Book) Sheet(path string) *Sheet { return b.byPath[path] }

// Published is the book without its drafts; the book itself where it has none.
func (b *Book) Published() *Book {
	isDraft := func(s *Sheet) bool { return s.Front.Draft }
	if !slices.ContainsFunc(b.Sheets, isDraft) {
		return b
	}
	p := *b
	p.Sheets = slices.DeleteFunc(slices.Clone(b.Sheets), isDraft)
	p.byPath, p.byNumber = maps.Clone(b.byPath), maps.Clone(b.byNumber)
	maps.DeleteFunc(p.byPath, func(_ string, s *Sheet) bool { return isDraft(s) })
	maps.DeleteFunc(p.byNumber, func(_ string, s *Sheet) bool { return isDraft(s) })
	return &p
}

// Numbered finds a sheet by its document number, nil where there is none.
func (b *Book) Numbered(number string) *Sheet { return b.byNumber[number] }

// Documents are the endings of files that are published as they are where a
// sheet links to them.
var Documents = []string{".pdf", ".csv", ".txt", ".json", ".yaml", ".yml", ".stl", ".dxf"}

// Names of the data files at the top of the content folder.
const (
	RegisterFile = "hazards.yaml"
	GlossaryFile = "glossary.yaml"
	ShopFile     = "shop.yaml"
	AreasFile    = "areas.yaml"
	LimitFile    = "limits.yaml"
	WorkFile     = "work.yaml"
	WordsFile    = "words.yaml"
)

// add puts a sheet into the book and refuses a number used before.
func (b *Book) add(s *Sheet, report func(finding.Finding)) {
	b.Sheets = append(b.Sheets, s)
	b.byPath[s.Path] = s
	number := s.Front.Number
	if number == "" {
		return
	}
	first := b.byNumber[number]
	if first == nil {
		b.byNumber[number] = s
		return
	}
	span := s.Front.Place("number")
	f := s.Source.At(span.Start, span.End)
	f.Rule, f.Message = "front-matter", "the number "+number+" is used twice"
	f.Do = "give this sheet a number of its own"
	f.Notes = []finding.Note{{Pos: first.Source.Position(first.Front.Place("number").Start), Text: "first used here"}}
	report(f)
}

// walk lists the sheets' files and notes the others. A symbolic link is
// refused: what it points at is not the book's.
func (b *Book) walk(report func(finding.Finding)) ([]string, error) {
	var files []string
	err := fs.WalkDir(b.FS, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if name != "." && strings.HasPrefix(path.Base(name), ".") {
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if d.Type()&fs.ModeSymlink != 0 {
			f := finding.NewSource(name, nil).At(0, 0)
			f.Rule, f.Message, f.Do = "file", name+" is a symbolic link", "put the file itself into the content folder"
			report(f)
			b.entries[name] = nil // known, and not to be read
			return nil
		}
		if d.IsDir() {
			return nil
		}
		if !d.Type().IsRegular() { // reading a pipe waits for ever
			f := finding.NewSource(name, nil).At(0, 0)
			f.Rule, f.Message, f.Do = "file", name+" is a pipe, a socket or a device, not a file", "take it out of the content folder"
			report(f)
			b.entries[name] = nil // known, and not to be read
			return nil
		}
		info, err := d.Info()
		if errors.Is(err, fs.ErrNotExist) {
			return nil // an editor's passing file
		}
		if err != nil {
			return err
		}
		b.entries[name] = &entry{size: info.Size(), changed: info.ModTime()}
		if path.Ext(name) == ".md" {
			files = append(files, name)
			return nil
		}
		b.Files[name] = info
		return nil
	})
	slices.SortFunc(files, cmp.Compare)
	return files, err
}

// readFile reads a file, but no more of it than a sheet may have, and nothing
// that is no file: reading a pipe waits for ever.
func readFile(fsys fs.FS, name string) ([]byte, error) {
	info, err := fs.Stat(fsys, name)
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, errors.New("it is a folder, a pipe, a socket or a device")
	case info.Size() > mostBytes:
		return make([]byte, mostBytes+1), nil // refused for its size, unread
	}
	return fs.ReadFile(fsys, name)
}

// reason is the cause of a path error, without the path.
func reason(err error) string {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}
