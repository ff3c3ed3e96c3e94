package circuit

import (
	"math"
	"strconv"

	"baybook/calculators/electrical"
)

// attachments counts the terminals on every node.
func (n *Network) attachments() []int {
	count := make([]int, n.Nodes)
	for i := range n.Elements {
		for _, p := range n.Elements[i].Pins {
			count[p.Node]++
		}
	}
	return count
}

// way adds a branch from one terminal of a part to another.
func (b *builder) way(i int, part, from, to string) *Branch {
	e := &b.n.Elements[i]
	return b.between(i, part, e.node(from), e.node(to))
}

// between adds a branch of a part from one node to another.
func (b *builder) between(i int, part string, from, to int) *Branch {
	b.n.Branches = append(b.n.Branches, Branch{Element: i, Part: part, From: from, To: to})
	return &b.n.Branches[len(b.n.Branches)-1]
}

// branches turns every part into the ways that current may take through it.
// Terminals on which nothing hangs get none.
func (b *builder) branches() {
	n := b.n
	used := n.attachments()
	for i := range n.Elements {
		b.branchesOf(i, used)
	}
	for i := range n.Branches {
		if br := &n.Branches[i]; br.Law == Resists || br.Law == Drives || br.Law == Lights {
			br.Ohms = math.Max(br.Ohms, leastOhms)
		}
	}
}

func (b *builder) branchesOf(i int, used []int) {
	n := b.n
	e := &n.Elements[i]
	source := &n.Elements[n.first(Source)]
	switch e.Kind {
	case Source:
		br := b.way(i, "", "-", "+")
		br.Law, br.Volts, br.Ohms = Drives, e.Volts, e.Internal
		br = b.way(i, "feeds", "+", "-")
		br.Law, br.Amps = Takes, e.Feeds
	case Fuse:
		b.way(i, "", "in", "out").Ohms = fuseOhms(e)
		if e.Feeds > 0 {
			br := b.between(i, "feeds", e.node("out"), source.node("-"))
			br.Law, br.Amps = Takes, e.Feeds
		}
	case Switch:
		b.way(i, "", "in", "out").Ohms = e.Ohms
	case Wire:
		b.way(i, "", "from", "to").Ohms = electrical.ConductorResistance(electrical.MaterialNamed(e.Conductor), n.Limits.Temperature, e.Length, e.Area)
	case Ground:
		b.way(i, "", "lug", "point").Ohms = e.Ohms
	case Body:
		b.way(i, "", "from", "to").Ohms = e.Ohms
	case Speaker:
		b.way(i, "", "+", "-").Ohms = e.Ohms
	case Load:
		b.load(b.way(i, "", "+", "-"), e)
	case LEDs:
		br := b.way(i, "", "+", "-")
		br.Law, br.Ohms, br.Volts, br.Strings = Lights, e.Ohms, float64(e.Count)*e.Forward, float64(e.Strings)
	case Connector:
		for w := 1; w <= e.Count; w++ {
			way := strconv.Itoa(w)
			if used[e.node(way+".in")] > 1 || used[e.node(way+".out")] > 1 {
				b.way(i, "way "+way, way+".in", way+".out").Ohms = e.Ohms
			}
		}
	case Relay:
		b.relay(i, used)
	case Amplifier:
		b.amplifier(i, used, source.Volts)
	}
}

// load makes a branch the way through a load, by what the writer gave.
func (b *builder) load(br *Branch, e *Element) {
	switch {
	case e.Current > 0:
		br.Law, br.Amps = Takes, e.Current
	case e.Power > 0:
		br.Law, br.Watts = Converts, e.Power
	default:
		br.Ohms = e.Ohms
	}
}

// relay adds the coil, with a resistor across it where it has one, and the
// contacts to which something is joined.
func (b *builder) relay(i int, used []int) {
	e := &b.n.Elements[i]
	b.way(i, "coil", "86", "85").Ohms = e.Coil
	if e.Suppression == "resistor" {
		b.way(i, "damping", "86", "85").Ohms = e.Damping
	}
	for _, c := range [...]struct{ part, pin string }{{"make", "87"}, {"break", "87a"}} {
		if used[e.node(c.pin)] > 1 {
			b.way(i, c.part, "30", c.pin).Ohms = e.Ohms
		}
	}
}

// amplifier adds its supply, its switch-on lead and its outputs. An output is
// the voltage that gives its power into its rated load.
func (b *builder) amplifier(i int, used []int, supply float64) {
	e := &b.n.Elements[i]
	b.load(b.way(i, "supply", "+", "-"), e)
	if used[e.node("rem")] > 1 && e.Remote > 0 {
		b.way(i, "rem", "rem", "-").Ohms = supply / e.Remote
	}
	for c := 1; c <= e.Count; c++ {
		way := strconv.Itoa(c)
		if used[e.node(way+"+")] > 1 || used[e.node(way+"-")] > 1 {
			br := b.way(i, "output "+way, way+"-", way+"+")
			br.Law, br.Volts = Drives, math.Sqrt(e.Output*e.Ohms)
		}
	}
}
