package check

import (
	"os"
	"slices"
	"testing"
	"time"

	"baybook/calculators"
	"baybook/site/check/english"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

// shippedBook reads the book that is shipped.
func shippedBook(t testing.TB) *sheet.Book {
	t.Helper()
	book, _, err := sheet.Load(os.DirFS("../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// TestTagLeftOut takes each tag of each declaration of the shipped book out, one
// at a time. Of the hazards that the declaration alone would lose with it, at
// least half must be caught by the neighbors of places, by the state of the
// vehicle, by what the step declares besides, or by the words of the step.
func TestTagLeftOut(t *testing.T) {
	book := shippedBook(t)
	shared := newBookFacts(nil, book)
	lost, caught := 0, 0
	for _, s := range book.Sheets {
		facts := shared.factsOf(s)
		for i, step := range facts.Work.Steps {
			for k := range step.Does {
				for _, without := range leftOut(step.Does[k]) {
					gone := missing(book, []work.Declaration{step.Does[k]}, []work.Declaration{without})
					rest := slices.Clone(step.Does)
					rest[k] = without
					seen := seenBeside(facts, i, rest)
					for _, h := range gone {
						lost++
						if seen[h] {
							caught++
						}
					}
				}
			}
		}
	}
	t.Logf("with one tag left out, %d of %d hazards are caught (%.2f)", caught, lost, float64(caught)/float64(max(lost, 1)))
	if lost == 0 || caught*2 < lost {
		t.Errorf("only %d of %d hazards are caught with one tag left out", caught, lost)
	}
}

// leftOut is a declaration with each of its things, tools and states taken out
// in turn.
func leftOut(d work.Declaration) []work.Declaration {
	var list []work.Declaration
	for _, to := range []func(*work.Declaration) *[]string{
		func(d *work.Declaration) *[]string { return &d.At }, func(d *work.Declaration) *[]string { return &d.Near },
		func(d *work.Declaration) *[]string { return &d.With }, func(d *work.Declaration) *[]string { return &d.State },
	} {
		for i := range *to(&d) {
			one := d
			*to(&one) = slices.Delete(slices.Clone(*to(&d)), i, i+1)
			list = append(list, one)
		}
	}
	return list
}

// missing are the hazards that one list of declarations brings and the other
// does not.
func missing(book *sheet.Book, a, b []work.Declaration) []*sheet.Hazard {
	var list []*sheet.Hazard
	less := CausesOf(book, b, nil)
	for _, c := range CausesOf(book, a, nil) {
		if !slices.ContainsFunc(less, func(o Cause) bool { return o.Hazard == c.Hazard }) {
			list = append(list, c.Hazard)
		}
	}
	return list
}

// seenBeside are the hazards that a step still shows: by its other
// declarations, the state on the way, and its words.
func seenBeside(f *SheetFacts, step int, does []work.Declaration) map[*sheet.Hazard]bool {
	seen := make(map[*sheet.Hazard]bool)
	for _, c := range CausesOf(f.Book.Book, does, f.Work.Moments[step].State) {
		seen[c.Hazard] = true
	}
	own := f.Work.Own[step]
	if own == nil {
		return seen
	}
	reg := f.Book.Register
	for _, s := range own.Sentences {
		for _, hit := range reg.steps.Find(own.Text, s, english.Shown) {
			seen[reg.Hazards[reg.stepOwners[hit.Pattern]]] = true
		}
		u := f.Book.WorkWords.Sentence(own.Text, s)
		for _, d := range does {
			d.At, d.With, d.State = append(slices.Clip(d.At), u.Things...), append(slices.Clip(d.With), u.Tools...), append(slices.Clip(d.State), u.State...)
			for _, c := range CausesOf(f.Book.Book, []work.Declaration{d}, f.Work.Moments[step].State) {
				seen[c.Hazard] = true
			}
		}
	}
	return seen
}

// BenchmarkWork reads the work of a whole book, follows the vehicle through it
// and draws the hazards from it; site's BenchmarkPages says what its pages cost.
func BenchmarkWork(b *testing.B) {
	book := shippedBook(b)
	var at time.Duration
	for b.Loop() {
		shared := newBookFacts(nil, book) // the lists are read once for a book
		all := make([]*SheetFacts, len(book.Sheets))
		for i, s := range book.Sheets {
			all[i] = shared.factsOf(s)
		}
		begin := time.Now()
		for _, f := range all {
			f.Work = StepWork{}
			f.followWork()
			for i := range f.Work.Steps {
				CausesOf(book, f.Work.Steps[i].Does, f.Work.Moments[i].State)
			}
			f.Through()
		}
		at += time.Since(begin)
	}
	b.ReportMetric(float64(at.Microseconds())/float64(b.N)/float64(len(book.Sheets)), "µs/sheet")
}
