package render

import (
	"strings"

	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// studyStage is a stage of the course with its sheets' cards: what needs nothing
// comes first, then what needs that.
type studyStage struct {
	Number int
	Time   string // of the work on its sheets, once
	Sheets []studySheet
}

// studyBody is what the study page shows.
type studyBody struct {
	Areas  []Area // to choose from
	Stages []studyStage
}

// studySheet is a sheet that asks something, or that is signed off.
type studySheet struct {
	Number, Title, Revision, Skill string
	// After are the numbers of the sheets that are learned before it.
	Area, Page, After string
	Cards             []card
}

// card is one question or practice problem: its address is where it is asked.
type card struct{ Address, Text string }

// Study renders the list of every question and practice problem; scripts draw
// decks from it, and without scripts its links lead to the cards.
func (r *Renderer) Study() ([]byte, error) {
	stages := r.studyStages(func(s *sheet.Sheet) []card {
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
	return r.print("study.html", r.newPage("desk", "study.html", "Study", studyBody{r.Areas(""), stages}))
}

// SignOff renders the card on which a lead signs what a person was seen doing.
func (r *Renderer) SignOff() ([]byte, error) {
	stages := r.studyStages(func(s *sheet.Sheet) []card {
		if s.Front.Kind != sheet.Procedure {
			return nil
		}
		return []card{{PageOf(s), s.Front.Title}}
	})
	return r.print("sign-off.html", r.newPage("list", "sign-off.html", "Sign-off card", stages))
}

// Record renders the page that scripts fill with the jobs on the device.
func (r *Renderer) Record() ([]byte, error) {
	return r.print("record.html", r.newPage("desk", "record.html", "Record", nil))
}

// studyStages puts the sheets for which cards gives something into the stages of
// the course, in which cards are dealt.
func (r *Renderer) studyStages(cards func(*sheet.Sheet) []card) []studyStage {
	var stages []studyStage
	for _, list := range r.Book.Course() {
		stage := studyStage{Number: len(stages) + 1}
		minutes := 0
		for _, s := range list {
			of := cards(s)
			if len(of) == 0 || s.Front.Draft {
				continue
			}
			f := &s.Front
			var after []string
			for _, n := range r.Book.NeededBy(s) {
				after = append(after, n.Front.Number)
			}
			stage.Sheets = append(stage.Sheets, studySheet{f.Number, f.Title, f.Revision, string(f.Skill), s.Area(), PageOf(s), strings.Join(after, ", "), of})
			minutes += f.Minutes
		}
		stage.Time = duration(minutes)
		if len(stage.Sheets) > 0 {
			stages = append(stages, stage)
		}
	}
	return stages
}

// isAnswer reports whether a node belongs to a question's answer.
func isAnswer(n ast.Node) bool {
	switch n.(type) {
	case *sheet.Option, *ast.Blockquote:
		return true
	}
	return false
}
