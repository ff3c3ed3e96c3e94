package calc

import (
	"math"
	"math/rand"
	"strconv"
	"testing"
)

// TestDecimal compares with the standard library's reader: bit for bit where
// the nearest value is promised, to a few units in the last place elsewhere.
func TestDecimal(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	digits := func(n int) string {
		b := make([]byte, n)
		for i := range b {
			b[i] = byte('0' + rnd.Intn(10))
		}
		return string(b)
	}
	for range 300_000 {
		s := []string{"", "-", "+"}[rnd.Intn(3)] + digits(rnd.Intn(12))
		if n := rnd.Intn(8); n > 0 || len(s) < 2 {
			s += "." + digits(n+1)
		}
		within := true
		switch rnd.Intn(6) {
		case 0:
			s += "e" + strconv.Itoa(rnd.Intn(20)-10)
		case 1:
			s += "E+" + strconv.Itoa(rnd.Intn(340))
			within = false
		case 2:
			s += "e-" + strconv.Itoa(rnd.Intn(340))
			within = false
		case 3:
			s = digits(20+rnd.Intn(20)) + "." + digits(rnd.Intn(30))
			within = false
		}
		if numberLength(s) != len(s) {
			t.Fatalf("%q is not a number to begin with", s)
		}
		want, _ := strconv.ParseFloat(s, 64)
		got := decimal(s)
		if within && got != want {
			t.Fatalf("%s is %v, want %v", s, got, want)
		}
		if math.IsInf(want, 0) || math.Abs(want) < 1e-300 {
			continue // the last digit of a number that no quantity reaches
		}
		if math.Abs(got-want) > 1e-15*math.Abs(want) {
			t.Fatalf("%s is %v, want %v", s, got, want)
		}
	}
	for _, s := range []string{"0", "-0", "0.000", "00012", "1e400", "-1e999999999999", "1e-400", "0e999", "9007199254740993", "1.5e308"} {
		want, _ := strconv.ParseFloat(s, 64)
		if got := decimal(s); got != want {
			t.Errorf("%s is %v, want %v", s, got, want)
		}
	}
}
