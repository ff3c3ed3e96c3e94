package serve

import "testing"

// A port alone is this machine's own; what the network can reach is asked for.
func TestAskedAddress(t *testing.T) {
	for _, tt := range []struct {
		addr string
		lan  bool
		want string // "" where it is refused
	}{
		{"9123", false, "127.0.0.1:9123"},
		{"9123", true, ":9123"},
		{"127.0.0.1:9123", false, "127.0.0.1:9123"},
		{"[::1]:9123", false, "[::1]:9123"},
		{"localhost:0", false, "localhost:0"},
		{":9123", false, ""},
		{":9123", true, ":9123"},
		{"0.0.0.0:9123", false, ""},
		{"192.0.2.4:9123", false, ""}, // RFC 5737: an address for examples
		{"nonsense", false, ""},
		{"99999", false, ""},
	} {
		got, err := Options{Addr: tt.addr, LAN: tt.lan}.asked()
		if got != tt.want || (err == nil) != (tt.want != "") {
			t.Errorf("-addr %s, -lan %v: %q, %v; want %q", tt.addr, tt.lan, got, err, tt.want)
		}
	}
}
