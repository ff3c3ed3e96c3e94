package main

import (
	"bytes"
	"context"
	"crypto/sha1"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// A repository reads the recorded past of a content folder. A folder that came
// from somebody else carries that person's git configuration, and git runs
// commands that it names (a file watcher, hooks, filters, a signature checker,
// a transport for missing objects). So git is only asked by way of a control
// folder of our own: its configuration is ours, and of the folder's repository
// it sees the objects alone. What stands in the work tree is compared here and
// not by git status, which would run filters.
type repository struct {
	control string // our own control folder, removed by close
	objects string // the folder's objects
	prefix  string // the content folder's path in the repository, "" or with a slash at its end
	base    string // the commit that sheets are compared with
	// ends are the commits at which a shallow clone ends: what they changed is
	// not known.
	ends    map[string]bool
	newHash func() hash.Hash
}

// ourConfig is the whole configuration that git reads, by object format.
var ourConfig = map[string]string{
	"sha1":   "[core]\n\trepositoryformatversion = 0\n\tbare = true\n",
	"sha256": "[core]\n\trepositoryformatversion = 1\n\tbare = true\n[extensions]\n\tobjectFormat = sha256\n",
}

// hashes make the hash that names an object, by object format.
var hashes = map[string]func() hash.Hash{"sha1": sha1.New, "sha256": sha256.New}

// openRepository finds the repository of a content folder; false where there
// is no git, no repository, or nothing recorded yet.
func openRepository(ctx context.Context, content string) (*repository, bool) {
	// rev-parse looks paths and names up and runs nothing.
	cmd := exec.CommandContext(ctx, "git", "-C", content, "-c", "core.fsmonitor=false", "-c", "core.hooksPath="+os.DevNull,
		"rev-parse", "--path-format=absolute", "--git-path", "objects", "--git-path", "shallow",
		"--show-object-format", "--show-prefix", "--verify", "HEAD")
	out, err := cmd.Output()
	if err != nil {
		return nil, false
	}
	lines := strings.Split(strings.TrimSuffix(string(out), "\n"), "\n")
	if len(lines) != 5 || hashes[lines[2]] == nil {
		return nil, false
	}
	r := &repository{objects: lines[0], prefix: lines[3], newHash: hashes[lines[2]]}
	if err := r.makeControl(ourConfig[lines[2]], lines[1], lines[4]); err != nil {
		r.close()
		return nil, false
	}
	r.base = "HEAD"
	return r, true
}

// compareWith takes the commit at which the present one parted from another as
// the one to compare with: what a branch would bring in is judged, whatever
// else has come to the other one since.
func (r *repository) compareWith(ctx context.Context, content, ref string) error {
	cmd := exec.CommandContext(ctx, "git", "-C", content, "-c", "core.fsmonitor=false", "-c", "core.hooksPath="+os.DevNull,
		"rev-parse", "--verify", "--quiet", "--end-of-options", ref+"^{commit}")
	commit, err := cmd.Output()
	base, ok := "", err == nil
	if ok {
		base, ok = r.git(ctx, "merge-base", "HEAD", strings.TrimSpace(string(commit)))
	}
	switch {
	case ok:
		r.base = strings.TrimSpace(base)
		return nil
	case len(r.ends) > 0:
		return fmt.Errorf("this clone is shallow and does not reach back to %s; fetch the whole history first (git fetch --unshallow)", ref)
	case err != nil:
		return fmt.Errorf("there is no commit %s here; name a branch, a tag or a commit, such as origin/main", ref)
	}
	return fmt.Errorf("%s and the present commit have no history in common", ref)
}

// makeControl writes the control folder. A shallow clone's list of commits
// without parents is taken over, for without it the log would end in an error.
func (r *repository) makeControl(config, shallow, head string) error {
	var err error
	if r.control, err = os.MkdirTemp("", "baybook-history-"); err != nil {
		return err
	}
	files := map[string]string{"config": config, "HEAD": head + "\n"}
	if list, err := os.ReadFile(shallow); err == nil {
		files["shallow"] = string(list)
		r.ends = make(map[string]bool)
		for _, commit := range strings.Fields(string(list)) {
			r.ends[commit] = true
		}
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(r.control, name), []byte(text), 0o600); err != nil {
			return err
		}
	}
	return os.Mkdir(filepath.Join(r.control, "refs"), 0o700)
}

func (r *repository) close() {
	if r.control != "" {
		_ = os.RemoveAll(r.control)
	}
}

// git runs git on the objects; false where it says no.
func (r *repository) git(ctx context.Context, arguments ...string) (string, bool) {
	cmd := r.command(ctx, arguments...)
	var out bytes.Buffer
	cmd.Stdout = &out
	err := cmd.Run()
	return out.String(), err == nil
}

// command is git on the objects, with our own configuration alone.
func (r *repository) command(ctx context.Context, arguments ...string) *exec.Cmd {
	cmd := exec.CommandContext(ctx, "git", append([]string{"--no-pager", "-c", "core.quotepath=off"}, arguments...)...)
	cmd.Dir = r.control
	for _, pair := range os.Environ() {
		if !strings.HasPrefix(pair, "GIT_") {
			cmd.Env = append(cmd.Env, pair)
		}
	}
	cmd.Env = append(cmd.Env, "GIT_DIR="+r.control, "GIT_OBJECT_DIRECTORY="+r.objects, "GIT_CONFIG_NOSYSTEM=1",
		"GIT_CONFIG_GLOBAL="+os.DevNull, "GIT_NO_LAZY_FETCH=1", "GIT_TERMINAL_PROMPT=0", "GIT_OPTIONAL_LOCKS=0")
	return cmd
}

// recorded lists the files of the content folder as they stood in a commit: the
// name of each one's content, by its path in the folder.
func (r *repository) recorded(ctx context.Context, commit string) map[string]string {
	files := make(map[string]string)
	list, _ := r.git(ctx, "ls-tree", "-r", "-z", commit+":"+strings.TrimSuffix(r.prefix, "/"))
	for entry := range strings.SplitSeq(list, "\x00") {
		kind, file, _ := strings.Cut(entry, "\t")
		if fields := strings.Fields(kind); len(fields) == 3 && fields[0] != "120000" && fields[1] == "blob" {
			files[file] = fields[2]
		}
	}
	return files
}

// same reports whether content is what was recorded under a name. A checkout
// may write line ends as CR LF, which is no change.
func (r *repository) same(content []byte, name string) bool {
	return r.name(content) == name || r.name(bytes.ReplaceAll(content, []byte("\r\n"), []byte("\n"))) == name
}

// name is the name that git gives a file's content.
func (r *repository) name(content []byte) string {
	h := r.newHash()
	fmt.Fprintf(h, "blob %d\x00", len(content))
	h.Write(content)
	return hex.EncodeToString(h.Sum(nil))
}
