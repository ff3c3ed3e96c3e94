package calc

import "strings"

// mostSuggested is how many names are offered at once.
const mostSuggested = 3

// Suggest lists the names that somebody may have meant: the nearest spelling,
// else the calculators whose names, titles and questions share most of the
// words, at most three.
func Suggest(word string, list []*Calculator) []string {
	var names []string
	for _, c := range list {
		names = append(names, c.Name)
	}
	asked := meant(word)
	var found []string
	most := 0
	for _, c := range list {
		n := 3*shared(asked, meant(c.Name)) + shared(asked, meant(c.Title+" "+c.Question))
		if n > most {
			found, most = nil, n
		}
		if n == most && n > 0 && len(found) < mostSuggested {
			found = append(found, c.Name)
		}
	}
	if near := Nearest(word, names); near != "" && len(found) < 2 {
		return []string{near}
	}
	return found
}

// meant are the words of a text that carry meaning, in lower case.
func meant(text string) []string {
	const least = 3 // letters
	var words []string
	word := ""
	for _, c := range strings.ToLower(text) + " " {
		if c >= 'a' && c <= 'z' {
			word += string(c)
			continue
		}
		if len(word) >= least {
			words = append(words, word)
		}
		word = ""
	}
	return words
}

// shared is how many of the words asked for are among others, or begin one.
func shared(asked, others []string) int {
	n := 0
	for _, a := range asked {
		for _, o := range others {
			if strings.HasPrefix(o, a) {
				n++
				break
			}
		}
	}
	return n
}
