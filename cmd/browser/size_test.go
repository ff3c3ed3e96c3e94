package main

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"baybook/site/publish"
)

// budget is what the packed core may weigh, in bytes: a phone fetches it over
// a bad link before its first result.
const budget = 560_000

// TestSize holds the core to its budget, and logs what it is made of:
//
//	go test ./cmd/browser -run Size -v
func TestSize(t *testing.T) {
	core, err := publish.Compiled(t.Context(), filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	packed := packedSize(t, core.Module)
	t.Logf("core: %d bytes, packed %d of %d", len(core.Module), packed, budget)
	if packed > budget {
		t.Errorf("the packed core is %d bytes over its budget", packed-budget)
	}
	if testing.Verbose() {
		logPackages(t)
	}
}

// packedSize is how small brotli makes a module at its best. The command line
// tool and the library come to the same, the tool several times sooner.
func packedSize(t *testing.T, module []byte) int {
	t.Helper()
	if tool, err := exec.LookPath("brotli"); err == nil {
		cmd := exec.CommandContext(t.Context(), tool, "-q", "11", "-w", "24", "-c")
		cmd.Stdin = bytes.NewReader(module)
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("brotli: %v", err)
		}
		return len(out)
	}
	var packed bytes.Buffer
	w := brotli.NewWriterOptions(&packed, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: 24})
	if _, err := w.Write(module); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return packed.Len()
}

// logPackages logs how much code each package adds, before it is packed: a
// fifth to a sixth of that is left then.
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
	sizes := map[string]int{}
	names := functionNames(module)
	for i, size := range functionSizes(module) {
		sizes[packageOf(names[i])] += size
	}
	packages := make([]string, 0, len(sizes))
	for name := range sizes {
		packages = append(packages, name)
	}
	slices.SortFunc(packages, func(a, b string) int { return sizes[b] - sizes[a] })
	for _, name := range packages {
		t.Logf("%8d %s", sizes[name], name)
	}
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

// functionSizes are the sizes of the functions' code, in order.
func functionSizes(module []byte) []int {
	body := sectionOf(module, 10, "")
	count, n := binary.Uvarint(body)
	body = body[n:]
	sizes := make([]int, 0, count)
	for range count {
		size, n := binary.Uvarint(body)
		sizes = append(sizes, int(size))
		body = body[n+int(size):]
	}
	return sizes
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
	return names[len(names)-len(functionSizes(module)):]
}
