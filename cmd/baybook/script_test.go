package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"baybook/site/core"
	"baybook/site/sitetest"
)

var update = flag.Bool("update", false, "write the expected output in the scripts anew")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"baybook": func() {
			os.Exit(run(context.Background(), os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
		},
	})
}

// TestScripts runs the command as a person does. The scripts stand in
// testdata/script; the words below are what they know beside testscript's own.
func TestScripts(t *testing.T) {
	cache, err := os.UserCacheDir() // the compiled core is kept there
	if err != nil {
		t.Fatal(err)
	}
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	goCache, err := exec.Command("go", "env", "GOCACHE", "GOMODCACHE").Output()
	if err != nil {
		t.Fatal(err)
	}
	caches := strings.Fields(string(goCache))
	// The first build compiles the core and says so; the scripts are of later ones.
	if _, err := core.Compiled(t.Context(), root); err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script", UpdateScripts: *update,
		Setup: func(e *testscript.Env) error {
			e.Setenv("XDG_CACHE_HOME", cache)
			e.Setenv("GOCACHE", caches[0])
			e.Setenv("GOMODCACHE", caches[1])
			e.Setenv("SOURCE", root)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "same": same, "killed": killed, "book": writeBook, "size": size,
		},
	})
}

// exits runs baybook and wants the exit code: exits CODE ARGUMENTS...
func exits(ts *testscript.TestScript, _ bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec("baybook", args[1:]...)
	code := 0
	var ended *exec.ExitError
	if errors.As(err, &ended) {
		code = ended.ExitCode()
	} else {
		ts.Check(err)
	}
	if code != want {
		ts.Fatalf("baybook %s ended with %d, want %d", strings.Join(args[1:], " "), code, want)
	}
}

// same compares two folders by names and bytes: same A B.
func same(ts *testscript.TestScript, neg bool, args []string) {
	a, b := tree(ts, args[0]), tree(ts, args[1])
	if (a == b) == neg {
		ts.Fatalf("%s and %s: the same is %v", args[0], args[1], a == b)
	}
	if strings.Count(a, "\n") < 10 {
		ts.Fatalf("%s holds next to nothing", args[0])
	}
}

// tree is a folder as text.
func tree(ts *testscript.TestScript, dir string) string {
	var b strings.Builder
	ts.Check(fs.WalkDir(os.DirFS(ts.MkAbs(dir)), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(filepath.Join(ts.MkAbs(dir), name))
		fmt.Fprintf(&b, "%s %q\n", name, data)
		return err
	}))
	return b.String()
}

// killed runs baybook and kills it, with no chance to tidy up, as soon as it
// has begun to write its site: killed ARGUMENTS...
func killed(ts *testscript.TestScript, _ bool, args []string) {
	program, err := exec.LookPath("baybook")
	ts.Check(err)
	cmd := exec.Command(program, args...)
	cmd.Dir = ts.MkAbs(".")
	cmd.Env = append(os.Environ(), "XDG_CACHE_HOME="+ts.Getenv("XDG_CACHE_HOME"), "HOME="+ts.Getenv("HOME"))
	ts.Check(cmd.Start())
	written := func() bool {
		left, _ := filepath.Glob(filepath.Join(ts.Getenv("WORK"), ".dist.baybook-new-*", "area-*", "*.html"))
		return len(left) > 0
	}
	for end := time.Now().Add(time.Minute); !written(); time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			_ = cmd.Process.Kill()
			ts.Fatalf("nothing was written")
		}
	}
	ts.Check(cmd.Process.Kill())
	if cmd.Wait() == nil {
		ts.Fatalf("the build was over before it could be killed")
	}
}

// writeBook writes a book with a number of sheets: book DIR SHEETS.
func writeBook(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(sitetest.Write(ts.MkAbs(args[0]), n))
}

// size wants a file to be smaller than another: size SMALL LARGE.
func size(ts *testscript.TestScript, _ bool, args []string) {
	small, err := os.Stat(ts.MkAbs(args[0]))
	ts.Check(err)
	large, err := os.Stat(ts.MkAbs(args[1]))
	ts.Check(err)
	if small.Size() >= large.Size() {
		ts.Fatalf("%s has %d bytes, %s %d", args[0], small.Size(), args[1], large.Size())
	}
}
