// Package find searches a book: its sheets, their sections and steps, and the
// calculators. The same code runs twice: the builder makes the index ([Build],
// [Index.Encode]), the browser reads it ([Decode]) and answers while a person
// types ([Index.Find], [AppendMarkup]). It therefore imports only strings,
// slices, unicode, strconv and cmp, which keeps the browser's core small.
//
// What a query finds:
//
//   - A sheet's number jumps to the sheet: GR-02, gr02, GR-02 step 4, gr-02#step-4.
//   - Case, accents, plurals and hyphens do not matter; -ing and -ed hardly do.
//   - The last word counts as its start, for it may still be being typed; a space
//     after it ends it.
//   - Words of one glossary group are one: earth finds what ground strap finds.
//   - One typing error in a word of four letters or more is forgiven when the word
//     as typed finds nothing.
//   - No word must be found: each that is adds to the score, rare ones more. An
//     answer without all of them is marked as partial.
//   - A page is one answer, by the step or section on it that has the most of the
//     words.
//   - Values fill in a calculator: 12A 5m offers the feed for it.
//
// How pages are ranked: each word gets the points of the best place where the page
// has it (title 100, further words 70, text 30; in a step or section seven tenths
// of that), times how well it fits (the word itself 100 %, another name 95 %, its
// start 50 to 90 %, another form 60 %, a typing error 45 %; a phrase of the glossary
// word for word 200 %), times how rare it is among the pages (4 to 20). The points
// of the part that answers best are added, and a share for the title, by how much
// of it the query covers. A page that lacks words loses up to half, and one on the
// book itself seven tenths. Equal scores keep the book's order. The weights were
// set by the questions of testdata/find/tune.tsv.
package find

// Kind says what a document is.
type Kind uint8

const (
	Sheet      Kind = iota // a whole sheet: its title and opening words
	Section                // one section of a sheet
	Step                   // one step of a sheet
	Calculator             // a calculator's page
)

// Doc is one thing that can be found.
type Doc struct {
	Sheet   int32    // which sheet it belongs to, any number that its parts share; negative for none
	Kind    Kind     // there is one document of kind Sheet for each sheet
	Title   string   // a step has its sheet's title, a section its heading
	Number  string   // the sheet's document number, such as GR-02; empty for none
	Address string   // page from the site's root, with fragment: passage/door-boot.html#step-4
	Area    string   // the folder that the sheet stands in
	Text    string   // all of it is searched; its beginning is kept for the excerpt
	Words   []string // further words and phrases that it is looked for by; never shown
}

// Span is a part of a string, in bytes.
type Span struct{ Start, End int }

// Hit is one answer.
type Hit struct {
	Doc     int    // index in the documents that the index was built from
	Kind    Kind   //
	Score   int    // higher is better; only good for comparing within one answer
	Partial bool   // not every word of the query was found on its page
	Title   string //
	Number  string //
	Step    string // number of the step, from its address; empty for none
	Address string //
	Area    string //
	Excerpt string // the beginning of its text
	// The words that were found, in order.
	TitleMarks, ExcerptMarks []Span
}
