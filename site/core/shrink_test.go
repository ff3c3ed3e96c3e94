package core

import (
	"bytes"
	"debug/gosym"
	"encoding/binary"
	"math/rand"
	"path/filepath"
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
	return assemble([]section{{1, []byte{0}}, {dataSection, dataBody(list)}})
}

func TestShrinkKeepsMemory(t *testing.T) {
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
				at += maxGap + int64(rnd.Intn(50))
			case 1:
				if over {
					at = max(0, at-int64(rnd.Intn(200)))
				}
			default:
				at += int64(rnd.Intn(maxGap))
			}
		}
		rnd.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		small, err := shrink(moduleOf(list))
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

func TestShrinkRefusesWhatIsNoModule(t *testing.T) {
	whole := moduleOf([]segment{{5, []byte("abc")}})
	passive := bytes.Replace(whole, []byte{1, 0, opConst}, []byte{1, 1, opConst}, 1)
	for name, bad := range map[string][]byte{
		"empty": nil, "text": []byte("GIF89a, surely"), "cut off": whole[:len(whole)-1],
		"a passive segment": passive, "longer": append(bytes.Clone(whole), dataSection),
	} {
		if _, err := shrink(bad); err == nil {
			t.Errorf("%s: taken for a module", name)
		}
	}
	if _, err := shrink(whole); err != nil {
		t.Errorf("a whole module: %v", err)
	}
}

// compiled is the core of this source as the toolchain gives it.
func compiled(t *testing.T) []byte {
	t.Helper()
	module, err := compilePlain(t.Context(), filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	return module
}

// functionsOf reads the function table of a module with the standard
// library's own reader.
func functionsOf(t *testing.T, module []byte) *gosym.Table {
	t.Helper()
	found := tableOf(t, module)
	table, err := gosym.NewTable(nil, gosym.NewLineTable(found.memory, 0))
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func TestShrinkBlanksNamesAndNothingElse(t *testing.T) {
	module := compiled(t)
	small, err := shrink(module)
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

// tableOf is the function table of a module.
func tableOf(t *testing.T, module []byte) pclntab {
	t.Helper()
	for _, s := range merge(dataOf(t, module)) {
		if at := bytes.Index(s.bytes, []byte(pcHeaderMagic)); at >= 0 {
			return pclntab{memory: s.bytes[at:]}
		}
	}
	t.Fatal("no function table in the module")
	return pclntab{}
}

// keepsRuns compares every run that the runtime needs.
func keepsRuns(t *testing.T, module, small []byte) {
	t.Helper()
	a := tableOf(t, module)
	b := tableOf(t, small)
	for i := range a.offset(headerFuncs) {
		needed, shown := a.fields(a.record(i))
		for k, field := range needed {
			if a.word(field) != b.word(field) || !bytes.Equal(a.values(a.word(field)), b.values(b.word(field))) {
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

func TestBlankNamesLeavesWhatItDoesNotKnow(t *testing.T) {
	rnd := rand.New(rand.NewSource(4))
	for range 2000 {
		memory := make([]byte, headerSize+rnd.Intn(400))
		copy(memory[4:], pcHeaderMagic)
		for head := headerFuncs; head <= headerPcln; head += 8 {
			if len(memory) >= 4+head+8 {
				binary.LittleEndian.PutUint64(memory[4+head:], uint64(rnd.Intn(200)))
			}
		}
		blankNames(segment{bytes: memory}) // must not reach outside
	}
	other := append([]byte{0xf9}, make([]byte, 200)...)
	was := bytes.Clone(other)
	blankNames(segment{bytes: other})
	if !bytes.Equal(other, was) {
		t.Error("a table of another version was changed")
	}
}
