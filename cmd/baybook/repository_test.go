package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A bait is a way in which git's configuration, kept in a folder, makes git run
// a command. trigger is what a person would type in that folder for it to
// happen; it shows that the bait works, so that the test can fail.
var baits = []struct {
	name    string
	lay     func(f *folder)
	trigger []string
}{
	{"a file watcher", func(f *folder) { f.git("config", "core.fsmonitor", f.spy) }, []string{"status"}},
	{"a hook", func(f *folder) {
		f.git("config", "core.hooksPath", f.write("hooks/post-index-change", "#!/bin/sh\n"+f.spy+"\n"))
		f.git("config", "core.hooksPath", filepath.Join(f.dir, "hooks"))
	}, []string{"add", "-A"}},
	{"a filter", func(f *folder) {
		f.write(".gitattributes", "*.md filter=spy\n")
		f.git("config", "filter.spy.clean", f.spy)
	}, []string{"add", "-A"}},
	{"a converter of contents", func(f *folder) {
		f.write(".gitattributes", "*.md diff=spy\n")
		f.git("config", "diff.spy.textconv", f.spy)
	}, []string{"show", "HEAD:book/a.md", "--textconv"}},
	{"a differ", func(f *folder) { f.git("config", "diff.external", f.spy) }, []string{"diff"}},
	{"an alias", func(f *folder) { f.git("config", "alias.history", "!"+f.spy) }, []string{"history"}},
	{"a signature checker", func(f *folder) {
		f.git("config", "log.showSignature", "true")
		f.git("config", "gpg.program", f.write("signer", "#!/bin/sh\n"+f.spy+"\ncat >/dev/null\necho '-----BEGIN PGP SIGNATURE-----'\necho x\necho '-----END PGP SIGNATURE-----'\necho '[GNUPG:] SIG_CREATED ' >&2\n"))
		f.git("commit", "-q", "-S", "--allow-empty", "-m", "signed")
	}, []string{"log"}},
	{"a transport for what is missing", func(f *folder) {
		f.git("config", "extensions.partialClone", "origin")
		f.git("config", "core.repositoryFormatVersion", "1")
		f.git("config", "remote.origin.url", "ext::"+f.spy)
		f.git("config", "remote.origin.promisor", "true")
		f.git("config", "protocol.ext.allow", "always")
		blob := strings.TrimSpace(f.git("rev-parse", "HEAD:book/a.md"))
		if err := os.Remove(filepath.Join(f.dir, ".git", "objects", blob[:2], blob[2:])); err != nil {
			f.t.Fatal(err)
		}
	}, []string{"show", "HEAD:book/a.md"}},
	{"an included configuration", func(f *folder) {
		f.write("more", "[core]\n\tfsmonitor = "+f.spy+"\n")
		f.git("config", "include.path", filepath.Join(f.dir, "more"))
	}, []string{"status"}},
}

// A folder is a repository with a book in the folder book.
type folder struct {
	t   *testing.T
	dir string
	// spy is a program that leaves a file behind where it was run.
	spy, trace string
}

func newFolder(t *testing.T) *folder {
	f := &folder{t: t, dir: t.TempDir()}
	f.trace = filepath.Join(t.TempDir(), "ran")
	f.spy = filepath.Join(t.TempDir(), "spy")
	if err := os.WriteFile(f.spy, []byte("#!/bin/sh\necho ran >>"+f.trace+"\n"), 0o755); err != nil {
		t.Fatal(err)
	}
	f.git("init", "-q")
	f.write("book/a.md", "---\ntitle: A\nrevision: A\n---\n")
	f.git("add", "-A")
	f.git("commit", "-q", "-m", "first")
	f.write("book/a.md", "---\ntitle: A\nrevision: B\n---\n")
	return f
}

func (f *folder) write(name, text string) string {
	f.t.Helper()
	file := filepath.Join(f.dir, name)
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		f.t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(text), 0o755); err != nil {
		f.t.Fatal(err)
	}
	return file
}

// git runs git as the owner of the folder would and gives what it says.
func (f *folder) git(arguments ...string) string {
	f.t.Helper()
	out, err := f.run(arguments...)
	if err != nil {
		f.t.Fatalf("git %s: %v\n%s", strings.Join(arguments, " "), err, out)
	}
	return out
}

func (f *folder) run(arguments ...string) (string, error) {
	cmd := exec.Command("git", append([]string{"-C", f.dir, "-c", "user.name=Lead", "-c", "user.email=lead@example.org"}, arguments...)...)
	out, err := cmd.CombinedOutput()
	return string(out), err
}

// ran reports whether the spy was run, and forgets it.
func (f *folder) ran() bool {
	_, err := os.Stat(f.trace)
	_ = os.Remove(f.trace)
	return err == nil
}

// TestHistoryRunsNothing reads the history of folders whose git configuration
// is laid to run a command.
func TestHistoryRunsNothing(t *testing.T) {
	for _, bait := range baits {
		t.Run(bait.name, func(t *testing.T) {
			t.Parallel()
			f := newFolder(t)
			bait.lay(f)
			f.ran()
			h := historyForPages(t.Context(), filepath.Join(f.dir, "book"))()
			if f.ran() {
				t.Error("reading the history ran the folder's command")
			}
			if bait.name != "a transport for what is missing" && !h.Sheets["a.md"].Changed {
				t.Errorf("the history is not read: %+v", h.Sheets)
			}
			if c := h.Changes["a.md"]; bait.name != "a transport for what is missing" && (len(c) != 1 || c[0].Revision != "A" || c[0].What != "first") {
				t.Errorf("the changes are not read: %+v", h.Changes)
			}
			if _, err := f.run(bait.trigger...); !f.ran() {
				t.Errorf("git %s does not run the command (%v), so this test shows nothing", strings.Join(bait.trigger, " "), err)
			}
		})
	}
}

// TestHistoryReads tells changed from unchanged sheets, in the repository's own
// folder and below, with line ends as another system writes them.
func TestHistoryReads(t *testing.T) {
	f := newFolder(t)
	f.write("book/b.md", "---\ntitle: B\nrevision: C\ndate: 2026-01-02\napproved: 2026-01-03\n---\n")
	f.write("book/deep/c.md", "---\ntitle: C\n---\n")
	f.git("add", "book/b.md", "book/deep")
	f.git("commit", "-q", "-m", "more")
	f.write("book/b.md", "---\r\ntitle: B\r\nrevision: C\r\ndate: 2026-01-02\r\napproved: 2026-01-03\r\n---\r\n")
	f.write("book/deep/c.md", "---\ntitle: C changed\n---\n")
	f.write("book/new.md", "---\ntitle: new\n---\n")
	for content, prefix := range map[string]string{"book": "", ".": "book/", "book/deep": "deep/"} {
		got := history(t.Context(), filepath.Join(f.dir, content), "")().Sheets
		key := func(name string) string {
			if prefix == "deep/" {
				return strings.TrimPrefix(name, prefix)
			}
			return prefix + name
		}
		if c := got[key("deep/c.md")]; !c.Changed || c.Newest.Format(time.DateOnly) == "0001-01-01" {
			t.Errorf("%s: deep/c.md: %+v", content, c)
		}
		if prefix == "deep/" {
			continue
		}
		if a := got[key("a.md")]; !a.Changed || a.Revision != "A" {
			t.Errorf("%s: a.md: %+v", content, a)
		}
		if b, ok := got[key("b.md")]; !ok || b.Changed || b.Revision != "C" {
			t.Errorf("%s: b.md: %+v", content, b)
		}
		if _, ok := got[key("new.md")]; ok {
			t.Errorf("%s: a sheet that was never recorded has a history", content)
		}
	}
}

// TestHistorySince finds a change that a branch has recorded already, and
// passes over what the other branch got since.
func TestHistorySince(t *testing.T) {
	f := newFolder(t)
	f.git("checkout", "-q", "book/a.md")
	f.write("book/b.md", "---\ntitle: B\nrevision: A\ndate: 2026-01-02\napproved: 2026-01-03\n---\nStep.\n")
	f.git("add", "-A")
	f.git("commit", "-q", "-m", "b")
	f.git("branch", "shop")
	f.git("checkout", "-q", "-b", "work")
	f.write("book/b.md", "---\ntitle: B\nrevision: A\ndate: 2026-01-02\napproved: 2026-01-03\n---\nAnother step.\n")
	f.git("commit", "-q", "-am", "a step under an old revision")
	f.git("checkout", "-q", "shop")
	f.write("book/a.md", "---\ntitle: A2\nrevision: B\n---\n")
	f.git("commit", "-q", "-am", "elsewhere")
	f.git("checkout", "-q", "work")
	book := filepath.Join(f.dir, "book")
	if h := history(t.Context(), book, "")(); h.Sheets["b.md"].Changed {
		t.Errorf("against the last commit b.md has changed: %+v", h.Sheets)
	}
	h := history(t.Context(), book, "shop")()
	if b := h.Sheets["b.md"]; !b.Changed || b.Revision != "A" {
		t.Errorf("since shop b.md has not changed: %+v", h.Sheets)
	}
	if h.Sheets["a.md"].Changed {
		t.Error("a change of the other branch counts as one of this")
	}
	if err := checkSince(t.Context(), book, "shop"); err != nil {
		t.Error(err)
	}
	for ref, want := range map[string]string{"nowhere": "there is no commit nowhere", "--all": "there is no commit --all"} {
		if err := checkSince(t.Context(), book, ref); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("since %s: %v", ref, err)
		}
	}
	if err := checkSince(t.Context(), t.TempDir(), "shop"); err == nil || !strings.Contains(err.Error(), "kept in git") {
		t.Errorf("without a repository: %v", err)
	}
}

// A shallow clone does not know when its sheets last changed, so an approval is
// not taken for old there; a commit that it lacks is told as that.
func TestHistoryOfAShallowClone(t *testing.T) {
	f := newFolder(t)
	f.write("book/b.md", "---\ntitle: B\nrevision: A\ndate: 2020-01-02\napproved: 2020-01-03\n---\nStep.\n")
	f.git("add", "-A")
	f.git("commit", "-q", "-m", "b")
	first := strings.TrimSpace(f.git("rev-parse", "HEAD"))
	f.write("book/a.md", "---\ntitle: A3\nrevision: C\n---\n")
	f.git("commit", "-q", "-am", "c")
	clone := &folder{t: t, dir: filepath.Join(t.TempDir(), "clone")}
	f.git("clone", "-q", "--depth", "1", "file://"+f.dir, clone.dir)
	book := filepath.Join(clone.dir, "book")
	if b, ok := history(t.Context(), book, "")().Sheets["b.md"]; !ok || b.Changed || !b.Newest.IsZero() {
		t.Errorf("b.md of the clone: %+v, %v", b, ok)
	}
	if !shallow(t.Context(), book) || shallow(t.Context(), filepath.Join(f.dir, "book")) {
		t.Error("a shallow clone is not told from a whole one")
	}
	if err := checkSince(t.Context(), book, first); err == nil || !strings.Contains(err.Error(), "shallow") {
		t.Errorf("a commit that the clone lacks: %v", err)
	}
}
