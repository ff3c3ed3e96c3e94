package browsertest

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Two techs worked on one van, each with a phone of their own: their records
// become one, a reading that differs is told, and the whole is a table that a
// spreadsheet reads (RFC 4180).
func TestRecordsOfSeveralPhonesBecomeOne(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	dir := downloads(p)
	openJob(p, root, "Van 7")
	p.open(root + "power/fuse-tap.html")
	p.tap("#step-1 .tick")
	p.fill("#reading-feed-contact input", "12.1")
	p.wait(`document.querySelector("#reading-feed-contact .judged").textContent !== ""`)
	p.open(root + "record.html")
	other := func(vehicle string) string {
		file := filepath.Join(t.TempDir(), "colleague.json")
		text := `{"format":"baybook-record-1","vehicle":"` + vehicle + `","date":"2026-10-02","sheets":[
			{"path":"power/fuse-tap","items":{"step-1":"done","step-2":"done","reading-feed-contact":"{\"value\":\"11.4\",\"limit\":\"at least 12 V\",\"unit\":\"V\",\"verdict\":\"ok\",\"judged\":\"inside\"}","at":"step-2"}},
			{"path":"ground/ground-point","items":{"step-1":"done","note":"=1+1, rear rail"}}]}`
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return file
	}
	upload(p, "[data-do=join]", other("Another van"))
	p.wait(`document.querySelector("[data-said]").textContent.includes("nothing was added")`)
	for range 2 { // joined twice, nothing doubles
		upload(p, "[data-do=join]", other("van 7"))
		p.wait(`/entries of colleague.json were added/.test(document.querySelector("[data-said]").textContent)`)
		p.do(`document.querySelector("[data-said]").dataset.last = document.querySelector("[data-said]").textContent; document.querySelector("[data-said]").textContent = ""`)
	}
	if got := eval[string](p, `document.querySelector("[data-said]").dataset.last`); !strings.HasPrefix(got, "0 entries") {
		t.Errorf("joined again, it says %q", got)
	}
	if got := p.text("[data-shown]"); !strings.Contains(got, "read again: 11.4 V") || !strings.Contains(got, "2 of ") || !strings.Contains(got, "rear rail") || p.count(".jobs li") != 1 {
		t.Errorf("the joined record: %s", got)
	}
	p.tap("[data-do=table]")
	_, data := saved(t, dir, ".csv")
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range [][]string{
		{"Van 7", "power/fuse-tap", "step-2", "done"}, {"Van 7", "power/fuse-tap", "feed-contact", "12.1"}, {"Van 7", "ground/ground-point", "note", "'=1+1, rear rail"},
	} {
		if !slices.ContainsFunc(rows, func(r []string) bool { return r[0] == want[0] && r[2] == want[1] && r[3] == want[2] && r[4] == want[3] }) {
			t.Errorf("no row %q in\n%s", want, data)
		}
	}
}
