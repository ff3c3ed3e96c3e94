package site_test

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"baybook/site"
	"baybook/site/core"
	"baybook/site/sitetest"
)

var testCore = core.Core{Module: []byte("\x00asm, for a test"), Script: []byte(`window.bookData="";`)}

// memory is a sink that keeps what it is given.
type memory struct {
	mu    sync.Mutex
	files map[string]string
}

func (m *memory) Put(name string, data []byte) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.files == nil {
		m.files = make(map[string]string)
	}
	m.files[name] = string(data)
	return nil
}

func book(t testing.TB, sheets int) string {
	t.Helper()
	dir := t.TempDir()
	if err := sitetest.Write(dir, sheets); err != nil {
		t.Fatal(err)
	}
	return dir
}

// edit changes a file of a book.
func edit(t testing.TB, dir, name string, change func(string) string) {
	t.Helper()
	file := filepath.Join(dir, name)
	text, err := os.ReadFile(file)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(change(string(text))), 0o644); err != nil {
		t.Fatal(err)
	}
}

func replace(old, with string) func(string) string {
	return func(s string) string {
		if !strings.Contains(s, old) {
			panic("the text to replace is not there: " + old)
		}
		return strings.ReplaceAll(s, old, with)
	}
}

const (
	first = "area-000/lead-00000.md"
	other = "area-001/lead-00041.md"
)

// edits is what a lead may do between two saves.
var edits = []struct {
	name string
	do   func(t testing.TB, dir string)
}{
	{"words", func(t testing.TB, dir string) { edit(t, dir, first, replace("at the bench", "in the bay")) }},
	{"nothing", func(testing.TB, string) {}},
	{"title", func(t testing.TB, dir string) { edit(t, dir, other, replace("title: Fused", "title: Another fused")) }},
	{"figure", func(t testing.TB, dir string) {
		edit(t, dir, "area-000/lead-00000-order.svg", replace("Load", "Lamp"))
	}},
	{"glossary", func(t testing.TB, dir string) { edit(t, dir, "glossary.yaml", replace("earth, ", "earth, mass, ")) }},
	{"shop", func(t testing.TB, dir string) { edit(t, dir, "shop.yaml", replace("Your bay", "Our bay")) }},
	{"fault", func(t testing.TB, dir string) { edit(t, dir, first, replace("**WARNING: Feed", "**NOTICE: Feed")) }},
	{"fault mended", func(t testing.TB, dir string) { edit(t, dir, first, replace("**NOTICE: Feed", "**WARNING: Feed")) }},
	{"anchor gone", func(t testing.TB, dir string) {
		edit(t, dir, first, replace("See [", "See [its hand-over](../"+other+"#hand-over), ["))
		edit(t, dir, other, replace("## Hand over", "## Handing over"))
	}},
	{"anchor back", func(t testing.TB, dir string) { edit(t, dir, other, replace("## Handing over", "## Hand over")) }},
	{"photograph", func(t testing.TB, dir string) {
		edit(t, dir, "area-000/photo.jpg", func(string) string { return photo(t, 8) })
		edit(t, dir, first, replace("4. Crimp", "   ![The lead on the bench, fuse to the left.](photo.jpg \"The lead\")\n\n4. Crimp"))
	}},
	{"photograph again", func(t testing.TB, dir string) {
		edit(t, dir, "area-000/photo.jpg", func(string) string { return photo(t, 16) })
	}},
	{"job", func(t testing.TB, dir string) {
		edit(t, dir, "jobs/job.md", func(string) string { return job })
		edit(t, dir, other, replace("See [", "See [the job](../jobs/job.md), ["))
	}},
	{"sheet of the job", func(t testing.TB, dir string) {
		edit(t, dir, first, replace("minutes: 20", "minutes: 45"))
		edit(t, dir, "jobs/job.md", replace("minutes: 20", "minutes: 45"))
	}},
	{"number", func(t testing.TB, dir string) { edit(t, dir, first, replace("LD-00000", "LD-90000")) }},
}

const job = `---
title: Lead for the lamp
number: JB-01
revision: A
date: 2026-11-25
owner: Bench
kind: job
minutes: 20
skill: installer
---
One lead, for one lamp.

## Work

1. [The lead](../area-000/lead-00000.md)

## Sources

- Common practice, no source.
`

func photo(t testing.TB, size int) string {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, size, size)), nil); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// An edition that took over what it could is, to the byte, the one that is
// made from nothing; and so are its findings.
func TestNextEditionIsAsMadeFromNothing(t *testing.T) {
	dir := book(t, 44)
	builder := site.NewBuilder(site.Options{Content: dir, Core: testCore})
	for _, e := range append([]struct {
		name string
		do   func(t testing.TB, dir string)
	}{{"first", func(testing.TB, string) {}}}, edits...) {
		e.do(t, dir)
		edition, list, err := builder.Next(t.Context())
		fresh, wantList, wantErr := site.NewBuilder(site.Options{Content: dir, Core: testCore}).Next(t.Context())
		if fmt.Sprint(list) != fmt.Sprint(wantList) || fmt.Sprint(err) != fmt.Sprint(wantErr) {
			t.Errorf("%s: found\n%v\n%v, from nothing\n%v\n%v", e.name, list, err, wantList, wantErr)
		}
		if err != nil {
			continue
		}
		want := &memory{}
		if _, err := fresh.Write(t.Context(), want); err != nil {
			t.Fatal(err)
		}
		for name, data := range want.files {
			file, err := edition.Open(name)
			if err != nil {
				t.Errorf("%s: %v", e.name, err)
			} else if string(file.Data()) != data {
				t.Errorf("%s: %s differs from the one made from nothing", e.name, name)
			}
		}
		// Written, the same edition has the same files and no others.
		got := &memory{}
		if _, err := edition.Write(t.Context(), got); err != nil {
			t.Fatal(err)
		}
		if !maps.Equal(got.files, want.files) {
			t.Errorf("%s: the files written differ", e.name)
		}
	}
}

// A fault must be among the edits, or the comparison of findings is worth
// nothing.
func TestEditsIncludeFaults(t *testing.T) {
	dir := book(t, 44)
	faults := 0
	for _, e := range edits {
		e.do(t, dir)
		_, list, err := site.Check(site.Options{Content: dir})
		if err != nil {
			t.Fatal(err)
		}
		if list.Err() != nil {
			faults++
			t.Logf("%s: %v", e.name, list.Err())
		}
	}
	if faults < 2 || faults > 3 {
		t.Errorf("%d of the edits are faulty", faults)
	}
}

func TestPageIsMadeOnce(t *testing.T) {
	dir := book(t, 3)
	builder := site.NewBuilder(site.Options{Content: dir, Core: testCore})
	open := func(name string) *site.File {
		t.Helper()
		edition, list, err := builder.Next(t.Context())
		if err != nil {
			t.Fatal(list, err)
		}
		file, err := edition.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		return file
	}
	page := strings.TrimSuffix(first, ".md") + ".html"
	before := open(page)
	edit(t, dir, "area-000/lead-00001.md", replace("at the bench", "in the bay"))
	if open(page) != before {
		t.Error("the page of a sheet was made again because another was saved")
	}
	edit(t, dir, first, replace("at the bench", "in the bay"))
	if open(page) == before {
		t.Error("the page of a saved sheet was not made again")
	}
}
