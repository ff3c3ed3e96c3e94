package serve

import (
	"errors"
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
		return net.Listen("tcp", o.Addr)
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

// addresses lists the ways to a listener: this machine's own, then those of
// its networks.
func addresses(at *net.TCPAddr) []Address {
	port := strconv.Itoa(at.Port)
	if !at.IP.IsUnspecified() {
		return []Address{{URL: "http://" + net.JoinHostPort(at.IP.String(), port) + "/", Loopback: at.IP.IsLoopback()}}
	}
	list := []Address{{URL: "http://" + net.JoinHostPort("127.0.0.1", port) + "/", Loopback: true}}
	all, err := net.InterfaceAddrs()
	if err != nil {
		return list
	}
	for _, a := range all {
		if network, ok := a.(*net.IPNet); ok {
			if ip := network.IP.To4(); ip != nil && ip.IsGlobalUnicast() {
				list = append(list, Address{URL: "http://" + net.JoinHostPort(ip.String(), port) + "/"})
			}
		}
	}
	return list
}
