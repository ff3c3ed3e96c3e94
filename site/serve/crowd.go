package serve

import (
	"context"
	"crypto/tls"
	"net"
	"net/http"
	"sync"
)

// A crowd is the connections that are open. It has room for so many: when one
// more comes, the one that has waited longest without a request goes, so that
// silent ones keep nobody out. Goroutines share it.
type crowd struct {
	most int

	mu sync.Mutex
	// turn counts what connections do, and orders them by it.
	turn    int
	members map[*member]bool
}

// A member is a connection of the crowd.
type member struct {
	net.Conn
	crowd *crowd
	// turn is when it last began or ended a request; answering is true while
	// one is answered, live while that is a stream that goes on.
	turn            int
	answering, live bool
}

func newCrowd(most int) *crowd { return &crowd{most: most, members: make(map[*member]bool)} }

// enter takes a connection in, and shows another one out where it is full.
func (c *crowd) enter(conn net.Conn) *member {
	m := &member{Conn: conn, crowd: c}
	c.mu.Lock()
	var out *member
	if len(c.members) >= c.most {
		out = c.leastWanted()
		delete(c.members, out)
	}
	c.touch(m)
	c.members[m] = true
	c.mu.Unlock()
	if out != nil {
		_ = out.Conn.Close()
	}
	return m
}

// leastWanted is the member that has waited longest; where none waits, the one
// whose answer takes longest, live streams last.
func (c *crowd) leastWanted() *member {
	var worst *member
	rank := func(m *member) int {
		switch {
		case m.live:
			return 2
		case m.answering:
			return 1
		}
		return 0
	}
	for m := range c.members {
		if worst == nil || rank(m) < rank(worst) || rank(m) == rank(worst) && m.turn < worst.turn {
			worst = m
		}
	}
	return worst
}

// touch notes that something happens on a connection now.
func (c *crowd) touch(m *member) {
	c.turn++
	m.turn = c.turn
}

// Close implements net.Conn.
func (m *member) Close() error {
	m.crowd.mu.Lock()
	delete(m.crowd.members, m)
	m.crowd.mu.Unlock()
	return m.Conn.Close()
}

// set notes what a connection does.
func (m *member) set(answering, live bool) {
	m.crowd.mu.Lock()
	defer m.crowd.mu.Unlock()
	m.answering, m.live = answering, live
	m.crowd.touch(m)
}

type memberKey struct{}

// withMember lets a request's handler find its connection.
func withMember(ctx context.Context, conn net.Conn) context.Context {
	if secure, ok := conn.(*tls.Conn); ok {
		conn = secure.NetConn()
	}
	return context.WithValue(ctx, memberKey{}, conn)
}

// memberOf is the connection of a request; nil outside a server.
func memberOf(r *http.Request) *member {
	m, _ := r.Context().Value(memberKey{}).(*member)
	return m
}

// counted notes, around every request, that its connection is not idle.
func counted(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if m := memberOf(r); m != nil {
			m.set(true, false)
			defer m.set(false, false)
		}
		next.ServeHTTP(w, r)
	})
}

// limited is a listener whose connections are a crowd.
type limited struct {
	net.Listener
	crowd *crowd
}

// Accept implements net.Listener.
func (l *limited) Accept() (net.Conn, error) {
	conn, err := l.Listener.Accept()
	if err != nil {
		return nil, err
	}
	return l.crowd.enter(conn), nil
}
