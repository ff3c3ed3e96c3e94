package browsertest

import (
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"baybook/calculators/calctest"

	"github.com/chromedp/chromedp"
)

// A paper is a size that a shop prints on.
type paper struct {
	name          string
	width, height float64 // mm
}

// papers are the two that a shop has.
var papers = []paper{{"A4", 210, 297}, {"Letter", 215.9, 279.4}}

// inTurn gives the i-th sheet one of the papers, so that a test over all
// sheets prints each of them once and half of them on each paper.
func inTurn(i int) []paper { return papers[i%len(papers):][:1] }

const mmPerInch, mmPerPoint = 25.4, 25.4 / 72

// A paperWord is a word of a printed page with its place, in points from the
// page's upper left corner.
type paperWord struct {
	Text                   string
	XMin, YMin, XMax, YMax float64
}

// UnmarshalXML reads the places by their names.
func (w *paperWord) UnmarshalXML(d *xml.Decoder, start xml.StartElement) error {
	for _, a := range start.Attr {
		v, err := strconv.ParseFloat(a.Value, 64)
		if err != nil {
			return err
		}
		switch a.Name.Local {
		case "xMin":
			w.XMin = v
		case "yMin":
			w.YMin = v
		case "xMax":
			w.XMax = v
		case "yMax":
			w.YMax = v
		}
	}
	return d.DecodeElement(&w.Text, &start)
}

// A paperPage is one printed page.
type paperPage struct {
	Width  float64     `xml:"width,attr"`
	Height float64     `xml:"height,attr"`
	Words  []paperWord `xml:"word"`
}

// text is the page's words in one line.
func (p paperPage) text() string {
	var words []string
	for _, w := range p.Words {
		words = append(words, w.Text)
	}
	return strings.Join(words, " ")
}

// printed prints the page that stands in a tab to a PDF and gives the file.
func printed(p *tab, width, height float64) string {
	p.t.Helper()
	data, err := chromedp.Run(p.ctx, chromedp.PrintToPDF(
		chromedp.PDFPaper(chromedp.PaperSize{Width: width / mmPerInch, Height: height / mmPerInch}), chromedp.PDFPreferCSSPageSize()))
	if err != nil {
		p.t.Fatal(err)
	}
	file := filepath.Join(p.t.TempDir(), "page.pdf")
	if err := os.WriteFile(file, data, 0o644); err != nil {
		p.t.Fatal(err)
	}
	return file
}

// poppler runs one of the PDF tools.
func poppler(t testing.TB, tool string, arguments ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(tool); err != nil {
		calctest.Missing(t, "%s is not there: apt-get install poppler-utils", tool)
	}
	out, err := exec.Command(tool, arguments...).Output()
	if err != nil {
		t.Fatalf("%s: %v", tool, err)
	}
	return out
}

// pagesOf reads a PDF.
func pagesOf(t testing.TB, file string) []paperPage {
	t.Helper()
	var doc struct {
		Pages []paperPage `xml:"body>doc>page"`
	}
	d := xml.NewDecoder(strings.NewReader(string(poppler(t, "pdftotext", "-bbox", file, "-"))))
	d.Strict, d.Entity = false, xml.HTMLEntity
	if err := d.Decode(&doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Pages) == 0 {
		t.Fatal("the PDF has no page")
	}
	return doc.Pages
}

// sheetsWith lists the pages of sheets that hold what a selector finds.
func sheetsWith(t testing.TB, p *tab, root, selector string) []string {
	t.Helper()
	p.open(root + "a-z.html")
	all := eval[[]string](p, `[...new Set([...document.querySelectorAll(".letters ~ section a")].map((a) => a.getAttribute("href")).filter((h) => h.includes("/") && !h.startsWith("calculators/")))]`)
	var with []string
	for _, page := range all {
		has := eval[bool](p, `fetch(`+js(root+page)+`).then((r) => r.text()).then((t) => !!new DOMParser().parseFromString(t, "text/html").querySelector(`+js(selector)+`))`)
		if has {
			with = append(with, page)
		}
	}
	return with
}

// is reports whether a page has this width and height, in mm.
func (p paperPage) is(width, height float64) bool {
	return math.Abs(p.Width*mmPerPoint-width) < 1 && math.Abs(p.Height*mmPerPoint-height) < 1
}

func TestTitleBlockOnEveryPage(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	for _, page := range []string{"power/fuse-tap.html", "reference/wire-sizes.html", "jobs/bookmobile.html", "book/house-rules.html"} {
		p.open(root + page)
		number := eval[string](p, "document.documentElement.dataset.number")
		title, diagrams := p.text("h1"), p.count(".across")
		for _, paper := range papers {
			pages, across := pagesOf(t, printed(p, paper.width, paper.height)), 0
			for i, sheet := range pages {
				switch {
				case sheet.is(paper.width, paper.height):
				case sheet.is(paper.height, paper.width):
					across++ // a wiring diagram lies across
				default:
					t.Errorf("%s on %s: page %d is %.0f × %.0f points", page, paper.name, i+1, sheet.Width, sheet.Height)
				}
				text := sheet.text()
				for _, want := range []string{"Legal owner", "Revision", "Date of issue", number, title, fmt.Sprintf("%d / %d", i+1, len(pages))} {
					if !strings.Contains(text, want) {
						t.Errorf("%s on %s: page %d of %d lacks %q", page, paper.name, i+1, len(pages), want)
					}
				}
				for _, w := range sheet.Words {
					if w.XMin < 0 || w.XMax > sheet.Width || w.YMax > sheet.Height {
						t.Errorf("%s on %s: “%s” runs off page %d", page, paper.name, w.Text, i+1)
					}
				}
			}
			if across != diagrams {
				t.Errorf("%s on %s: %d pages lie across, and %d wiring diagrams are there", page, paper.name, across, diagrams)
			}
		}
	}
}

// firstWords are the first words of each step as they are printed: of its
// message where it has one.
const firstWords = `[...document.querySelectorAll(".step")].map((s) => {
	const block = [...s.querySelector(".what").children].find((c) => c.innerText.trim() !== "");
	return block.innerText.trim().split(/\s+/).slice(0, 3);
})`

// On paper a step's number is beside its first words, a safety message stands
// on one page from its signal word to its last, and no words lie on others.
func TestNothingIsPartedOnPaper(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	steps, messages := 0, 0
	for i, page := range sheetsWith(t, p, root, ".step, .message") {
		p.open(root + page)
		first, ends := eval[[][]string](p, firstWords), eval[[][2][]string](p, messageEnds)
		steps, messages = steps+len(first), messages+len(ends)
		for _, paper := range inTurn(i) {
			pages, on := pagesOf(t, printed(p, paper.width, paper.height)), page+" on "+paper.name
			for n, words := range first {
				if !beside(pages, strconv.Itoa(n+1), words) {
					t.Errorf("%s: the number of step %d is not beside “%s”", on, n+1, strings.Join(words, " "))
				}
			}
			for _, m := range ends {
				if !slices.ContainsFunc(pages, func(sheet paperPage) bool { return whole(sheet, m[0], m[1]) }) {
					t.Errorf("%s: no page holds “%s …” up to “… %s”", on, strings.Join(m[0], " "), strings.Join(m[1], " "))
				}
			}
			for i, sheet := range pages {
				if words := overprinted(sheet); words != "" {
					t.Errorf("%s: on page %d %s are printed over each other", on, i+1, words)
				}
			}
		}
	}
	if steps < 200 || messages < 120 {
		t.Errorf("only %d steps and %d messages were looked at", steps, messages)
	}
}

// messageEnds are the first words of each message, signal word and title, and
// its last ones.
const messageEnds = `[...document.querySelectorAll(".message")].map((m) => {
	const words = m.innerText.trim().split(/\s+/);
	return [words.slice(0, 4), words.slice(-3)];
})`

// whole reports whether a page has the first words and, behind them, the last.
func whole(page paperPage, first, last []string) bool {
	words := unbroken(page.Words)
	for i := range words {
		if i+len(first) > len(words) || !match(words[i:], first) {
			continue
		}
		for j := i + len(first); j+len(last) <= len(words); j++ {
			if match(words[j:], last) {
				return true
			}
		}
	}
	return false
}

// unbroken joins a word that a line's end parts at its hyphen: "anti-" and
// "pinch".
func unbroken(words []paperWord) []paperWord {
	var out []paperWord
	for _, w := range words {
		if n := len(out) - 1; n >= 0 && strings.HasSuffix(out[n].Text, "-") && len(out[n].Text) > 1 {
			out[n].Text += w.Text
			continue
		}
		out = append(out, w)
	}
	return out
}

// overprinted names two words of which one lies on the other by more than a
// third of its height and width.
func overprinted(page paperPage) string {
	for i, a := range page.Words {
		for _, b := range page.Words[i+1:] {
			width := math.Min(a.XMax, b.XMax) - math.Max(a.XMin, b.XMin)
			height := math.Min(a.YMax, b.YMax) - math.Max(a.YMin, b.YMin)
			if width > math.Min(a.XMax-a.XMin, b.XMax-b.XMin)/3 && height > math.Min(a.YMax-a.YMin, b.YMax-b.YMin)/3 {
				return "“" + a.Text + "” and “" + b.Text + "”"
			}
		}
	}
	return ""
}

// beside reports whether a page has the number in its left margin and the
// words on the same height.
func beside(pages []paperPage, number string, words []string) bool {
	for _, page := range pages {
		for _, n := range page.Words {
			if n.Text != number || n.XMin > 90 {
				continue
			}
			for i := range page.Words {
				if i+len(words) <= len(page.Words) && match(page.Words[i:], words) && page.Words[i].XMin > n.XMax && math.Abs(page.Words[i].YMin-n.YMin) < 24 {
					return true
				}
			}
		}
	}
	return false
}

func match(page []paperWord, words []string) bool {
	for i, w := range words {
		if !strings.HasPrefix(page[i].Text, w) && !strings.HasPrefix(w, page[i].Text) {
			return false
		}
	}
	return true
}

// The lamination card of a procedure is one page: hazards, tools, steps in
// short, limits.
func TestCardIsOnePage(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	pages := sheetsWith(t, p, root, ".step")
	if len(pages) < 15 {
		t.Fatalf("only %v have steps", pages)
	}
	for i, page := range pages {
		p.open("about:blank")
		p.open(root + page + "#card")
		p.wait(`document.body.dataset.view === "card"`)
		steps := p.count(".step")
		for _, paper := range inTurn(i) {
			sheets := pagesOf(t, printed(p, paper.width, paper.height))
			if len(sheets) != 1 {
				t.Errorf("%s: the card takes %d pages of %s", page, len(sheets), paper.name)
				continue
			}
			text := sheets[0].text()
			for _, want := range []string{"What can hurt", "Tools", "Prove it", strconv.Itoa(steps), eval[string](p, "document.documentElement.dataset.number")} {
				if !strings.Contains(text, want) {
					t.Errorf("%s: the card on %s lacks %q", page, paper.name, want)
				}
			}
		}
	}
}

// The hand-over record of a job is one sheet with a title block.
func TestRecordPrintsOnOneSheet(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	openJob(p, root, "Van 7")
	p.open(root + "power/fuse-tap.html")
	p.tap("#step-1 .tick")
	p.fill("#reading-feed-contact input", "12.6")
	p.wait(verdictOf("feed-contact") + ` === "ok"`)
	p.open(root + "ground/ground-point.html")
	p.tap("#step-1 .tick")
	p.fill("#reading-ground-drop input", "150")
	p.wait(verdictOf("ground-drop") + ` === "stop"`)
	p.open(root + "record.html")
	p.wait(`document.querySelector("[data-shown]").textContent.includes("OUT OF LIMITS")`)
	for _, paper := range papers {
		pages := pagesOf(t, printed(p, paper.width, paper.height))
		if len(pages) != 1 {
			t.Errorf("the record takes %d pages of %s", len(pages), paper.name)
		}
		text := pages[0].text()
		for _, want := range []string{"Hand-over record", "Van 7", "Signed", "12.6 V", "150 mV", "OUT OF LIMITS", "PW-01", "GR-01"} {
			if !strings.Contains(text, want) {
				t.Errorf("the printed record lacks %q: %s", want, text)
			}
		}
		for _, wrong := range []string{"Open a job", "Choose", "Save as"} {
			if strings.Contains(text, wrong) {
				t.Errorf("the printed record shows %q", wrong)
			}
		}
	}
}
