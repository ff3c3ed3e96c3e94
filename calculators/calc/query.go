package calc

import "strings"

// A Pair is one key and value of a query, and where the pair stands in it.
type Pair struct {
	Key, Value string
	Offset     int
}

// ParseQuery splits a query such as "current=6A&length=4m" into its pairs,
// percent-escapes undone (RFC 3986: % itself is written %25; a plus sign is a
// plus sign). The message is empty where the query is well formed.
func ParseQuery(raw string) ([]Pair, string) {
	if raw == "" {
		return nil, ""
	}
	var pairs []Pair
	for at, more := 0, true; more; {
		var part string
		part, _, more = strings.Cut(raw[at:], "&")
		if part == "" {
			return nil, "an input is missing between two & signs; write name=value&name=value"
		}
		key, value, ok := strings.Cut(part, "=")
		if !ok || key == "" {
			return nil, "“" + part + "” is not name=value"
		}
		key, ok = unescape(key)
		value, whole := unescape(value)
		if !ok || !whole {
			return nil, "“" + part + "” has a % that starts no escape; write % as %25"
		}
		pairs = append(pairs, Pair{Key: key, Value: value, Offset: at})
		at += len(part) + 1
	}
	return pairs, ""
}

// FormatQuery writes pairs as a query that ParseQuery reads back to the same.
func FormatQuery(pairs []Pair) string {
	var b []byte
	for i, p := range pairs {
		if i > 0 {
			b = append(b, '&')
		}
		b = escape(b, p.Key)
		b = append(b, '=')
		b = escape(b, p.Value)
	}
	return string(b)
}

// unescape undoes percent-escapes; false where a % starts none.
func unescape(s string) (string, bool) {
	if strings.IndexByte(s, '%') < 0 {
		return s, true
	}
	b := make([]byte, 0, len(s))
	for i := 0; i < len(s); i++ {
		if s[i] != '%' {
			b = append(b, s[i])
			continue
		}
		if i+2 >= len(s) {
			return "", false
		}
		hi, lo := hexDigit(s[i+1]), hexDigit(s[i+2])
		if hi < 0 || lo < 0 {
			return "", false
		}
		b = append(b, byte(hi<<4|lo))
		i += 2
	}
	return string(b), true
}

const hexDigits = "0123456789ABCDEF"

// hexDigit is the value of a hexadecimal digit, -1 for anything else.
func hexDigit(c byte) int {
	if i := strings.IndexByte(hexDigits, c); i >= 0 {
		return i
	}
	if i := strings.IndexByte("abcdef", c); i >= 0 {
		return 10 + i
	}
	return -1
}

// escape percent-encodes what a query value may not hold as it is.
func escape(b []byte, s string) []byte {
	const plain = "-._~/:,*@!$'()"
	for i := range len(s) {
		c := s[i]
		if isDigit(c) || c|0x20 >= 'a' && c|0x20 <= 'z' || strings.IndexByte(plain, c) >= 0 {
			b = append(b, c)
			continue
		}
		b = append(b, '%', hexDigits[c>>4], hexDigits[c&15])
	}
	return b
}
