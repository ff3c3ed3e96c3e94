package draw

import (
	"bytes"
	"sync"
	"testing"

	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/judge"
)

// TestDrawnByMany draws one assessment from many goroutines at once. The
// drawings are the same, and the race detector finds nothing written.
func TestDrawnByMany(t *testing.T) {
	a := judge.Assess(circuittest.Build(t, circuittest.Circuits(t)["bookmobile"]))
	want := Drawing(a, View{}).AppendSVG(nil)
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			if got := Drawing(a, View{}).AppendSVG(nil); !bytes.Equal(got, want) {
				t.Error("two drawings of one circuit differ")
			}
		})
	}
	wait.Wait()
}
