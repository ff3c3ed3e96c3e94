package sheet

import (
	"cmp"
	"errors"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"

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

	byPath, byNumber map[string]*Sheet
}

// Sheet finds a sheet by its path without ending, nil where there is none.
func (b *Book) Sheet(path string) *Sheet { return b.byPath[path] }

// Numbered finds a sheet by its document number, nil where there is none.
func (b *Book) Numbered(number string) *Sheet { return b.byNumber[number] }

// Names of the data files at the top of the content folder.
const (
	RegisterFile = "hazards.yaml"
	GlossaryFile = "glossary.yaml"
	ShopFile     = "shop.yaml"
)

// Load reads the whole content folder. The findings are what is wrong with
// the files as files; the error is for a folder that cannot be read at all.
func Load(fsys fs.FS, calculators []*calc.Calculator) (*Book, finding.List, error) {
	b := &Book{FS: fsys, Files: make(map[string]fs.FileInfo), Drawings: make(map[string]*finding.Source), byPath: make(map[string]*Sheet), byNumber: make(map[string]*Sheet)}
	var list finding.List
	report := func(f finding.Finding) { list = append(list, f) }
	files, err := b.walk(report)
	if err != nil {
		return nil, nil, err
	}
	b.readData(report)
	b.readDrawings(report)
	reader := NewReader(calculators)
	sheets := make([]*Sheet, len(files))
	found := make([]finding.List, len(files))
	var group sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := range next {
				content, err := readFile(fsys, files[i])
				if err != nil {
					f := finding.NewSource(files[i], nil).At(0, 0)
					f.Rule, f.Message, f.Do = "file", "the file cannot be read: "+reason(err), "check that the file is there and may be read"
					found[i] = finding.List{f}
					continue
				}
				sheets[i], found[i] = reader.Parse(files[i], content)
			}
		})
	}
	for i := range files {
		next <- i
	}
	close(next)
	group.Wait()
	for i, s := range sheets {
		list = append(list, found[i]...)
		if s != nil {
			b.add(s, report)
		}
	}
	return b, list, nil
}

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
			return nil
		}
		if d.IsDir() {
			return nil
		}
		if path.Ext(name) == ".md" {
			files = append(files, name)
			return nil
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		b.Files[name] = info
		return nil
	})
	slices.SortFunc(files, cmp.Compare)
	return files, err
}

// readFile reads a file, but no more of it than a sheet may have.
func readFile(fsys fs.FS, name string) ([]byte, error) {
	if info, err := fs.Stat(fsys, name); err == nil && info.Size() > mostBytes {
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

// readDrawings reads the SVG files.
func (b *Book) readDrawings(report func(finding.Finding)) {
	for name, info := range b.Files {
		if path.Ext(name) != ".svg" {
			continue
		}
		content, err := readFile(b.FS, name)
		if err != nil || info.Size() > mostBytes {
			f := finding.NewSource(name, nil).At(0, 0)
			f.Rule, f.Message, f.Do = "file", name+" cannot be read as a drawing, or is larger than a drawing is", "save it again, plain and small"
			report(f)
			continue
		}
		b.Drawings[name] = finding.NewSource(name, content)
	}
}

// readData reads the register, the glossary and the shop's facts.
func (b *Book) readData(report func(finding.Finding)) {
	read := func(name string) *finding.Source {
		content, err := readFile(b.FS, name)
		if err != nil {
			f := finding.NewSource(name, nil).At(0, 0)
			f.Rule, f.Message, f.Do = "file", name+" cannot be read: "+reason(err), "put a "+name+" at the top of the content folder; baybook begin makes one"
			report(f)
			return nil
		}
		delete(b.Files, name)
		src := finding.NewSource(name, content)
		if !readable(src, report) {
			return nil
		}
		return src
	}
	b.Register, b.Glossary, b.Shop = &Register{}, &Glossary{}, &Shop{}
	if src := read(RegisterFile); src != nil {
		b.Register = readRegister(src, report)
	}
	if src := read(GlossaryFile); src != nil {
		b.Glossary = readGlossary(src, report)
	}
	if src := read(ShopFile); src != nil {
		b.Shop = readShop(src, report)
	}
}
