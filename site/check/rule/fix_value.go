package rule

import (
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// fixDigits is the edit that writes other digits into the text of a computed
// number; none where markup stands within the text.
func fixDigits(p *check.Pass, v *sheet.Value, q *english.Quantity, digits string) func(*finding.Finding) {
	written := string(p.Sheet.Source.Text()[v.Span.Start:v.Span.End])
	if written != v.Words || written == "" {
		return func(*finding.Finding) {}
	}
	at := sheet.Span{Start: v.Span.Start + q.Start, End: v.Span.Start + q.NumberEnd}
	return check.WithFix("write "+digits, at, digits)
}

// fixWords is the edit that writes another text for a computed number.
func fixWords(p *check.Pass, v *sheet.Value, words string) func(*finding.Finding) {
	written := string(p.Sheet.Source.Text()[v.Span.Start:v.Span.End])
	if written != v.Words || written == "" {
		return func(*finding.Finding) {}
	}
	return check.WithFix("write "+words, v.Span, words)
}

// fixLimit is the edit that writes another text for a limit.
func fixLimit(p *check.Pass, l *sheet.LimitLink, words string) func(*finding.Finding) {
	written := string(p.Sheet.Source.Text()[l.Span.Start:l.Span.End])
	if written != l.Words || written == "" {
		return func(*finding.Finding) {}
	}
	return check.WithFix("write "+words, l.Span, words)
}
