package render

import (
	"cmp"
	"strconv"
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
