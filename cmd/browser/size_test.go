package main

import (
	"bytes"
	"encoding/binary"
	"flag"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	built "baybook/site/core"
)

// budget is what the packed core may weigh, in bytes: a phone fetches it over
// a bad link before its first result.
const budget = 660_000

// parts asks TestSize for what each package adds, which takes minutes.
var parts = flag.Bool("parts", false, "log what each package adds to the core")

// TestSize holds the core to its budget, and on request logs what it is made
// of:
//
//	go test ./cmd/browser -run Size -v -parts
func TestSize(t *testing.T) {
	core, err := built.Compiled(t.Context(), filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	size := packed(t, core.Module, "11")
	t.Logf("core: %d bytes, packed %d of %d", len(core.Module), size, budget)
	if size > budget {
		t.Errorf("the packed core is %d bytes over its budget", size-budget)
	}
	if *parts {
		logPackages(t)
	}
}

// packed is how small brotli makes bytes at a quality of 0 to 11. The command
// line tool and the library come to the same, the tool several times sooner.
func packed(t *testing.T, data []byte, quality string) int {
	t.Helper()
	if tool, err := exec.LookPath("brotli"); err == nil {
		cmd := exec.CommandContext(t.Context(), tool, "-q", quality, "-w", "24", "-c")
		cmd.Stdin = bytes.NewReader(data)
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("brotli: %v", err)
		}
		return len(out)
	}
	level, err := strconv.Atoi(quality)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := brotli.NewWriterOptions(&out, brotli.WriterOptions{Quality: level, LGWin: 24})
	if _, err := w.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Len()
}

// logPackages logs how much code each package adds, packed and as it is: the
// difference that its functions make to all code, packed as a server would on
// the fly. The sum is less than the whole, since packages are alike.
func logPackages(t *testing.T) {
	t.Helper()
	out := filepath.Join(t.TempDir(), "named.wasm")
	cmd := exec.CommandContext(t.Context(), "go", "build", "-buildmode=c-shared", "-trimpath", "-buildvcs=false", "-gcflags=all=-l", "-ldflags=-w", "-o", out, ".")
	cmd.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=")
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	module, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	of := map[string][][]byte{}
	var all []byte
	names := functionNames(module)
	for i, body := range functionBodies(module) {
		name := packageOf(names[i])
		of[name] = append(of[name], body)
		all = append(all, body...)
	}
	whole := packed(t, all, "9")
	t.Logf("%8d packed, %8d as it is: all code", whole, len(all))
	packages := slices.SortedFunc(maps.Keys(of), func(a, b string) int { return length(of[b]) - length(of[a]) })
	for _, name := range packages {
		size := length(of[name])
		if size < 10_000 {
			break
		}
		var others []byte
		for _, other := range packages {
			if other != name {
				others = append(others, bytes.Join(of[other], nil)...)
			}
		}
		t.Logf("%8d packed, %8d as it is: %s", whole-packed(t, others, "9"), size, name)
	}
}

func length(bodies [][]byte) int {
	n := 0
	for _, b := range bodies {
		n += len(b)
	}
	return n
}

// packageOf is the package of a function, as the linker writes its name.
func packageOf(function string) string {
	if i := strings.IndexByte(function, '.'); i > 0 {
		return strings.ReplaceAll(function[:i], "_", "/")
	}
	return "the module itself"
}

// sectionOf is the body of a module's section; a custom one has the id 0 and
// its name.
func sectionOf(module []byte, id byte, name string) []byte {
	for rest := module[8:]; len(rest) > 0; {
		size, n := binary.Uvarint(rest[1:])
		body := rest[1+n:][:size]
		if rest[0] == id && (id != 0 || len(body) > 0 && string(body[1:1+body[0]]) == name) {
			return body
		}
		rest = rest[1+n+int(size):]
	}
	return nil
}

// functionBodies are the functions' code, in order.
func functionBodies(module []byte) [][]byte {
	body := sectionOf(module, 10, "")
	count, n := binary.Uvarint(body)
	body = body[n:]
	bodies := make([][]byte, 0, count)
	for range count {
		size, n := binary.Uvarint(body)
		bodies = append(bodies, body[n:n+int(size)])
		body = body[n+int(size):]
	}
	return bodies
}

// functionNames are the names of the functions that have code, in order.
func functionNames(module []byte) []string {
	body := sectionOf(module, 0, "name")
	body = body[1+len("name"):]
	number := func() int {
		v, n := binary.Uvarint(body)
		body = body[n:]
		return int(v)
	}
	for len(body) > 0 && body[0] != 1 { // the part with functions
		body = body[1:]
		body = body[number():]
	}
	body = body[1:]
	number()
	names := make([]string, 0, 4096)
	for range number() {
		number()
		size := number()
		names = append(names, string(body[:size]))
		body = body[size:]
	}
	return names[len(names)-len(functionBodies(module)):]
}
