package browsertest

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"baybook/site"
	"baybook/site/begin"
	"baybook/site/finding"
)

// hostileDrawings are what an SVG file can hold to make a browser ask a
// stranger's host, and things near to them that a drawing may hold. HOST
// stands for the stranger.
var hostileDrawings = []string{
	`<image href="HOST/1" width="9" height="9"/>`,
	`<image xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="HOST/2" width="9" height="9"/>`,
	`<style>svg{background:url(HOST/3)}</style>`,
	`<style>@import "HOST/4";</style>`,
	`<rect width="9" height="9" style="fill:url(HOST/5#a)"/>`,
	`<rect width="9" height="9" fill="url(HOST/6#a)"/>`,
	`<rect width="9" height="9" fill="u\72l(HOST/7#a)"/>`,
	`<rect width="9" height="9" fill="URL(HOST/8#a)"/>`,
	`<rect width="9" height="9" mask="image-set('HOST/9' 1x)"/>`,
	`<rect width="9" height="9" style="mask-image:-webkit-image-set(url(HOST/10) 1x)"/>`,
	`<rect width="9" height="9" filter="url(HOST/11#a)"/>`,
	`<rect width="9" height="9" cursor="url(HOST/12), auto"/>`,
	`<use href="HOST/13#a"/>`,
	`<use href="//elsewhere.invalid/14#a"/>`,
	`<foreignObject width="9" height="9"><img xmlns="http://www.w3.org/1999/xhtml" src="HOST/15"/></foreignObject>`,
	`<foreignObject width="9" height="9"><img xmlns="http://www.w3.org/1999/xhtml" srcset="HOST/16 1x"/></foreignObject>`,
	`<foreignObject width="9" height="9"><body xmlns="http://www.w3.org/1999/xhtml" background="HOST/17"/></foreignObject>`,
	`<script href="HOST/18"/>`,
	`<script>fetch("HOST/19")</script>`,
	`<g onload="fetch('HOST/20')"/>`,
	`<feImage href="HOST/21"/>`,
	`<link xmlns="http://www.w3.org/1999/xhtml" rel="stylesheet" href="HOST/22"/>`,
	`<img src="HOST/23"/>`,
	`<video poster="HOST/24" src="HOST/24"/>`,
	`<textPath href="HOST/25#a">a</textPath>`,
	`<animate attributeName="href" to="HOST/26"/><set attributeName="fill" to="url(HOST/26#a)"/>`,
	`<linearGradient id="g" href="HOST/27#a"/><rect width="9" height="9" fill="url(#g)"/>`,
	`<text font-family="x, url(HOST/28)">a</text>`,
	`<rect width="9" height="9" class="a" clip-path="url(HOST/29#a)"/>`,
	`<path d="M0 0h9" marker-start="url(HOST/30#m)" stroke="red"/>`,
	`<title>&lt;img src=HOST/31&gt;</title><path d="M0 0h9" stroke="red"/>`,
	`<desc>&lt;img src=HOST/32&gt;</desc><path d="M0 0h9" stroke="red"/>`,
	`<text y="5">&lt;img src=HOST/33&gt; url(HOST/33)</text>`,
	`<text y="5"><![CDATA[<img src=HOST/34>]]></text>`,
	`<metadata><img src="HOST/35"/></metadata>`,
	`<path id="a&quot;&gt;&lt;img src=HOST/36&gt;" d="M0 0h9"/>`,
	`<text y="5" aria-label="&quot;&gt;&lt;img src=HOST/37&gt;">a</text>`,
	`<text y="5" font-family="'&quot;&gt;&lt;img src=HOST/38&gt;'">a</text>`,
	`<!-- --><text y="5">a</text><!-- ><img src=HOST/39> -->`,
	`<?xml-stylesheet href="HOST/40"?><text y="5">a</text>`,
}

const stranger = "http://elsewhere.invalid"

// Nothing that is built asks anything of the outside, whatever the drawings
// hold, behind a web server that sends no policy of its own.
func TestHostileDrawingsAskNothing(t *testing.T) {
	t.Parallel()
	content := filepath.Join(t.TempDir(), "book")
	if err := os.CopyFS(content, begin.Book()); err != nil {
		t.Fatal(err)
	}
	write := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(content, "power", name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	plain, err := os.ReadFile(filepath.Join(content, "power", "fused-lead.md"))
	if err != nil {
		t.Fatal(err)
	}
	// show writes the sheet with the drawings of these numbers.
	show := func(numbers []int) {
		figures := ""
		for _, i := range numbers {
			figures += fmt.Sprintf("![The order of the parts, drawing number %d.](hostile-%d.svg)\n\n[The same drawing by itself](hostile-%d.svg).\n\n", i, i, i)
		}
		write("fused-lead.md", strings.Replace(string(plain), "\n## Sources\n", "\n"+figures+"## Sources\n", 1))
	}
	var all []int
	raw := ""
	for i, body := range hostileDrawings {
		svg := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">` + strings.ReplaceAll(body, "HOST", stranger) + `</svg>`
		write(fmt.Sprintf("hostile-%d.svg", i), svg)
		all, raw = append(all, i), raw+svg
	}
	show(all)
	accepted := acceptedDrawings(t, content, all)
	t.Logf("of %d drawings %d are refused", len(all), len(all)-len(accepted))
	show(accepted)
	out := filepath.Join(t.TempDir(), "dist")
	if _, list, err := site.Build(context.Background(), site.Options{Content: content, Out: out}); err != nil {
		t.Fatal(err, list)
	}
	if err := os.WriteFile(filepath.Join(out, "raw.html"), []byte("<!doctype html><title>Raw</title>"+raw), 0o644); err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(http.FileServer(http.Dir(out)))
	t.Cleanup(server.Close)
	if asked := requestsOutside(t, server.URL+"/raw.html"); asked < 5 {
		t.Fatalf("raw, the drawings ask the outside %d times: the watch does not see it", asked)
	}
	// The book's own pages, whose requests the tab judges at its end.
	p := newTab(t)
	for _, page := range []string{"power/fused-lead.html", "index.html", "a-z.html"} {
		p.open(server.URL + "/" + page)
		p.wait(`document.readyState === "complete"`)
	}
	for _, i := range accepted {
		p.open(fmt.Sprintf("%s/power/hostile-%d.svg", server.URL, i))
	}
}

// acceptedDrawings checks a book that shows the hostile drawings with these
// numbers, removes those that are refused, and gives the others.
func acceptedDrawings(t *testing.T, content string, all []int) (accepted []int) {
	t.Helper()
	_, list, err := site.Check(site.Options{Content: content})
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range all {
		name := fmt.Sprintf("power/hostile-%d.svg", i)
		refused := slices.ContainsFunc(list, func(f finding.Finding) bool {
			return f.Pos.File == name && f.Severity == finding.Error
		})
		if !refused {
			accepted = append(accepted, i)
			continue
		}
		if err := os.Remove(filepath.Join(content, name)); err != nil {
			t.Fatal(err)
		}
	}
	return accepted
}

// requestsOutside counts what a page asks of foreign hosts.
func requestsOutside(t *testing.T, page string) (asked int) {
	t.Helper()
	p := newTab(t)
	p.allowed = []string{stranger, "elsewhere.invalid", "Failed to load resource", "Failed to fetch"}
	p.open(page)
	p.wait(`document.readyState === "complete"`)
	p.open("about:blank") // which ends what is still under way
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, r := range p.requests {
		if strings.Contains(r, "elsewhere.invalid") {
			asked++
		}
	}
	p.requests = nil
	return asked
}
