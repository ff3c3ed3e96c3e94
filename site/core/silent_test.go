package core

import (
	"bytes"
	"strings"
	"testing"
)

// TestSilentNamesFunctions holds the list against the toolchain: a beginning
// that fits nothing was renamed by a new Go version, and saves nothing.
func TestSilentNamesFunctions(t *testing.T) {
	list, err := sections(compiled(t))
	if err != nil {
		t.Fatal(err)
	}
	names, err := namesOf(list)
	if err != nil {
		t.Fatal(err)
	}
	if len(names) < 1000 {
		t.Fatalf("the module names only %d functions", len(names))
	}
	for _, beginning := range silent {
		found := false
		for _, name := range names {
			found = found || strings.HasPrefix(name, runtimeName+beginning)
		}
		if !found {
			t.Errorf("no function of the runtime begins with %s", beginning)
		}
	}
}

// bodies takes a code section apart.
func bodies(t *testing.T, list []section) [][]byte {
	t.Helper()
	var out [][]byte
	for _, s := range list {
		if s.id != codeSection {
			continue
		}
		r := moduleReader{rest: s.body}
		for n := r.unsigned(); n > 0; n-- {
			out = append(out, r.bytes(r.unsigned()))
		}
		if r.bad {
			t.Fatal("the code section cannot be read")
		}
	}
	return out
}

// TestSilenceTrapsTheseAndNoOthers compares every body before and after.
func TestSilenceTrapsTheseAndNoOthers(t *testing.T) {
	before, err := sections(compiled(t))
	if err != nil {
		t.Fatal(err)
	}
	after, err := silence(before)
	if err != nil {
		t.Fatal(err)
	}
	names, err := namesOf(before)
	if err != nil {
		t.Fatal(err)
	}
	imports, err := importedFunctions(before)
	if err != nil {
		t.Fatal(err)
	}
	was, is := bodies(t, before), bodies(t, after)
	if len(was) != len(is) {
		t.Fatalf("%d functions became %d", len(was), len(is))
	}
	trapped := 0
	for k := range was {
		switch name := names[imports+uint64(k)]; {
		case onlySpeaks(name):
			trapped++
			if string(is[k]) != trap {
				t.Errorf("%s is no trap", name)
			}
		case !bytes.Equal(was[k], is[k]):
			t.Errorf("%s has changed", name)
		}
	}
	if trapped < 100 {
		t.Errorf("only %d functions are traps", trapped)
	}
	if left, _ := namesOf(after); len(left) > 0 {
		t.Error("the names are still in the module")
	}
}

// TestSilenceKeepsWhatHasNoNames: without names nobody can say which function
// only speaks.
func TestSilenceKeepsWhatHasNoNames(t *testing.T) {
	list, err := sections(compiled(t))
	if err != nil {
		t.Fatal(err)
	}
	bare := withoutNames(list)
	after, err := silence(bare)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(assemble(bare), assemble(after)) {
		t.Error("a module without names was changed")
	}
}
