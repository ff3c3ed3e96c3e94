package render

import (
	"strings"
	"sync"

	"baybook/site/render/lexer"

	"github.com/alecthomas/chroma/v2"
)

// A highlighter marks up listings by language. It holds the lexers that the
// book uses and no others: the library's own registry costs every start of
// the program more than most books take to build.
type highlighter struct {
	lexers map[string]chroma.Lexer
	mu     sync.Mutex
	done   map[[2]string]string
}

// classes names the kinds of token that the styles tell apart; anything else
// stays plain.
var classes = []struct {
	kind  chroma.TokenType
	class string
}{
	{chroma.Comment, "c"}, {chroma.Keyword, "k"}, {chroma.NameTag, "t"}, {chroma.NameAttribute, "t"},
	{chroma.LiteralString, "s"}, {chroma.LiteralNumber, "n"}, {chroma.GenericHeading, "h"},
	{chroma.GenericSubheading, "h"}, {chroma.GenericStrong, "h"}, {chroma.NameConstant, "n"},
	{chroma.Operator, "o"}, {chroma.NameFunction, "k"},
}

func newHighlighter() *highlighter {
	h := &highlighter{lexers: make(map[string]chroma.Lexer), done: make(map[[2]string]string)}
	for _, l := range lexer.All {
		for _, name := range l.Config().Aliases {
			h.lexers[name] = l
		}
	}
	return h
}

// markup is a listing as HTML: highlighted where its language is known,
// escaped in any case. The same listing is highlighted once.
func (h *highlighter) markup(language, code string) string {
	lex := h.lexers[language]
	if lex == nil {
		return escape(code)
	}
	key := [2]string{language, code}
	h.mu.Lock()
	done, ok := h.done[key]
	h.mu.Unlock()
	if ok {
		return done
	}
	tokens, err := lex.Tokenise(nil, code)
	if err != nil {
		return escape(code)
	}
	var b strings.Builder
	for t := tokens(); t != chroma.EOF; t = tokens() {
		class := classOf(t.Type)
		if class == "" {
			b.WriteString(escape(t.Value))
			continue
		}
		b.WriteString(`<span class="` + class + `">` + escape(t.Value) + `</span>`)
	}
	h.mu.Lock()
	h.done[key] = b.String()
	h.mu.Unlock()
	return b.String()
}

func classOf(t chroma.TokenType) string {
	for _, c := range classes {
		if t == c.kind || t.InSubCategory(c.kind) || c.kind%1000 == 0 && t.InCategory(c.kind) {
			return c.class
		}
	}
	return ""
}
