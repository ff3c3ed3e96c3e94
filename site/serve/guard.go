package serve

import (
	"net"
	"net/http"
	"time"
)

// Limits of the server: far above what a browser asks, far below what would
// overload the machine.
const (
	headerTime      = 5 * time.Second
	readTime        = 10 * time.Second
	writeTime       = 60 * time.Second
	idleTime        = 60 * time.Second
	mostHeader      = 16 << 10
	mostConnections = 512
	longestPath     = 2048
)

// policy is what pages may do: run and fetch what this server sends, and the
// WebAssembly core.
const policy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"

// headers go with every answer.
var headers = [][2]string{
	{"Content-Security-Policy", policy},
	{"X-Content-Type-Options", "nosniff"},
	{"Referrer-Policy", "no-referrer"},
	{"Cross-Origin-Opener-Policy", "same-origin"},
	{"Cross-Origin-Resource-Policy", "same-origin"},
	{"Permissions-Policy", "camera=(), microphone=(), geolocation=()"},
}

// guard sets the headers of every answer and refuses what no reader sends. On
// the loopback address alone, names other than this machine's are refused too,
// so that no foreign page can read the book through a name of its own.
func guard(next http.Handler, loopbackOnly bool) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for _, h := range headers {
			w.Header().Set(h[0], h[1])
		}
		switch {
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			w.Header().Set("Allow", "GET, HEAD")
			refuse(w, http.StatusMethodNotAllowed, "Pages are only read here.")
		case r.ContentLength != 0:
			refuse(w, http.StatusRequestEntityTooLarge, "A request for a page carries nothing.")
		case len(r.URL.Path) > longestPath:
			refuse(w, http.StatusRequestURITooLong, "No page has so long an address.")
		case loopbackOnly && !thisMachine(r.Host):
			refuse(w, http.StatusMisdirectedRequest, "This book is served to this machine alone.")
		default:
			next.ServeHTTP(w, r)
		}
	})
}

// refuse answers with a sentence.
func refuse(w http.ResponseWriter, status int, words string) {
	w.Header().Set("Cache-Control", "no-store")
	http.Error(w, words, status)
}

// thisMachine reports whether a Host header names the loopback address.
func thisMachine(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = host
	}
	ip := net.ParseIP(name)
	return name == "localhost" || ip != nil && ip.IsLoopback()
}
