package render

import (
	"io/fs"
	"slices"
	"strconv"
	"strings"

	"baybook/site/check"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/util"
)

// signs reads the theme's signs, by their number in ISO 7010.
func signs(theme fs.FS) (map[string]string, error) {
	names, err := fs.Glob(theme, "signs/*.svg")
	if err != nil {
		return nil, err
	}
	all := make(map[string]string, len(names))
	for _, name := range names {
		drawing, err := fs.ReadFile(theme, name)
		if err != nil {
			return nil, err
		}
		number := strings.TrimSuffix(strings.TrimPrefix(name, "signs/"), ".svg")
		all[number] = strings.Replace(strings.TrimSpace(string(drawing)), "<svg ", `<svg class="sign" `, 1)
	}
	return all, nil
}

// messages gives what the reader of a sheet is told, as the check found it.
func (r *Renderer) messages(s *sheet.Sheet) *check.Messages {
	if r.Messages == nil {
		return check.MessagesOf(r.Book, s)
	}
	return r.Messages(s)
}

// builtAt lists what the build writes at a step, nil for the opening: blocks,
// one for each signal word, the most serious first, then lines.
func builtAt(m *check.Messages, step *sheet.Step) (blocks [][]*check.Built, lines []*check.Built) {
	for _, b := range m.Built {
		switch last := len(blocks) - 1; {
		case b.Step != step:
		case b.Line():
			lines = append(lines, b)
		case last >= 0 && blocks[last][0].Word == b.Word:
			blocks[last] = append(blocks[last], b)
		default:
			blocks = append(blocks, []*check.Built{b})
		}
	}
	return blocks, lines
}

// builtName is the address of what the build wrote of a hazard.
func builtName(b *check.Built) string {
	if b.Step == nil {
		return "message-" + b.Hazard.ID
	}
	return "message-" + b.Hazard.ID + "-" + b.Step.Anchor()
}

// blockName is the address of the block that holds what the build wrote.
func blockName(m *check.Messages, b *check.Built) string {
	blocks, _ := builtAt(m, b.Step)
	for _, block := range blocks {
		if slices.Contains(block, b) {
			return builtName(block[0])
		}
	}
	return builtName(b)
}

// openingMessages writes the messages for the whole sheet.
func (r *parts) openingMessages(w util.BufWriter) {
	blocks, lines := builtAt(r.told, nil)
	for _, b := range blocks {
		r.block(w, b)
	}
	r.lines(w, lines)
}

// before writes what the build says at a step, as far as its word is graver
// than that of the message which stands next; the author's own keep their
// place among the build's by their words.
func (r *parts) before(w util.BufWriter, step *sheet.Step, next *sheet.Message) {
	blocks, lines := builtAt(r.told, step)
	for r.written < len(blocks) && (next == nil || blocks[r.written][0].Word > next.Word) {
		r.block(w, blocks[r.written])
		r.written++
	}
	if next == nil {
		r.lines(w, lines)
		r.reminders(w, step)
	}
}

// block writes a message on hazards of one signal word.
func (r *parts) block(w util.BufWriter, list []*check.Built) {
	first := list[0]
	r.panelStart(w, first.Word, builtName(first), r.reasons(list))
	for i, b := range list {
		if i > 0 {
			write(w, `<span id="`, builtName(b), `"></span>`)
		}
		write(w, `<div class="built">`, r.book.signs[b.Hazard.Sign], `<p><strong class="titles">`)
		text(w, b.Hazard.Title)
		write(w, `.</strong> `)
		text(w, b.Hazard.Harm)
		write(w, ` <span class="avoid">`)
		text(w, b.Hazard.Avoid)
		write(w, `</span></p></div>`)
	}
	write(w, "</div></div>\n")
}

// panelStart writes a message's head, up to where its text begins.
func (r *parts) panelStart(w util.BufWriter, word sheet.Word, name, reasons string) {
	write(w, `<div class="message" role="note" data-word="`, strings.ToLower(word.String()), `" id="`, name, `"`, reasons, `><p class="signal">`)
	if word > sheet.Notice {
		write(w, alert)
	}
	write(w, `<strong>`, word.String(), `</strong></p><div class="hazard">`)
}

// reasons says to the lead, and to nobody else, why the build wrote a message.
func (r *parts) reasons(list []*check.Built) string {
	if !r.book.Lead {
		return ""
	}
	var why []string
	for _, b := range list {
		why = append(why, b.Reason())
	}
	return ` data-why="written by the build: ` + escape(strings.Join(why, "; ")) + `"`
}

// lines writes the messages that are lines.
func (r *parts) lines(w util.BufWriter, list []*check.Built) {
	for _, b := range list {
		write(w, `<div class="standing" data-word="`, strings.ToLower(b.Word.String()), `" id="`, builtName(b), `"`, r.reasons([]*check.Built{b}), `>`, r.book.signs[b.Hazard.Sign], `<span><strong>`, b.Word.String(), `</strong> <b class="titles">`)
		text(w, b.Hazard.Title)
		write(w, `.</b> `)
		text(w, b.Hazard.Avoid)
		write(w, "</span></div>\n")
	}
}

// reminders writes one line for all that the reader was told before.
func (r *parts) reminders(w util.BufWriter, step *sheet.Step) {
	var list []check.Reminder
	for _, rem := range r.told.Reminders {
		if rem.Step == step {
			list = append(list, rem)
		}
	}
	if len(list) == 0 {
		return
	}
	slices.SortStableFunc(list, func(a, b check.Reminder) int { return int(b.Word) - int(a.Word) })
	write(w, `<div class="reminder" data-word="`, strings.ToLower(list[0].Word.String()), `"><span>`)
	word := sheet.NoWord
	for i, rem := range list {
		if rem.Word != word {
			write(w, `<strong>`, rem.Word.String(), `</strong> `)
			word = rem.Word
		}
		place, where := r.toldAt(&rem)
		write(w, `<a href="`, place, `">`)
		text(w, rem.Hazard.Title+where)
		write(w, `</a>`)
		if i+1 < len(list) {
			write(w, ` · `)
		}
	}
	write(w, "</span></div>\n")
}

// toldAt is where the reader was told: the address, and in words for paper.
func (r *parts) toldAt(rem *check.Reminder) (address, where string) {
	step := func(s *sheet.Step) string {
		if s == nil {
			return ""
		}
		return " (step " + strconv.Itoa(s.Number) + ")"
	}
	switch {
	case rem.Own != nil:
		return "#" + messageName(rem.Own), step(rem.Own.Step)
	case rem.Built != nil:
		return "#" + builtName(rem.Built), step(rem.Built.Step)
	}
	return r.root + PageOf(rem.Sheet), " (" + rem.Sheet.Front.Number + ")"
}
