package calc

// Words are compared and split here by their ASCII letters and spaces: the
// names of units, choices and parts are written in those, and the tables of
// every other script would weigh on the browser.

// folded turns the capital letters A to Z into small ones.
func folded(s string) string {
	b := []byte(s)
	for i, c := range b {
		if c >= 'A' && c <= 'Z' {
			b[i] = c | 0x20
		}
	}
	return string(b)
}

// SameWord reports whether two words differ at most in capital letters.
func SameWord(a, b string) bool { return folded(a) == folded(b) }

// Words splits a text at its spaces.
func Words(s string) []string {
	var list []string
	from := 0
	for i := 0; i <= len(s); i++ {
		if i == len(s) || s[i] <= ' ' {
			if i > from {
				list = append(list, s[from:i])
			}
			from = i + 1
		}
	}
	return list
}
