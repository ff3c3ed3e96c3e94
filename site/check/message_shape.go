package check

import (
	"strconv"
	"strings"

	"baybook/site/check/phrase"
	"baybook/site/finding"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

var stepsInMessage = &Rule{
	Name: "steps-in-message",
	Doc: `A safety message holds no steps

A message says how to avoid a hazard; work that must be done is a step of its
own, with a number and a tick. A numbered list in a message hides it.

Bad:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell. Run the engine outdoors.
	>
	> 1. Put the extraction on the tailpipe.
	> 2. Read for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			for n := m.FirstChild(); n != nil; n = n.NextSibling() {
				if list, ok := n.(*ast.List); ok && list.IsOrdered() {
					p.Report(m.Span, "the message holds a numbered list", "make steps of it, and keep in the message how the hazard is avoided")
				}
			}
		}
	},
}

var messageOrder = &Rule{
	Name:     "message-order",
	Severity: finding.Warning,
	Doc: `Of several messages in a row the gravest stands first

Who reads only the first reads the one that can kill.

Bad:

	## Before you start

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			if m.Step != nil {
				continue // the site puts those in order
			}
			before, ok := m.PreviousSibling().(*sheet.Message)
			if ok && m.Word > before.Word {
				p.Report(m.WordSpan, m.Word.String()+" stands behind "+before.Word.String(), "move the graver message up", withNote(p.Sheet.Source, before.Span.Start, "it stands behind this one"))
			}
		}
	},
}

var overWarning = &Rule{
	Name:     "over-warning",
	Severity: finding.Warning,
	Doc: `The same warning does not stand at every step

A message that comes at each step is soon skipped, and with it the one that
matters (ANSI Z535.6 advises against it). One in "Before you start" guards all
steps. More than one DANGER or WARNING inside every three steps asks whether
the work itself could be made safer.

Bad:

	## Steps

	1. Start the engine.

	   > **WARNING: Exhaust gas.** Exhaust gas kills without a smell. Run the engine outdoors, for 3 min at most.

	2. Read the voltage with the engine running.

	   > **WARNING: Exhaust gas.** Exhaust gas kills without a smell. Run the engine outdoors, for 3 min at most.

	3. Read the current with the engine running.

	   > **WARNING: Exhaust gas.** Exhaust gas kills without a smell. Run the engine outdoors, for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.

	## Steps

	1. Start the engine.
	2. Read the voltage with the engine running.
	3. Read the current with the engine running.
`,
	Check: func(p *Pass) {
		counts := make(map[string]int)
		grave := 0
		for _, m := range p.Sheet.Messages {
			if m.Step != nil && m.Word >= sheet.Warning {
				grave++
			}
			for _, t := range m.Titles {
				key := strings.ToLower(t.Text)
				if counts[key]++; counts[key] == 3 {
					p.Report(t.Span, "“"+t.Text+"” is warned of for the third time in this sheet", "say it once, in “Before you start”")
				}
			}
		}
		if most := max(3, (len(p.Sheet.Steps)+2)/3); grave > most {
			p.Report(p.Sheet.Front.Place("title"), strconv.Itoa(grave)+" DANGER and WARNING messages stand inside "+strconv.Itoa(len(p.Sheet.Steps))+" steps; more than "+strconv.Itoa(most)+" are skipped", "group them before the steps, or make the work safer")
		}
	},
}

var toolsNamed = &Rule{
	Name:     "tools-named",
	Severity: finding.Warning,
	Doc: `Protective equipment that a message asks for is in the tools

What is not laid out before step 1 is not worn at step 7.

Bad:

	tools: [key]

	## Before you start

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.

Good:

	tools: [key, safety glasses]

	## Before you start

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.
`,
	Check: func(p *Pass) {
		if p.Sheet.Front.Kind != sheet.Procedure {
			return
		}
		listed := phrase.Read(strings.Join(p.Sheet.Front.Tools, ". ")+". "+strings.Join(p.Sheet.Front.Materials, ". "), p.reader.stems)
		for i, set := range p.reader.lexicon.wear {
			if len(set.Find(listed, phrase.Sentence{Last: len(listed.Words)}, phrase.Said)) > 0 {
				continue
			}
			p.wornUnlisted(i, set)
		}
	},
}

// wornUnlisted reports the first message that asks for equipment of one kind.
func (p *Pass) wornUnlisted(kind int, set *phrase.Set) {
	for _, m := range p.Sheet.Messages {
		for _, t := range p.facts.messageTexts[m] {
			for _, s := range t.Sentences {
				for _, hit := range set.Find(t.Text, s, phrase.Shown) {
					p.Report(t.span(hit.First, hit.Last), "the message asks for "+protections[kind].what+", and the tools name none", "add it to tools, so that it is laid out before step 1")
					return
				}
			}
		}
	}
}
