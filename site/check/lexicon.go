package check

import (
	"strings"

	"baybook/site/check/phrase"
)

// verbs are the actions of the trade in their bare form: the words that a
// step may start with. A word that is not among them may still be a verb; see
// imperative.
const verbs = `
accept add adjust agree aim align allow answer apply arrange ask assemble assign attach avoid await
back balance bare begin bend blank bleed block blow bolt book bore bridge bring brush bundle buy
calculate calibrate call carry catch centre change charge check choose chock clamp clean clear clip close coat
code coil collect compare compress compute confirm connect copy count cover crawl crimp cross curl cut
damp decide deburr degrease delete describe desolder detach disconnect discharge divide do double drain draw drill drive drop dry
earth empty end engage enter erase estimate examine exchange expect explain extend
fasten feed feel file fill find finish fit fix flash flatten flip fold follow force form free
gather get give glue go grease grind grip ground group guard guide
hand handle hang have heat help hold hook hunt
identify imagine initialise insert inspect install insulate isolate
jack join judge jump keep kneel knock know
label lay lead learn leave lengthen let level lever lift light limit line list listen load lock look loop loosen lower lubricate
make mark mask match measure melt mix mount move multiply
name note number
observe offer open order
pack paint park part pass paste peel phone photograph pick pierce pin place plan play plug point polish pop position pour prefer prepare press prevent price prime print program prop protect prove pry pull pump punch push put
quote
raise reach read reassemble reattach rebuild receive reconnect record reduce refer refit refuse release relearn remove renew repeat replace report request reseal reset rest restore return reverse rinse rivet roll rotate round route rub rule run
sand save saw scan scrape screw scribe seal search seat secure see select sell send separate set settle shake shape shield shift shorten show shrink shut sign sit size skip slide slip slit slow smooth solder sort space spare speak splice split spray spread square squeeze stack stand start state stay stick stop store straighten strap strengthen stretch strip subtract suck supply support swap swing switch
tack take talk tap tape taper tear tell test thread throw tie tighten tilt tin tip torque touch trace train transfer treat trim trust try tuck tug tune turn twist type
unbolt unclip uncoil uncover undo unfold unhook unload unlock unplug unroll unscrew unwind update use
vacuum vent ventilate verify
wait walk warm warn wash watch wax wear weigh weld wet widen wind wipe work wrap write zero`

// harms are the words in which a message tells what may happen.
const harms = `
accident amputate asthma allergy bleed blind blow break brown burn burst buzz cancer chafe chip choke clog
collapse collide corrode corrosion cost crack crash creep cripple crush cut damage dangle dazzle dead deaf
deafen death die distort dizzy drain drown dull electrocute empty entangle explode explosion fail
failure fall fatal fault fire flash flicker fly foul fracture freeze glow grab green harm hide hiss hit hum hurt
ignite inflame injure injury intermittent irritate jam kill lame leak loose lose loss lost maim melt mildew misfire
mould move noise overheat overload peel pierce pinch poison puncture rattle rip roll rot ruin rust
scald scar scorch scratch seize shatter shock short sink slam slice slip smoke smoulder snap spark spill spit splash split
spoil spread stain stall starve sting strain strangle strike suffocate swell tear throw tingle
trap trip unsafe useless void wake warp wear whine whip wound wrong refuse reject confuse silence block
blink blur mute deny trouble weaken torn vanish unreadable forget cancel bleach catch nick glare wash sleep mark face eye finger lung bone head burnt hang wet rub`

// protections are the words for protective equipment, by what they protect.
var protections = []struct {
	what    string
	phrases []string
}{
	{"eye protection", []string{"eye protection", "safety glasses", "safety spectacles", "goggles", "glasses with side shields", "face shield", "eye shield"}},
	{"gloves", []string{"glove"}},
	{"hearing protection", []string{"hearing protection", "ear protection", "ear plugs", "ear muffs", "earplugs", "earmuffs"}},
	{"a mask", []string{"mask", "respirator", "half mask"}},
}

// A lexicon is the words that the wording and message rules go by.
type lexicon struct {
	verbs map[string]bool
	harms map[string]bool
	vague *phrase.Set
	wear  []*phrase.Set // by protections
	// sources are the words that name a source, by their first byte.
	sources [256][]string
	vagueWords
}

type vagueWords []string

// vague are amounts that nobody can check.
var vague = vagueWords{
	"as required", "as necessary", "as needed", "as appropriate", "if necessary", "if needed", "when necessary", "where necessary",
	"=appropriate", "=appropriately", "=adequate", "=adequately", "=sufficient", "=sufficiently", "=properly", "=suitable", "=suitably",
	"=correctly", "nice and tight", "good and tight", "tight enough", "=somehow", "=hopefully", "to taste",
}

func readLexicon(stems *phrase.Stems) *lexicon {
	l := &lexicon{verbs: make(map[string]bool), harms: make(map[string]bool), vagueWords: vague}
	for _, v := range strings.Fields(verbs) {
		l.verbs[v] = true
	}
	for _, h := range strings.Fields(harms) {
		for _, w := range phrase.Read(h, stems).Words {
			l.harms[w.Stem] = true
		}
	}
	for _, w := range sourceWords {
		l.sources[w[0]] = append(l.sources[w[0]], w)
	}
	l.vague = phrase.NewSet(mustParse(vague, stems))
	for _, p := range protections {
		l.wear = append(l.wear, phrase.NewSet(mustParse(p.phrases, stems)))
	}
	return l
}

// mustParse reads phrases of this package's own lists, which a test proves
// well formed.
func mustParse(phrases []string, stems *phrase.Stems) []phrase.Pattern {
	var list []phrase.Pattern
	for _, s := range phrases {
		p, msg := phrase.Parse(s, stems)
		if msg != "" {
			panic("check: " + msg)
		}
		list = append(list, p)
	}
	return list
}

// action is the place in a sentence's words of the word that should be the
// order: the first, or the first behind an opening condition or circumstance
// with its comma. ok is false where such an opening has no comma behind it.
func action(words []phrase.Word) (at int, ok bool) {
	if len(words) == 0 {
		return 0, false
	}
	if !opens(words[0].Lower) {
		return 0, true
	}
	for i := 1; i < len(words); i++ {
		if words[i].Break == phrase.Comma || words[i].Break == phrase.Clause {
			next := words[i].Lower
			if opens(next) || next == "and" || next == "or" || next == "then" {
				if next == "then" && i+1 < len(words) {
					return i + 1, true
				}
				continue
			}
			if !mayOrder(words[i:]) {
				continue // a comma within the condition
			}
			return i, true
		}
	}
	return 0, false
}

// opens reports a word that opens a condition or a circumstance before the
// action.
func opens(lower string) bool {
	switch lower {
	case "if", "when", "where", "whenever", "unless", "once", "after", "before", "while", "until", "as", "with", "at", "on", "in",
		"for", "from", "behind", "under", "without", "during", "outside", "inside", "by", "only", "either", "along", "through", "within", "over", "to", "beside", "between", "near", "above", "below":
		return true
	}
	return false
}

// mayOrder reports whether words can start an order: do not, never, an adverb
// before the verb, or anything that is not plainly another kind of word.
func mayOrder(words []phrase.Word) bool {
	w := words[0].Lower
	if notVerb(w) {
		return false
	}
	if strings.HasSuffix(w, "ly") || w == "never" || w == "always" || w == "now" || w == "then" || w == "first" || w == "again" || w == "just" {
		return true
	}
	return true
}

// notVerb reports a word that cannot be an order.
func notVerb(lower string) bool {
	switch lower {
	case "the", "a", "an", "this", "that", "these", "those", "it", "its", "he", "she", "they", "we", "you", "your", "i", "there", "here",
		"what", "which", "who", "whose", "why", "how", "one", "two", "three", "some", "any", "many", "most", "all", "each", "every", "both",
		"is", "are", "was", "were", "has", "had", "must", "should", "can", "could", "may", "might", "will", "would", "shall",
		"because", "since", "although", "so", "but", "nor", "and", "or", "of", "than", "not", "no", "none", "nobody", "nothing":
		return true
	}
	return false
}

// orders reports whether words are an order: they start with a verb in its
// bare form, with do not or never, or with an adverb before a verb.
func (l *lexicon) orders(words []phrase.Word) bool {
	for len(words) > 1 && isAdverb(words[0].Lower) {
		words = words[1:]
	}
	if len(words) == 0 || notVerb(words[0].Lower) {
		return false
	}
	first := words[0].Lower
	if len(words) > 1 && strings.HasSuffix(words[1].Lower, "ed") && words[1].Break == phrase.NoBreak && len(words[1].Lower) > 4 && (len(words) == 2 || !isNounAfter(words[2].Lower)) {
		return false // "Reverse selected with ..."
	}
	if subject(words) {
		return false
	}
	if l.verbs[first] || strings.HasPrefix(first, "re") && l.verbs[first[2:]] || strings.HasPrefix(first, "un") && l.verbs[first[2:]] {
		return len(words) == 1 || !finite(words[1].Lower) || words[1].Break > phrase.NoBreak
	}
	// An unknown word is taken for a verb where an object follows it at once.
	if len(words) < 2 || words[1].Break != phrase.NoBreak || strings.HasSuffix(first, "ing") || strings.HasSuffix(first, "s") {
		return false
	}
	switch words[1].Lower {
	case "this", "that", "these", "those":
		return false // "Glass that moves ..."
	}
	return determines(words[1].Lower)
}

// subject reports words that are the subject of a statement: a finite verb
// follows them with nothing but nouns in between ("Thread-locker can start").
func subject(words []phrase.Word) bool {
	for i := 1; i < min(len(words), 5); i++ {
		w := words[i]
		if w.Break >= phrase.Comma {
			return false
		}
		if finite(w.Lower) {
			return true
		}
		switch w.Lower {
		case "that", "what", "how", "which", "who", "whether", "and", "or", "as", "so":
			return false
		}
		if determines(w.Lower) || opens(w.Lower) {
			return false
		}
	}
	return false
}

// isNounAfter reports that a participle goes with a noun behind it, as in
// "check used fuses".
func isNounAfter(lower string) bool {
	return !opens(lower) && lower != "and" && lower != "or" && lower != "but" && !finite(lower)
}

func isAdverb(lower string) bool {
	switch lower {
	case "never", "always", "now", "then", "first", "again", "just", "only", "also", "next", "last", "please", "finally":
		return true
	}
	return strings.HasSuffix(lower, "ly") && lower != "apply" && lower != "fly" && lower != "supply" && lower != "rely"
}

// finite reports a verb form that makes the word before it a subject.
func finite(lower string) bool {
	switch lower {
	case "is", "are", "was", "were", "has", "have", "must", "should", "can", "could", "may", "will", "does":
		return true
	}
	return false
}

// determines reports a word that stands before a noun.
func determines(lower string) bool {
	switch lower {
	case "the", "a", "an", "this", "that", "these", "those", "its", "your", "their", "each", "every", "both", "all", "any", "no", "it", "them", "nothing":
		return true
	}
	return false
}
