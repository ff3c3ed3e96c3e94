package render

import (
	"encoding/json"
	"html/template"
	"strings"
	"time"

	"baybook/calculators/calc"
	"baybook/calculators/shop"
	"baybook/site/sheet"
)

// notIncluded is the section of a job that its quote repeats.
const notIncluded = "Not in this price"

// A Quote is what a job's customer is offered: who offers what to whom, for how
// much, and until when. It is printed, and written as JSON.
type Quote struct {
	Number   string      `json:"number"`
	Revision string      `json:"revision"`
	Title    string      `json:"title"`
	Shop     QuoteShop   `json:"shop"`
	Customer string      `json:"customer,omitempty"`
	Vehicle  string      `json:"vehicle,omitempty"`
	Order    string      `json:"order,omitempty"`
	Date     string      `json:"date"`        // of the job's issue
	Until    string      `json:"valid_until"` // the last day on which the price holds
	Work     []QuoteWork `json:"work"`
	Price    []QuoteLine `json:"price"`
	Legal    string      `json:"-"`
	// NotIncluded is the section of the job on it.
	NotIncluded template.HTML `json:"-"`
	Job         string        `json:"-"` // the job's page
	Data        string        `json:"-"` // the same as JSON
}

// A QuoteShop is who offers.
type QuoteShop struct {
	Name   string `json:"name"`
	Postal string `json:"address,omitempty"`
	Phone  string `json:"phone,omitempty"`
	Logo   string `json:"logo,omitempty"` // file, from the site's root
}

// A QuoteWork is one piece of work.
type QuoteWork struct {
	Number string `json:"number"`
	Title  string `json:"title"`
}

// A QuoteLine is one amount.
type QuoteLine struct {
	Name   string `json:"name"`
	Amount string `json:"amount"`
	Sum    bool   `json:"sum,omitempty"` // a sum of the lines before
}

// QuotePage and QuoteData are where the quote of a job stands.
func QuotePage(job *sheet.Sheet) string { return job.Path + "-quote.html" }

// QuoteData is the same as JSON.
func QuoteData(job *sheet.Sheet) string { return job.Path + "-quote.json" }

// HasQuote reports whether a job computes its price, which a quote rests on.
func HasQuote(s *sheet.Sheet) bool { return priceOf(s) != nil }

// priceOf is the first price that a job computes; nil where it computes none.
func priceOf(s *sheet.Sheet) *sheet.Computation {
	if s.Front.Kind != sheet.Job {
		return nil
	}
	for _, c := range s.Computations() {
		if c.Calculator.Name == shop.JobPrice.Name {
			return c
		}
	}
	return nil
}

// NewQuote puts the quote of a job together. Its day is that of the job's issue,
// so that the same content gives the same quote.
func (r *Renderer) NewQuote(job *sheet.Sheet) (*Quote, error) {
	our, front := r.Book.Shop, &job.Front
	q := &Quote{
		Number: front.Number, Revision: front.Revision, Title: front.Title,
		Shop:     QuoteShop{our.Name, our.Postal, our.Phone, our.Logo},
		Customer: front.Customer, Vehicle: front.Vehicle, Order: front.Order,
		Date: front.Date.Format(time.DateOnly), Until: front.Date.AddDate(0, 0, our.QuoteDays).Format(time.DateOnly),
		Legal: our.Name, Job: PageOf(job), Data: QuoteData(job),
	}
	for _, l := range r.NewPlan(job).Lines {
		q.Work = append(q.Work, QuoteWork{l.Sheet.Front.Number, l.Sheet.Front.Title})
	}
	price := priceOf(job)
	_, result, problems := price.Calculator.Answer(price.Pairs)
	if result == nil {
		return nil, problems[0]
	}
	show := func(name string, a calc.Answer) string {
		if a.Currency == "" { // the job's own rate says none
			a.Currency = our.PriceCurrency()
		}
		return price.Calculator.Outputs[price.Calculator.Output(name)].Format(a)
	}
	amount := func(name string) string { return show(name, result.Get(name)) }
	tax := result.Get("total")
	tax.Num -= result.Num("before_tax")
	q.Price = []QuoteLine{
		{"Labor", amount("labour"), false}, {"Parts", amount("parts"), false}, {"Before tax", amount("before_tax"), true},
		{"Tax", show("total", tax), false}, {"Total", amount("total"), true},
	}
	text, err := r.notIncluded(job)
	q.NotIncluded = text
	return q, err
}

// notIncluded renders what a job's section says that its price leaves out.
func (r *Renderer) notIncluded(job *sheet.Sheet) (template.HTML, error) {
	section := job.Section(notIncluded)
	if section == nil {
		return "", nil
	}
	p := &parts{book: r, sheet: job, root: rootFrom(job.Path), guards: r.guards(job), limits: job.UsedLimits(), told: r.messages(job)}
	var out strings.Builder
	markdown := newMarkdown(p)
	for n := section.FirstChild(); n != nil; n = n.NextSibling() {
		if err := markdown.Render(&out, job.Source.Text(), n); err != nil {
			return "", err
		}
	}
	return template.HTML(out.String()), nil
}

// Quote renders a job's quote as a page.
func (r *Renderer) Quote(job *sheet.Sheet) ([]byte, error) {
	q, err := r.NewQuote(job)
	if err != nil {
		return nil, err
	}
	return r.print("quote.html", r.newPage("quote", QuotePage(job), r.speech.say("Quote")+" "+q.Number, q))
}

// QuoteJSON writes a job's quote for other programs.
func (r *Renderer) QuoteJSON(job *sheet.Sheet) ([]byte, error) {
	q, err := r.NewQuote(job)
	if err != nil {
		return nil, err
	}
	data, err := json.MarshalIndent(q, "", "  ")
	return append(data, '\n'), err
}
