package rule

import (
	"baybook/site/check"
	"fmt"
	"os"
	"path"
	"testing"
	"testing/fstest"

	"baybook/calculators"
	"baybook/site/sheet"
)

// manyFS is the shipped book n times over, in folders of their own.
func manyFS(b *testing.B, n int) fstest.MapFS {
	shipped := copyFS(b, os.DirFS("../../../content"))
	fsys := fstest.MapFS{}
	for name, f := range shipped {
		if path.Dir(name) == "." {
			fsys[name] = f
			continue
		}
		for i := range n {
			fsys[fmt.Sprintf("copy%03d/%s", i, name)] = f
		}
	}
	return fsys
}

// BenchmarkParse and BenchmarkRun are to be read together: checking a book
// against reading it, per sheet.
func BenchmarkParse(b *testing.B) {
	fsys := manyFS(b, 10)
	b.ReportAllocs()
	sheets := 0
	for b.Loop() {
		book, _, err := sheet.Load(fsys, calculators.All)
		if err != nil {
			b.Fatal(err)
		}
		sheets = len(book.Sheets)
	}
	perSheet(b, sheets)
}

func BenchmarkRun(b *testing.B) {
	book, _, err := sheet.Load(manyFS(b, 10), calculators.All)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		check.Run(All(), book, check.History{Today: today})
	}
	perSheet(b, len(book.Sheets))
}

func perSheet(b *testing.B, sheets int) {
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/float64(sheets), "µs/sheet")
}
