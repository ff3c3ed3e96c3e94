package english

import "slices"

// Words by the part that they play between a thing and its number.
var (
	// measureWords say which measure a number behind or before them is.
	measureWords = []string{"deep", "wide", "long", "thick", "high", "tall", "apart", "away", "past", "clear", "square", "round", "across"}
	// joinWords lead from a thing to its number.
	joinWords = []string{"of", "is", "are", "to", "at", "be", "reads", "rated", "measures", "with"}
	// distanceWords stand behind a number that is a distance.
	distanceWords = []string{"from", "above", "below", "behind", "beside", "between", "under", "over", "off", "into", "before", "after", "beyond", "of", "per", "or", "and"}
	// neutralStems are of verbs that say no more than that the number holds.
	neutralStems = []string{"stand", "sit", "stay", "measur", "read", "show", "set", "adjust", "fit", "use", "take", "choos", "keep", "hold", "insert", "instal", "lay", "put", "pick", "bring"}
	// vagueStems are of names that many things of a sheet go by.
	vagueStems = []string{"it", "one", "them", "valu", "limit", "total", "read", "result", "number", "size", "rest", "rang", "step", "unit", "amount", "least", "most", "time", "point", "thing"}
)

func measures(lower string) bool { return slices.Contains(measureWords, lower) }

func joins(lower string) bool { return slices.Contains(joinWords, lower) }

func distance(lower string) bool { return slices.Contains(distanceWords, lower) }

func isVague(stem string) bool { return slices.Contains(vagueStems, stem) }

// neutral leaves a verb out that says no more than that the number holds.
func neutral(stem string) string {
	if slices.Contains(neutralStems, stem) {
		return ""
	}
	return stem
}
