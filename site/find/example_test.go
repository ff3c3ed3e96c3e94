package find_test

import (
	"fmt"

	"baybook/site/find"
)

func ExampleIndex_Find() {
	x := find.Build([]find.Doc{
		{Sheet: 1, Kind: find.Sheet, Title: "Ground point", Number: "GR-02", Address: "ground/point.html", Text: "A return that stays."},
		{Sheet: 1, Kind: find.Step, Title: "Ground point", Number: "GR-02", Address: "ground/point.html#step-1", Text: "Drill with a depth stop."},
	}, [][]string{{"ground", "earth"}})
	for _, query := range []string{"earth", "dril stop", "gr02 step 1"} {
		h := x.Find(query, 1)[0]
		fmt.Printf("%s: %s, %s\n", query, h.Address, h.Excerpt)
	}
	// Output:
	// earth: ground/point.html, A return that stays.
	// dril stop: ground/point.html#step-1, Drill with a depth stop.
	// gr02 step 1: ground/point.html#step-1, Drill with a depth stop.
}
