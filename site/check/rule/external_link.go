package rule

import (
	"net/url"
	"strings"

	"baybook/site/check"
)

var externalLink = &check.Rule{
	Name: "external-link",
	Firm: true,
	Doc: `A link that leaves the book is a plain web, mail or telephone address

Only https:, http:, mailto: and tel: are accepted, with a host or an address.
Whether something answers there is not asked: nothing leaves this machine.`,
	Check: func(p *check.Pass) {
		for _, l := range p.Sheet.Links {
			if !p.Sheet.Resolve(l.Dest).Outside {
				continue
			}
			if msg := badAddress(l.Dest); msg != "" {
				p.Report(l.Span, msg, "write an address that starts with https://, http://, mailto: or tel:")
			}
		}
	},
}

// badAddress says what is wrong with an address that leaves the book; empty
// where nothing is.
func badAddress(address string) string {
	u, err := url.Parse(address)
	switch {
	case err != nil:
		return "the address cannot be read"
	case u.Scheme == "":
		return "the address names no scheme"
	}
	switch strings.ToLower(u.Scheme) {
	case "https", "http":
		if u.Hostname() == "" {
			return "the address names no host"
		}
		if u.User != nil {
			return "the address carries a name or a password"
		}
	case "mailto":
		if !strings.Contains(u.Opaque, "@") {
			return "the mail address has no @"
		}
	case "tel":
		if strings.Trim(u.Opaque, "+0123456789-.() ") != "" || u.Opaque == "" {
			return "the telephone number has other signs than digits"
		}
	default:
		return "a link of the kind " + u.Scheme + ": is not accepted"
	}
	return ""
}
