// Package sitetest makes books for tests and benchmarks: as many sheets as are
// wanted, each like one that a lead writes, all passing every check.
package sitetest

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"

	"baybook/calculators"
	"baybook/calculators/calc"
	"baybook/site/begin"
)

// perArea is how many sheets share a folder.
const perArea = 40

// Write writes a book with the given number of sheets into a folder. The same
// number always gives the same book.
func Write(dir string, sheets int) error {
	data := begin.Book()
	for _, name := range []string{"hazards.yaml", "work.yaml", "glossary.yaml", "words.yaml", "shop.yaml", "areas.yaml", "limits.yaml"} {
		content, err := fs.ReadFile(data, name)
		if err != nil {
			return err
		}
		if err := write(dir, name, content); err != nil {
			return err
		}
	}
	model, err := fs.ReadFile(data, "power/fused-lead.md")
	if err != nil {
		return err
	}
	figure, err := fs.ReadFile(data, "power/fused-lead-order.svg")
	if err != nil {
		return err
	}
	for i := range sheets {
		if err := write(dir, name(i)+".md", []byte(Sheet(string(model), i, sheets))); err != nil {
			return err
		}
		if err := write(dir, name(i)+"-order.svg", figure); err != nil {
			return err
		}
	}
	return nil
}

func write(dir, name string, data []byte) error {
	file := filepath.Join(dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	return os.WriteFile(file, data, 0o644)
}

// name is a sheet's path without ending.
func name(i int) string { return fmt.Sprintf("area-%03d/lead-%05d", i/perArea, i) }

// Sheet is the i-th sheet of a book of n: the model with numbers, words and
// links of its own.
func Sheet(model string, i, n int) string {
	rnd := rand.New(rand.NewPCG(uint64(i), 2026))
	query := fmt.Sprintf("current=%dA&length=%d.%dm&wire=16AWG", 2+rnd.IntN(4), 1+rnd.IntN(3), rnd.IntN(10))
	next, other := (i+1)%n, rnd.IntN(n)
	s := strings.NewReplacer(
		"number: PW-01", fmt.Sprintf("number: LD-%05d", i),
		"title: Fused lead for a small load", "title: Fused lead "+title(rnd),
		"[0.65 V](calc:wire-drop?current=6A&length=4m&wire=16AWG#drop)", "["+drop(query)+"](calc:wire-drop?"+query+"#drop)",
		"for a load of up to 6 A", "for a small load",
		"For 6 A over 4 m, 16 AWG", "For that, 16 AWG",
		"calc:wire-drop?current=6A&length=4m&wire=16AWG)", "calc:wire-drop?"+query+")",
		"fused-lead-order.svg", filepath.Base(name(i))+"-order.svg",
	).Replace(model)
	more := "## Usual mistakes\n\n" + paragraphs(rnd) +
		fmt.Sprintf("See [the next lead](../%s.md) and [its steps](../%s.md#steps).\n\n", name(next), name(other))
	return strings.Replace(s, "## Check yourself", more+"## Check yourself", 1)
}

// drop computes what the sheet says is lost.
func drop(query string) string {
	c := calculators.Named("wire-drop")
	pairs, _ := calc.ParseQuery(query)
	_, result, problems := c.Answer(pairs)
	if len(problems) > 0 {
		panic(problems[0]) // the query is made above
	}
	i := c.Output("drop")
	return c.Outputs[i].Format(result.Outputs[i])
}

// words are plain ones, which show no hazard.
var words = strings.Fields(`amber bench board box bracket brass bright broad brown card case chart clear clean
cloth coarse colour column copper corner count cover dark deep drawer dull early edge empty even fair fine firm flat
folder front full green grey half handle hard inner label large late left level light line list long loose low middle
narrow neat new number old open order outer page pale paper part place plain plate pocket point proper quiet rack
record red right roll rough round row second shade shallow shelf short side simple slow small smooth soft space spare
square stiff straight strip tag thick thin third tidy top tray trial upper wall white whole wide yellow`)

func title(rnd *rand.Rand) string {
	return "for the " + words[rnd.IntN(len(words))] + " " + words[rnd.IntN(len(words))] + " " + words[rnd.IntN(len(words))]
}

// paragraphs are about as much text as a sheet of the trade has.
func paragraphs(rnd *rand.Rand) string {
	var b strings.Builder
	for range 8 {
		for range 5 {
			b.WriteString("The")
			for range 8 + rnd.IntN(6) {
				b.WriteString(" " + words[rnd.IntN(len(words))])
			}
			b.WriteString(" lead is kept. ")
		}
		b.WriteString("\n\n")
	}
	return b.String()
}
