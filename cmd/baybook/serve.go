package main

import (
	"context"
	"fmt"
	"io"
	"strings"
	"time"

	"baybook/site"
	"baybook/site/finding"
	"baybook/site/serve"
)

var serveCommand = &command{
	name: "serve", use: "[DIR] [-lan [-cert FILE -key FILE]] [-addr HOST:PORT]", short: "show the book while it is written",
	long: `
Builds the book into memory and serves it on this machine alone. Save a sheet,
and the page in the browser loads itself again. While a sheet has an error the
last good page stays, with the error over it. Nothing is written to disk.

-lan serves phones on the shop's network too, and prints a code to scan. Anyone
on that network can then read every page, drafts among them, and the findings
with the lines that they quote. Nobody can change anything, or read another
file of this machine; over plain HTTP others there can listen in. Phones keep
the book for bays without signal only where it comes over HTTPS: -cert and -key
name a certificate that they trust. The sheet "Publish the book" shows how to
make one.

Ctrl-C ends it.`,
	run: serveBook,
}

func serveBook(ctx context.Context, c *call) int {
	set, content := c.flags()
	lan := set.Bool("lan", false, "serve all of this machine's networks, not this machine alone")
	cert := set.String("cert", "", "speak HTTPS with the certificate in this PEM `file`, so that phones keep the book; goes with -key")
	key := set.String("key", "", "the certificate's key, a PEM `file`")
	addr := set.String("addr", "", "the `address` to listen on (127.0.0.1:8025, or a free port where that is taken)")
	if code, done := c.parse(set); done {
		return code
	}
	if err := takeFolder(set, content); err != nil {
		return c.fail(err)
	}
	err := serve.Run(ctx, serve.Options{
		Site: site.Options{Content: *content, Slow: c.slow, History: changesForPages(ctx, *content)}, Addr: *addr, LAN: *lan, Certificate: *cert, Key: *key,
		Ready: func(list []serve.Address) { writeAddresses(c.stdout, list) },
		Built: func(list finding.List, took time.Duration, err error) { c.built(*content, list, took, err) },
	})
	if err != nil {
		return c.fail(err)
	}
	return exitFine
}

// writeAddresses says where the book is, and for phones draws a code.
func writeAddresses(w io.Writer, list []serve.Address) {
	coded := false
	for _, a := range list {
		if a.Loopback {
			fmt.Fprintf(w, "The book is at %s\n", a.URL)
			continue
		}
		fmt.Fprintf(w, "From a phone on this network: %s\n", a.URL)
		if !coded {
			coded = true
			if code, err := scanCode(a.URL); err == nil { // the address above serves without it
				fmt.Fprintf(w, "\n%s\n", code)
			}
		}
	}
	if coded && !strings.HasPrefix(list[0].URL, "https:") {
		fmt.Fprint(w, "Over plain HTTP phones keep nothing for bays without signal; -cert and -key add HTTPS.\n")
	}
	if len(list) == 1 && list[0].Loopback {
		fmt.Fprint(w, "Ctrl-C ends it. For phones, use -lan.\n")
	}
}

// built reports the outcome of a build.
func (c *call) built(content string, list finding.List, took time.Duration, err error) {
	switch {
	case err != nil:
		fmt.Fprintf(c.stderr, "baybook serve: %v\n", err)
	case len(list) > 0:
		_ = finding.WriteText(c.stderr, list.In(fromHere(content)), site.Rules()) // the page shows the same
	case interactive(c.stdout):
		fmt.Fprintf(c.stdout, "built in %d ms\n", took.Milliseconds())
	}
}
