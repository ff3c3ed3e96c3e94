package main

import (
	"math"
	"strconv"

	"baybook/calculators"
	"baybook/calculators/calc"
	"baybook/calculators/circuit/report"
	"baybook/site/find"
	"baybook/site/study"
)

// A core answers questions. Its zero value knows the calculators but nothing
// of the book until an index is loaded.
type core struct {
	in, out []byte
	index   *find.Index
	// running is the computation last begun, of the question asked.
	running *calc.Running
	asked   string
}

// A question is something that the page can ask.
type question struct {
	name string
	// parts is how many words come with it.
	parts  int
	answer func(c *core, parts []string) response
}

// questions are all of them; protocol.ts lists the same.
var questions = []question{
	{"compute", 2, (*core).compute},
	{"refine", 2, (*core).refine},
	{"mark", 4, (*core).mark},
	{"draw", 4, (*core).draw},
	{"judge", 2, (*core).judge},
	{"find", 2, (*core).find},
	{"schedule", 2, (*core).schedule},
	{"circuit", 2, (*core).circuit},
}

// response is an answer before it is written.
type response struct {
	ok, read, more            bool
	html, say, query, verdict string
	faults                    []*calc.Problem
}

// mostHits is how many answers a search shows.
const mostHits = 12

// answer finds the question and writes its answer as JSON.
func (c *core) answer(words []string) []byte {
	for _, q := range questions {
		if q.name == words[0] && len(words) == q.parts+1 {
			return q.answer(c, words[1:]).append(nil)
		}
	}
	return response{say: "the core does not know this question; reload the page"}.append(nil)
}

// load takes a copy of the index.
func (c *core) load(data []byte) bool {
	x, err := find.Decode(append([]byte(nil), data...))
	if err != nil {
		return false
	}
	c.index = x
	return true
}

// fault is an answer that blames no input.
func fault(message string) response {
	return response{say: message, faults: []*calc.Problem{calc.NewProblem("", message)}}
}

func (c *core) compute(p []string) response {
	calculator := calculators.Named(p[0])
	if calculator == nil {
		return fault("there is no calculator " + p[0])
	}
	pairs, msg := calc.ParseQuery(p[1])
	if msg != "" {
		return fault(msg)
	}
	pairs, problems := calculator.ReadTyped(pairs)
	if len(problems) > 0 {
		return response{faults: problems}
	}
	running, result, problems := calculator.Begin(pairs)
	if result == nil {
		return response{faults: problems}
	}
	c.running, c.asked = running, p[0]+p[1]
	return shown(running, result)
}

// shown is the answer with the result of a computation.
func shown(running *calc.Running, result *calc.Result) response {
	return response{
		ok: true, html: string(calc.AppendMarkup(nil, running.Values(), result, "")),
		say: calc.Summary(result), verdict: result.Verdict.String(), more: running.More(),
	}
}

// refine goes a step further with the same question as compute was asked. As
// long as there is more to look for, it answers only that.
func (c *core) refine(p []string) response {
	if c.running == nil || c.asked != p[0]+p[1] { // another was begun meanwhile
		return c.compute(p)
	}
	c.running.Step()
	if c.running.More() {
		return response{ok: true, more: true}
	}
	return shown(c.running, c.running.Result())
}

// asked reads the calculator, query and output that practice questions share.
func asked(name, query, output string) (*calc.Calculator, []calc.Pair, int, string) {
	calculator := calculators.Named(name)
	if calculator == nil {
		return nil, nil, 0, "there is no calculator " + name
	}
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		return nil, nil, 0, msg
	}
	i := calculator.Output(output)
	if i < 0 {
		return nil, nil, 0, name + " has no output " + output
	}
	return calculator, pairs, i, ""
}

// number reads a number without a unit.
func number(word string) (float64, bool) {
	q, msg := calc.ParseQuantity(word)
	return q.Value, msg == "" && q.Bare
}

func (c *core) mark(p []string) response {
	calculator, pairs, output, msg := asked(p[0], p[1], p[2])
	if msg != "" {
		return fault(msg)
	}
	m := calc.Mark(calculator, pairs, output, p[3])
	verdict := calc.Check
	if m.Read && m.Right {
		verdict = calc.OK
	}
	return response{ok: true, read: m.Read, html: string(calc.AppendMarking(nil, m)), say: m.Text, verdict: verdict.String()}
}

func (c *core) draw(p []string) response {
	calculator, pairs, output, msg := asked(p[0], p[1], p[2])
	if msg != "" {
		return fault(msg)
	}
	seed, ok := number(p[3])
	if !ok || seed < 0 || seed != math.Trunc(seed) || seed > 1<<53 {
		return fault("the seed " + p[3] + " is not a whole number")
	}
	spread, problems := calculator.ParseSweep(pairs)
	if len(problems) > 0 {
		return response{faults: problems}
	}
	drawn := spread.Draw(uint64(seed), output)
	values, _ := calculator.Read(drawn)
	return response{ok: true, html: string(calc.AppendGivens(nil, values, drawn)), query: calc.FormatQuery(drawn)}
}

func (c *core) judge(p []string) response {
	pairs, msg := calc.ParseQuery(p[0])
	if msg != "" {
		return fault(msg)
	}
	limit, msg := calc.ParseLimit(pairs)
	if msg != "" {
		return fault(msg)
	}
	verdict, text, read := limit.Judge(p[1])
	return response{ok: true, read: read, say: text, verdict: verdict.String()}
}

func (c *core) find(p []string) response {
	if c.index == nil {
		return fault("the search index is not loaded; reload the page")
	}
	hits := c.index.Find(p[0], mostHits)
	say := strconv.Itoa(len(hits)) + " answers"
	switch len(hits) {
	case 0:
		say = "Nothing found"
	case 1:
		say = "1 answer"
	}
	return response{ok: true, html: string(find.AppendMarkup(nil, hits, p[1])), say: say}
}

// schedule takes a card as "right ease days" and a grade, and gives the card
// after it; again as the verdict check.
func (c *core) schedule(p []string) response {
	words := calc.Words(p[0] + " " + p[1])
	numbers := make([]float64, len(words))
	for i, w := range words {
		v, ok := number(w)
		if !ok {
			return fault(w + " is no number of a card")
		}
		numbers[i] = v
	}
	var card study.Card
	switch len(numbers) {
	case 4:
		card = study.Card{Right: int(numbers[0]), Ease: numbers[1], Days: int(numbers[2])}
	case 1:
	default:
		return fault("a card is three numbers and a grade one")
	}
	grade := study.Grade(numbers[len(numbers)-1])
	next, again := card.Next(grade)
	verdict := calc.OK
	if again {
		verdict = calc.Check
	}
	return response{
		ok: true, verdict: verdict.String(),
		query: strconv.Itoa(next.Right) + " " + calc.FormatFixed(next.Ease, 4) + " " + strconv.Itoa(next.Days),
	}
}

// circuit solves and draws a circuit again, as a query changes it.
func (c *core) circuit(p []string) response {
	markup, problems := report.Ask(p[0], p[1])
	if len(problems) > 0 {
		return response{faults: problems}
	}
	return response{ok: true, html: string(markup)}
}

// append writes the answer as one JSON object, empty parts left out.
func (r response) append(b []byte) []byte {
	b = append(b, `{"ok":`...)
	b = strconv.AppendBool(b, r.ok)
	if r.read {
		b = append(b, `,"read":true`...)
	}
	if r.more {
		b = append(b, `,"more":true`...)
	}
	for i, value := range [...]string{r.html, r.say, r.query, r.verdict} {
		if value != "" {
			b = calc.AppendString(append(b, partHeads[i]...), value)
		}
	}
	head := `,"faults":[{"input":`
	for _, p := range r.faults {
		b = calc.AppendString(append(b, head...), p.Input)
		b = calc.AppendString(append(b, `,"text":`...), p.Message)
		head = `},{"input":`
	}
	if len(r.faults) > 0 {
		b = append(b, "}]"...)
	}
	return append(b, '}')
}

// partHeads stand before the parts of an answer, in the order of append.
var partHeads = [...]string{`,"html":`, `,"say":`, `,"query":`, `,"verdict":`}
