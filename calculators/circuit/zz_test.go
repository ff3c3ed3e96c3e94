package circuit

import (
	"maps"
	"os"
	"slices"
	"testing"
)

func TestSee(t *testing.T) {
	dir := os.Getenv("SEE")
	if dir == "" {
		t.Skip()
	}
	all := circuits(t)
	for _, name := range slices.Sorted(maps.Keys(all)) {
		s := Analyse(build(t, all[name]))
		d := s.Drawing(View{})
		os.WriteFile(dir+"/"+name+".svg", d.AppendSVG(nil), 0o644)
		println(name, int(d.Width), int(d.Height))
	}
}
