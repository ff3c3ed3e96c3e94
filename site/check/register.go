package check

import (
	"baybook/site/check/phrase"
	"baybook/site/sheet"
)

// A register is the hazard register with its phrases read.
type register struct {
	hazards []*sheet.Hazard
	// steps, tools and never hold the phrases of all hazards; the owners say
	// whose each one is.
	steps, tools, never                *phrase.Set
	stepOwners, toolOwners, neverOwner []int
	// unless, under and say are by hazard.
	unless []*phrase.Set
	under  [][]*phrase.Set
	say    [][]saying
	// faults are the phrases that could not be read.
	faults []phraseFault
}

// A saying is one thing that a message must say.
type saying struct {
	what  string
	any   *phrase.Set
	units *phrase.Set
}

// A phraseFault is a phrase that does not follow the grammar.
type phraseFault struct {
	hazard  *sheet.Hazard
	message string
}

// readRegister reads the phrases of the register. What cannot be read is left
// out here and reported by a rule.
func readRegister(from *sheet.Register, stems *phrase.Stems) *register {
	r := &register{}
	if from == nil {
		from = &sheet.Register{}
	}
	r.hazards = from.Hazards
	var steps, tools, never []phrase.Pattern
	for i, h := range r.hazards {
		add := func(list []phrase.Pattern, owners *[]int, phrases []string) []phrase.Pattern {
			for _, p := range r.read(h, phrases, stems) {
				list, *owners = append(list, p), append(*owners, i)
			}
			return list
		}
		steps = add(steps, &r.stepOwners, h.Shows.Steps)
		tools = add(tools, &r.toolOwners, h.Shows.Tools)
		never = add(never, &r.neverOwner, h.Never)
		r.unless = append(r.unless, phrase.NewSet(r.read(h, h.Shows.Unless, stems)))
		var under []*phrase.Set
		for _, u := range h.Under {
			under = append(under, phrase.NewSet(r.read(h, u.Shows, stems)))
		}
		r.under = append(r.under, under)
		var says []saying
		for _, s := range h.Say {
			one := saying{what: s.What, any: phrase.NewSet(r.read(h, s.Any, stems))}
			if len(s.Units) > 0 {
				one.units = phrase.NewSet([]phrase.Pattern{phrase.Quantity(s.Units)})
			}
			says = append(says, one)
		}
		r.say = append(r.say, says)
	}
	r.steps, r.tools, r.never = phrase.NewSet(steps), phrase.NewSet(tools), phrase.NewSet(never)
	return r
}

func (r *register) read(h *sheet.Hazard, phrases []string, stems *phrase.Stems) []phrase.Pattern {
	var list []phrase.Pattern
	for _, s := range phrases {
		p, msg := phrase.Parse(s, stems)
		if msg != "" {
			r.faults = append(r.faults, phraseFault{h, msg})
			continue
		}
		list = append(list, p)
	}
	return list
}

// index is the place of a hazard in the register, -1 where it has none.
func (r *register) index(h *sheet.Hazard) int {
	for i := range r.hazards {
		if r.hazards[i] == h {
			return i
		}
	}
	return -1
}

// said reports whether a text says one thing that a message must.
func (s *saying) said(texts []*passage) bool {
	for _, p := range texts {
		whole := phrase.Sentence{Last: len(p.Words)}
		if len(s.any.Find(p.Text, whole, phrase.Said)) > 0 {
			return true
		}
		if s.units != nil && len(s.units.Find(p.Text, whole, phrase.Said)) > 0 {
			return true
		}
	}
	return false
}
