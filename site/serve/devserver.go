package serve

import (
	"context"
	"errors"
	"net/http"
	"sync"
	"time"

	"baybook/site"
	"baybook/site/finding"
)

// A devServer holds what is shown now: the last good edition, and what is wrong
// with the sheets as they were last saved.
type devServer struct {
	options Options
	builder *site.Builder
	events  *events
	routes  *http.ServeMux

	mu    sync.RWMutex
	state state
	// shown are the pages as they are sent, by name.
	shown map[string]shownPage
}

// A state is the outcome of the last save.
type state struct {
	// edition is nil until a book without errors was seen.
	edition *site.Edition
	found   finding.List
	// fault is what kept the last build from being made, beside findings.
	fault error
	// builds and pictures count builds, and those that changed a photograph.
	builds, pictures int
}

// broken reports whether what is shown is not what was last saved.
func (s *state) broken() bool { return s.fault != nil || s.found.Err() != nil }

func newDevServer(o Options) *devServer {
	o.Site.Drafts = true // they are what is being written
	d := &devServer{options: o, builder: site.NewBuilder(o.Site), events: newEvents(), shown: make(map[string]shownPage)}
	d.routes = d.newRoutes()
	return d
}

// build makes an edition of the book as it stands now. The error is for the
// very first build, where there is nothing to show in its place.
func (d *devServer) build(ctx context.Context) error {
	start := time.Now()
	edition, list, err := d.builder.Next(ctx)
	var stopped *finding.ListError
	if errors.As(err, &stopped) {
		err = nil
	}
	d.mu.Lock()
	s := &d.state
	first := s.builds == 0
	s.found, s.fault = list, err
	s.builds++
	if edition != nil {
		if s.edition != nil && !edition.SamePictures(s.edition) {
			s.pictures++
		}
		s.edition = edition
	}
	d.mu.Unlock()
	if first && err != nil {
		return err
	}
	if d.options.Built != nil {
		d.options.Built(list, time.Since(start), err)
	}
	d.events.tell()
	return nil
}

// now is the present state.
func (d *devServer) now() state {
	d.mu.RLock()
	defer d.mu.RUnlock()
	return d.state
}

// ServeHTTP implements http.Handler.
func (d *devServer) ServeHTTP(w http.ResponseWriter, r *http.Request) { d.routes.ServeHTTP(w, r) }
