package serve

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"net/http"

	"baybook/site/finding"
)

//go:embed trouble.html
var troubleText string

// troublePages are the server's own pages: the findings, a page that is not
// there, and a page that could not be made.
var troublePages = template.Must(template.New("").Parse(troubleText))

// A report is what those pages show.
type report struct {
	Title  string
	Errors []finding.Finding
	// Warnings do not stand in the way of the site.
	Warnings []finding.Finding
	Fault    string
	// Sum is the page's own name for the script in it.
	Sum string
	Own string
}

// reportOf sorts what was found.
func (d *devServer) reportOf(s state) report {
	r := report{Own: own, Sum: fmt.Sprint("build-", s.builds)}
	for _, f := range s.found {
		if f.Severity == finding.Error {
			r.Errors = append(r.Errors, f)
		} else {
			r.Warnings = append(r.Warnings, f)
		}
	}
	if s.fault != nil {
		r.Fault = d.reason(s.fault)
	}
	r.Title = "Nothing is wrong"
	switch n := len(r.Errors); {
	case r.Fault != "":
		r.Title = "The site could not be built"
	case n == 1:
		r.Title = "1 error keeps the site from being built"
	case n > 1:
		r.Title = fmt.Sprintf("%d errors keep the site from being built", n)
	case len(r.Warnings) > 0:
		r.Title = "Worth a look"
	}
	return r
}

// reason is what a page says of a fault. It may name folders of this machine,
// which is nothing for the shop's network.
func (d *devServer) reason(err error) string {
	if d.options.LAN {
		return "The terminal in which baybook serve runs says why."
	}
	return err.Error()
}

// show writes one of the pages.
func show(w http.ResponseWriter, status int, name string, r report) {
	var page bytes.Buffer
	if err := troublePages.ExecuteTemplate(&page, name, r); err != nil {
		refuse(w, http.StatusInternalServerError, err.Error())
		return
	}
	w.Header().Set("Content-Type", types[".html"])
	w.Header().Set("Cache-Control", "no-store")
	w.Header().Set(pageHeader, r.Sum)
	w.WriteHeader(status)
	_, _ = w.Write(page.Bytes()) // a reader who has gone needs no answer
}

// findings answers with the list alone, for the script to put over a page.
func (d *devServer) findings(w http.ResponseWriter, _ *http.Request) {
	show(w, http.StatusOK, "list", d.reportOf(d.now()))
}

// trouble answers with a page of the findings, where there is no good site yet.
func (d *devServer) trouble(w http.ResponseWriter, status int) {
	show(w, status, "page", d.reportOf(d.now()))
}

// missing says that there is no such page.
func (d *devServer) missing(w http.ResponseWriter, _ *http.Request) {
	show(w, http.StatusNotFound, "missing", report{Title: "There is no such page", Own: own, Sum: "none"})
}

// failed says why a page could not be made.
func (d *devServer) failed(w http.ResponseWriter, err error) {
	r := d.reportOf(d.now())
	r.Title, r.Fault = "This page could not be made", d.reason(err)
	show(w, http.StatusInternalServerError, "page", r)
}
