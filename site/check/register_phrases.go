package check

import (
	"baybook/site/check/english"
	"baybook/site/sheet"
)

// RegisterPhrases is the hazard register with its phrases read.
type RegisterPhrases struct {
	Hazards []*sheet.Hazard
	// steps, tools and Never hold the phrases of all hazards; the owners say
	// whose each one is, by its place in Hazards.
	steps, tools           *english.Set
	stepOwners, toolOwners []int
	Never                  *english.Set
	NeverOwners            []int
	// unless and under are by hazard, and so is Demands: what the hazard's
	// message must say.
	unless  []*english.Set
	under   [][]*english.Set
	Demands [][]Demand
	// Faults are the phrases that could not be read.
	Faults []PhraseFault
}

// A Demand is one thing that a message must say.
type Demand struct {
	What  string
	any   *english.Set
	units *english.Set
}

// A PhraseFault is a phrase that does not follow the grammar.
type PhraseFault struct {
	Hazard  *sheet.Hazard
	Message string
}

// readRegister reads the phrases of the register. What cannot be read is left
// out here and reported by a rule.
func readRegister(from *sheet.Register, stems *english.Stems) *RegisterPhrases {
	r := &RegisterPhrases{}
	if from == nil {
		from = &sheet.Register{}
	}
	r.Hazards = from.Hazards
	var steps, tools, never []english.Pattern
	for i, h := range r.Hazards {
		add := func(list []english.Pattern, owners *[]int, phrases []string) []english.Pattern {
			for _, p := range r.read(h, phrases, stems) {
				list, *owners = append(list, p), append(*owners, i)
			}
			return list
		}
		steps = add(steps, &r.stepOwners, h.Shows.Steps)
		tools = add(tools, &r.toolOwners, h.Shows.Tools)
		never = add(never, &r.NeverOwners, h.Never)
		r.unless = append(r.unless, english.NewSet(r.read(h, h.Shows.Unless, stems)))
		var under []*english.Set
		for _, u := range h.Under {
			under = append(under, english.NewSet(r.read(h, u.Shows, stems)))
		}
		r.under = append(r.under, under)
		var demands []Demand
		for _, s := range h.Say {
			one := Demand{What: s.What, any: english.NewSet(r.read(h, s.Any, stems))}
			if len(s.Units) > 0 {
				one.units = english.NewSet([]english.Pattern{english.UnitPattern(s.Units)})
			}
			demands = append(demands, one)
		}
		r.Demands = append(r.Demands, demands)
	}
	r.steps, r.tools, r.Never = english.NewSet(steps), english.NewSet(tools), english.NewSet(never)
	return r
}

func (r *RegisterPhrases) read(h *sheet.Hazard, phrases []string, stems *english.Stems) []english.Pattern {
	var list []english.Pattern
	for _, s := range phrases {
		p, msg := english.Parse(s, stems)
		if msg != "" {
			r.Faults = append(r.Faults, PhraseFault{h, msg})
			continue
		}
		list = append(list, p)
	}
	return list
}

// Index is the place of a hazard in the register, -1 where it has none.
func (r *RegisterPhrases) Index(h *sheet.Hazard) int {
	for i := range r.Hazards {
		if r.Hazards[i] == h {
			return i
		}
	}
	return -1
}

// SaidIn reports whether one of the texts says what the demand asks for.
func (s *Demand) SaidIn(texts []*Passage) bool {
	for _, p := range texts {
		whole := english.Sentence{Last: len(p.Words)}
		if len(s.any.Find(p.Text, whole, english.Said)) > 0 {
			return true
		}
		if s.units != nil && len(s.units.Find(p.Text, whole, english.Said)) > 0 {
			return true
		}
	}
	return false
}
