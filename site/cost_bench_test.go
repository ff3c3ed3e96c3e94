package site_test

import (
	"context"
	"os"
	"runtime"
	"sync"
	"testing"
	"time"

	"baybook/calculators"
	"baybook/site"
	"baybook/site/check"
	"baybook/site/check/rule"
	"baybook/site/sheet"
)

// BenchmarkRules and BenchmarkPages are to be read together: what all rules
// cost on a book that is read, and what making its sheets' pages costs. Both
// run on as many processors as there are.
func BenchmarkRules(b *testing.B) {
	eachSize(b, func(b *testing.B, dir string) {
		book, _, err := sheet.Load(os.DirFS(dir), calculators.All)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		for b.Loop() {
			if list := check.Run(rule.All(), book, check.History{Today: time.Now()}); len(list) > 0 {
				b.Fatal(list)
			}
		}
	})
}

func BenchmarkPages(b *testing.B) {
	eachSize(b, func(b *testing.B, dir string) {
		b.ReportAllocs()
		for b.Loop() {
			b.StopTimer() // a page is made once for an edition
			edition, list, err := site.NewBuilder(site.Options{Content: dir, Core: testCore}).Next(context.Background())
			if err != nil {
				b.Fatal(list, err)
			}
			b.StartTimer()
			openAll(b, edition)
		}
	})
}

// openAll makes the pages of all sheets, side by side.
func openAll(b *testing.B, edition *site.Edition) {
	var group sync.WaitGroup
	work := make(chan string)
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for name := range work {
				if _, err := edition.Open(name); err != nil {
					b.Error(err)
				}
			}
		})
	}
	for _, s := range edition.Book.Sheets {
		work <- s.Path + ".html"
	}
	close(work)
	group.Wait()
}
