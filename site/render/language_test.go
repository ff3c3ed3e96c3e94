package render

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"baybook/site/finding"
	"baybook/site/sheet"
	"baybook/theme"
)

var update = flag.Bool("update", false, "write theme/words/en.yaml anew")

// wordsHead stands over the list of words.
const wordsHead = `# What the pages say beside the sheets' own words, in American English, and how
# days and prices are written. The list is made of the templates, and a test
# keeps it so. baybook interface prints it to be put into another language.

date: "{year}-{month}-{day}"
price: "{currency}{amount}"
point: "."
group: none
words:
`

// TestWordsAreThoseOfTheTemplates holds the list for translators against what
// the pages say.
func TestWordsAreThoseOfTheTemplates(t *testing.T) {
	words, err := TemplateWords(theme.Files)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString(wordsHead)
	for _, w := range words {
		b.WriteString("  - {say: " + strconv.Quote(w) + "}\n")
	}
	file := filepath.Join("..", "..", "theme", "words", "en.yaml")
	if *update {
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	has, err := os.ReadFile(file)
	if err != nil || string(has) != b.String() {
		t.Errorf("theme/words/en.yaml is not what the templates say (%v); go test ./site/render -run Words -update writes it", err)
	}
	for _, want := range []string{"Title block", "What can hurt:", "Find a step, number or drawing", "not yet", "Labor"} {
		if !strings.Contains(b.String(), strconv.Quote(want)) {
			t.Errorf("%q is not among the words", want)
		}
	}
	for _, w := range words {
		if strings.ContainsAny(w, "<>{}") {
			t.Errorf("%q holds markup", w)
		}
	}
}

// TestShippedLanguages reads every file of words that the theme carries.
func TestShippedLanguages(t *testing.T) {
	for _, name := range []string{"en", "en-US", "en-GB"} {
		book := &sheet.Book{Shop: &sheet.Shop{Language: name}}
		if _, err := newSpeech(theme.Files, book); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		text, err := theme.Files.ReadFile("words/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		book.Interface = sheet.ReadInterface(finding.NewSource(name, text), func(f finding.Finding) { t.Errorf("%s: %s: %s", name, f.Pos, f.Message) })
		for _, f := range CheckLanguage(theme.Files, book) {
			t.Errorf("%s: %s", name, f.Message)
		}
	}
}

// TestDaysAndPrices writes them as the countries do: ISO 8601, and the Unicode
// CLDR's medium dates and standard currency patterns for en-US, en-GB and de.
func TestDaysAndPrices(t *testing.T) {
	german := sheet.ReadInterface(finding.NewSource("interface.yaml", []byte("date: \"{day}.{month}.{year}\"\nprice: \"{amount} {currency}\"\npoint: \",\"\ngroup: \".\"\n")), func(f finding.Finding) { t.Error(f.Message) })
	for _, tt := range []struct {
		tag                       string
		own                       *sheet.Interface
		day, dollars, code, small string
	}{
		{"en", nil, "2026-12-01", "$5940.25", "EUR\u00a01234567.00", "-$12.00"},
		{"en-US", nil, "Dec 1, 2026", "$5,940.25", "EUR\u00a01,234,567.00", "-$12.00"},
		{"en-GB", nil, "1 Dec 2026", "$5,940.25", "EUR\u00a01,234,567.00", "-$12.00"},
		{"de", german, "01.12.2026", "5.940,25\u00a0$", "1.234.567,00\u00a0EUR", "-12,00\u00a0$"},
	} {
		s, err := newSpeech(theme.Files, &sheet.Book{Shop: &sheet.Shop{Language: tt.tag}, Interface: tt.own})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Day(time.Date(2026, 12, 1, 0, 0, 0, 0, time.UTC)); got != tt.day || s.day("2026-12-01") != tt.day || s.day("soon") != "soon" {
			t.Errorf("%s: the day is %q, want %q", tt.tag, got, tt.day)
		}
		for in, want := range map[string]string{"$5940.25": tt.dollars, "EUR 1234567.00": tt.code, "-$12.00": tt.small, "none": "none"} {
			if got := s.price(in); got != want {
				t.Errorf("%s: %s is %q, want %q", tt.tag, in, got, want)
			}
		}
	}
}

// TestTranslate says a page in a language of the shop's own.
func TestTranslate(t *testing.T) {
	own := sheet.ReadInterface(finding.NewSource("interface.yaml", []byte("words:\n- {say: Title block, as: Schriftfeld}\n- {say: 'What can hurt:', as: 'Gefahr \"<b>\":'}\n- {say: Titel block, as: x}\n")), func(f finding.Finding) { t.Error(f.Message) })
	book := &sheet.Book{Shop: &sheet.Shop{Language: "de"}, Interface: own}
	list := CheckLanguage(theme.Files, book)
	if len(list) != 2 || list[0].Severity != finding.Error || !strings.Contains(list[0].Do, "Title block") || !strings.Contains(list[1].Message, "stay English") {
		t.Errorf("what is wrong with the words: %v", list)
	}
	s, err := newSpeech(theme.Files, book)
	if err != nil {
		t.Fatal(err)
	}
	pages, err := parsePages(theme.Files, s)
	if err != nil {
		t.Fatal(err)
	}
	s.translate(pages)
	text := pages.Lookup("sheet.html").Tree.Root.String()
	for _, want := range []string{">Schriftfeld<", `aria-label="Gefahr &#34;&lt;b&gt;&#34;:`, "Legal owner"} {
		if !strings.Contains(text, want) {
			t.Errorf("the template lacks %s", want)
		}
	}
	if strings.Contains(text, "Title block") {
		t.Error("the template still says the English")
	}
}
