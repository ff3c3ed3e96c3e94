package render

import (
	"html/template"
	"slices"
	"strconv"
	"strings"

	"baybook/site/check"
	"baybook/site/sheet"
)

// sheetBody is what the page of a sheet shows beside its text.
type sheetBody struct {
	Sheet   *sheet.Sheet
	Kind    string
	Skill   string
	Time    string
	Date    string
	Hurts   []HazardSummary
	Words   []WordCount
	Waivers []waivedLine
	// Opening is the words before the first section, Text the rest.
	Opening, Text template.HTML
	Contents      []ContentsLine
	Neighbors     Neighbors
	HasWork       bool
	Plan          *Plan
	// Quote is the page of a job's quote, empty where it has no price.
	Quote string
	// Legal is the owner of the sheet in the sense of ISO 7200.
	Legal    string
	Language string
	// Address is where the page stands for good, Code the same to be scanned
	// off paper; empty where the shop has no address.
	Address string
	// Numbers are the notes on the limits that the sheet judges by.
	Numbers []NumberNote
	Code    template.HTML
	// Issues are the sheet's newest.
	Issues []SheetIssue
}

// A HazardSummary is one line of the list of what can hurt: a hazard with the word and
// the place of its message.
type HazardSummary struct {
	Word, Title, ID string
	level           sheet.Word
}

// kindTitles and skillTitles say front-matter words as a reader should see them.
var kindTitles = map[sheet.Kind]string{
	sheet.Procedure: "Procedure", sheet.Reference: "Reference", sheet.Job: "Job", sheet.Guide: "Guide",
}

var skillTitles = map[sheet.Skill]string{
	sheet.Apprentice: "Apprentice", sheet.Installer: "Installer", sheet.Lead: "Lead",
}

// Sheet renders the page of a sheet.
func (r *Renderer) Sheet(s *sheet.Sheet) ([]byte, error) {
	p := &parts{book: r, sheet: s, root: rootFrom(s.Path), guards: r.guards(s), limits: s.UsedLimits(), told: r.messages(s)}
	opening, rest, err := p.text(s)
	if err != nil {
		return nil, err
	}
	hazards := hazardSummaries(s, p.told)
	body := sheetBody{
		Sheet: s, Kind: r.speech.say(kindTitles[s.Front.Kind]), Skill: r.speech.say(skillTitles[s.Front.Skill]),
		Time: duration(s.Front.Minutes), Date: r.speech.Day(s.Front.Date), Hurts: hazards, Words: wordCounts(hazards), Waivers: r.waived(s),
		Opening: opening, Text: rest, HasWork: len(s.Steps) > 0,
		Contents: contents(s), Neighbors: r.Neighbors(s),
		Legal: r.Book.Shop.Name, Language: r.Book.Shop.Language, Code: r.addressCode(PageOf(s)),
		Issues: firstFew(r.issues(s), newestIssues),
	}
	if body.Code != "" {
		body.Address = strings.TrimSuffix(r.Book.Shop.Address, "/") + "/" + PageOf(s)
	}
	for i, l := range p.limits {
		body.Numbers = append(body.Numbers, r.numberNote(l, i+1, p.root))
	}
	if s.Front.Kind == sheet.Job {
		body.Plan = r.NewPlan(s)
		if HasQuote(s) {
			body.Quote = QuotePage(s)
		}
	}
	page := r.newPage("sheet", PageOf(s), s.Front.Title, body)
	page.Sheet, page.About = s, shortened(openingWords(s))
	return r.print("sheet.html", page)
}

// firstFew is a list cut short.
func firstFew[T any](list []T, most int) []T { return list[:min(len(list), most)] }

// hazardSummaries lists the hazards that the sheet's messages speak of, the
// author's and those that the build writes, the most serious first, each once.
func hazardSummaries(s *sheet.Sheet, told *check.Messages) []HazardSummary {
	var list []HazardSummary
	seen := make(map[string]bool)
	for _, m := range s.Messages {
		for _, t := range m.Titles {
			key := strings.ToLower(t.Text)
			if seen[key] {
				continue
			}
			seen[key] = true
			list = append(list, HazardSummary{Word: m.Word.String(), Title: t.Text, ID: messageName(m), level: m.Word})
		}
	}
	for _, b := range told.Built {
		if key := strings.ToLower(b.Hazard.Title); !seen[key] {
			seen[key] = true
			list = append(list, HazardSummary{Word: b.Word.String(), Title: b.Hazard.Title, ID: builtName(b), level: b.Word})
		}
	}
	slices.SortStableFunc(list, func(a, b HazardSummary) int { return int(b.level) - int(a.level) })
	return list
}

// guards names, for each step, the messages standing before the steps that
// speak of a hazard which the step shows: the step view puts them beside it.
func (r *Renderer) guards(s *sheet.Sheet) map[*sheet.Step]string {
	guards := make(map[*sheet.Step]string)
	for _, rem := range r.messages(s).Reminders {
		if rem.Built != nil && !rem.Built.Line() {
			addGuard(guards, rem.Step, blockName(r.messages(s), rem.Built))
		}
	}
	for _, present := range r.hazards(s) {
		if present.Step == nil {
			continue
		}
		for _, m := range s.Messages {
			if m.Step != nil || !speaksOf(m, present.Hazard) {
				continue
			}
			addGuard(guards, present.Step, messageName(m))
			break
		}
	}
	return guards
}

func addGuard(guards map[*sheet.Step]string, step *sheet.Step, name string) {
	if !strings.Contains(" "+guards[step]+" ", " "+name+" ") {
		guards[step] = strings.TrimSpace(guards[step] + " " + name)
	}
}

// hazards are those that the sheet shows, as the check found them.
func (r *Renderer) hazards(s *sheet.Sheet) []check.ShownHazard {
	if r.Hazards == nil {
		return check.Hazards(r.Book, s)
	}
	return r.Hazards(s)
}

// speaksOf reports whether a message names a hazard.
func speaksOf(m *sheet.Message, h *sheet.Hazard) bool {
	for _, t := range m.Titles {
		if strings.EqualFold(t.Text, h.Title) {
			return true
		}
	}
	return false
}

// duration says minutes as people do: 45 min, and beyond two hours 33 h 10 min.
func duration(minutes int) string {
	hours, rest := minutes/60, minutes%60
	switch {
	case minutes <= 120:
		return strconv.Itoa(minutes) + " min"
	case rest == 0:
		return strconv.Itoa(hours) + " h"
	}
	return strconv.Itoa(hours) + " h " + strconv.Itoa(rest) + " min"
}
