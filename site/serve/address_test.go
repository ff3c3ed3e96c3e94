package serve

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"encoding/pem"
	"math/big"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"baybook/site"
	"baybook/site/core"
	"baybook/site/sitetest"
)

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

// TestHTTPS serves with a certificate made for the test, and refuses halves.
// selfSigned writes a certificate for the loopback address, and its key, and
// gives a client that trusts it.
func selfSigned(t *testing.T, certificate, key string) *http.Client {
	t.Helper()
	private, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	form := &x509.Certificate{SerialNumber: big.NewInt(1), IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)}, NotAfter: time.Now().Add(time.Hour)}
	signed, err := x509.CreateCertificate(rand.Reader, form, form, &private.PublicKey, private)
	if err != nil {
		t.Fatal(err)
	}
	secret, err := x509.MarshalPKCS8PrivateKey(private)
	if err != nil {
		t.Fatal(err)
	}
	for file, block := range map[string]*pem.Block{certificate: {Type: "CERTIFICATE", Bytes: signed}, key: {Type: "PRIVATE KEY", Bytes: secret}} {
		if err := os.WriteFile(file, pem.EncodeToMemory(block), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	parsed, err := x509.ParseCertificate(signed)
	if err != nil {
		t.Fatal(err)
	}
	trusted := x509.NewCertPool()
	trusted.AddCert(parsed)
	return &http.Client{Transport: &http.Transport{TLSClientConfig: &tls.Config{RootCAs: trusted}}}
}

func TestHTTPS(t *testing.T) {
	dir := t.TempDir()
	certificate, key := filepath.Join(dir, "book.crt"), filepath.Join(dir, "book.key")
	client := selfSigned(t, certificate, key)
	for _, half := range []Options{{Certificate: certificate}, {Key: key}, {Certificate: key, Key: certificate}} {
		if _, err := half.secure(); err == nil {
			t.Errorf("%+v is taken", half)
		}
	}
	content := filepath.Join(dir, "content")
	if err := sitetest.Write(content, 1); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ready, done := make(chan []Address, 1), make(chan error, 1)
	go func() {
		done <- Run(ctx, Options{
			Addr: "127.0.0.1:0", Certificate: certificate, Key: key,
			Site:  site.Options{Content: content, Core: core.Core{Module: []byte("\x00asm"), Script: []byte(";")}},
			Ready: func(list []Address) { ready <- list },
		})
	}()
	var list []Address
	select {
	case list = <-ready:
	case err := <-done:
		t.Fatal(err)
	}
	r, err := client.Get(list[0].URL)
	if err != nil {
		t.Fatal(err)
	}
	_ = r.Body.Close()
	if r.StatusCode != http.StatusOK || !strings.HasPrefix(list[0].URL, "https://") {
		t.Errorf("%s answers with %d", list[0].URL, r.StatusCode)
	}
	client.CloseIdleConnections()
	stop()
	if err := <-done; err != nil {
		t.Error(err)
	}
}
