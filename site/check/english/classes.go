package english

import "strings"

// Action is the place in a sentence's words of the word that should be the
// order: the first, or the first behind an opening condition or circumstance
// with its comma. ok is false where such an opening has no comma behind it.
func Action(words []Word) (at int, ok bool) {
	if len(words) == 0 {
		return 0, false
	}
	if !Opens(words[0].Lower) {
		return 0, true
	}
	for i := 1; i < len(words); i++ {
		if words[i].Break == Comma || words[i].Break == Clause {
			next := words[i].Lower
			if Opens(next) || next == "and" || next == "or" || next == "then" {
				if next == "then" && i+1 < len(words) {
					return i + 1, true
				}
				continue
			}
			if NotVerb(next) {
				continue // a comma within the condition
			}
			return i, true
		}
	}
	return 0, false
}

// Opens reports whether a word opens a condition or a circumstance before the
// action.
func Opens(lower string) bool {
	switch lower {
	case "if", "when", "where", "whenever", "unless", "once", "after", "before", "while", "until", "as", "with", "at", "on", "in",
		"for", "from", "behind", "under", "without", "during", "outside", "inside", "by", "only", "either", "along", "through", "within", "over", "to", "beside", "between", "near", "above", "below":
		return true
	}
	return false
}

// NotVerb reports whether a word cannot be an order.
func NotVerb(lower string) bool {
	switch lower {
	case "the", "a", "an", "this", "that", "these", "those", "it", "its", "he", "she", "they", "we", "you", "your", "i", "there", "here",
		"what", "which", "who", "whose", "why", "how", "one", "two", "three", "some", "any", "many", "most", "all", "each", "every", "both",
		"is", "are", "was", "were", "has", "had", "must", "should", "can", "could", "may", "might", "will", "would", "shall",
		"because", "since", "although", "so", "but", "nor", "and", "or", "of", "than", "not", "no", "none", "nobody", "nothing":
		return true
	}
	return false
}

// subject reports whether words are the subject of a statement: a finite verb
// follows them with nothing but nouns in between ("Thread-locker can start").
func subject(words []Word) bool {
	for i := 1; i < min(len(words), 5); i++ {
		w := words[i]
		if w.Break >= Comma {
			return false
		}
		if Finite(w.Lower) {
			return true
		}
		switch w.Lower {
		case "that", "what", "how", "which", "who", "whether", "and", "or", "as", "so":
			return false
		}
		if Determines(w.Lower) || Opens(w.Lower) {
			return false
		}
	}
	return false
}

// isNounAfter reports whether a participle goes with a noun after it, as in
// "check used fuses".
func isNounAfter(lower string) bool {
	return !Opens(lower) && lower != "and" && lower != "or" && lower != "but" && !Finite(lower)
}

func IsAdverb(lower string) bool {
	switch lower {
	case "never", "always", "now", "then", "first", "again", "just", "only", "also", "next", "last", "please", "finally":
		return true
	}
	return strings.HasSuffix(lower, "ly") && lower != "apply" && lower != "fly" && lower != "supply" && lower != "rely"
}

// Finite reports whether a verb form makes the word before it a subject.
func Finite(lower string) bool {
	switch lower {
	case "is", "are", "was", "were", "has", "have", "must", "should", "can", "could", "may", "will", "does":
		return true
	}
	return false
}

// Determines reports whether a word stands before a noun.
func Determines(lower string) bool {
	switch lower {
	case "the", "a", "an", "this", "that", "these", "those", "its", "your", "their", "each", "every", "both", "all", "any", "no", "it", "them", "nothing":
		return true
	}
	return false
}

// TellsFault reports whether a sentence is about what people do wrong.
func TellsFault(words []Word) bool {
	return len(words) > 1 && (words[0].Lower == "usual" || words[0].Lower == "common") &&
		(words[1].Lower == "fault" || words[1].Lower == "mistake" || words[1].Lower == "faults" || words[1].Lower == "mistakes")
}
