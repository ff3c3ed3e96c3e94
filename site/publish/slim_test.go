package publish

import (
	"bytes"
	"debug/gosym"
	"encoding/binary"
	"math/rand"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// memoryOf lays segments into a memory as WebAssembly does at the start:
// zeros, then each segment in turn.
func memoryOf(t *testing.T, list []segment) []byte {
	t.Helper()
	var top int64
	for _, s := range list {
		top = max(top, s.end())
	}
	memory := make([]byte, top)
	for _, s := range list {
		copy(memory[s.at:], s.bytes)
	}
	return memory
}

// dataOf gives the segments of a module.
func dataOf(t *testing.T, module []byte) []segment {
	t.Helper()
	list, err := sections(module)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range list {
		if s.id == dataSection {
			data, err := segments(s.body)
			if err != nil {
				t.Fatal(err)
			}
			return data
		}
	}
	t.Fatal("the module has no data")
	return nil
}

func moduleOf(list []segment) []byte {
	return assembled([]section{{1, []byte{0}}, {dataSection, dataBody(list)}})
}

func TestSlimKeepsMemory(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	for i := range 200 {
		over := i%4 == 0
		var list []segment
		at := int64(rnd.Intn(100_000))
		for range rnd.Intn(20) {
			piece := make([]byte, 1+rnd.Intn(300))
			rnd.Read(piece)
			list = append(list, segment{at, piece})
			at += int64(len(piece))
			switch rnd.Intn(4) {
			case 0:
				at += farApart + int64(rnd.Intn(50))
			case 1:
				if over {
					at = max(0, at-int64(rnd.Intn(200)))
				}
			default:
				at += int64(rnd.Intn(farApart))
			}
		}
		rnd.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		small, err := slim(moduleOf(list))
		if err != nil {
			t.Fatal(err)
		}
		got := dataOf(t, small)
		if !bytes.Equal(memoryOf(t, got), memoryOf(t, list)) {
			t.Fatalf("%d segments became %d and another memory", len(list), len(got))
		}
		if len(got) > len(list) {
			t.Errorf("%d segments became %d", len(list), len(got))
		}
	}
}

func TestSlimRefusesWhatIsNoModule(t *testing.T) {
	whole := moduleOf([]segment{{5, []byte("abc")}})
	passive := bytes.Replace(whole, []byte{1, 0, opConst}, []byte{1, 1, opConst}, 1)
	for name, bad := range map[string][]byte{
		"empty": nil, "text": []byte("GIF89a, surely"), "cut off": whole[:len(whole)-1],
		"a passive segment": passive, "longer": append(bytes.Clone(whole), dataSection),
	} {
		if _, err := slim(bad); err == nil {
			t.Errorf("%s: taken for a module", name)
		}
	}
	if _, err := slim(whole); err != nil {
		t.Errorf("a whole module: %v", err)
	}
}

// compiled is the core of this source as the toolchain gives it.
func compiled(t *testing.T) []byte {
	t.Helper()
	out := filepath.Join(t.TempDir(), "core.wasm")
	if said, err := compileInto(t.Context(), filepath.Join("..", ".."), out, coreExperiment); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	module, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return module
}

// functionsOf reads the function table of a module with the standard
// library's own reader.
func functionsOf(t *testing.T, module []byte) *gosym.Table {
	t.Helper()
	found, _ := tableOf(t, module)
	table, err := gosym.NewTable(nil, gosym.NewLineTable(found.memory, 0))
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func TestSlimForgetsNamesAndNothingElse(t *testing.T) {
	module := compiled(t)
	small, err := slim(module)
	if err != nil {
		t.Fatal(err)
	}
	before, after := functionsOf(t, module), functionsOf(t, small)
	if len(before.Funcs) < 1000 || len(after.Funcs) != len(before.Funcs) {
		t.Fatalf("%d functions became %d", len(before.Funcs), len(after.Funcs))
	}
	for i, f := range before.Funcs {
		want := ""
		if strings.HasPrefix(f.Name, runtimeName) {
			want = runtimeName
		}
		if got := after.Funcs[i]; got.Name != want || got.Entry != f.Entry {
			t.Errorf("%s at %#x became %q at %#x", f.Name, f.Entry, got.Name, got.Entry)
		}
	}
	if bytes.Contains(small, []byte("calculators/calc/markup.go")) {
		t.Error("names of source files are still in the module")
	}
	keepsRuns(t, module, small)
}

// tableOf is the function table of a module, and the memory it is in.
func tableOf(t *testing.T, module []byte) (functionTable, segment) {
	t.Helper()
	for _, s := range joined(dataOf(t, module)) {
		if at := bytes.Index(s.bytes, []byte(tableMagic)); at >= 0 {
			return functionTable{memory: s.bytes[at:], at: uint64(s.at) + uint64(at)}, s
		}
	}
	t.Fatal("no function table in the module")
	return functionTable{}, segment{}
}

// keepsRuns compares every run that the runtime needs.
func keepsRuns(t *testing.T, module, small []byte) {
	t.Helper()
	a, _ := tableOf(t, module)
	b, _ := tableOf(t, small)
	for i := range a.part(headFunctions) {
		needed, shown := a.fields(a.record(i))
		for k, field := range needed {
			if a.word(field) != b.word(field) || !bytes.Equal(a.run(a.word(field)), b.run(b.word(field))) {
				t.Fatalf("function %d: run %d differs", i, k)
			}
		}
		for k, field := range shown {
			if b.word(field) != 0 {
				t.Fatalf("function %d: run %d is still there", i, k)
			}
		}
	}
}

// TestSlimFinderFinds looks up every stretch of addresses as the runtime does:
// from the function that the finder gives, on to the last that begins there.
func TestSlimFinderFinds(t *testing.T) {
	module := compiled(t)
	small, err := slim(module)
	if err != nil {
		t.Fatal(err)
	}
	found := make([][]uint64, 2)
	for k, m := range [][]byte{module, small} {
		table, in := tableOf(t, m)
		list := table.finder(in)
		if len(list) == 0 {
			t.Fatal("no finder in the module")
		}
		for i := 0; i < len(list)/finderEntry; i++ {
			function := uint64(binary.LittleEndian.Uint32(list[i*finderEntry:]))
			for table.starts(function+1) <= table.starts(0)+uint64(i)*stretch/functionRoom {
				function++
			}
			found[k] = append(found[k], function)
		}
	}
	if !slices.Equal(found[0], found[1]) {
		t.Error("other functions are found")
	}
}

func TestForgetNamesLeavesWhatItDoesNotKnow(t *testing.T) {
	rnd := rand.New(rand.NewSource(4))
	for range 2000 {
		memory := make([]byte, headSize+rnd.Intn(400))
		copy(memory[4:], tableMagic)
		for head := headFunctions; head <= headTable; head += 8 {
			if len(memory) >= 4+head+8 {
				binary.LittleEndian.PutUint64(memory[4+head:], uint64(rnd.Intn(200)))
			}
		}
		forgetNames(segment{bytes: memory}) // must not reach outside
	}
	other := append([]byte{0xf9}, make([]byte, 200)...)
	was := bytes.Clone(other)
	forgetNames(segment{bytes: other})
	if !bytes.Equal(other, was) {
		t.Error("a table of another version was changed")
	}
}
