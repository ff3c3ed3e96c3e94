package circuit

import (
	"math"
	"strconv"

	"baybook/calculators/electrical"
)

// branch adds a branch of a part from one of its terminals to another.
func (b *builder) branch(i int, role Role, from, to string) *Branch {
	base := b.n.Parts[i].Basics()
	return b.between(i, role, base.Node(from), base.Node(to))
}

// between adds a branch of a part from one node to another.
func (b *builder) between(i int, role Role, from, to int) *Branch {
	b.n.Branches = append(b.n.Branches, Branch{Part: i, Kind: b.n.Parts[i].Basics().Kind, Role: role, From: from, To: to})
	return &b.n.Branches[len(b.n.Branches)-1]
}

// branches turns every part into the ways that current may take through it.
// Terminals on which nothing hangs get none.
func (b *builder) branches() {
	used := b.n.Attachments()
	for i := range b.n.Parts {
		b.branchesOf(i, used)
	}
	b.floors()
}

func (b *builder) branchesOf(i int, used []int) {
	switch p := b.n.Parts[i].(type) {
	case *Source:
		br := b.branch(i, Through, "-", "+")
		br.Law, br.Volts, br.Ohms = VoltageSource, p.Volts, p.Internal
		br = b.branch(i, Feeding, "+", "-")
		br.Law, br.Amps = CurrentLoad, p.Feeds
	case *Fuse:
		b.branch(i, Through, "in", "out").Ohms = p.resistance()
		if p.Feeds > 0 {
			br := b.between(i, Feeding, p.Node("out"), b.n.Supply().Node("-"))
			br.Law, br.Amps = CurrentLoad, p.Feeds
		}
	case *Switch:
		if p.Ways == 1 {
			b.branch(i, Through, "in", "out").Ohms = p.Ohms
		}
		for w := 1; w <= p.Ways && p.Ways > 1; w++ {
			if pin := strconv.Itoa(w); used[p.Node(pin)] > 1 {
				br := b.branch(i, Position, "in", pin)
				br.Number, br.Ohms = w, p.Ohms
			}
		}
	case *Alternator:
		b.branch(i, Through, "-", "+").regulated(p.Volts, p.Ohms, p.Amps)
	case *Converter:
		b.branch(i, SupplyInput, "+", "-").Law = PowerLoad
		b.branch(i, Converted, "out-", "out+").regulated(p.Volts, p.Ohms, p.Amps)
	case *Diode:
		br := b.branch(i, Through, "in", "out")
		br.Law, br.Ohms, br.Volts, br.Strings = LEDString, p.Ohms, p.Forward, 1
	case *Wire:
		b.branch(i, Through, "from", "to").Ohms = electrical.ConductorResistance(electrical.MaterialNamed(p.Conductor), p.Temperature, p.Length, p.Area)
	case *Ground:
		b.branch(i, Through, "lug", "point").Ohms = p.Ohms
	case *Body:
		b.branch(i, Through, "from", "to").Ohms = p.Ohms
	case *Speaker:
		b.branch(i, Through, "+", "-").Ohms = p.Ohms
	case *Load:
		b.branch(i, Through, "+", "-").demand(&p.Demand, p.Ohms)
	case *LEDs:
		br := b.branch(i, Through, "+", "-")
		br.Law, br.Ohms, br.Volts, br.Strings = LEDString, p.Ohms, float64(p.Count)*p.Forward, float64(p.Strings)
	case *Connector:
		b.ways(i, p, used)
	case *Relay:
		b.relay(i, p, used)
	case *Amplifier:
		b.amplifier(i, p, used)
	}
}

// regulated makes a branch one that holds a voltage up to a current.
func (br *Branch) regulated(volts, ohms, amps float64) {
	br.Law, br.Volts, br.Ohms, br.Amps = Regulated, volts, ohms, amps
}

// floors says of every load what half its supply is: that of the first source,
// or of the converter on whose output it hangs.
func (b *builder) floors() {
	n := b.n
	for i := range n.Branches {
		n.Branches[i].Floor = n.Supply().Volts / 2
	}
	for i := range n.Branches {
		out := &n.Branches[i]
		if out.Role != Converted {
			continue
		}
		behind := make([]bool, n.Nodes)
		behind[out.To] = true
		for again := true; again; {
			again = false
			for k := range n.Branches {
				if way := &n.Branches[k]; n.Passes(way) && behind[way.From] != behind[way.To] {
					behind[way.From], behind[way.To], again = true, true, true
				}
			}
		}
		for k := range n.Branches {
			if load := &n.Branches[k]; behind[load.From] && !behind[load.To] {
				load.Floor = math.Min(load.Floor, out.Volts/2)
				if out.Volts > n.Supply().Volts {
					load.Floor = out.Volts / 2
				}
			}
		}
	}
}

// demand makes a branch the way through a load, by what the writer gave.
func (br *Branch) demand(d *Demand, ohms float64) {
	switch {
	case d.Current > 0:
		br.Law, br.Amps = CurrentLoad, d.Current
	case d.Power > 0:
		br.Law, br.Watts = PowerLoad, d.Power
	default:
		br.Ohms = ohms
	}
}

// ways adds the ways of a connector to which something is joined.
func (b *builder) ways(i int, c *Connector, used []int) {
	for w := 1; w <= c.Ways; w++ {
		in, out := c.Node(wayPin(w, ".in")), c.Node(wayPin(w, ".out"))
		if used[in] > 1 || used[out] > 1 {
			br := b.between(i, Way, in, out)
			br.Number, br.Ohms = w, c.Ohms
			if len(c.Each) == c.Ways {
				br.Ohms = c.Each[w-1]
			}
		}
	}
}

// relay adds the coil, with a resistor across it where it has one, and the
// contacts to which something is joined.
func (b *builder) relay(i int, r *Relay, used []int) {
	b.branch(i, Coil, "86", "85").Ohms = r.Coil
	if r.Suppression == "resistor" {
		b.branch(i, CoilDamping, "86", "85").Ohms = r.Damping
	}
	for _, c := range [...]struct {
		role Role
		pin  string
	}{{MakeContact, "87"}, {BreakContact, "87a"}} {
		if used[r.Node(c.pin)] > 1 {
			b.branch(i, c.role, "30", c.pin).Ohms = r.Ohms
		}
	}
}

// amplifier adds its supply, its switch-on lead and its outputs. An output is
// the voltage that gives its power into its rated load.
func (b *builder) amplifier(i int, a *Amplifier, used []int) {
	b.branch(i, SupplyInput, "+", "-").demand(&a.Demand, a.Ohms)
	if used[a.Node("rem")] > 1 && a.Remote > 0 {
		b.branch(i, RemoteInput, "rem", "-").Ohms = b.n.Supply().Volts / a.Remote
	}
	for c := 1; c <= a.Channels; c++ {
		plus, minus := a.Node(wayPin(c, "+")), a.Node(wayPin(c, "-"))
		if used[plus] > 1 || used[minus] > 1 {
			br := b.between(i, Output, minus, plus)
			br.Number, br.Law, br.Volts = c, VoltageSource, math.Sqrt(a.Output*a.Ohms)
		}
	}
}
