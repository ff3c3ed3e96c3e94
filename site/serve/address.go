package serve

import (
	"crypto/tls"
	"errors"
	"fmt"
	"net"
	"strconv"
	"syscall"
)

// An Address is one way to the book.
type Address struct {
	// URL is what to type into a browser.
	URL string
	// Loopback is true where only this machine reaches it.
	Loopback bool
}

// listen opens the listener that the options ask for. The usual port may be
// taken by another book; one that was asked for may not.
func (o Options) listen() (net.Listener, error) {
	if o.Addr != "" {
		addr, err := o.asked()
		if err != nil {
			return nil, err
		}
		return net.Listen("tcp", addr)
	}
	host := "127.0.0.1"
	if o.LAN {
		host = ""
	}
	listener, err := net.Listen("tcp", net.JoinHostPort(host, usualPort))
	if errors.Is(err, syscall.EADDRINUSE) {
		return net.Listen("tcp", net.JoinHostPort(host, "0"))
	}
	return listener, err
}

// asked reads the address that was asked for: HOST:PORT, or a port alone, which
// is this machine's own. What others on the network can reach takes -lan.
func (o Options) asked() (string, error) {
	addr := o.Addr
	if _, err := strconv.ParseUint(addr, 10, 16); err == nil {
		host := "127.0.0.1"
		if o.LAN {
			host = ""
		}
		return net.JoinHostPort(host, addr), nil
	}
	host, port, err := net.SplitHostPort(addr)
	if err != nil {
		return "", fmt.Errorf("%q is no address to listen on; write a port such as 9123, or HOST:PORT", addr)
	}
	if !o.LAN && !loopback(host) {
		return "", fmt.Errorf("%s can be reached from the network; add -lan if others are to read the book, or write -addr %s", addr, port)
	}
	return addr, nil
}

// loopback reports whether only this machine reaches a host.
func loopback(host string) bool {
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// secure reads the certificate; nil where plain HTTP is spoken.
func (o Options) secure() (*tls.Config, error) {
	switch {
	case o.Certificate == "" && o.Key == "":
		return nil, nil
	case o.Certificate == "" || o.Key == "":
		return nil, errors.New("a certificate and its key go together; name both files, with -cert and -key")
	}
	pair, err := tls.LoadX509KeyPair(o.Certificate, o.Key)
	if err != nil {
		return nil, fmt.Errorf("the certificate %s with the key %s cannot be used; both must be PEM and belong together: %w", o.Certificate, o.Key, err)
	}
	return &tls.Config{Certificates: []tls.Certificate{pair}, MinVersion: tls.VersionTLS12, NextProtos: []string{"http/1.1"}}, nil
}

// addresses lists the ways to a listener: this machine's own, then those of
// its networks.
func addresses(at *net.TCPAddr, secure *tls.Config) []Address {
	scheme := "http://"
	if secure != nil {
		scheme = "https://"
	}
	port := strconv.Itoa(at.Port)
	if !at.IP.IsUnspecified() {
		return []Address{{URL: scheme + net.JoinHostPort(at.IP.String(), port) + "/", Loopback: at.IP.IsLoopback()}}
	}
	list := []Address{{URL: scheme + net.JoinHostPort("127.0.0.1", port) + "/", Loopback: true}}
	all, err := net.InterfaceAddrs()
	if err != nil {
		return list
	}
	for _, a := range all {
		if network, ok := a.(*net.IPNet); ok {
			if ip := network.IP.To4(); ip != nil && ip.IsGlobalUnicast() {
				list = append(list, Address{URL: scheme + net.JoinHostPort(ip.String(), port) + "/"})
			}
		}
	}
	return list
}
