package render

import (
	"slices"
	"strings"

	"baybook/site/sheet"
)

// A Plan is what a job comes to: the sheets in order, and their tools,
// materials, time, hazards and readings put together.
type Plan struct {
	Lines     []PlanLine
	Tools     []string
	Materials []string
	Hurts     []HazardSummary
	// Minutes by who may do the work unsupervised, and in all.
	Minutes []SkillMinutes
	Total   int
	// Hours is Total in hours, as the calculator job-price takes it.
	Hours float64
	// Unapproved counts the sheets that nobody has approved.
	Unapproved int
}

// A PlanLine is one sheet of the job.
type PlanLine struct {
	Sheet    *sheet.Sheet
	Page     string
	Skill    string
	Readings []*sheet.Reading
}

// SkillMinutes is the time that one skill needs.
type SkillMinutes struct {
	Skill   string
	Minutes int
}

// NewPlan merges the sheets that a job names. Sheets that are not there are
// left out; the checks report them.
func (r *Renderer) NewPlan(job *sheet.Sheet) *Plan {
	book := r.Book
	p := &Plan{}
	minutes := make(map[sheet.Skill]int)
	seen := make(map[string]bool)
	for _, link := range job.Work {
		s := book.Linked(job, link)
		if s == nil {
			continue
		}
		p.Lines = append(p.Lines, PlanLine{
			Sheet: s, Page: relative(job.Path, PageOf(s)), Skill: r.speech.say(skillTitles[s.Front.Skill]), Readings: s.Readings,
		})
		if s.Front.Approved.By == "" {
			p.Unapproved++
		}
		p.Tools = merge(p.Tools, s.Front.Tools)
		p.Materials = merge(p.Materials, s.Front.Materials)
		p.Total += s.Front.Minutes
		minutes[s.Front.Skill] += s.Front.Minutes
		for _, h := range hazardSummaries(s, r.messages(s)) {
			if key := strings.ToLower(h.Title); !seen[key] {
				seen[key] = true
				h.ID = relative(job.Path, PageOf(s)) + "#" + h.ID
				p.Hurts = append(p.Hurts, h)
			}
		}
	}
	slices.SortStableFunc(p.Hurts, func(a, b HazardSummary) int { return int(b.level) - int(a.level) })
	for _, skill := range [...]sheet.Skill{sheet.Apprentice, sheet.Installer, sheet.Lead} {
		if minutes[skill] > 0 {
			p.Minutes = append(p.Minutes, SkillMinutes{r.speech.say(skillTitles[skill]), minutes[skill]})
		}
	}
	p.Hours = float64(p.Total) / 60
	return p
}

// merge adds what is not yet in the list, in order.
func merge(list, more []string) []string {
	for _, m := range more {
		if !slices.ContainsFunc(list, func(have string) bool { return strings.EqualFold(have, m) }) {
			list = append(list, m)
		}
	}
	return list
}
