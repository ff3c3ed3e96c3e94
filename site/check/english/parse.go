package english

import (
	"strings"
)

// A Pattern is a phrase, read.
type Pattern struct {
	// Source is the phrase as it was written.
	Source string
	parts  []part
}

// A part is words in a row.
type part struct {
	words []slot
	// doing is true where the first word is a verb that is being done.
	doing bool
}

// A slot is one word of a part: any of its stems, an exact word, or a number
// with any of its units.
type slot struct {
	stems  []int32
	lowers []string
	exact  string
	units  []string
	// head is the stem of exact.
	head int32
}

// Parse reads a phrase. The message is empty where it is well formed.
func Parse(source string, stems *Stems) (Pattern, string) {
	p := Pattern{Source: source}
	for piece := range strings.SplitSeq(source, " + ") {
		fields := strings.Fields(piece)
		var one part
		if len(fields) > 1 && fields[0] == "to" {
			one.doing = true
			fields = fields[1:]
		}
		if len(fields) == 0 {
			return p, "a part of the phrase “" + source + "” is empty"
		}
		for _, f := range fields {
			if isArticle(f) {
				continue // a text's articles are passed over too
			}
			s, msg := parseSlot(f, stems)
			if msg != "" {
				return p, "in the phrase “" + source + "” " + msg
			}
			one.words = append(one.words, s)
		}
		if len(one.words) == 0 {
			return p, "a part of the phrase “" + source + "” holds no word that counts"
		}
		if one.doing && len(one.words[0].stems) == 0 {
			return p, "in the phrase “" + source + "” no verb follows to"
		}
		p.parts = append(p.parts, one)
	}
	return p, ""
}

func parseSlot(field string, stems *Stems) (slot, string) {
	if exact, ok := strings.CutPrefix(field, "="); ok {
		if exact == "" {
			return slot{}, "nothing follows ="
		}
		return slot{exact: exact, head: stems.of(exact).id}, ""
	}
	if strings.HasPrefix(field, "<") {
		inner, ok := strings.CutSuffix(field[1:], ">")
		if !ok || inner == "" {
			return slot{}, "a number is written <unit> or <unit/unit>"
		}
		return slot{units: strings.Split(inner, "/")}, ""
	}
	var s slot
	for alternative := range strings.SplitSeq(field, "/") {
		t := Read(alternative, stems)
		if len(t.Words) != 1 {
			return slot{}, "“" + alternative + "” is not one word; write words joined by a hyphen as two"
		}
		s.stems = append(s.stems, t.Words[0].id)
		s.lowers = append(s.lowers, t.Words[0].Lower)
	}
	return s, ""
}

// heads are the stems that the part can start with; nil where it may start
// with any word.
func (p *part) heads() []int32 {
	first := p.words[0]
	switch {
	case first.exact != "":
		return []int32{first.head}
	case len(first.units) > 0:
		return nil
	}
	return first.stems
}

// UnitPattern is the phrase of a number with one of the units.
func UnitPattern(units []string) Pattern {
	return Pattern{Source: "<" + strings.Join(units, "/") + ">", parts: []part{{words: []slot{{units: units}}}}}
}
