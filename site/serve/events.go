package serve

import (
	"encoding/json"
	"fmt"
	"net/http"
	"sync"
	"time"
)

// events tells open pages that something was built.
type events struct {
	mu      sync.Mutex
	readers map[chan struct{}]bool
}

// mostStreams is how many pages are told at once, half of all connections.
// Pages beyond it are shown and do not reload by themselves.
const mostStreams = mostConnections / 2

// pulse is how often an open stream is written to, so that one whose reader
// has gone is noticed.
const pulse = 20 * time.Second

func newEvents() *events { return &events{readers: make(map[chan struct{}]bool)} }

// tell wakes every reader. A reader that has not looked since the last time is
// awake already.
func (e *events) tell() {
	e.mu.Lock()
	defer e.mu.Unlock()
	for r := range e.readers {
		tell(r)
	}
}

// join adds a reader; nil where there is no room.
func (e *events) join() chan struct{} {
	e.mu.Lock()
	defer e.mu.Unlock()
	if len(e.readers) >= mostStreams {
		return nil
	}
	r := make(chan struct{}, 1)
	e.readers[r] = true
	return r
}

func (e *events) leave(r chan struct{}) {
	e.mu.Lock()
	defer e.mu.Unlock()
	delete(e.readers, r)
}

// A notice is what a page is told: which build this is, whether a picture
// changed, and how many errors stand in the way of a newer site.
type notice struct {
	Build    int  `json:"build"`
	Pictures int  `json:"pictures"`
	Broken   bool `json:"broken"`
}

// stream is a stream of server-sent events (WHATWG HTML, section 9.2): the
// state now, then each new one.
func (d *devServer) stream(w http.ResponseWriter, r *http.Request) {
	reader := d.events.join()
	if reader == nil {
		refuse(w, http.StatusServiceUnavailable, "Too many pages are open; this one does not reload by itself.")
		return
	}
	defer d.events.leave(reader)
	if m := memberOf(r); m != nil {
		m.set(true, true)
	}
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	out := http.NewResponseController(w)
	beat := time.NewTicker(pulse)
	defer beat.Stop()
	say := func(words string) bool {
		if out.SetWriteDeadline(time.Now().Add(2*pulse)) != nil {
			return false
		}
		if _, err := fmt.Fprint(w, words); err != nil {
			return false
		}
		return out.Flush() == nil
	}
	for words := d.notice(); say(words); {
		select {
		case <-reader:
			words = d.notice()
		case <-beat.C:
			words = ":\n\n"
		case <-r.Context().Done():
			return
		}
	}
}

// notice is the present state as an event.
func (d *devServer) notice() string {
	now := d.now()
	data, err := json.Marshal(notice{Build: now.builds, Pictures: now.pictures, Broken: now.broken()})
	if err != nil {
		panic(err) // three plain fields
	}
	return "retry: 500\ndata: " + string(data) + "\n\n"
}
