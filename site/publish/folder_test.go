package publish

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A shop is a folder of sheets and a place for a site beside it.
func newShop(t *testing.T) (content, out string) {
	dir := t.TempDir()
	content, out = filepath.Join(dir, "content"), filepath.Join(dir, "dist")
	if err := os.Mkdir(content, 0o755); err != nil {
		t.Fatal(err)
	}
	return content, out
}

// made builds a site of the given files, each holding its own name.
func made(t *testing.T, out, content string, names ...string) error {
	t.Helper()
	f, err := Begin(out, content)
	if err != nil {
		return err
	}
	for _, name := range names {
		if err := f.Put(name, []byte(name)); err != nil {
			t.Fatal(err)
		}
	}
	return f.Commit()
}

func exists(name string) bool {
	_, err := os.Lstat(name)
	return err == nil
}

func write(t *testing.T, name string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte("own"), 0o644); err != nil {
		t.Fatal(err)
	}
}

// refused wants an error that holds some words.
func refused(t *testing.T, err error, words string) {
	t.Helper()
	if err == nil || !strings.Contains(err.Error(), words) {
		t.Errorf("got %v, want an error that says %q", err, words)
	}
}

func TestOwnFilesStay(t *testing.T) {
	content, out := newShop(t)
	if err := made(t, out, content, "index.html", "old/gone.html"); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(out, "robots.txt"))
	write(t, filepath.Join(out, "price", "list.pdf"))
	for range 2 {
		if err := made(t, out, content, "index.html", "new.html"); err != nil {
			t.Fatal(err)
		}
		for name, want := range map[string]bool{"index.html": true, "new.html": true, "old/gone.html": false, "robots.txt": true, "price/list.pdf": true} {
			if exists(filepath.Join(out, name)) != want {
				t.Errorf("%s stands: %v, want %v", name, !want, want)
			}
		}
	}
	refused(t, made(t, out, content, "index.html", "robots.txt"), "a file of your own")
	if !exists(filepath.Join(out, "new.html")) {
		t.Error("the refused build changed the site")
	}
}

func TestOnlyOneBuildAtATime(t *testing.T) {
	content, out := newShop(t)
	first, err := Begin(out, content)
	if err != nil {
		t.Fatal(err)
	}
	_, err = Begin(out, content)
	refused(t, err, "is building into")
	if !exists(first.temp) {
		t.Error("the second build swept away what the first is writing")
	}
	first.Abort()
	if err := made(t, out, content, "index.html"); err != nil {
		t.Errorf("after the first has ended: %v", err)
	}
	left, err := filepath.Glob(filepath.Join(filepath.Dir(out), ".*"))
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

func TestDeadBuildIsSwept(t *testing.T) {
	content, out := newShop(t)
	write(t, filepath.Join(filepath.Dir(out), ".dist.baybook-lock")) // a killed build holds no lock
	dead := filepath.Join(filepath.Dir(out), ".dist"+newMark+"dead", "index.html")
	write(t, dead)
	if err := made(t, out, content, "index.html"); err != nil {
		t.Fatal(err)
	}
	if exists(dead) {
		t.Error("what a killed build left is still there")
	}
}

func TestPlaceRefuses(t *testing.T) {
	content, out := newShop(t)
	dir := filepath.Dir(content)
	write(t, filepath.Join(dir, "full", "note.txt"))
	for link, to := range map[string]string{"into": content, "nowhere": filepath.Join(dir, "absent")} {
		if err := os.Symlink(to, filepath.Join(dir, link)); err != nil {
			t.Skip("this system makes no symbolic links")
		}
	}
	refused(t, made(t, filepath.Join(content, "dist"), content), "lies inside")
	refused(t, made(t, content, content), "lies inside")
	refused(t, made(t, filepath.Join(dir, "into", "dist"), content), "lies inside")
	refused(t, made(t, dir, content), "holds")
	refused(t, made(t, filepath.Join(dir, "full"), content), "is not a site built here")
	refused(t, made(t, filepath.Join(dir, "nowhere"), content), "leads nowhere")
	if err := made(t, out, content, "index.html"); err != nil {
		t.Error(err)
	}
}

func TestLinkIsFollowed(t *testing.T) {
	content, out := newShop(t)
	link := filepath.Join(filepath.Dir(content), "www")
	if err := made(t, out, content, "a.html"); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(out, link); err != nil {
		t.Skip("this system makes no symbolic links")
	}
	if err := made(t, link, content, "b.html"); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(link)
	if err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link was replaced: %v %v", info, err)
	}
	if !exists(filepath.Join(out, "b.html")) || exists(filepath.Join(out, "a.html")) {
		t.Error("the site behind the link was not replaced")
	}
}
