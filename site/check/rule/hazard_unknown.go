package rule

import (
	"baybook/calculators/calc"
	"baybook/site/check"
)

var hazardUnknown = &check.Rule{
	Name: "hazard-unknown",
	Firm: true,
	Doc:  `The front matter's hazards are ids of the register`,
	Check: func(p *check.Pass) {
		var ids []string
		for _, h := range p.Book.Register.Hazards {
			ids = append(ids, h.ID)
		}
		for _, id := range p.Sheet.Front.Hazards {
			if p.Book.Register.Named(id) != nil {
				continue
			}
			do := "use an id of content/hazards.yaml"
			if near := calc.Nearest(id, ids); near != "" {
				do = "did you mean " + near + "?"
			}
			p.Report(p.Sheet.Front.Place("hazards"), "the register has no hazard with the id “"+id+"”", do)
		}
	},
}
