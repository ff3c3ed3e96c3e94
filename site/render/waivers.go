package render

import (
	"cmp"
	"strconv"

	"baybook/site/sheet"
)

// waiverTable lists what the sheets of the book set aside, for whoever signs
// the register.
func (r *Renderer) waiverTable() string {
	var rows [][]string
	for _, s := range r.Book.Sheets {
		for _, w := range s.Front.Waivers {
			step := "outside the steps"
			if w.Step > 0 {
				step = strconv.Itoa(w.Step)
			}
			rows = append(rows, []string{s.Front.Title, step, cmp.Or(w.Hazard, w.Rule), w.Reason, w.By})
		}
	}
	if len(rows) == 0 {
		return "<p>No sheet sets anything aside.</p>"
	}
	return tableMarkup("What the sheets set aside", []string{"Sheet", "Step", "Hazard or rule", "Reason", "By"}, rows)
}

// A waivedLine is what a sheet sets aside, as its reader sees it.
type waivedLine struct {
	Step             int
	What, Reason, By string
}

// waived lists what a sheet sets aside: hazards by their titles.
func (r *Renderer) waived(s *sheet.Sheet) []waivedLine {
	var list []waivedLine
	for _, w := range s.Front.Waivers {
		line := waivedLine{Step: w.Step, What: w.Rule, Reason: w.Reason, By: w.By}
		if w.Hazard != "" {
			line.What = w.Hazard
			if r.Book.Register != nil {
				if h := r.Book.Register.Named(w.Hazard); h != nil {
					line.What = h.Title
				}
			}
		}
		list = append(list, line)
	}
	return list
}
