package render

import (
	"html/template"
	"strconv"
	"strings"

	goqr "github.com/piglig/go-qr"
)

// addressCode is a QR code of a page's lasting address, for paper; empty
// where the shop has given none, or one too long to be read off a page.
func (r *Renderer) addressCode(page string) template.HTML {
	base := strings.TrimSuffix(r.Book.Shop.Address, "/")
	if base == "" {
		return ""
	}
	code, err := goqr.EncodeText(base+"/"+page, goqr.Medium)
	if err != nil {
		return ""
	}
	const quiet = 4 // modules of white around the code, ISO/IEC 18004
	size := strconv.Itoa(code.Size() + 2*quiet)
	var b strings.Builder
	b.WriteString(`<svg class="code" viewBox="0 0 ` + size + " " + size + `" role="img" aria-label="QR code of ` + escape(base+"/"+page) + `"><path fill="#fff" d="M0 0h` + size + "v" + size + `H0z"/><path fill="#000" d="`)
	for y := range code.Size() {
		for x := 0; x < code.Size(); x++ {
			if !code.Module(x, y) {
				continue
			}
			run := 1
			for code.Module(x+run, y) && x+run < code.Size() {
				run++
			}
			b.WriteString("M" + strconv.Itoa(x+quiet) + " " + strconv.Itoa(y+quiet) + "h" + strconv.Itoa(run) + "v1h-" + strconv.Itoa(run) + "z")
			x += run
		}
	}
	b.WriteString(`"/></svg>`)
	return template.HTML(b.String())
}
