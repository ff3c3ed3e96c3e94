package render

import (
	"bufio"
	"bytes"
	"html/template"
	"strings"

	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// A WordCount says how often a signal word stands over the hazards of a sheet.
type WordCount struct {
	Word  string
	Count int
}

// wordCounts counts hazards by signal word, in the order of the list.
func wordCounts(hazards []HazardSummary) []WordCount {
	var counts []WordCount
	for _, h := range hazards {
		if last := len(counts) - 1; last >= 0 && counts[last].Word == h.Word {
			counts[last].Count++
		} else {
			counts = append(counts, WordCount{h.Word, 1})
		}
	}
	return counts
}

// A ContentsLine is one line of a sheet's contents: a step with its number, or
// a section without.
type ContentsLine struct {
	Number       int
	Anchor, Text string
}

// contents lists a sheet's sections, with the steps in place of their section.
func contents(s *sheet.Sheet) []ContentsLine {
	var lines []ContentsLine
	for _, section := range s.Sections {
		if !section.Is(sheet.StepsTitle) || len(s.Steps) == 0 {
			lines = append(lines, ContentsLine{Anchor: section.Anchor, Text: section.Title})
			continue
		}
		for _, step := range s.Steps {
			lines = append(lines, ContentsLine{Number: step.Number, Anchor: step.Anchor(), Text: sentence(s, step)})
		}
	}
	return lines
}

// sentence is a step's first paragraph in plain words.
func sentence(s *sheet.Sheet, step *sheet.Step) string {
	for n := step.FirstChild(); n != nil; n = n.NextSibling() {
		switch n.(type) {
		case *ast.Paragraph, *ast.TextBlock:
			return strings.TrimSpace(s.Prose(n, nil).Text)
		}
	}
	return ""
}

// Neighbors are the ways from a sheet to the ones before and after it in its
// area, by the order of the cover. Two values are equal where a page would
// show the same.
type Neighbors struct {
	Area           string
	Previous, Next Neighbor
}

// A Neighbor is a sheet to turn to; without a page where there is none.
type Neighbor struct{ Page, Number, Title string }

// Neighbors gives those of a sheet.
func (r *Renderer) Neighbors(s *sheet.Sheet) Neighbors { return r.neighbors()[s.Path] }

// findNeighbors walks through the areas once, for all sheets. Pages of one
// area need not stand in one folder, so each way leads over the site's root.
func (r *Renderer) findNeighbors() map[string]Neighbors {
	all := make(map[string]Neighbors, len(r.Book.Sheets))
	for _, area := range r.Areas("") {
		for i, at := range area.Sheets {
			n := Neighbors{Area: area.Title}
			if i > 0 {
				n.Previous = neighbor(at.Sheet, area.Sheets[i-1].Sheet)
			}
			if i+1 < len(area.Sheets) {
				n.Next = neighbor(at.Sheet, area.Sheets[i+1].Sheet)
			}
			all[at.Sheet.Path] = n
		}
	}
	return all
}

func neighbor(from, to *sheet.Sheet) Neighbor {
	return Neighbor{relative(from.Path, PageOf(to)), to.Front.Number, to.Front.Title}
}

// text renders the words before a sheet's first section, and the rest: what
// the page says of the whole sheet stands between the two, and the messages for
// all of it begin the rest.
func (r *parts) text(s *sheet.Sheet) (opening, rest template.HTML, err error) {
	markdown := newMarkdown(r)
	var before, after bytes.Buffer
	out := &before
	for n := s.Root.FirstChild(); n != nil; n = n.NextSibling() {
		if _, ok := n.(*sheet.Section); ok {
			out = &after
		}
		if err := markdown.Render(out, s.Source.Text(), n); err != nil {
			return "", "", err
		}
	}
	var whole bytes.Buffer
	forAll := bufio.NewWriter(&whole)
	r.openingMessages(forAll)
	if err := forAll.Flush(); err != nil {
		return "", "", err
	}
	return template.HTML(before.String()), template.HTML(whole.String() + after.String()), nil
}
