package rule

import (
	"strconv"
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// mostBlocks is how many blocks of a sheet are still read.
const mostBlocks = 8

var overWarning = &check.Rule{
	Name:     "over-warning",
	Firm:     true,
	Severity: finding.Warning,
	Doc: `The same warning does not stand at every step

A message that comes at each step is soon skipped, and with it the one that
matters (ANSI Z535.6 advises against it). One in "Before you start" guards all
steps. More than one DANGER or WARNING inside every three steps asks whether
the work itself could be made safer. So do more than 8 blocks in a sheet with
steps, those that the build writes among them.`,
	Check: func(p *check.Pass) {
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
		if n := p.Facts.Messages().Blocks(p.Sheet); n > mostBlocks && len(p.Sheet.Steps) > 0 {
			p.Report(p.Sheet.Front.Place("title"), strconv.Itoa(n)+" messages stand as blocks in this sheet, and more than "+strconv.Itoa(mostBlocks)+" are not read", "make two sheets of it, or make the work safer")
		}
		if most := max(3, (len(p.Sheet.Steps)+2)/3); grave > most {
			p.Report(p.Sheet.Front.Place("title"), strconv.Itoa(grave)+" DANGER and WARNING messages stand inside "+strconv.Itoa(len(p.Sheet.Steps))+" steps; more than "+strconv.Itoa(most)+" are skipped", "group them before the steps, or make the work safer")
		}
	},
}
