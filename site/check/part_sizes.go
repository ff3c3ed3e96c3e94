package check

import (
	"slices"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

// Sizes are those of one sort of part that a sheet knows.
type Sizes []calc.Quantity

// Has reports whether a size is among them.
func (l Sizes) Has(q *english.Quantity) bool { return NumberList(l).Has(q) }

// String lists the sizes in the order in which they were met.
func (l Sizes) String() string {
	var texts []string
	for _, q := range l {
		text := calc.FormatUnit(q.Value, 3, q.Unit.Symbol)
		if !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
	}
	return strings.Join(texts, ", ")
}

// PartSizes are the fuses and the wires that a sheet's drawings, lists and
// computations have, and those of its drawings alone.
type PartSizes struct{ Fuses, Wires, DrawnFuses, DrawnWires Sizes }

// Of is the list that a number belongs to: fuses for "2 A fuse", wires for "16
// AWG"; nil where it is neither, or the sheet knows none.
func (k *PartSizes) Of(text string, q *english.Quantity) (Sizes, string) {
	switch {
	case q.IsGauge():
		return k.Wires, "wire"
	case q.Unit.Symbol == "A" && english.SpeaksOf(text, q, "fuse"):
		return k.Fuses, "fuse"
	}
	return nil, ""
}

// Parts collects the fuses and wires of the sheet, at the first call.
func (f *SheetFacts) Parts() *PartSizes {
	if f.parts == nil {
		f.parts = f.readParts()
	}
	return f.parts
}

func (f *SheetFacts) readParts() *PartSizes {
	k := &PartSizes{}
	for _, c := range CircuitsOf(f.Sheet) {
		for _, part := range c.Network.Parts {
			switch part := part.(type) {
			case *circuit.Fuse:
				k.DrawnFuses = append(k.DrawnFuses, calc.Quantity{Value: part.Rating, Unit: ampere()})
			case *circuit.Wire:
				for _, q := range english.Quantities(part.Size) {
					k.DrawnWires = append(k.DrawnWires, q.Quantity)
				}
			}
		}
	}
	k.Fuses, k.Wires = append(k.Fuses, k.DrawnFuses...), append(k.Wires, k.DrawnWires...)
	for _, list := range [...][]*english.Text{f.Front.Materials, f.Front.Tools} {
		for _, t := range list {
			k.add(t.Source)
		}
	}
	for _, c := range f.Sheet.Computations() {
		for _, pair := range c.Pairs {
			for value := range strings.SplitSeq(pair.Value, ",") {
				k.addInput(pair.Key, value)
			}
		}
	}
	for _, c := range f.ComputedNumbers() {
		if c.Noun == "fuse" {
			k.Fuses = append(k.Fuses, c.Quantity)
		}
	}
	return k
}

func ampere() calc.Unit {
	unit, _ := calc.LookupUnit("A")
	return unit
}

// add takes in what a text of the lists names.
func (k *PartSizes) add(text string) {
	for _, q := range english.Quantities(text) {
		switch {
		case q.IsGauge():
			k.Wires = append(k.Wires, q.Quantity)
		case q.Unit.Symbol == "A" && strings.Contains(text, "fuse"):
			k.Fuses = append(k.Fuses, q.Quantity)
		}
	}
}

// addInput takes in what a computation is given.
func (k *PartSizes) addInput(key, value string) {
	for _, q := range english.Quantities(value) {
		switch {
		case q.IsGauge():
			k.Wires = append(k.Wires, q.Quantity)
		case q.Unit.Symbol == "A" && (strings.Contains(key, "fuse") || strings.Contains(key, "slot") || strings.Contains(key, "tap")):
			k.Fuses = append(k.Fuses, q.Quantity)
		}
	}
}

// CircuitsOf are the circuits of a sheet that can be solved.
func CircuitsOf(s *sheet.Sheet) []*sheet.Circuit {
	var list []*sheet.Circuit
	for _, f := range s.Fences {
		if f.Circuit != nil && f.Circuit.Network != nil {
			list = append(list, f.Circuit)
		}
	}
	return list
}
