package study

import (
	"math"
	"testing"
)

// The schedule of a card answered well each time, worked by hand from the
// published formula (SM-2, 1987, from memory): with grade 4 the easiness stays
// 2.5, so the gaps are 1, 6, 15, 38 (37.5 rounded up) days, then the cap.
func TestSteadyCard(t *testing.T) {
	var c Card
	for i, want := range []int{1, 6, 15, 38, Longest, Longest} {
		var again bool
		c, again = c.Next(4)
		if c.Days != want || again || math.Abs(c.Ease-2.5) > 1e-12 {
			t.Fatalf("answer %d: %d days, easiness %g, again %v; want %d days, 2.5, false", i+1, c.Days, c.Ease, again, want)
		}
	}
}

// One step of the easiness for each grade, by the formula:
// 5 +0.10, 4 0, 3 −0.14, 2 −0.32, 1 −0.54, 0 −0.80.
func TestEase(t *testing.T) {
	for grade, change := range []float64{-0.80, -0.54, -0.32, -0.14, 0, 0.10} {
		c, _ := Card{}.Next(Grade(grade))
		if want := math.Max(1.3, 2.5+change); math.Abs(c.Ease-want) > 1e-12 {
			t.Errorf("grade %d: easiness %g, want %g", grade, c.Ease, want)
		}
	}
}

func TestFailureStartsAnew(t *testing.T) {
	c := Card{Right: 4, Ease: 2.2, Days: 30}
	c, again := c.Next(2)
	if c.Right != 0 || c.Days != 0 || !again {
		t.Fatalf("after a failure: %+v, again %v", c, again)
	}
	if c, _ = c.Next(4); c.Days != 1 {
		t.Fatalf("the first good answer after a failure comes back in %d days, want 1", c.Days)
	}
}

func TestEaseNeverBelowLeast(t *testing.T) {
	c := Card{}
	for range 20 {
		c, _ = c.Next(0)
	}
	if c.Ease != 1.3 {
		t.Fatalf("easiness %g, want 1.3", c.Ease)
	}
}

func TestBarelyKnownComesAgainTheSameDay(t *testing.T) {
	if _, again := (Card{}).Next(3); !again {
		t.Fatal("grade 3 is not shown again the same day")
	}
}
