package calculators_test

import (
	"fmt"

	"baybook/calculators"
	"baybook/calculators/calc"
)

// A calculator answers a query as a page, a link and the prompt write it.
func ExampleNamed() {
	c := calculators.Named("fuse-size")
	pairs, _ := calc.ParseQuery("load=8A&wire=18AWG")
	_, result, problems := c.Answer(pairs)
	if result == nil {
		fmt.Println(problems)
		return
	}
	for i, answer := range result.Outputs {
		if answer.Present {
			fmt.Println(c.Outputs[i].Label+":", c.Outputs[i].Format(answer))
		}
	}
	fmt.Println(result.Verdict)
	// Output:
	// Fuse: 10 A
	// Blade color: red
	// Wire may carry: 18.6 A
	// Fuse used: 80 %
	// ok
}

// What cannot be computed says which input, what was given and what is taken.
func ExampleNamed_refused() {
	pairs, _ := calc.ParseQuery("length=90m&wire=16&curent=6A")
	_, _, problems := calculators.Named("wire-drop").Answer(pairs)
	for _, p := range problems {
		fmt.Println(p)
	}
	// Output:
	// length: 90 m is outside 0.05 m to 60 m
	// wire: 16 has no unit; say 16 AWG or 16 mm2
	// “curent” is not an input of wire-drop; did you mean current?
}
