package check

// The rules that the loader keeps while it reads the files. What they refuse
// cannot be waived: the file is not a sheet yet.

var frontMatter = &Rule{Name: "front-matter", Firm: true, Doc: `The front matter has the keys of a sheet, each with a value of its kind

Between two lines of three hyphens stand title, number, revision, date, owner,
kind, minutes and skill; a procedure also has tools and materials. Unknown keys
are refused, for a misspelt one would be lost without a word.

Bad:

	minuets: 5

Good:

	minutes: 5
`}

var signalWord = &Rule{Name: "signal-word", Firm: true, Doc: `A safety message opens with a signal word of ANSI Z535.6 and the titles of its hazards

Bad:

	## Before you start

	> **BEWARE: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.
`}

var calcLink = &Rule{Name: "calc-link", Firm: true, Doc: `A calc: link names a calculator, its inputs and its outputs

baybook calc NAME lists what a calculator takes and gives.

Bad:

	## Steps

	1. Expect a drop of [0.41 V](calc:wire-drops?current=6A&length=4m&wire=14AWG#drop).

Good:

	## Steps

	1. Expect a drop of [0.41 V](calc:wire-drop?current=6A&length=4m&wire=14AWG#drop).
`}

var readingLink = &Rule{Name: "reading-link", Firm: true, Doc: `A reading: link has a name of its own and limits in known units

Bad:

	## Prove it

	- Read the drop: [at most 100 mV](reading:Ground_Drop?max=100mV).

Good:

	## Prove it

	- Read the drop: [at most 100 mV](reading:drop-read?max=100mV).
`}

var rawHTML = &Rule{Name: "raw-html", Firm: true, Doc: `A sheet is Markdown, without raw HTML

What Markdown cannot say, a sheet does not say: it has to be read in any viewer,
and nothing in it may run.

Bad:

	## Steps

	1. Look at the <b>lamp</b>.

Good:

	## Steps

	1. Look at the **lamp**.
`}

var headingRule = &Rule{Name: "heading", Firm: true, Doc: `The title stands in the front matter alone; sections start with ##

Bad:

	# A sheet

	## Steps

	1. Look at the lamp.

Good:

	## Steps

	1. Look at the lamp.
`}

var stepsRule = &Rule{Name: "steps", Firm: true, Doc: `The steps are one numbered list that starts at 1

A second list would repeat its numbers, and with them the addresses. What
belongs to a step is indented under it.

Bad:

	## Steps

	1. Look at the lamp.

	A remark that is not indented.

	1. Look at it again.

Good:

	## Steps

	1. Look at the lamp.

	   A remark that is indented.

	2. Look at it again.
`}

var questionRule = &Rule{Name: "question", Firm: true, Doc: `A question has right and wrong answers, and says why

Bad:

	## Check yourself

	1. What lights?
	   - [x] The lamp.

Good:

	## Check yourself

	1. What lights?
	   - [x] The lamp.
	   - [ ] The key.

	   > The lamp has a filament, the key has none.
`}

var workRule = &Rule{Name: "work", Firm: true, Doc: `Each item of a job's work starts with a link to a sheet

Bad:

	---
	title: A sheet
	number: EX-01
	revision: A
	date: 2026-01-02
	owner: Bench
	kind: job
	minutes: 5
	skill: apprentice
	---
	Proves that the lamp lights.

	## Work

	1. Fit the lamp.

	## Sources

	- Common practice, no source.

Good:

	---
	title: A sheet
	number: EX-01
	revision: A
	date: 2026-01-02
	owner: Bench
	kind: job
	minutes: 5
	skill: apprentice
	---
	Proves that the lamp lights.

	## Work

	1. [The other sheet](other.md)

	## Sources

	- Common practice, no source.
`}

var fileRule = &Rule{Name: "file", Firm: true, Doc: `Every file of the content folder can be read, and is itself there

A symbolic link is refused: what it points at is not the book's. The folder has
hazards.yaml, glossary.yaml and shop.yaml at its top.

Bad:

	-- hazards.yaml --

Good:

	-- area/list.csv --
	slot,rating
`}

var fileSize = &Rule{Name: "file-size", Firm: true, Doc: `A sheet has at most a mebibyte, and no line over 20 000 bytes

No person writes such a file; a program gone wrong does.
`}

var utf8Rule = &Rule{Name: "utf8", Firm: true, Doc: `A file is UTF-8 text

Another encoding shows wrong signs for units and quotation marks.
`}

var nestingRule = &Rule{Name: "nesting", Firm: true, Doc: `Lists, quotes and brackets are nested 24 deep at most
`}

var hazardRegister = &Rule{Name: "hazard-register", Firm: true, Doc: `content/hazards.yaml is a list of hazards with known keys

Bad:

	-- hazards.yaml --
	- id: exhaust
	  titel: Exhaust gas

Good:

	-- hazards.yaml --
	- id: exhaust
	  title: Exhaust gas
	  word: WARNING
	  harm: injury
	  shows: {steps: [engine running]}
	  source: invented
`}

var glossaryFile = &Rule{Name: "glossary", Firm: true, Doc: `content/glossary.yaml is a list of terms with known keys

Bad:

	-- glossary.yaml --
	- term: bulkhead
	  meanings: The sheet between engine bay and cab.

Good:

	-- glossary.yaml --
	- term: bulkhead
	  meaning: The sheet between engine bay and cab.
`}

var shopFile = &Rule{Name: "shop", Firm: true, Doc: `content/shop.yaml names the shop and its book

Bad:

	-- shop.yaml --
	name: The bay

Good:

	-- shop.yaml --
	name: The bay
	book: Its book
`}
