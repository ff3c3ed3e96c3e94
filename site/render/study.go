package render

import (
	"strings"

	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// studyArea is an area of the study page with its sheets' cards.
type studyArea struct {
	Name, Title string
	Sheets      []studySheet
}

// studySheet is a sheet that asks something, or that is signed off.
type studySheet struct {
	Number, Title, Revision, Skill string
	Cards                          []card
}

// card is one question or practice problem: its address is where it is asked.
type card struct{ Address, Text string }

// Study renders the list of every question and practice problem; scripts draw
// decks from it, and without scripts its links lead to the cards.
func (r *Renderer) Study() ([]byte, error) {
	areas := r.studyAreas(func(s *sheet.Sheet) []card {
		var cards []card
		for _, q := range s.Questions {
			text, _, _ := strings.Cut(strings.TrimSpace(s.Prose(q, isAnswer).Text), "\n")
			cards = append(cards, card{PageOf(s) + "#" + q.Anchor(), text})
		}
		for _, pr := range s.Problems {
			cards = append(cards, card{PageOf(s) + "#" + pr.Anchor(), pr.Question})
		}
		return cards
	})
	return r.print("study.html", r.newPage("desk", "study.html", "Study", areas))
}

// SignOff renders the card on which a lead signs what a person was seen doing.
func (r *Renderer) SignOff() ([]byte, error) {
	areas := r.studyAreas(func(s *sheet.Sheet) []card {
		if s.Front.Kind != sheet.Procedure {
			return nil
		}
		return []card{{PageOf(s), s.Front.Title}}
	})
	return r.print("sign-off.html", r.newPage("list", "sign-off.html", "Sign-off card", areas))
}

// Record renders the page that scripts fill with the jobs on the device.
func (r *Renderer) Record() ([]byte, error) {
	return r.print("record.html", r.newPage("desk", "record.html", "Record", nil))
}

// studyAreas groups the sheets for which cards gives something.
func (r *Renderer) studyAreas(cards func(*sheet.Sheet) []card) []studyArea {
	var areas []studyArea
	for _, a := range r.Areas("") {
		area := studyArea{Name: a.Name, Title: a.Title}
		for _, s := range a.Sheets {
			if of := cards(s.Sheet); len(of) > 0 {
				f := s.Sheet.Front
				area.Sheets = append(area.Sheets, studySheet{f.Number, f.Title, f.Revision, string(f.Skill), of})
			}
		}
		if len(area.Sheets) > 0 {
			areas = append(areas, area)
		}
	}
	return areas
}

// isAnswer reports whether a node belongs to a question's answer.
func isAnswer(n ast.Node) bool {
	switch n.(type) {
	case *sheet.Option, *ast.Blockquote:
		return true
	}
	return false
}
