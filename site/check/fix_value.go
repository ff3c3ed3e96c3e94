package check

import (
	"baybook/site/finding"
	"baybook/site/sheet"
)

// fixDigits is the edit that writes other digits into the text of a computed
// number; none where markup stands within the text.
func (p *Pass) fixDigits(v *sheet.Value, q *quantity, digits string) func(*finding.Finding) {
	written := string(p.Sheet.Source.Text()[v.Span.Start:v.Span.End])
	if written != v.Words || written == "" {
		return func(*finding.Finding) {}
	}
	at := sheet.Span{Start: v.Span.Start + q.number.Start, End: v.Span.Start + q.number.End}
	return withFix("write "+digits, at, digits)
}

// fixWords is the edit that writes another text for a computed number.
func (p *Pass) fixWords(v *sheet.Value, words string) func(*finding.Finding) {
	written := string(p.Sheet.Source.Text()[v.Span.Start:v.Span.End])
	if written != v.Words || written == "" {
		return func(*finding.Finding) {}
	}
	return withFix("write "+words, v.Span, words)
}
