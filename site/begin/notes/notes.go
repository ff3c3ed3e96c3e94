// Package notes turns a folder of old notes in Markdown, as word processors and
// wikis write it, into drafts of sheets. It reads and changes texts; it writes
// no file. What it is not sure of stands in the draft under "Not settled", which
// the checks ask about until it is gone.
package notes

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// Bounds of what is read: a note of more is no page that a person wrote.
const (
	mostNotes = 2000
	mostBytes = 1 << 20
)

// A Result is what the notes became.
type Result struct {
	// Files are the drafts and their pictures, by their paths in the new book.
	Files map[string][]byte
	// Areas are the folders that they stand in, in order.
	Areas []Area
	// Report says line by line what went where, and what was left.
	Report []string
	Drafts int
}

// An Area is a folder of drafts.
type Area struct{ Folder, Title string }

// From reads all notes of a folder. Links, hidden files and what is no Markdown
// are left and reported. today is the date of the drafts.
func From(fsys fs.FS, today time.Time) (*Result, error) {
	im := &importer{fsys: fsys, today: today, files: make(map[string]string), taken: make(map[string]bool), to: make(map[string]string)}
	if err := fs.WalkDir(fsys, ".", im.see); err != nil {
		return nil, err
	}
	if len(im.notes) > mostNotes {
		return nil, fmt.Errorf("the folder holds %d notes; at most %d are taken at once: bring them in by folders", len(im.notes), mostNotes)
	}
	result := &Result{Files: make(map[string][]byte)}
	im.result = result
	im.place()
	for _, name := range im.notes {
		if err := im.note(name); err != nil {
			return nil, err
		}
	}
	result.Report = append(result.Report, im.aside...)
	for _, name := range im.others {
		if !im.taken[name] {
			result.Report = append(result.Report, "left: "+name+" ("+whyLeft(name)+")")
		}
	}
	return result, nil
}

// An importer is the reading of one folder.
type importer struct {
	fsys          fs.FS
	today         time.Time
	notes, others []string
	aside         []string          // lines of the report on what is no file
	files         map[string]string // all files by their lower-case names without folder
	to            map[string]string // where each note goes
	numbers       map[string]string // the number of each note
	taken         map[string]bool   // files that a note has taken along
	result        *Result
}

// see sorts one entry of the folder.
func (im *importer) see(name string, d fs.DirEntry, err error) error {
	switch {
	case err != nil:
		return err
	case name != "." && strings.HasPrefix(path.Base(name), "."):
		if d.IsDir() {
			return fs.SkipDir
		}
		return nil
	case d.IsDir():
		return nil
	case !d.Type().IsRegular():
		im.taken[name] = true
		im.aside = append(im.aside, "left: "+name+" (a link or a device; bring the file itself)")
		return nil
	}
	im.files[strings.ToLower(path.Base(name))] = name
	if slices.Contains(noteEndings, strings.ToLower(path.Ext(name))) {
		im.notes = append(im.notes, name)
	} else {
		im.others = append(im.others, name)
	}
	return nil
}

// noteEndings are the endings of notes.
var noteEndings = []string{".md", ".markdown", ".txt"}

// whyLeft says why a file was not taken.
func whyLeft(name string) string {
	switch strings.ToLower(path.Ext(name)) {
	case ".heic", ".heif":
		return "a browser cannot show it; save it as JPEG in the phone or in any picture viewer, and show it in its sheet"
	case ".doc", ".docx", ".odt", ".rtf", ".pdf", ".html", ".htm":
		return "not Markdown; save it as Markdown or plain text and bring it in again"
	case ".jpg", ".jpeg", ".png", ".gif", ".webp", ".svg":
		return "no note shows it"
	}
	return "neither a note nor a picture"
}

// place gives each note its place and number before any is read, so that links
// between them can follow.
func (im *importer) place() {
	im.numbers = make(map[string]string)
	counts, letters := make(map[string]int), make(map[string]string)
	for _, name := range im.notes {
		area := Area{Folder: "notes", Title: "Notes"}
		if dir, _, inside := strings.Cut(name, "/"); inside {
			area = Area{Folder: clean(dir), Title: titleOf(dir)}
		}
		if !slices.ContainsFunc(im.result.Areas, func(a Area) bool { return a.Folder == area.Folder }) {
			im.result.Areas = append(im.result.Areas, area)
			letters[area.Folder] = lettersOf(area.Folder, letters)
		}
		base := clean(strings.TrimSuffix(path.Base(name), path.Ext(name)))
		file := area.Folder + "/" + base + ".md"
		for n := 2; im.isTaken(file); n++ {
			file = fmt.Sprintf("%s/%s-%d.md", area.Folder, base, n)
		}
		im.to[name] = file
		counts[area.Folder]++
		im.numbers[name] = fmt.Sprintf("%s-%02d", letters[area.Folder], counts[area.Folder])
	}
}

func (im *importer) isTaken(file string) bool {
	for _, to := range im.to {
		if to == file {
			return true
		}
	}
	return false
}

// lettersOf are the letters of an area's numbers, such as ZP for pillars: Z
// keeps them apart from the numbers of the book that is begun.
func lettersOf(folder string, used map[string]string) string {
	for _, r := range folder + "abcdefghijklmnopqrstuvwxyz" {
		if r < 'a' || r > 'z' {
			continue
		}
		letters := "Z" + strings.ToUpper(string(r))
		free := true
		for _, u := range used {
			free = free && u != letters
		}
		if free {
			return letters
		}
	}
	return fmt.Sprintf("ZZ%c", 'A'+len(used)%26)
}

// note reads one note and files its draft.
func (im *importer) note(name string) error {
	info, err := fs.Stat(im.fsys, name)
	if err != nil {
		return err
	}
	if info.Size() > mostBytes {
		im.result.Report = append(im.result.Report, fmt.Sprintf("left: %s (%d KB; a page of at most %d KB is taken)", name, info.Size()>>10, mostBytes>>10))
		return nil
	}
	data, err := fs.ReadFile(im.fsys, name)
	if err != nil {
		return err
	}
	if slices.Contains(data, 0) {
		im.result.Report = append(im.result.Report, "left: "+name+" (it is no text)")
		return nil
	}
	d := &draft{importer: im, name: name, file: im.to[name], text: string(data)}
	if !utf8.Valid(data) {
		decoded, err := charmap.Windows1252.NewDecoder().Bytes(data)
		if err != nil {
			return err
		}
		d.text = string(decoded)
		d.unsure("The file was not UTF-8; it was read as Windows-1252. Look at accents and signs.")
	}
	im.result.Files[d.file] = d.sheet()
	im.result.Drafts++
	im.result.Report = append(im.result.Report, fmt.Sprintf("%s → %s, %s: %s", name, d.file, im.numbers[name], d.counted()))
	return nil
}

// clean makes a name that every system takes: lower-case letters, digits and
// hyphens.
func clean(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
		if b.Len() > 60 {
			break
		}
	}
	if s := strings.Trim(b.String(), "-"); s != "" {
		return s
	}
	return "note"
}

// titleOf makes a title of a file's or folder's name.
func titleOf(name string) string {
	words := strings.Fields(strings.NewReplacer("_", " ", "-", " ", "%20", " ").Replace(name))
	if len(words) == 0 {
		return "Note"
	}
	title := strings.Join(words, " ")
	first, n := utf8.DecodeRuneInString(title)
	return strings.ToUpper(string(first)) + title[n:]
}
