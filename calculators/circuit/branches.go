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

// branches turns every part into the ways that current may take through it.
// Terminals on which nothing hangs get none.
func (b *builder) branches() {
	n := b.n
	used := n.attachments()
	source := &n.Elements[n.first(Source)]
	add := func(i int, br Branch) {
		br.Element = i
		if br.Law == Resists || br.Law == Drives {
			br.Ohms = math.Max(br.Ohms, leastOhms)
		}
		n.Branches = append(n.Branches, br)
	}
	for i := range n.Elements {
		e := &n.Elements[i]
		switch e.Kind {
		case Source:
			add(i, Branch{From: e.node("-"), To: e.node("+"), Law: Drives, Volts: e.Volts, Ohms: e.Internal})
			add(i, Branch{Part: "feeds", From: e.node("+"), To: e.node("-"), Law: Takes, Amps: e.Feeds})
		case Fuse:
			add(i, Branch{From: e.node("in"), To: e.node("out"), Ohms: fuseOhms(e)})
			if e.Feeds > 0 {
				add(i, Branch{Part: "feeds", From: e.node("out"), To: source.node("-"), Law: Takes, Amps: e.Feeds})
			}
		case Switch:
			add(i, Branch{From: e.node("in"), To: e.node("out"), Ohms: e.Ohms})
		case Wire:
			r := electrical.ConductorResistance(electrical.MaterialNamed(e.Conductor), n.Limits.Temperature, e.Length, e.Area)
			add(i, Branch{From: e.node("from"), To: e.node("to"), Ohms: r})
		case Ground:
			add(i, Branch{From: e.node("lug"), To: e.node("point"), Ohms: e.Ohms})
		case Body:
			add(i, Branch{From: e.node("from"), To: e.node("to"), Ohms: e.Ohms})
		case Speaker:
			add(i, Branch{From: e.node("+"), To: e.node("-"), Ohms: e.Ohms})
		case Load:
			add(i, loadBranch(e))
		case LEDs:
			add(i, Branch{From: e.node("+"), To: e.node("-"), Law: Lights, Ohms: math.Max(e.Ohms, leastOhms), Volts: float64(e.Count) * e.Forward, Strings: float64(e.Strings)})
		case Connector:
			for w := 1; w <= e.Count; w++ {
				way := strconv.Itoa(w)
				if in, out := e.node(way+".in"), e.node(way+".out"); used[in] > 1 || used[out] > 1 {
					add(i, Branch{Part: "way " + way, From: in, To: out, Ohms: e.Ohms})
				}
			}
		case Relay:
			relayBranches(e, used, func(br Branch) { add(i, br) })
		case Amplifier:
			amplifierBranches(e, used, source.Volts, func(br Branch) { add(i, br) })
		}
	}
}

// loadBranch is the way through a load, by what the writer gave.
func loadBranch(e *Element) Branch {
	b := Branch{From: e.node("+"), To: e.node("-")}
	switch {
	case e.Current > 0:
		b.Law, b.Amps = Takes, e.Current
	case e.Power > 0:
		b.Law, b.Watts = Converts, e.Power
	default:
		b.Ohms = e.Ohms
	}
	return b
}

// relayBranches are the coil, with a resistor across it where it has one, and
// the contacts to which something is joined.
func relayBranches(e *Element, used []int, add func(Branch)) {
	add(Branch{Part: "coil", From: e.node("86"), To: e.node("85"), Ohms: e.Coil})
	if e.Suppression == "resistor" {
		add(Branch{Part: "damping", From: e.node("86"), To: e.node("85"), Ohms: e.Damping})
	}
	for _, c := range [...]struct{ part, pin string }{{"make", "87"}, {"break", "87a"}} {
		if used[e.node(c.pin)] > 1 {
			add(Branch{Part: c.part, From: e.node("30"), To: e.node(c.pin), Ohms: e.Ohms})
		}
	}
}

// amplifierBranches are its supply, its switch-on lead and its outputs. An
// output is the voltage that gives its power into its rated load.
func amplifierBranches(e *Element, used []int, supply float64, add func(Branch)) {
	b := Branch{Part: "supply", From: e.node("+"), To: e.node("-"), Law: Takes, Amps: e.Current}
	if e.Power > 0 {
		b.Law, b.Watts = Converts, e.Power
	}
	add(b)
	if used[e.node("rem")] > 1 && e.Remote > 0 {
		add(Branch{Part: "rem", From: e.node("rem"), To: e.node("-"), Ohms: supply / e.Remote})
	}
	for c := 1; c <= e.Count; c++ {
		way := strconv.Itoa(c)
		plus, minus := e.node(way+"+"), e.node(way+"-")
		if used[plus] > 1 || used[minus] > 1 {
			add(Branch{Part: "output " + way, From: minus, To: plus, Law: Drives, Volts: math.Sqrt(e.Output * e.Ohms), Ohms: leastOhms})
		}
	}
}
