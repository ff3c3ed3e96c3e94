package notes

import (
	"fmt"
	"path"
	"regexp"
	"strconv"
	"strings"
	"time"

	"baybook/site/sheet"

	"go.yaml.in/yaml/v3"
)

// NotSettled is the section of a draft that lists what the import was not sure
// of.
const NotSettled = sheet.NotSettled

// A draft is one note on its way to a sheet.
type draft struct {
	*importer
	name, file string
	text       string
	tools      []string
	materials  []string
	doubts     []string
	steps      int
	pictures   int
	tables     int
}

// unsure notes something that a person must look at.
func (d *draft) unsure(doubt string) { d.doubts = append(d.doubts, doubt) }

func itoa(n int) string { return strconv.Itoa(n) }

// counted says what is in the draft.
func (d *draft) counted() string {
	return fmt.Sprintf("%d steps, %d pictures, %d tables, %d things not settled", d.steps, d.pictures, d.tables, len(d.doubts))
}

// front is the front matter of a draft, in the order in which a person writes it.
type front struct {
	Title     string   `yaml:"title"`
	Number    string   `yaml:"number"`
	Revision  string   `yaml:"revision"`
	Date      string   `yaml:"date"`
	Owner     string   `yaml:"owner"`
	Kind      string   `yaml:"kind"`
	Minutes   int      `yaml:"minutes"`
	Skill     string   `yaml:"skill"`
	Tools     []string `yaml:"tools,flow,omitempty"`
	Materials []string `yaml:"materials,flow,omitempty"`
	Draft     bool     `yaml:"draft"`
}

// sheet writes the draft.
func (d *draft) sheet() []byte {
	old, lines := frontOf(tidied(d.text))
	title := titleOf(strings.TrimSuffix(path.Base(d.name), path.Ext(d.name)))
	if t, ok := old["title"].(string); ok && strings.TrimSpace(t) != "" {
		title = strings.TrimSpace(t)
	}
	sections := sectionsOf(d.linked(lines))
	if first := firstTitle(sections); first >= 0 {
		title = sections[first].title
		sections[first].title = ""
	}
	body := d.body(sections)
	f := front{
		Title: plain(title), Number: d.numbers[d.name], Revision: "A", Date: d.today.Format(time.DateOnly), Owner: "Bay lead",
		Kind: "guide", Minutes: d.minutes(), Skill: "lead", Tools: d.tools, Materials: d.materials, Draft: true,
	}
	if d.steps > 0 {
		f.Kind = "procedure"
	}
	for key, value := range old {
		if key != "title" {
			d.unsure(fmt.Sprintf("The note said %s: %v.", key, value))
		}
	}
	head, err := yaml.Marshal(f)
	if err != nil {
		panic(err) // texts and numbers can be written
	}
	var out strings.Builder
	out.WriteString("---\n" + string(head) + "---\n" + strings.TrimSpace(body) + "\n")
	if len(d.doubts) > 0 {
		out.WriteString("\n## " + NotSettled + "\n\n")
		for _, doubt := range d.doubts {
			out.WriteString("- " + doubt + "\n")
		}
	}
	return []byte(out.String())
}

// firstTitle is the section whose heading is the note's title: the first one
// that means no section of a sheet, where nothing but blank lines stands before.
func firstTitle(sections []section) int {
	for i, s := range sections {
		if s.title == "" {
			if strings.TrimSpace(strings.Join(s.lines, "")) != "" {
				return -1
			}
			continue
		}
		if _, known := meaning(s.title); known {
			return -1
		}
		return i
	}
	return -1
}

// order is the order of a sheet's sections; the note's own stand between the
// steps and what closes a sheet.
var order = []string{"", sheet.BeforeYouStart, sheet.StepsTitle, own, "Usual mistakes", sheet.ProveIt, sheet.HandOver, sheet.Sources}

const own = "own"

// body sorts the sections into the order of a sheet. Every line of the note is
// in it, in the front matter, or under "Not settled".
func (d *draft) body(sections []section) string {
	parts := make(map[string][]string)
	steps := stepsAmong(sections)
	for i, s := range sections {
		means, known := meaning(s.title)
		switch {
		case i == steps:
			if !known && s.title != "" {
				d.unsure("The heading “" + s.title + "” became the steps.")
			}
			first, list, n := numbered(s.lines)
			if s.title == "" {
				parts[""] = append(parts[""], first...)
			} else {
				parts[sheet.BeforeYouStart] = append(parts[sheet.BeforeYouStart], first...)
			}
			parts[sheet.StepsTitle] = append(parts[sheet.StepsTitle], list...)
			d.steps = n
		case means == toolsTitle, means == materialsTitle:
			list, rest := items(s.lines)
			if means == toolsTitle {
				d.tools = append(d.tools, list...)
			} else {
				d.materials = append(d.materials, list...)
			}
			parts[""] = append(append(parts[""], ""), rest...)
		case s.title == "":
			parts[""] = append(parts[""], s.lines...)
		case known && means != sheet.StepsTitle:
			if !strings.EqualFold(s.title, means) {
				d.unsure("The heading “" + plain(s.title) + "” became “" + means + "”.")
			}
			parts[means] = append(append(parts[means], ""), s.lines...)
		default:
			parts[own] = append(append(parts[own], "", "## "+plain(s.title), ""), s.lines...)
		}
	}
	var out []string
	for _, name := range order {
		lines := parts[name]
		if strings.TrimSpace(strings.Join(lines, "")) == "" {
			continue
		}
		if name != "" && name != own {
			out = append(out, "", "## "+name, "")
		}
		out = append(out, lines...)
	}
	if d.steps == 0 {
		d.unsure("No numbered list was found, so the sheet has no steps.")
	}
	return squeezed(out)
}

// stepsAmong is the section that holds the steps: the one that is called so, or
// the first one with a list that counts; -1 where there is none.
func stepsAmong(sections []section) int {
	for i, s := range sections {
		if means, known := meaning(s.title); known && means == sheet.StepsTitle && hasList(s.lines) {
			return i
		}
	}
	for i, s := range sections {
		if _, known := meaning(s.title); !known && hasOrdered(s.lines) {
			return i
		}
	}
	return -1
}

// frontOf takes old front matter off a note.
func frontOf(lines []string) (map[string]any, []string) {
	if len(lines) == 0 || lines[0] != "---" {
		return nil, lines
	}
	for i := 1; i < len(lines) && i < 60; i++ {
		if lines[i] != "---" {
			continue
		}
		var old map[string]any
		if yaml.Unmarshal([]byte(strings.Join(lines[1:i], "\n")), &old) != nil {
			return nil, lines // no front matter: a rule across the page
		}
		return old, lines[i+1:]
	}
	return nil, lines
}

var aTime = regexp.MustCompile(`(?i)\b(\d{1,3}(?:[.,]\d)?)\s*(min|minutes|h|hrs?|hours?)\b`)

// minutes is how long the work takes, as the note says or as a guess.
func (d *draft) minutes() int {
	for _, m := range aTime.FindAllStringSubmatch(d.text, -1) {
		n, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		if err != nil || n <= 0 {
			continue
		}
		if m[2][0] == 'h' || m[2][0] == 'H' {
			n *= 60
		}
		d.unsure(fmt.Sprintf("The time of %.0f minutes is taken from “%s”.", n, m[0]))
		return max(int(n), 1)
	}
	d.unsure("The time of 30 minutes is a guess.")
	return 30
}

// plain is a heading without marks.
func plain(title string) string {
	return strings.TrimSpace(strings.NewReplacer("**", "", "__", "", "`", "", "#", "").Replace(title))
}

// squeezed joins lines with at most one blank line between.
func squeezed(lines []string) string {
	var out []string
	for _, line := range lines {
		if strings.TrimSpace(line) == "" && (len(out) == 0 || out[len(out)-1] == "") {
			continue
		}
		out = append(out, strings.TrimRight(line, " "))
	}
	return strings.Join(out, "\n")
}
