package sheet

import (
	"strings"
	"testing"

	"baybook/calculators"
	"baybook/site/finding"
)

// inFile holds that every finding lies in the file that it is about.
func inFile(t *testing.T, list finding.List, length int) {
	t.Helper()
	for _, f := range list {
		if f.Pos.Offset < 0 || f.Pos.Offset+f.Length > length || f.Rule == "" || f.Message == "" {
			t.Fatalf("%s: the finding %q (%s) lies outside the file or says nothing", f.Pos, f.Message, f.Rule)
		}
	}
}

// spansInFile holds that every part of a sheet lies in its file.
func spansInFile(t *testing.T, s *Sheet) {
	t.Helper()
	n := len(s.Source.Text())
	hold := func(what string, at Span) {
		if at.Start < 0 || at.End < at.Start || at.End > n {
			t.Fatalf("%s lies at %d to %d of %d bytes", what, at.Start, at.End, n)
		}
	}
	for _, m := range s.Messages {
		hold("a message", m.Span)
		for _, title := range m.Titles {
			hold("a title", title.Span)
			if string(s.Source.Text()[title.Span.Start:title.Span.End]) != title.Text {
				t.Fatalf("the title %q is not where it says", title.Text)
			}
		}
	}
	for _, st := range s.Steps {
		hold("a step", st.Span)
	}
	for _, v := range s.Values {
		hold("a value", v.Span)
		hold("its link", v.Link)
	}
	for _, r := range s.Readings {
		hold("a reading", r.Span)
		hold("its link", r.Link)
	}
	for _, l := range s.Links {
		hold("a link", l.Span)
	}
	for _, f := range s.Figures {
		hold("a figure", f.Span)
	}
}

const fuzzFront = "---\ntitle: A sheet\nnumber: EX-01\nrevision: A\ndate: 2026-01-02\nowner: Bench\nkind: guide\nminutes: 5\nskill: apprentice\n---\n"

// FuzzSheet reads any bytes as a sheet.
func FuzzSheet(f *testing.F) {
	f.Add(fuzzFront + "Words.\n\n## Steps\n\n1. Look.\n\n   > **WARNING: Exhaust gas.** It kills.\n")
	f.Add(strings.ReplaceAll(fuzzFront, "\n", "\r\n") + "\ufeff")
	f.Add("---\n---\n# x\n\n| a |\n|---|\n| [1 V](calc:wire-drop#drop) |\n")
	f.Add("")
	reader := NewReader(calculators.All)
	f.Fuzz(func(t *testing.T, text string) {
		s, list := reader.Parse("area/sheet.md", []byte(text))
		inFile(t, list, len(text))
		spansInFile(t, s)
	})
}

// FuzzMessage reads any words as a safety message.
func FuzzMessage(f *testing.F) {
	for _, seed := range [...]string{"**WARNING: Exhaust gas. Belts and fan.** It kills.", "**NOTICE:** x", "**DANGER: *a*. [b](c).** d", "**warning: x.** y", "**A:", "**WARNING: a\nb.**"} {
		f.Add(seed)
	}
	reader := NewReader(calculators.All)
	f.Fuzz(func(t *testing.T, words string) {
		text := fuzzFront + "Words.\n\n## Before you start\n\n> " + strings.ReplaceAll(words, "\n", "\n> ") + "\n"
		s, list := reader.Parse("area/sheet.md", []byte(text))
		inFile(t, list, len(text))
		spansInFile(t, s)
		for _, m := range s.Messages {
			if m.Word < Notice || m.Word > Danger {
				t.Fatalf("the message has the word %d", m.Word)
			}
		}
	})
}

// FuzzLink reads any address as a calc: or reading: link.
func FuzzLink(f *testing.F) {
	for _, seed := range [...]string{"calc:wire-drop?current=6A&length=4m&wire=14AWG#drop", "calc:wire-drop?wire=20AWG,18AWG#drop", "calc:wire-drop?current=4..12A#drop",
		"reading:drop?max=100mV", "reading:x?min=1V&max=2V", "calc:#", "calc:wire-drop?%zz", "reading:", "calc:wire-drop?current=1e309A#drop"} {
		f.Add("0.41 V", seed)
	}
	reader := NewReader(calculators.All)
	f.Fuzz(func(t *testing.T, words, address string) {
		text := fuzzFront + "Words [" + words + "](" + address + ") more.\n\n[" + words + "](" + address + ")\n"
		s, list := reader.Parse("area/sheet.md", []byte(text))
		inFile(t, list, len(text))
		spansInFile(t, s)
		for _, v := range s.Values {
			if v.Result == nil || len(v.Outputs) != 1 {
				t.Fatal("a value without its result")
			}
		}
	})
}

// FuzzYAML reads any bytes as each of the data files and as front matter.
func FuzzYAML(f *testing.F) {
	for _, seed := range [...]string{"- id: a\n  title: A\n", "name: x\nbook: y\n", "- &a [*a]\n", "a: {b: [c, {d: e}]}", "- 1\n- ~\n- !!binary x\n", "\t", "? a\n: b\n", "date: 2026-13-01"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var list finding.List
		report := func(x finding.Finding) { list = append(list, x) }
		src := finding.NewSource("x.yaml", []byte(text))
		if !readable(src, report) {
			return
		}
		readRegister(src, report)
		readGlossary(src, report)
		readShop(src, report)
		readFront(src, Span{0, len(text)}, report)
		inFile(t, list, len(text))
	})
}
