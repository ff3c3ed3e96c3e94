package render

import (
	"errors"
	"html"
	"html/template"
	"io/fs"
	"strconv"
	"strings"
	"text/template/parse"
	"time"
	"unicode"

	"baybook/calculators/calc"
	"baybook/site/finding"
	"baybook/site/sheet"

	"golang.org/x/text/language"
)

// A speech is the language that pages speak: what stands for each word of the
// interface, and how days and prices are written.
type speech struct {
	sheet.Interface
	words map[string]string
	// known are the words of the interface, as the templates have them.
	known []string
}

// newSpeech lays the files of a book's language over each other: English, the
// theme's of that language, the book's own.
func newSpeech(theme fs.FS, book *sheet.Book) (*speech, error) {
	s := &speech{words: make(map[string]string)}
	tag := book.Shop.Language
	for i, name := range []string{"en", tag} {
		if i > 0 && name == "en" {
			continue
		}
		text, err := fs.ReadFile(theme, "words/"+name+".yaml")
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		var wrong finding.List
		file := sheet.ReadInterface(finding.NewSource("words/"+name+".yaml", text), func(f finding.Finding) { wrong = append(wrong, f) })
		if err := wrong.Err(); err != nil {
			return nil, err
		}
		if i == 0 {
			for _, w := range file.Words {
				s.known = append(s.known, w.Say)
			}
		}
		s.add(file)
	}
	if book.Interface != nil {
		s.add(book.Interface)
	}
	return s, nil
}

// add lays a file over those before.
func (s *speech) add(file *sheet.Interface) {
	if file.Date != "" {
		s.Date, s.Months = file.Date, file.Months
	}
	if file.Price != "" {
		s.Price = file.Price
	}
	if file.Point != "" {
		s.Point = file.Point
	}
	if file.Group != "" {
		s.Group = file.Group
	}
	for _, w := range file.Words {
		if w.As != "" {
			s.words[w.Say] = w.As
		}
	}
}

// say gives a word of the interface in the language.
func (s *speech) say(word string) string {
	if as := s.words[word]; as != "" {
		return as
	}
	return word
}

// day writes a date that stands as ISO 8601 has it; anything else stays.
func (s *speech) day(text string) string {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return text
	}
	return s.Day(t)
}

// price writes an amount as calculators give it, such as $1234.50 or EUR 12.00.
func (s *speech) price(text string) string {
	at := strings.IndexFunc(text, func(c rune) bool { return c >= '0' && c <= '9' })
	if at < 0 {
		return text
	}
	currency, digits := strings.TrimSpace(text[:at]), text[at:]
	if rest, ok := strings.CutPrefix(currency, "-"); ok {
		currency, digits = rest, "-"+digits
	}
	return s.Amount(currency, digits)
}

// goWords are the words of the interface that stand in no template: the values
// of a field, and titles of pages.
var goWords = []string{
	"Procedure", "Reference", "Job", "Guide", "Apprentice", "Installer", "Lead",
	"Labor", "Parts", "Before tax", "Tax", "Total", "Quote",
}

// CheckLanguage looks whether the pages of a book speak its language: words of
// its own that no page says, and words of the pages that it lacks.
func CheckLanguage(theme fs.FS, book *sheet.Book) finding.List {
	s, err := newSpeech(theme, book)
	if err != nil {
		return nil // told when the pages are made
	}
	var list finding.List
	report := func(src *finding.Source, at sheet.Span, severity finding.Severity, message, do string) {
		f := src.At(at.Start, at.End)
		f.Rule, f.Severity, f.Message, f.Do = "interface", severity, message, do
		list = append(list, f)
	}
	known, base := make(map[string]bool), baseOf(book.Shop.Language)
	for _, w := range s.known {
		known[w] = true
	}
	if book.Interface == nil {
		if base != "en" && book.Shop.Source != nil {
			report(book.Shop.Source, book.Shop.LanguageAt, finding.Warning, "the pages have no words in "+book.Shop.Language+"; they say their own in English",
				"write them into "+sheet.InterfaceFile+" at the top of this folder; baybook interface prints it to be filled in")
		}
		return list
	}
	for _, w := range book.Interface.Words {
		if known[w.Say] || len(known) == 0 {
			continue
		}
		do := "baybook interface lists what they say"
		if near := calc.Nearest(w.Say, s.known); near != "" {
			do = "did you mean " + strconv.Quote(near) + "?"
		}
		report(book.Interface.Source, w.Span, finding.Error, "no page says "+strconv.Quote(w.Say), do)
	}
	var missing []string
	for _, w := range s.known {
		if s.words[w] == "" {
			missing = append(missing, w)
		}
	}
	if base != "en" && len(missing) > 0 {
		report(book.Interface.Source, sheet.Span{}, finding.Warning, strconv.Itoa(len(missing))+" of the pages' "+strconv.Itoa(len(s.known))+" words are not here and stay English, "+strconv.Quote(missing[0])+" first",
			"baybook interface prints the whole file with what you have")
	}
	return list
}

// baseOf is the language of a tag without its place and script.
func baseOf(tag string) string {
	t, err := language.Parse(tag)
	if err != nil {
		return "en"
	}
	base, _ := t.Base()
	return base.String()
}

// translate puts the language's words into the text of every template. The
// words are the stretches between tags, and what attributes say to a reader.
func (s *speech) translate(pages *template.Template) {
	if len(s.words) == 0 {
		return
	}
	eachText(pages, s.say)
}

// spokenAttributes are the attributes whose values a reader meets.
var spokenAttributes = []string{`aria-label="`, `placeholder="`, `title="`, `alt="`}

// TemplateWords lists what the pages of a theme say.
func TemplateWords(theme fs.FS) ([]string, error) {
	pages, err := parsePages(theme, &speech{})
	if err != nil {
		return nil, err
	}
	var words []string
	seen := make(map[string]bool)
	note := func(w string) string {
		if !seen[w] {
			seen[w] = true
			words = append(words, w)
		}
		return w
	}
	eachText(pages, note)
	for _, w := range goWords {
		note(w)
	}
	return words, nil
}

// eachText hands every stretch of words in the templates to say, and puts what
// it gives in its place.
func eachText(pages *template.Template, say func(string) string) {
	for _, name := range sortedTemplates(pages) {
		if t := pages.Lookup(name); t.Tree != nil {
			w := &words{say: say}
			w.list(t.Tree.Root)
		}
	}
}

// words is a walk through a template: whether it is inside a tag, and in the
// value of an attribute that a reader meets.
type words struct {
	say            func(string) string
	inTag, inValue bool
	spoken         bool // the value is one of spokenAttributes
}

func (w *words) list(list *parse.ListNode) {
	if list == nil {
		return
	}
	for _, n := range list.Nodes {
		switch n := n.(type) {
		case *parse.TextNode:
			n.Text = []byte(w.text(string(n.Text)))
		case *parse.IfNode:
			w.branch(&n.BranchNode)
		case *parse.RangeNode:
			w.branch(&n.BranchNode)
		case *parse.WithNode:
			w.branch(&n.BranchNode)
		}
	}
}

// branch walks both ways, which begin alike and end alike.
func (w *words) branch(n *parse.BranchNode) {
	begin := *w
	w.list(n.List)
	begin.list(n.ElseList)
}

// text goes through a stretch of template between actions.
func (w *words) text(s string) string {
	var out strings.Builder
	for s != "" {
		switch {
		case w.inValue:
			value, rest, closed := strings.Cut(s, `"`)
			if w.spoken {
				value = w.stretch(value)
			}
			out.WriteString(value)
			if closed {
				out.WriteByte('"')
				w.inValue, w.spoken = false, false
			}
			s = rest
		case w.inTag:
			at := strings.IndexAny(s, `">`)
			if at < 0 {
				out.WriteString(s)
				return out.String()
			}
			if s[at] == '>' {
				w.inTag = false
			} else {
				w.inValue = true
				for _, a := range spokenAttributes {
					w.spoken = w.spoken || strings.HasSuffix(s[:at+1], " "+a)
				}
			}
			out.WriteString(s[:at+1])
			s = s[at+1:]
		default:
			text, rest, tag := strings.Cut(s, "<")
			out.WriteString(w.stretch(text))
			if tag {
				out.WriteByte('<')
				w.inTag = true
			}
			s = rest
		}
	}
	return out.String()
}

// stretch translates words and keeps the room around them.
func (w *words) stretch(s string) string {
	core := strings.TrimSpace(s)
	if !strings.ContainsFunc(core, unicode.IsLetter) {
		return s
	}
	at := strings.Index(s, core)
	return s[:at] + html.EscapeString(w.say(html.UnescapeString(core))) + s[at+len(core):]
}
