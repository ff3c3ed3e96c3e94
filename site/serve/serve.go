// Package serve shows a book while it is written: it builds into memory,
// serves on the loopback address, builds again when a file is saved, and has
// the page in the browser load itself anew. On a shop's network it serves
// phones, too.
//
// It is for the lead's desk and the bay. What it adds to the site, a script
// that reloads and a page of findings, is never in a published one. Non-goals:
// HTTPS, and service to the open internet.
package serve

import (
	"context"
	"crypto/tls"
	"errors"
	"net"
	"net/http"
	"time"

	"baybook/site"
	"baybook/site/finding"
)

// Options say what to serve, and how. The zero value serves the folder
// content on the usual address.
type Options struct {
	// Site is what to build; its folder Out is not written.
	Site site.Options
	// Addr is the address to listen on; empty takes the usual one, and a free
	// port where that is taken.
	Addr string
	// LAN listens on all interfaces, for phones on the shop's network.
	LAN bool
	// Certificate and Key are the PEM files with which HTTPS is spoken; both
	// empty speak plain HTTP. Phones keep a book only over HTTPS.
	Certificate, Key string
	// Ready is told the addresses that the book is served on, once it is; nil
	// tells nobody.
	Ready func([]Address)
	// Built is told what each build came to: the findings, how long it took,
	// and an error that is no finding. nil tells nobody.
	Built func(finding.List, time.Duration, error)
}

// usualPort is where a browser's bookmark finds the book again.
const usualPort = "8025"

// Run serves until the context ends. The error is for an address that cannot
// be listened on, or a content folder that is not there; faults in sheets are
// shown in the browser and go to Built.
func Run(ctx context.Context, o Options) error {
	secure, err := o.secure()
	if err != nil {
		return err
	}
	listener, err := o.listen()
	if err != nil {
		return err
	}
	defer listener.Close()
	dev := newDevServer(o)
	if err := dev.build(ctx); err != nil {
		return err
	}
	changes, err := watch(ctx, o.content())
	if err != nil {
		return err
	}
	if o.Ready != nil {
		o.Ready(addresses(listener.Addr().(*net.TCPAddr), secure))
	}
	server := &http.Server{
		Handler: counted(guard(dev, !o.LAN)), BaseContext: func(net.Listener) context.Context { return ctx }, ConnContext: withMember,
		ReadHeaderTimeout: headerTime, ReadTimeout: readTime, WriteTimeout: writeTime, IdleTimeout: idleTime,
		MaxHeaderBytes: mostHeader,
	}
	done := make(chan error, 1)
	var door net.Listener = &limited{Listener: listener, crowd: newCrowd(mostConnections)}
	if secure != nil {
		door = tls.NewListener(door, secure)
	}
	go func() { done <- server.Serve(door) }()
	for {
		select {
		case <-changes:
			_ = dev.build(ctx) // told to Built, and shown in the page
		case err := <-done:
			return err
		case <-ctx.Done():
			return stop(server)
		}
	}
}

// stop ends a server, giving answers under way a moment.
func stop(server *http.Server) error {
	const patience = 2 * time.Second
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	if err := server.Shutdown(ctx); errors.Is(err, context.DeadlineExceeded) {
		return server.Close()
	} else if err != nil {
		return err
	}
	return nil
}

func (o Options) content() string {
	if o.Site.Content == "" {
		return "content"
	}
	return o.Site.Content
}
