package english

import (
	"strings"
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

// A Protection is one kind of protective equipment, with the phrases that
// name it.
type Protection struct {
	What string
	*Set
}

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

// A Lexicon is the words that the wording and message rules go by.
type Lexicon struct {
	Verbs       map[string]bool
	Harms       map[string]bool
	Vague       *Set
	Protections []Protection
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

func NewLexicon(stems *Stems) *Lexicon {
	l := &Lexicon{Verbs: make(map[string]bool), Harms: make(map[string]bool), vagueWords: vague}
	for _, v := range strings.Fields(verbs) {
		l.Verbs[v] = true
	}
	for _, h := range strings.Fields(harms) {
		for _, w := range Read(h, stems).Words {
			l.Harms[w.Stem] = true
		}
	}
	for _, w := range sourceWords {
		l.sources[w[0]] = append(l.sources[w[0]], w)
	}
	l.Vague = NewSet(mustParse(vague, stems))
	for _, p := range protections {
		l.Protections = append(l.Protections, Protection{p.what, NewSet(mustParse(p.phrases, stems))})
	}
	return l
}

// mustParse reads phrases of this package's own lists, which a test proves
// well formed.
func mustParse(phrases []string, stems *Stems) []Pattern {
	var list []Pattern
	for _, s := range phrases {
		p, msg := Parse(s, stems)
		if msg != "" {
			panic("check: " + msg)
		}
		list = append(list, p)
	}
	return list
}

// Orders reports whether words are an order: they start with a verb in its
// bare form, with do not or never, or with an adverb before a verb.
func (l *Lexicon) Orders(words []Word) bool {
	for len(words) > 1 && IsAdverb(words[0].Lower) {
		words = words[1:]
	}
	if len(words) == 0 || NotVerb(words[0].Lower) {
		return false
	}
	first := words[0].Lower
	if len(words) > 1 && strings.HasSuffix(words[1].Lower, "ed") && words[1].Break == NoBreak && len(words[1].Lower) > 4 && (len(words) == 2 || !isNounAfter(words[2].Lower)) {
		return false // "Reverse selected with ..."
	}
	if subject(words) {
		return false
	}
	if l.Verbs[first] || strings.HasPrefix(first, "re") && l.Verbs[first[2:]] || strings.HasPrefix(first, "un") && l.Verbs[first[2:]] {
		return len(words) == 1 || !Finite(words[1].Lower) || words[1].Break > NoBreak
	}
	// An unknown word is taken for a verb where an object follows it at once.
	if len(words) < 2 || words[1].Break != NoBreak || strings.HasSuffix(first, "ing") || strings.HasSuffix(first, "s") {
		return false
	}
	switch words[1].Lower {
	case "this", "that", "these", "those":
		return false // "Glass that moves ..."
	}
	return Determines(words[1].Lower)
}

// sourceWords name a kind of source, or say that there is none.
var sourceWords = []string{
	"practice", "from memory", "arithmetic", "Ohm's law", "example", "invented", "handbook", "data sheet", "datasheet", "maker", "manufacturer", "as measured",
	"shop limit", "shop's limit", "house limit", "book limit", "training text", "by the table", "Council", "catalogue",
	"CFR", "ISO", "IEC", "DIN", "SAE", "ANSI", "ASTM", "FMVSS", "HSE", "NIOSH", "NFPA", "EN ", "UL ", "ABYC", "AC 43", "USC", "MIL-", "AES", "OSHA", "NHTSA", "FAA", "O*NET", "Title 13", "W3C", "ECE", "UN R",
}

// IsOrder reports whether a clause is an order, a condition before it or not.
func (l *Lexicon) IsOrder(words []Word) bool {
	at, ok := Action(words)
	return ok && l.Orders(words[at:])
}

// NamesSource reports whether a text says where its numbers come from.
func (l *Lexicon) NamesSource(text string) bool {
	for i := range len(text) {
		for _, w := range l.sources[text[i]] {
			if strings.HasPrefix(text[i:], w) {
				return true
			}
		}
	}
	return false
}
