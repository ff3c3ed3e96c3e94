package rule

import (
	"path"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
)

var anchor = &check.Rule{
	Name: "anchor",
	Firm: true,
	Doc: `The place behind # is there

A step is #step-4, a section its heading in small letters joined by hyphens
(#prove-it), a reading #reading-name.`,
	Check: func(p *check.Pass) {
		for _, l := range p.Sheet.Links {
			t := p.Sheet.Resolve(l.Dest)
			if t.Outside || !strings.Contains(l.Dest, "#") || path.Ext(t.File) != ".md" {
				continue
			}
			target := p.Book.Sheet(strings.TrimSuffix(t.File, ".md"))
			if target == nil || check.Unread(target) || target.HasAnchor(t.Fragment) {
				continue
			}
			do := "use one of #" + strings.Join(target.Anchors(), ", #")
			if near := calc.Nearest(t.Fragment, target.Anchors()); near != "" {
				do = "did you mean #" + near + "?"
			}
			p.Report(l.Span, target.File+" has no place #"+t.Fragment, do)
		}
	},
}
