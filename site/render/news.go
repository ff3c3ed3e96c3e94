package render

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"baybook/site/sheet"
)

// NewsPage is the page of what has changed in the book, IssuesPage that of every
// sheet's issues.
const (
	NewsPage   = "news.html"
	IssuesPage = "issues.html"
)

// newestIssues is how many issues stand on a sheet's own page: more of them
// would make every phone wait for what few ask. The rest is on IssuesPage.
const newestIssues = 2

// A SheetIssue is one issue of a sheet with what changed in it, the newest
// change first.
type SheetIssue struct {
	Revision, Date string
	What           []string
	// More counts the changes that are not listed.
	More int
}

// mostChanges is how many changes are listed under one issue.
const mostChanges = 3

// issues groups the recorded changes of a sheet by revision. The first issue is
// the one that the page shows, recorded or not; a book without a history has
// none to list.
func (r *Renderer) issues(s *sheet.Sheet) []SheetIssue {
	changes := r.Changes[s.File]
	if len(changes) == 0 {
		return nil
	}
	now := SheetIssue{Revision: s.Front.Revision, Date: s.Front.Date.Format(time.DateOnly)}
	issues := []SheetIssue{now}
	for _, c := range changes {
		last := &issues[len(issues)-1]
		if c.Revision != last.Revision {
			if c.Revision == "" {
				continue // written down before the sheet had a title block
			}
			issues = append(issues, SheetIssue{Revision: c.Revision, Date: c.Date})
			last = &issues[len(issues)-1]
		}
		switch {
		case slices.Contains(last.What, c.What):
		case len(last.What) == mostChanges:
			last.More++
		default:
			last.What = append(last.What, c.What)
		}
	}
	return issues
}

// SheetIssues are all recorded issues of a sheet.
type SheetIssues struct {
	Sheet  *sheet.Sheet
	Page   string
	Issues []SheetIssue
}

// Issues renders what each sheet went through.
func (r *Renderer) Issues() ([]byte, error) {
	var all []SheetIssues
	for _, s := range r.Book.Sheets {
		if issues := r.issues(s); issues != nil {
			all = append(all, SheetIssues{s, PageOf(s), issues})
		}
	}
	return r.print("issues.html", r.newPage("list", IssuesPage, "Issues of every sheet", all))
}

// A NewsDay is what was recorded on one day.
type NewsDay struct {
	Day     string
	Changes []NewsChange
}

// A NewsChange is one change with the sheets that it touched.
type NewsChange struct {
	What   string
	Sheets []AreaSheet
}

// mostNews is how many changes the page of news lists.
const mostNews = 60

// News renders what has changed in the book, by day. Where no history is known
// the sheets stand under the days of their issues.
func (r *Renderer) News() ([]byte, error) {
	return r.print("news.html", r.newPage("list", NewsPage, "What is new", r.newsDays()))
}

// newsLine is one change of one sheet.
type newsLine struct {
	day, what string
	number    int
	sheet     *sheet.Sheet
}

func (r *Renderer) newsDays() []NewsDay {
	lines := r.newsLines()
	// Lines of one day and one change stand together; the order of sheets is
	// that of the book.
	slices.SortStableFunc(lines, func(a, b newsLine) int {
		return cmp.Or(strings.Compare(b.day, a.day), cmp.Compare(a.number, b.number))
	})
	var days []NewsDay
	count := 0
	for i, l := range lines {
		if i == 0 || l.day != lines[i-1].day {
			if count >= mostNews {
				break
			}
			days = append(days, NewsDay{Day: l.day})
		}
		day := &days[len(days)-1]
		if n := len(day.Changes); n == 0 || day.Changes[n-1].What != l.what {
			count++
			day.Changes = append(day.Changes, NewsChange{What: l.what})
		}
		change := &day.Changes[len(day.Changes)-1]
		if n := len(change.Sheets); n == 0 || change.Sheets[n-1].Sheet != l.sheet {
			change.Sheets = append(change.Sheets, AreaSheet{Sheet: l.sheet, Page: PageOf(l.sheet)})
		}
	}
	return days
}

func (r *Renderer) newsLines() []newsLine {
	var lines []newsLine
	for _, s := range r.Book.Sheets {
		changes := r.Changes[s.File]
		for _, c := range changes {
			lines = append(lines, newsLine{c.Day.Format(time.DateOnly), c.What, c.Number, s})
		}
		if len(changes) == 0 && !s.Front.Date.IsZero() {
			lines = append(lines, newsLine{s.Front.Date.Format(time.DateOnly), "", -1, s})
		}
	}
	return lines
}
