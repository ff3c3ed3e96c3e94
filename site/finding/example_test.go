package finding_test

import (
	"os"

	"baybook/site/finding"
)

func ExampleWriteText() {
	src := finding.NewSource("power/battery-feed.md", []byte("Expect a drop of 0.43 V at full load.\n"))
	f := src.At(17, 23)
	f.Rule, f.Message, f.Do = "calc-value", "the formula gives 0.41 V here", "write 0.41 V"
	if err := finding.WriteText(os.Stdout, finding.List{f}, nil); err != nil {
		panic(err)
	}
	// Output:
	// power/battery-feed.md:1:18: error[calc-value]: the formula gives 0.41 V here
	//    1 | Expect a drop of 0.43 V at full load.
	//      |                  ^^^^^^
	//   do: write 0.41 V
	//
	// 1 error in 1 file
}
