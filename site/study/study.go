// Package study says when a question is asked again: the SM-2 schedule, as
// published in 1987 (from memory). It runs in the browser, and keeps nothing:
// the page hands over what it knows of a card and keeps what comes back.
package study

import "math"

// A Card is what is known of one question and one reader. The zero value is a
// card never shown.
type Card struct {
	// Right counts the answers in a row that were good enough.
	Right int
	// Ease is the card's easiness factor, 1.3 or more; 0 means a new card's 2.5.
	Ease float64
	// Days is the gap until the card is shown again, 0 for the same day.
	Days int
}

// firstEase and leastEase bound the easiness factor.
const (
	firstEase = 2.5
	leastEase = 1.3
)

// A Grade is how well a question was answered, 0 to 5: 5 at once, 4 after a
// moment, 3 with effort, 2 wrong but known when seen, 1 wrong, 0 no idea.
type Grade int

// passing is the lowest grade that counts as known, and steady the lowest
// after which the card is not shown again the same day.
const (
	passing Grade = 3
	steady  Grade = 4
)

// Longest is the greatest gap in days: what can hurt is never laid aside for
// good (a choice of this book, not of the schedule).
const Longest = 60

// Next gives the card after an answer. Accounts of the schedule differ on
// whether a failed answer changes the easiness; here it does, as in the
// formula, and the count of good answers starts anew:
//
//	EF' = EF + (0.1 − (5−q)(0.08 + (5−q)·0.02)), at least 1.3
//	I(1) = 1, I(2) = 6, I(n) = I(n−1)·EF, rounded up
//
// again is true where the card is to be shown once more the same day.
func (c Card) Next(g Grade) (next Card, again bool) {
	g = min(max(g, 0), 5)
	ease := c.Ease
	if ease == 0 {
		ease = firstEase
	}
	miss := float64(5 - g)
	next = Card{Right: c.Right + 1, Ease: math.Max(leastEase, ease+0.1-miss*(0.08+miss*0.02))}
	if g < passing {
		next.Right = 0
		return next, true
	}
	switch next.Right {
	case 1:
		next.Days = 1
	case 2:
		next.Days = 6
	default:
		next.Days = min(Longest, int(math.Ceil(float64(c.Days)*ease-1e-9)))
	}
	return next, g < steady
}
