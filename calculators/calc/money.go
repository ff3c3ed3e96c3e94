package calc

import "strings"

// currencies are the signs that may stand in front of a price.
var currencies = []string{"$", "€", "£", "¥"}

// cutCurrency takes a currency sign, or an ISO 4217 code of three capital
// letters, off the front of a price.
func cutCurrency(s string) (currency, rest string) {
	for _, c := range currencies {
		if after, ok := strings.CutPrefix(s, c); ok {
			return c, strings.TrimSpace(after)
		}
	}
	const code = 3
	n := 0
	for n < len(s) && s[n] >= 'A' && s[n] <= 'Z' {
		n++
	}
	if rest := strings.TrimSpace(s[n:]); n == code && numberLength(rest) > 0 {
		return s[:n], rest
	}
	return "", s
}

// withCurrency puts a currency in front of a price that is already text: a
// sign touches it, a code has a space.
func withCurrency(currency, price string) string {
	switch {
	case currency == "":
		return price
	case isLetter(currency[0]):
		return currency + " " + price
	case price != "" && price[0] == '-':
		return "-" + currency + price[1:]
	}
	return currency + price
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// currency is the one in which the prices among the inputs are given, "" where
// none says.
func (v *Values) currency() string {
	for i := range v.list {
		if v.list[i].Currency != "" {
			return v.list[i].Currency
		}
	}
	return ""
}

// oneCurrency refuses prices in two currencies.
func (v *Values) oneCurrency() *Problem {
	first := v.currency()
	for i := range v.list {
		if c := v.list[i].Currency; c != "" && c != first {
			return NewProblem(v.calculator.Inputs[i].Name, v.list[i].Text+" is not in "+first+", which another price here is in; give all prices in one currency")
		}
	}
	return nil
}
