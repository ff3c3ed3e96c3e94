package calc

import (
	"math"
	"strconv"
	"strings"
)

// A WireSize is the cross-section of a conductor and how it was named.
type WireSize struct {
	Area float64 // mm2
	// Gauge is the AWG number, 0 for 1/0 down to -3 for 4/0; it means
	// something only where AWG is true.
	Gauge int
	AWG   bool
	// Text is the size as given, one space before the unit: "16 AWG", "1.5 mm²".
	Text string
}

// AWGArea is the area in mm2 of AWG number n, 0 for 1/0, -1 for 2/0 and so
// on: d = 0.127 mm × 92^((36−n)/39), ASTM B258.
func AWGArea(n int) float64 {
	d := 0.127 * math.Pow(92, float64(36-n)/39)
	return math.Pi / 4 * d * d
}

// AWGName writes an AWG number as the trade does: "16 AWG", "2/0 AWG".
func AWGName(n int) string {
	if n <= 0 {
		return strconv.Itoa(1-n) + "/0 AWG"
	}
	return strconv.Itoa(n) + " AWG"
}

// The AWG numbers that exist here: 30 is the thinnest, -3 (4/0) the thickest.
const thinnestGauge, thickestGauge = 30, -3

// gaugesWithin names the AWG sizes from the thinnest to the thickest whose
// areas in mm2 lie within bounds: "30 AWG to 4/0 AWG".
func gaugesWithin(least, most float64) string {
	thin, thick := thinnestGauge, thickestGauge
	for thin > thick && Under(AWGArea(thin), least) {
		thin--
	}
	for thick < thin && Over(AWGArea(thick), most) {
		thick++
	}
	return AWGName(thin) + " to " + AWGName(thick)
}

// ParseWire reads a conductor size: "16 AWG", "1/0AWG", "1.5mm2", "20 kcmil".
// A bare number is refused, for 16 could be either and guessing there burns
// vans. The range is the caller's to check. The message is complete but for
// the name of the input.
func ParseWire(s string) (WireSize, string) {
	var w WireSize
	if msg := w.read(s); msg != "" {
		return WireSize{}, msg
	}
	return w, ""
}

// gauges are the words behind an AWG number.
var gauges = []string{"AWG", "ga", "gauge"}

// IsGauge reports whether a word stands behind an AWG number.
func IsGauge(word string) bool {
	for _, gauge := range gauges {
		if SameWord(word, gauge) {
			return true
		}
	}
	return false
}

// read is ParseWire into w.
func (w *WireSize) read(s string) string {
	s = strings.TrimSpace(s)
	for _, gauge := range gauges {
		if n := len(s) - len(gauge); n >= 0 && SameWord(s[n:], gauge) {
			return w.readGauge(s, strings.TrimSpace(s[:n]))
		}
	}
	if isFraction(s) {
		return s + " has no unit; say " + s + " AWG or a size in mm2"
	}
	var q Quantity
	if msg := q.read(s); msg != "" {
		return msg
	}
	if q.Bare {
		return s + " has no unit; say " + q.Number + " AWG or " + q.Number + " mm2"
	}
	if q.Unit.Dim != Area {
		return q.is() + "; give a wire size in AWG, mm2 or kcmil"
	}
	w.Area, w.Text = q.in(mustUnit("mm2")), q.shown(q.Unit.Symbol)
	return ""
}

// readGauge reads the number in front of AWG: 30 to 1, 1/0 to 4/0, and the
// printed forms 0, 00, 000 and 0000 of the last four.
func (w *WireSize) readGauge(given, number string) string {
	gauge := whole("0" + number)
	switch {
	case isFraction(number) && number[0] >= '1' && number[0] <= '4':
		gauge = 1 - int(number[0]-'0')
	case number == "0" || number == "00" || number == "000" || number == "0000":
		gauge = 1 - len(number)
	case number == "" || digits(number, 0) < len(number) || len(number) > 2 || number[0] == '0' || gauge > thinnestGauge:
		return given + " is not a wire gauge; AWG runs 30 to 1, then 1/0, 2/0, 3/0, 4/0"
	}
	*w = WireSize{Area: AWGArea(gauge), Gauge: gauge, AWG: true, Text: AWGName(gauge)}
	return ""
}

// isFraction reports whether s is a gauge like 1/0 without its unit.
func isFraction(s string) bool {
	a, b, ok := strings.Cut(s, "/")
	return ok && b == "0" && len(a) == 1 && isDigit(a[0])
}
