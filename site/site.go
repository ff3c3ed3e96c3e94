// Package site is the façade of the builder: Check reads and checks a book,
// Build makes a site of it. The command, the server and the tests call these
// and nothing below.
package site

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"baybook/site/core"
	"baybook/site/finding"
	"baybook/site/publish"
	"baybook/site/sheet"
	"baybook/theme"
)

// Options say what to build. The zero value builds the folder content into
// the folder dist with the theme that the program carries.
type Options struct {
	// Content is the folder of the sheets; empty means content.
	Content string
	// Out is the folder that the site will stand in; empty means dist.
	Out string
	// Compress also writes .br and .gz copies, for web servers that serve them.
	Compress bool
	// Drafts also renders the sheets that are marked as drafts, and marks what the
	// build wrote with its reason, for the lead; neither is published.
	Drafts bool
	// History tells of earlier issues of the sheets; nil knows today's date
	// alone.
	History func() History
	// Theme replaces the theme that the program carries; nil keeps it.
	Theme fs.FS
	// Core replaces the core that the program carries or compiles; the zero
	// value keeps it.
	Core core.Core
	// Slow is told in a few words what is about to take long, so that a person
	// at a prompt knows what the program waits for; nil tells nobody.
	Slow func(what string)
}

func (o Options) content() string {
	if o.Content == "" {
		return "content"
	}
	return o.Content
}

func (o Options) out() string {
	if o.Out == "" {
		return "dist"
	}
	return o.Out
}

func (o Options) theme() fs.FS {
	if o.Theme == nil {
		return theme.Files
	}
	return o.Theme
}

// core is the compiled core: given, carried, or compiled from source.
func (o Options) core(ctx context.Context) (core.Core, error) {
	if o.Core.Module != nil {
		return o.Core, nil
	}
	if module := theme.Core(); module != nil {
		script, err := publish.AsScript(module)
		return core.Core{Module: module, Script: script}, err
	}
	root, err := moduleRoot()
	if err != nil {
		return core.Core{}, err
	}
	if o.Slow != nil && core.Cached(root) == nil {
		o.Slow("compiling the calculators for the browser, once; this takes a minute or two")
	}
	return core.Compiled(ctx, root)
}

// moduleRoot finds the folder of this program's source, from the working
// directory upwards.
func moduleRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "cmd", "browser", "core.go")); err == nil {
			return dir, nil
		}
		parent := filepath.Dir(dir)
		if parent == dir {
			return "", fmt.Errorf("the core's source is not found from here; run inside the project, or use a release binary, which carries the core inside")
		}
		dir = parent
	}
}

// Check reads and checks the book. Findings are sorted; those of severity
// Error stop publishing.
func Check(o Options) (*sheet.Book, finding.List, error) {
	b := NewBuilder(o)
	list, err := b.check()
	return b.book, list, err
}

// Build checks the book and, where nothing stops it, publishes it: all of the
// new site or nothing. The findings are returned in either case; the error is
// a *finding.ListError where they stopped it.
func Build(ctx context.Context, o Options) (Report, finding.List, error) {
	edition, list, err := NewBuilder(o).Next(ctx)
	if err != nil {
		return Report{}, list, err
	}
	report, err := o.publishInto(ctx, edition)
	return report, list, err
}

// A Report says what a build made.
type Report struct {
	Sheets, Calculators, Files int
	Bytes                      int64
}
