package calculators_test

import (
	"math/rand/v2"
	"os"
	"testing"

	"baybook/calculators"
	"baybook/calculators/calc"
	"baybook/calculators/calctest"
)

const published = "../testdata/published"

func TestList(t *testing.T) {
	if err := calctest.Validate(calculators.All, os.DirFS(published)); err != nil {
		t.Error(err)
	}
}

// TestPublished compares every calculator with the values of standards,
// handbooks and worked examples.
func TestPublished(t *testing.T) {
	for _, c := range calculators.All {
		t.Run(c.Name, func(t *testing.T) {
			rows, err := calctest.ReadPublished(os.DirFS(published), c.Name)
			if err != nil {
				t.Fatal(err)
			}
			for _, row := range rows {
				if err := row.Check(c); err != nil {
					t.Errorf("row %d, %s: %v\n\tsource: %s", row.Line, row.Query, err, row.Source)
				}
			}
		})
	}
}

// TestRandom asks every calculator for results all over its ranges: each must
// be sound, and each figure whole and legible.
func TestRandom(t *testing.T) {
	rounds := 200
	if testing.Short() {
		rounds = 40 // the race detector makes each ten times as long
	}
	for _, c := range calculators.All {
		t.Run(c.Name, func(t *testing.T) {
			t.Parallel()
			r := rand.New(rand.NewPCG(1, 2))
			computed := 0
			for range rounds {
				query := calctest.RandomQuery(r, c)
				if err := calctest.Sound(c, query); err != nil {
					t.Fatalf("%s?%s: %v", c.Name, query, err)
				}
				if err := calctest.CheckFigure(c, query); err != nil {
					t.Fatalf("%s?%s: %v", c.Name, query, err)
				}
				if calctest.Computes(c, query) {
					computed++
				}
			}
			if computed < rounds/10 {
				t.Errorf("only %d of %d random queries compute: the ranges do not fit each other", computed, rounds)
			}
		})
	}
}

func TestNamed(t *testing.T) {
	for _, name := range calculators.Names() {
		if c := calculators.Named(name); c == nil || c.Name != name {
			t.Errorf("Named(%q) = %v", name, c)
		}
	}
	if c := calculators.Named("wire-dropp"); c != nil {
		t.Errorf("Named of no calculator is %s", c.Name)
	}
}

// FuzzAnswer gives any calculator any query: whatever comes, there is a sound
// result or a problem in words, and never a panic.
func FuzzAnswer(f *testing.F) {
	r := rand.New(rand.NewPCG(3, 4))
	for i, c := range calculators.All {
		f.Add(uint8(i), "")
		f.Add(uint8(i), calctest.RandomQuery(r, c))
	}
	f.Add(uint8(0), "current=-0&length=1e999m&wire=1/0")
	f.Add(uint8(0), "wire=0x1p4mm2&limit=3%25&back=Body&&")
	f.Fuzz(func(t *testing.T, index uint8, query string) {
		c := calculators.All[int(index)%len(calculators.All)]
		if err := calctest.Sound(c, query); err != nil {
			t.Errorf("%s?%s: %v", c.Name, query, err)
		}
	})
}

func BenchmarkAnswer(b *testing.B) {
	for _, c := range calculators.All {
		b.Run(c.Name, func(b *testing.B) {
			for b.Loop() {
				if _, r, _ := c.Answer(nil); r == nil {
					b.Fatal("does not compute")
				}
			}
		})
	}
}

// BenchmarkMarkup is all that a changed field costs: read, compute, and write
// the result with its drawing.
func BenchmarkMarkup(b *testing.B) {
	for _, c := range calculators.All {
		b.Run(c.Name, func(b *testing.B) {
			var out []byte
			for b.Loop() {
				v, r, _ := c.Answer(nil)
				out = calc.AppendMarkup(out[:0], v, r, "")
			}
			b.ReportMetric(float64(len(out)), "B/markup")
		})
	}
}
