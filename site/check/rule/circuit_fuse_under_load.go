package rule

import (
	"baybook/site/check"
)

var circuitFuseUnderLoad = &check.Rule{
	Name: "circuit-fuse-under-load",
	Doc: `A fuse carries at most four fifths of its rating for good

Over its rating it opens at once or one warm day, and somebody fits a larger
one. From four fifths on, and where a surge may open it, this warns.`,
	Check: func(p *check.Pass) { judged(p, "fuse-under-load") },
}
