package sheet

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"

	"github.com/yuin/goldmark/ast"
)

// A Span is a stretch of the sheet's file, in bytes.
type Span struct{ Start, End int }

// Kinds of the nodes that a sheet adds to CommonMark's.
var (
	KindSection            = ast.NewNodeKind("Section")
	KindMessage            = ast.NewNodeKind("Message")
	KindSteps              = ast.NewNodeKind("Steps")
	KindStep               = ast.NewNodeKind("Step")
	KindValue              = ast.NewNodeKind("Value")
	KindEmbeddedCalculator = ast.NewNodeKind("EmbeddedCalculator")
	KindTable              = ast.NewNodeKind("ComputedTable")
	KindProblem            = ast.NewNodeKind("Problem")
	KindReading            = ast.NewNodeKind("Reading")
	KindFigure             = ast.NewNodeKind("Figure")
	KindQuestion           = ast.NewNodeKind("Question")
	KindOption             = ast.NewNodeKind("Option")
	KindLimitLink          = ast.NewNodeKind("LimitLink")
	KindFence              = ast.NewNodeKind("Fence")
)

// A Section is a heading of the second level and all that stands under it,
// up to the next.
type Section struct {
	ast.BaseBlock
	Title  string
	Anchor string // the title in lower-kebab
	Span   Span   // of the heading's words
}

// A Message is a safety message: a block quote that opens in bold with a
// signal word and the titles of the hazards that it speaks of. Its children
// are the quote's, the bold opening removed.
type Message struct {
	ast.BaseBlock
	Word     Word
	WordSpan Span
	Titles   []Title
	Span     Span  // of the bold opening
	Step     *Step // the step that it stands in, nil elsewhere
	Section  *Section
}

// A Title is the title of a hazard as a message gives it.
type Title struct {
	Text string
	Span Span
}

// Steps is the ordered list under the section Steps.
type Steps struct{ ast.BaseBlock }

// A Step is one item of it.
type Step struct {
	ast.BaseBlock
	Number int
	// Name is what others refer to it by, "" where it has none.
	Name string
	Span Span // of the item's own sentence: its first paragraph
}

// Anchor is the step's lasting address within its page.
func (s *Step) Anchor() string { return "step-" + strconv.Itoa(s.Number) }

// A Value is a computed number in running text.
type Value struct {
	ast.BaseInline
	Computation
	// Words are what the sheet says the value is, Span their place.
	Words string
	Span  Span
	// Result is what the formula says; nil where the link is at fault.
	Result *calc.Result
}

// A Computation is the calculator, inputs and outputs that a link names.
type Computation struct {
	Calculator *calc.Calculator
	Pairs      []calc.Pair
	Outputs    []int // indices of the outputs named behind #
	Link       Span  // the whole link, brackets included
}

// Query is the computation's inputs as a query.
func (c *Computation) Query() string { return calc.FormatQuery(c.Calculator.Explicit(c.Pairs)) }

// An EmbeddedCalculator is a calculator standing in the sheet, filled in and computed.
type EmbeddedCalculator struct {
	ast.BaseBlock
	Computation
	Number  int // counts in the sheet, from 1
	Heading string
	Values  *calc.Values
	Result  *calc.Result
}

// Anchor is the calculator's address within its page.
func (l *EmbeddedCalculator) Anchor() string { return "calculator-" + strconv.Itoa(l.Number) }

// A Table is a table computed over one or two lists.
type Table struct {
	ast.BaseBlock
	Computation
	Caption string
	Table   *calc.Table
}

// A Problem is a practice problem, its numbers drawn from ranges.
type Problem struct {
	ast.BaseBlock
	Computation
	Number   int // counts in the sheet, from 1
	Question string
	Sweep    calc.Sweep
}

// Anchor is the problem's address within its page.
func (p *Problem) Anchor() string { return "practice-" + strconv.Itoa(p.Number) }

// A Reading is a field for a measured value.
type Reading struct {
	ast.BaseInline
	ID    string
	Limit calc.Limit
	// Row is the row of the register that Limit was taken from; nil where the
	// link gives the limit itself.
	Row     *Limit
	Words   string
	Span    Span // of the words
	Link    Span
	Step    *Step
	Section *Section
}

// Anchor is the reading's address within its page.
func (r *Reading) Anchor() string { return "reading-" + r.ID }

// Name says what is read where it stands away from its sentence.
func (r *Reading) Name() string { return strings.ReplaceAll(r.ID, "-", " ") }

// A LimitLink is a limit of the register in running text.
type LimitLink struct {
	ast.BaseInline
	Limit *Limit
	// Words are what the sheet says the limit is, Span their place.
	Words string
	Span  Span
	Link  Span
	Step  *Step
}

// A Figure is a drawing or photograph standing alone.
type Figure struct {
	ast.BaseBlock
	Src, Alt, Caption string
	Span              Span
	// File is the figure's path in the content folder.
	File string
	Step *Step
}

// A Question is one of "Check yourself": its children are the question's
// paragraphs, then Option nodes, then what explains the answer (a block
// quote).
type Question struct {
	ast.BaseBlock
	Number  int
	Span    Span
	Options []*Option
	Why     ast.Node
}

// Anchor is the question's address within its page.
func (q *Question) Anchor() string { return "question-" + strconv.Itoa(q.Number) }

// An Option is one answer offered, right where it was ticked.
type Option struct {
	ast.BaseBlock
	Right bool
	Span  Span
}

// A Fence is a fenced block.
type Fence struct {
	ast.BaseBlock
	Language string
	Code     string
	// Span is the whole of the code; Line the number of its first line.
	Span Span
	Line int
	Step *Step
	// Circuit is the wiring drawing in it, nil for another language.
	Circuit *Circuit
}

// A Do is a link that declares what a step does. In the tree only its words
// are left.
type Do struct {
	// Dest is the link's destination, do: and all.
	Dest string
	// Words are the verb, Span their place; Link is the whole link.
	Words      string
	Span, Link Span
	Step       *Step
}

// A Link is any link that is not a computation or a reading.
type Link struct {
	Node *ast.Link
	Dest string
	Span Span // the whole link
	Step *Step
	// Image is true for a picture inside a line of text.
	Image bool
}

func (*Section) Kind() ast.NodeKind            { return KindSection }
func (*Message) Kind() ast.NodeKind            { return KindMessage }
func (*Steps) Kind() ast.NodeKind              { return KindSteps }
func (*Step) Kind() ast.NodeKind               { return KindStep }
func (*Value) Kind() ast.NodeKind              { return KindValue }
func (*EmbeddedCalculator) Kind() ast.NodeKind { return KindEmbeddedCalculator }
func (*Table) Kind() ast.NodeKind              { return KindTable }
func (*Problem) Kind() ast.NodeKind            { return KindProblem }
func (*Reading) Kind() ast.NodeKind            { return KindReading }
func (*Figure) Kind() ast.NodeKind             { return KindFigure }
func (*Question) Kind() ast.NodeKind           { return KindQuestion }
func (*Option) Kind() ast.NodeKind             { return KindOption }
func (*LimitLink) Kind() ast.NodeKind          { return KindLimitLink }
func (*Fence) Kind() ast.NodeKind              { return KindFence }

func (n *Section) Dump(src []byte, level int)            { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Message) Dump(src []byte, level int)            { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Steps) Dump(src []byte, level int)              { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Step) Dump(src []byte, level int)               { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Value) Dump(src []byte, level int)              { ast.DumpHelper(n, src, level, nil, nil) }
func (n *EmbeddedCalculator) Dump(src []byte, level int) { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Table) Dump(src []byte, level int)              { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Problem) Dump(src []byte, level int)            { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Reading) Dump(src []byte, level int)            { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Figure) Dump(src []byte, level int)             { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Question) Dump(src []byte, level int)           { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Option) Dump(src []byte, level int)             { ast.DumpHelper(n, src, level, nil, nil) }
func (n *LimitLink) Dump(src []byte, level int)          { ast.DumpHelper(n, src, level, nil, nil) }
func (n *Fence) Dump(src []byte, level int)              { ast.DumpHelper(n, src, level, nil, nil) }
