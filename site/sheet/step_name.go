package sheet

import (
	"strings"

	"github.com/yuin/goldmark/ast"
)

// stepLink reads a step: link. Without words it names the step in which it
// stands; with words it leads to the step of that name in the same sheet.
func (sh *shaping) stepLink(parent ast.Node, link *ast.Link) {
	name := strings.TrimPrefix(string(link.Destination), "step:")
	span := sh.linkSpan(link)
	if name == "" || Slug(name) != name || strings.HasPrefix(name, "step-") {
		sh.fault(span, "step-link", "“"+name+"” is not a step's name", "write lower-case words joined by hyphens, such as [](step:tap-direction)")
		return
	}
	if link.FirstChild() != nil {
		l := &Link{Node: link, Dest: "#" + name, Span: span, Step: sh.step}
		sh.sheet.Links = append(sh.sheet.Links, l)
		sh.stepLinks = append(sh.stepLinks, l)
		sh.inlines(link)
		return
	}
	parent.RemoveChild(parent, link)
	switch {
	case sh.step == nil:
		sh.fault(span, "step-link", "a step's name stands outside the steps", "put it at the start of the step, or put words between its brackets to lead there")
	case sh.step.Name != "":
		sh.fault(span, "step-link", "the step has two names", "keep one of the two")
	default:
		for _, other := range sh.sheet.Steps {
			if other.Name == name {
				sh.fault(span, "step-link", "two steps are named "+name, "give one of them another name")
				return
			}
		}
		sh.step.Name = name
	}
}

// leadToSteps gives the links to named steps the places of their pages, once
// all steps are known. A name that no step has is left to the check of places.
func (sh *shaping) leadToSteps() {
	for _, l := range sh.stepLinks {
		l.Node.Destination = []byte(l.Dest)
		if step := sh.sheet.StepNamed(strings.TrimPrefix(l.Dest, "#")); step != nil {
			l.Node.Destination = []byte("#" + step.Anchor())
		}
	}
}

// StepNamed finds a step by the name that it carries, or by its own anchor;
// nil where there is none.
func (s *Sheet) StepNamed(name string) *Step {
	for _, st := range s.Steps {
		if name != "" && (st.Name == name || st.Anchor() == name) {
			return st
		}
	}
	return nil
}
