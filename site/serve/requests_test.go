package serve_test

import (
	"errors"
	"io"
	"net"
	"net/http"
	"os"
	"strings"
	"sync"
	"testing"
	"time"
)

func TestRequestsThatNoReaderSends(t *testing.T) {
	d := start(t, nil)
	for name, c := range map[string]struct {
		method, at string
		body       io.Reader
		header     []string
		status     int
	}{
		"post":         {http.MethodPost, "/", strings.NewReader("x"), nil, http.StatusMethodNotAllowed},
		"delete":       {http.MethodDelete, "/index.html", nil, nil, http.StatusMethodNotAllowed},
		"body":         {http.MethodGet, "/", strings.NewReader(strings.Repeat("x", 1<<16)), nil, http.StatusRequestEntityTooLarge},
		"long path":    {http.MethodGet, "/" + strings.Repeat("a", 5000), nil, nil, http.StatusRequestURITooLong},
		"foreign name": {http.MethodGet, "/", nil, []string{"Host", "rebound.example"}, http.StatusMisdirectedRequest},
		"own name":     {http.MethodGet, "/", nil, []string{"Host", "localhost:8025"}, http.StatusOK},
	} {
		t.Run(name, func(t *testing.T) {
			if response, _ := d.ask(c.method, c.at, c.body, c.header...); response.StatusCode != c.status {
				t.Errorf("%s, want %d", response.Status, c.status)
			}
		})
	}
}

func TestLongHeaderIsCutOff(t *testing.T) {
	d := start(t, nil)
	conn, err := net.Dial("tcp", strings.TrimSuffix(strings.TrimPrefix(d.url, "http://"), "/"))
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	line := "X-Long: " + strings.Repeat("a", 1000) + "\r\n"
	_, _ = io.WriteString(conn, "GET / HTTP/1.1\r\nHost: localhost\r\n")
	for range 1 << 10 { // a megabyte, if the server takes it
		if _, err = io.WriteString(conn, line); err != nil {
			return // the server has closed the connection
		}
	}
	answer, err := io.ReadAll(conn)
	if err == nil && !strings.HasPrefix(string(answer), "HTTP/1.1 431 ") {
		t.Errorf("answered %.60q", answer)
	}
}

func TestManyReadersAtOnce(t *testing.T) {
	d := start(t, nil)
	slow, err := net.Dial("tcp", strings.TrimSuffix(strings.TrimPrefix(d.url, "http://"), "/"))
	if err != nil {
		t.Fatal(err)
	}
	defer slow.Close()
	_, _ = io.WriteString(slow, "GET / HTTP/1.1\r\nHo") // and no more: others are served all the same
	crowd := &http.Client{Transport: &http.Transport{MaxConnsPerHost: 300}}
	defer crowd.CloseIdleConnections()
	var group sync.WaitGroup
	failed := make(chan error, 300)
	for range 300 {
		group.Go(func() {
			response, err := crowd.Get(d.url + firstSheet + ".html")
			if err != nil {
				failed <- err
				return
			}
			defer response.Body.Close()
			if _, err := io.Copy(io.Discard, response.Body); err != nil || response.StatusCode != http.StatusOK {
				failed <- errors.Join(err, errors.New(response.Status))
			}
		})
	}
	group.Wait()
	close(failed)
	for err := range failed {
		t.Error(err)
	}
}

// Some hundred readers who never finish what they ask keep nobody from being
// served, and are shown out when their time is over.
func TestHangingRequestsAreCutOff(t *testing.T) {
	t.Parallel()
	d := start(t, nil)
	address := strings.TrimSuffix(strings.TrimPrefix(d.url, "http://"), "/")
	var hanging []net.Conn
	for i := range 400 {
		conn, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatalf("connection %d: %v", i, err)
		}
		defer conn.Close()
		if i%2 == 0 { // the others say nothing at all
			_, _ = io.WriteString(conn, "GET / HTTP/1.1\r\nHost: localhost\r\nX-")
		}
		hanging = append(hanging, conn)
	}
	if response, body := d.get("/"); response.StatusCode != http.StatusOK || body == "" {
		t.Errorf("beside them a reader gets %s", response.Status)
	}
	const patience = 20 * time.Second // more than a request's header may take
	deadline := time.Now().Add(patience)
	for i, conn := range hanging {
		_ = conn.SetReadDeadline(deadline)
		if _, err := io.Copy(io.Discard, conn); errors.Is(err, os.ErrDeadlineExceeded) {
			t.Fatalf("connection %d still hangs after %v", i, patience)
		}
	}
}
