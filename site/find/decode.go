package find

import "strconv"

// Index answers queries. It may be used from several goroutines.
type Index struct {
	data   string
	docAt  []uint32 // where each document's record begins in data
	parent []int32  // the sheet that a document belongs to; itself for a sheet
	kind   []Kind
	names  []name    // of the glossary, sorted
	groups [][]int32 // the names in each group
	words  []word    // sorted
}

// word is one entry of the vocabulary.
type word struct {
	text     string
	docs     int    // how many documents have it
	postings string // in data
}

// Len is the number of documents.
func (x *Index) Len() int { return len(x.docAt) }

// Error says why bytes are no index of this version.
type Error struct {
	Offset int // in the bytes
	What   string
}

func (e *Error) Error() string {
	return "search index: " + e.What + " at byte " + strconv.Itoa(e.Offset) + "; build the book again"
}

// Decode reads what [Index.Encode] gave. It keeps a copy of the data. Data that
// is damaged, cut off or of another version is refused with an [*Error]; an index
// that is not refused answers every query.
func Decode(data []byte) (*Index, error) {
	if len(data) < len(magic)+4 || string(data[:len(magic)]) != magic {
		return nil, &Error{0, "this is no index of this version"}
	}
	end := len(data) - 4
	x := &Index{data: string(data)}
	r := reader{s: x.data[:end], at: len(magic)}
	t := data[end:]
	if sum(r.s) != uint32(t[0])|uint32(t[1])<<8|uint32(t[2])<<16|uint32(t[3])<<24 {
		return nil, &Error{end, "the checksum does not fit"}
	}
	x.readDocs(&r)
	x.readNames(&r)
	x.readWords(&r)
	if r.bad == "" && r.at != len(r.s) {
		r.fail("more bytes than documents, glossary and words have")
	}
	if r.bad != "" {
		return nil, &Error{r.at, r.bad}
	}
	return x, nil
}

// reader takes an index apart. After the first fault it gives only zeros.
type reader struct {
	s   string
	at  int
	bad string
}

func (r *reader) fail(what string) {
	if r.bad == "" {
		r.bad = what
	}
}

// uint reads a number that is at most max.
func (r *reader) uint(max int) int {
	var n uint64
	for shift := 0; shift < 35 && r.bad == "" && r.at < len(r.s); shift += 7 {
		c := r.s[r.at]
		r.at++
		n |= uint64(c&0x7F) << shift
		if c < 0x80 {
			if max < 0 || n > uint64(max) {
				break
			}
			return int(n)
		}
	}
	r.fail("a number is missing or too large")
	return 0
}

// count reads how many things follow, each of at least size bytes.
func (r *reader) count(size int) int { return r.uint((len(r.s) - r.at) / size) }

func (r *reader) bytes(n int) string {
	if r.bad != "" || n > len(r.s)-r.at {
		r.fail("a text is cut off")
		return ""
	}
	r.at += n
	return r.s[r.at-n : r.at]
}

func (r *reader) string() string { return r.bytes(r.count(1)) }

// front reads a string that follows the one before in a sorted list.
func (r *reader) front(before string) string {
	shared := r.uint(len(before))
	s := before[:shared] + r.string()
	if r.bad == "" && s <= before {
		r.fail("a list is not sorted")
	}
	return s
}

// record is one document as it is stored.
type record struct {
	flags                              byte
	parent                             int // distance
	title, number, address, area, text string
}

func (r *reader) record(docs int) record {
	var d record
	if b := r.bytes(1); b != "" {
		d.flags = b[0]
	}
	away := r.uint(2 * docs)
	d.parent = away>>1 ^ -(away & 1)
	if d.flags&sameTitle == 0 {
		d.title = r.string()
	}
	if d.flags&sameNumber == 0 {
		d.number = r.string()
	}
	d.address = r.string()
	if d.flags&sameArea == 0 {
		d.area = r.string()
	}
	d.text = r.string()
	return d
}

func (x *Index) readDocs(r *reader) {
	n := r.count(4) // the shortest record
	x.docAt = make([]uint32, 0, n)
	x.parent = make([]int32, 0, n)
	x.kind = make([]Kind, 0, n)
	for i := 0; i < n && r.bad == ""; i++ {
		x.docAt = append(x.docAt, uint32(r.at))
		d := r.record(n)
		parent := i + d.parent
		same := d.flags & (sameTitle | sameNumber | samePage | sameArea)
		if parent < 0 || parent >= n || d.flags&unusedFlags != 0 || parent == i && same != 0 {
			r.fail("a document is damaged")
		}
		x.parent = append(x.parent, int32(parent))
		x.kind = append(x.kind, Kind(d.flags&kindMask))
	}
	for i, p := range x.parent {
		if r.bad == "" && (x.parent[p] != p || int(p) != i && x.kind[p] != Sheet) {
			r.fail("a document belongs to no sheet")
		}
	}
}

func (x *Index) readNames(r *reader) {
	x.groups = make([][]int32, r.count(2)) // each has two names or more
	n := r.count(4)
	before := ""
	for i := 0; i < n && r.bad == ""; i++ {
		nm := name{phrase: r.front(before)}
		before = nm.phrase
		g := 0
		for k := r.count(1); k > 0 && r.bad == ""; k-- {
			g += r.uint(len(x.groups) - 1 - g)
			if r.bad == "" {
				nm.groups = append(nm.groups, g)
				x.groups[g] = append(x.groups[g], int32(i))
			}
		}
		x.names = append(x.names, nm)
	}
}

func (x *Index) readWords(r *reader) {
	n := r.count(5)
	x.words = make([]word, 0, n)
	before := ""
	for i := 0; i < n && r.bad == ""; i++ {
		w := word{text: r.front(before)}
		before = w.text
		w.docs = r.uint(len(x.docAt))
		size := r.count(1)
		from := r.at
		doc := 0
		for k := 0; k < w.docs && r.bad == ""; k++ {
			p := r.uint(len(x.docAt)<<placeBits - 1)
			doc += p >> placeBits
			if doc >= len(x.docAt) || k > 0 && p>>placeBits == 0 || p&placeMask == 0 {
				r.fail("a word is damaged")
			}
		}
		if r.at-from != size {
			r.fail("a word's documents do not fit its size")
		}
		if r.bad == "" {
			w.postings = r.s[from:r.at]
		}
		x.words = append(x.words, w)
	}
}

// record reads a document, with what it takes from its sheet filled in.
func (x *Index) record(doc int) record {
	r := reader{s: x.data, at: int(x.docAt[doc])}
	d := r.record(len(x.docAt))
	if int(x.parent[doc]) == doc {
		return d
	}
	p := x.record(int(x.parent[doc]))
	if d.flags&sameTitle != 0 {
		d.title = p.title
	}
	if d.flags&sameNumber != 0 {
		d.number = p.number
	}
	if d.flags&samePage != 0 {
		d.address = p.address + "#" + d.address
	}
	if d.flags&sameArea != 0 {
		d.area = p.area
	}
	return d
}

// lookup finds a word of the vocabulary, or the place where it would be.
func (x *Index) lookup(text string) (int32, bool) {
	lo, hi := 0, len(x.words)
	for lo < hi {
		if mid := (lo + hi) / 2; x.words[mid].text < text {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return int32(lo), lo < len(x.words) && x.words[lo].text == text
}

// postings walks through the documents that have an entry of the vocabulary.
func (x *Index) postings(entry int32) postings { return postings{rest: x.words[entry].postings} }

type postings struct {
	rest   string
	doc    int32
	places uint32 // where in it the entry stands
}

// next goes to the next document and reports whether there is one. What it reads
// was checked when the index was.
func (p *postings) next() bool {
	if p.rest == "" {
		return false
	}
	n := uint32(0)
	for i := 0; ; i++ {
		c := p.rest[i]
		n |= uint32(c&0x7F) << (7 * i)
		if c < 0x80 {
			p.rest = p.rest[i+1:]
			break
		}
	}
	p.doc += int32(n >> placeBits)
	p.places = n & placeMask
	return true
}
