package find

import (
	"slices"
	"strings"
)

// The index as bytes:
//
//	magic     "BBf1"
//	documents count, then each: flags, parent, and the strings that flags do not
//	          take from the parent: title, number, address, area; text
//	glossary  count of groups, count of phrases, then each: phrase, count of groups, groups as differences
//	words     count, then each: word, count of documents, bytes of postings,
//	          postings as differences
//	sum       FNV-1a of all before it, 4 bytes, lowest first
//
// Numbers are unsigned varints, 7 bits a byte, lowest first. Phrases and words
// are sorted, and written as the bytes shared with the one before, the bytes that
// follow, and those. A posting is the document's distance from the one before it,
// shifted over the places where the word stands. A parent is given as the zigzag
// distance from the document; 0 is the document itself.
const magic = "BBf1"

// Flags of a document; the lowest two bits are its kind.
const (
	kindMask    = 3
	sameTitle   = 1 << 2 // as the parent's
	sameNumber  = 1 << 3
	samePage    = 1 << 4 // the address is the parent's and a fragment: # stands for it
	sameArea    = 1 << 5
	unusedFlags = 1<<6 | 1<<7
)

// Encode gives the index as bytes that [Decode] reads. The same documents and
// synonyms give the same bytes.
func (x *Index) Encode() []byte { return []byte(x.data) }

func (b *builder) encode(docs []Doc, names []name) []byte {
	out := []byte(magic)
	out = appendDocs(out, docs)
	out = appendNames(out, names)
	words := make([]string, 0, len(b.words))
	for w := range b.words {
		words = append(words, w)
	}
	slices.Sort(words)
	out = appendUint(out, uint64(len(words)))
	before := ""
	var posts []byte
	for _, w := range words {
		out = appendFront(out, before, w)
		before = w
		list := b.posts[b.words[w]]
		posts = posts[:0]
		var last uint32
		for _, p := range list {
			doc := p >> placeBits
			posts = appendUint(posts, uint64(doc-last)<<placeBits|uint64(p&placeMask))
			last = doc
		}
		out = appendUint(out, uint64(len(list)))
		out = appendUint(out, uint64(len(posts)))
		out = append(out, posts...)
	}
	s := sum(string(out))
	return append(out, byte(s), byte(s>>8), byte(s>>16), byte(s>>24))
}

func appendDocs(out []byte, docs []Doc) []byte {
	sheets := map[int32]int{}
	for i := range docs {
		if docs[i].Kind == Sheet && docs[i].Sheet >= 0 {
			if _, twice := sheets[docs[i].Sheet]; !twice {
				sheets[docs[i].Sheet] = i
			}
		}
	}
	out = appendUint(out, uint64(len(docs)))
	for i := range docs {
		parent, ok := sheets[docs[i].Sheet]
		if !ok || docs[i].Kind == Sheet {
			parent = i
		}
		out = appendDoc(out, docs, i, parent)
	}
	return out
}

func appendDoc(out []byte, docs []Doc, i, parent int) []byte {
	d, p := &docs[i], &docs[parent]
	flags := byte(d.Kind & kindMask)
	address := d.Address
	strs := make([]string, 0, 5)
	for _, f := range [...]struct {
		flag      byte
		own, same string
	}{{sameTitle, d.Title, p.Title}, {sameNumber, d.Number, p.Number}} {
		if parent != i && f.own == f.same {
			flags |= f.flag
		} else {
			strs = append(strs, f.own)
		}
	}
	if rest, ok := strings.CutPrefix(d.Address, p.Address+"#"); parent != i && ok {
		flags |= samePage
		address = rest
	}
	strs = append(strs, address)
	if parent != i && d.Area == p.Area {
		flags |= sameArea
	} else {
		strs = append(strs, d.Area)
	}
	strs = append(strs, shorten(d.Text))
	out = append(out, flags)
	away := int64(parent - i)
	out = appendUint(out, uint64(away<<1)^uint64(away>>63))
	for _, s := range strs {
		out = appendUint(out, uint64(len(s)))
		out = append(out, s...)
	}
	return out
}

func appendNames(out []byte, names []name) []byte {
	groups := 0
	for _, n := range names {
		groups = max(groups, n.groups[len(n.groups)-1]+1)
	}
	out = appendUint(out, uint64(groups))
	out = appendUint(out, uint64(len(names)))
	before := ""
	for _, n := range names {
		out = appendFront(out, before, n.phrase)
		before = n.phrase
		out = appendUint(out, uint64(len(n.groups)))
		last := 0
		for _, g := range n.groups {
			out = appendUint(out, uint64(g-last))
			last = g
		}
	}
	return out
}

// appendFront writes a string by what it shares with the one before.
func appendFront(out []byte, before, s string) []byte {
	shared := 0
	for shared < len(before) && shared < len(s) && before[shared] == s[shared] {
		shared++
	}
	out = appendUint(out, uint64(shared))
	out = appendUint(out, uint64(len(s)-shared))
	return append(out, s[shared:]...)
}

func appendUint(out []byte, n uint64) []byte {
	for n >= 0x80 {
		out = append(out, byte(n)|0x80)
		n >>= 7
	}
	return append(out, byte(n))
}

// sum is the 32-bit FNV-1a hash.
func sum(s string) uint32 {
	h := uint32(2166136261)
	for i := 0; i < len(s); i++ {
		h = (h ^ uint32(s[i])) * 16777619
	}
	return h
}
