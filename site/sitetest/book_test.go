package sitetest_test

import (
	"testing"

	"baybook/site"
	"baybook/site/sitetest"
)

func TestBookPassesEveryCheck(t *testing.T) {
	dir := t.TempDir()
	if err := sitetest.Write(dir, 90); err != nil {
		t.Fatal(err)
	}
	book, list, err := site.Check(site.Options{Content: dir})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range list {
		t.Errorf("%s: [%s] %s\n%s", f.Pos, f.Rule, f.Message, f.Do)
	}
	if len(book.Sheets) != 90 {
		t.Errorf("%d sheets", len(book.Sheets))
	}
}
