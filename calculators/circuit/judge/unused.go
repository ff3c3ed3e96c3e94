package judge

import (
	"strconv"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var unused = Rule{Name: "unused", judge: judgeUnused}

var unusedManual = Manual{
	Rule:  "unused",
	Warns: true,
	Title: "What is drawn is used",
	Why: `A fuse, splice, ground or way of a connector on which nothing hangs is mostly a
name that was typed wrongly somewhere else, and so is a point under body: that
no ground has. A way that is left free on purpose is not drawn.`,
	Good: lampCircuit,
	Mistake: []string{
		`  G1: {point: roof}
`,
		`  G1: {point: roof}
  G2: {point: floor}
`,
	},
}

// judgeUnused finds parts of which a side hangs in the air, and points of the
// body that no ground has.
func judgeUnused(s *solve.Study, say func(Judgment)) {
	n := s.Network
	used := n.Attachments()
	free := func(b *circuit.Base, pin string) bool { return used[b.Node(pin)] < 2 }
	for i, p := range n.Parts {
		b := p.Basics()
		if b.Vehicle {
			continue
		}
		what := ""
		switch p := p.(type) {
		case *circuit.Fuse:
			if free(b, "in") || free(b, "out") {
				what = "the fuse " + b.Name + " has a side on which nothing hangs"
			}
		case *circuit.Splice:
			if used[b.Pins[0].Node] < 3 {
				what = "the splice " + b.Name + " joins nothing"
			}
		case *circuit.Ground:
			if free(b, "lug") {
				what = "nothing stands on the ground " + b.Name
			}
		case *circuit.Connector:
			what = freeWay(p, free)
		case *circuit.Body:
			what = loosePoint(n, p)
		}
		if what == "" {
			continue
		}
		do := "join it, or take it out"
		if body, ok := p.(*circuit.Body); ok {
			do = "name a point that a ground has"
			for _, point := range [...]string{body.From, body.To} {
				if near := calc.Nearest(point, points(n)); near != "" && !hasGround(n, point) {
					do = "did you mean " + near + "?"
				}
			}
		}
		say(Judgment{Verdict: calc.Check, Part: i, Message: what, Do: do})
	}
}

// freeWay says which way of a connector is joined on one side only, or that
// none is joined; "" where that is not so.
func freeWay(c *circuit.Connector, free func(b *circuit.Base, pin string) bool) string {
	joined := false
	for w := 1; w <= c.Ways; w++ {
		in, out := free(&c.Base, strconv.Itoa(w)+".in"), free(&c.Base, strconv.Itoa(w)+".out")
		if in != out {
			return "way " + strconv.Itoa(w) + " of " + c.Name + " is joined on one side only"
		}
		joined = joined || !in
	}
	if !joined {
		return "nothing is joined to the connector " + c.Name
	}
	return ""
}

// loosePoint says which of a body's points no ground has, "" where both have one.
func loosePoint(n *circuit.Network, body *circuit.Body) string {
	for _, point := range [...]string{body.From, body.To} {
		if !hasGround(n, point) {
			return "no ground is at the point " + point
		}
	}
	return ""
}

func hasGround(n *circuit.Network, point string) bool {
	for _, p := range n.Parts {
		if g, ok := p.(*circuit.Ground); ok && g.Point == point {
			return true
		}
	}
	return false
}

// points lists the points that grounds have.
func points(n *circuit.Network) []string {
	var list []string
	for _, p := range n.Parts {
		if g, ok := p.(*circuit.Ground); ok {
			list = append(list, g.Point)
		}
	}
	return list
}
