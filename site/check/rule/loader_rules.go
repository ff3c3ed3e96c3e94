package rule

import (
	"baybook/site/check"
)

// The rules that the loader keeps while it reads the files. What they refuse
// cannot be waived: the file is not a sheet yet.

var frontMatter = &check.Rule{Name: "front-matter", Firm: true, Doc: `The front matter has the keys of a sheet, each with a value of its kind

Between two lines of three hyphens stand title, number, revision, date, owner,
kind, minutes and skill; a procedure also has tools and materials. Unknown keys
are refused, for a misspelt one would be lost without a word.`}

var signalWord = &check.Rule{Name: "signal-word", Firm: true, Doc: `A safety message opens with a signal word of ANSI Z535.6 and the titles of its hazards`}

var calcLink = &check.Rule{Name: "calc-link", Firm: true, Doc: `A calc: link names a calculator, its inputs and its outputs

baybook calc NAME lists what a calculator takes and gives.`}

var readingLink = &check.Rule{Name: "reading-link", Firm: true, Doc: `A reading: link has a name of its own and limits in known units`}

var rawHTML = &check.Rule{Name: "raw-html", Firm: true, Doc: `A sheet is Markdown, without raw HTML

What Markdown cannot say, a sheet does not say: it has to be read in any viewer,
and nothing in it may run.`}

var headingRule = &check.Rule{Name: "heading", Firm: true, Doc: `The title stands in the front matter alone; sections start with ##`}

var stepsRule = &check.Rule{Name: "steps", Firm: true, Doc: `The steps are one numbered list that starts at 1

A second list would repeat its numbers, and with them the addresses. What
belongs to a step is indented under it.`}

var questionRule = &check.Rule{Name: "question", Firm: true, Doc: `A question has right and wrong answers, and says why`}

var workRule = &check.Rule{Name: "work", Firm: true, Doc: `Each item of a job's work starts with a link to a sheet`}

var fileRule = &check.Rule{Name: "file", Firm: true, Doc: `Every file of the content folder can be read, and is itself there

A symbolic link is refused: what it points at is not the book's. The folder has
hazards.yaml, glossary.yaml, words.yaml and shop.yaml at its top.`}

var fileSize = &check.Rule{Name: "file-size", Firm: true, Doc: `A sheet has at most a mebibyte, and no line over 20 000 bytes

No person writes such a file; a program gone wrong does.
`}

var utf8Rule = &check.Rule{Name: "utf8", Firm: true, Doc: `A file is UTF-8 text

Another encoding shows wrong signs for units and quotation marks.
`}

var nestingRule = &check.Rule{Name: "nesting", Firm: true, Doc: `Lists, quotes and brackets are nested 24 deep at most
`}

var photoRule = &check.Rule{Name: "photo", Firm: true, Doc: `A photograph is whole, of the kind that its name says, and of a bounded size

The build makes every photograph anew, smaller and without the place where it
was taken. It takes JPEG and PNG files of at most 30 MB and 32 megapixels, with
no side over 20 000 pixels: three times a phone's usual picture.`}

var hazardRegister = &check.Rule{Name: "hazard-register", Firm: true, Doc: `content/hazards.yaml is a list of hazards with known keys`}

var glossaryFile = &check.Rule{Name: "glossary", Firm: true, Doc: `content/glossary.yaml is a list of terms with known keys`}

var wordsFile = &check.Rule{Name: "words", Firm: true, Doc: `content/words.yaml is lists of words with known keys`}

var shopFile = &check.Rule{Name: "shop", Firm: true, Doc: `content/shop.yaml names the shop and its book`}

var interfaceFile = &check.Rule{Name: "interface", Firm: true, Doc: `content/interface.yaml says the words of the pages in the shop's language

baybook interface prints it to be filled in. A word that is missing stays
English, with a warning; one that no page says stops publishing.`}

var stepLink = &check.Rule{Name: "step-link", Firm: true, Doc: `A step: link names the step that it stands in, or leads to one of that name

[](step:tap-direction) at the start of a step gives it a name that stays when
steps move; with words between the brackets it leads there.`}

var aboutLink = &check.Rule{Name: "about-link", Firm: true, Doc: `An about: link says that a number is nominal, and nothing else

[12 V](about:) names a system or describes a thing; nothing is computed from it
and nothing is judged by it.`}

var tableSize = &check.Rule{Name: "table-size", Firm: true, Doc: `A table has at most 40 columns

Nobody reads more of them on a phone, and every row is filled up to its header.`}

var areasFile = &check.Rule{Name: "areas", Firm: true, Doc: `content/areas.yaml lists the book's folders and the headings of its calculators`}

var limitRegister = &check.Rule{Name: "limit-register", Firm: true, Doc: `content/limits.yaml is a list of limits with known keys

Each has an id, what it limits, a value with its unit, a source, and how far
that source is known. A value may be computed: it is then a calc: link with one
output.`}

var limitLink = &check.Rule{Name: "limit-link", Firm: true, Doc: `A limit: link names a row of the register of limits`}
