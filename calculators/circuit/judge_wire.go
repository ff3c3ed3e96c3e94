package circuit

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/electrical"
)

// judgeShort finds states in which metal joins the terminals of a source.
func judgeShort(s *Study, say func(Judgement)) {
	n := s.Network
	for _, set := range s.sets {
		if set.state < 0 {
			continue
		}
		for _, i := range n.sourceBranches() {
			b := &n.Branches[i]
			if s.graph.reach([]int{b.To}, func(k int) bool { return !set.open[k] && s.graph.metal(k) })[b.From] {
				say(Judgement{Verdict: calc.Stop, Element: b.Element, State: set.name,
					Message: "in the state " + set.name + " " + n.of(b).Name + "+ is joined to " + n.of(b).Name + "- with no load between them",
					Do:      "follow the wires from " + n.of(b).Name + "+ and take the one off that leads straight back"})
			}
		}
	}
}

// judgeUnfused finds wires too far from the source without a fuse, and loads
// with none before them.
func judgeUnfused(s *Study, say func(Judgement)) {
	n := s.Network
	for _, set := range s.sets {
		runs := s.graph.runs(set.open)
		for i := range n.Branches {
			b := &n.Branches[i]
			e := n.of(b)
			switch {
			case set.open[i] || e.Vehicle:
			case e.Kind == Wire:
				judgeRun(s, runs, i, say)
			case (e.isLoad() && b.Law != Drives || b.Part == "coil") && b.Part != "rem":
				if math.IsInf(runs[b.From], 1) && (b.Part != "coil" || math.IsInf(runs[b.To], 1)) {
					continue
				}
				say(Judgement{Verdict: calc.Stop, Element: b.Element, Message: e.Name + " has no fuse before it",
					Do: "put a fuse between the source and " + e.Name + ", close to the source"})
			}
		}
	}
}

// judgeRun judges one wire by how far it goes from the source unfused.
func judgeRun(s *Study, runs []float64, i int, say func(Judgement)) {
	b := &s.Network.Branches[i]
	e := s.Network.of(b)
	limit, how := s.Network.Limits.Bare, "bare"
	if e.Sheathed {
		limit, how = s.Network.Limits.Covered, "sheathed"
	}
	end := math.Min(runs[b.From], runs[b.To]) + e.Length
	if math.IsInf(end, 1) || !calc.Over(end, limit) {
		return
	}
	say(Judgement{Verdict: calc.Stop, Element: b.Element,
		Message: e.Name + " ends " + show(end, "m") + " from the source with no fuse before it; a " + how + " wire may run " + show(limit, "m") + " (33 CFR 183.455)",
		Do:      "put the fuse at the source, before " + e.Name})
}

// judgeFuseOverWire compares what the fuses let through with what each wire
// may carry, from each of its ends.
func judgeFuseOverWire(s *Study, say func(Judgement)) {
	n := s.Network
	for _, set := range s.sets {
		for i := range n.Branches {
			b := &n.Branches[i]
			e := n.of(b)
			if e.Kind != Wire || e.Vehicle || set.open[i] || !set.feed[b.From] || !set.feed[b.To] || set.ret[b.From] || set.ret[b.To] {
				continue
			}
			limit := n.Limit(e)
			for _, end := range [...]int{b.From, b.To} {
				through, cut := s.graph.lets(end, i, set.open)
				if math.IsInf(through, 1) || !calc.Over(through, limit) {
					continue
				}
				say(fuseOverWire(n, b.Element, through, limit, cut))
			}
		}
	}
}

// fuseOverWire words that judgement.
func fuseOverWire(n *Network, wire int, through, limit float64, cut []int) Judgement {
	e := &n.Elements[wire]
	before := n.names(cut) + " of " + amps(through)
	if len(cut) > 1 {
		before = n.names(cut) + ", " + amps(through) + " together"
	}
	do := "take a smaller fuse"
	if size := n.sizeFor(e, through); size != "" {
		do = "take a smaller fuse, or the smallest size that carries it: " + size
	}
	return Judgement{Verdict: calc.Stop, Element: wire, Do: do,
		Message: e.Name + " is behind " + before + " and may carry " + amps(limit) + " (" + e.Size + ", " + calc.FormatUnit(e.Insulation, 3, "C") +
			" insulation in air of " + calc.FormatUnit(n.Limits.Ambient, 3, "C") + ")"}
}

// judgeBurns judges what a short does to each wire.
func judgeBurns(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range s.Shorts {
		short := &s.Shorts[i]
		if short.Survives || s.unfused(short.Wire) {
			continue // a wire that has no fuse before it is judged by its length
		}
		e := &n.Elements[short.Wire]
		j := Judgement{Verdict: calc.Stop, Element: short.Wire, Do: "put a smaller fuse before it, or take a thicker wire"}
		j.Message = "a short at the far end of " + e.Name + " drives " + amps(short.Amps) + "; the fuse may take " + seconds(short.Opens) + ", and the wire bears it for " + seconds(short.Bears)
		if math.IsInf(short.Opens, 1) {
			j.Message = "a short at the far end of " + e.Name + " drives " + amps(short.Amps) + " through it for good: what fuses there are need not open, and the wire may carry " + amps(n.Limit(e))
		}
		say(j)
	}
}

// unfused reports a wire that a source reaches without a fuse.
func (s *Study) unfused(wire int) bool {
	e := &s.Network.Elements[wire]
	for _, set := range s.sets {
		if runs := s.graph.runs(set.open); !math.IsInf(math.Min(runs[e.Pins[0].Node], runs[e.Pins[1].Node]), 1) {
			return true
		}
	}
	return false
}

// judgeOverloaded compares the current of every state with what the wire may
// carry.
func judgeOverloaded(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e := n.of(b)
		if e.Kind != Wire || e.Vehicle {
			continue
		}
		carries, state := s.most(i)
		if limit := n.Limit(e); calc.Over(carries, limit) {
			do := "divide the load"
			if size := n.sizeFor(e, carries); size != "" {
				do = "the smallest size that carries it is " + size
			}
			say(Judgement{Verdict: calc.Stop, Element: b.Element, State: n.States[state].Name, Do: do,
				Message: e.Name + " carries " + amps(carries) + " in the state " + n.States[state].Name + ", and may carry " + amps(limit)})
		}
	}
}

// judgeFuseUnderLoad compares the current of every state with the fuse.
func judgeFuseUnderLoad(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e := n.of(b)
		if e.Kind != Fuse || b.Part != "" {
			continue
		}
		carries, state := s.most(i)
		j := Judgement{Verdict: calc.Stop, Element: b.Element, State: n.States[state].Name, Do: "divide the load"}
		if rating, ok := electrical.FuseFor(carries); ok {
			j.Do = "take a fuse of " + amps(rating) + " if the wire behind it may carry that, or divide the load"
		}
		of := e.Name + " carries " + amps(carries) + " in the state " + n.States[state].Name
		switch {
		case calc.Over(carries, e.Rating):
			j.Message = of + ", " + amps(carries-e.Rating) + " more than its rating of " + amps(e.Rating)
			say(j)
		case calc.Over(carries, electrical.FuseLoading*e.Rating):
			j.Verdict = calc.Check
			j.Message = of + ", over four fifths of its " + amps(e.Rating) + "; it will open one warm day"
			say(j)
		default:
			judgeSurge(s, i, carries, say)
		}
	}
}

// judgeSurge adds to a fuse's current what its loads take when they start.
func judgeSurge(s *Study, i int, carries float64, say func(Judgement)) {
	n := s.Network
	fuse := n.of(&n.Branches[i])
	for k := range n.Branches {
		b := &n.Branches[k]
		e := n.of(b)
		if e.Inrush == 0 || b.Law == Drives || b.Part == "rem" {
			continue
		}
		steady, state := s.most(k)
		if e.Inrush <= steady || !s.behind(i, k, state) {
			continue
		}
		total := carries - steady + e.Inrush
		if opens := FastestOpening(fuse, total); opens < e.Surge {
			say(Judgement{Verdict: calc.Check, Element: n.Branches[i].Element,
				Message: fuse.Name + " may open after " + seconds(opens) + " when " + e.Name + " starts: " + amps(total) + " for " + seconds(e.Surge),
				Do:      "take the next fuse that the wire bears, or a slower type"})
		}
	}
}

// behind reports a load that loses its feed when a branch is opened.
func (s *Study) behind(branch, load, state int) bool {
	open := s.sets[state].open
	pass := func(k int) bool { return k != branch && !open[k] && s.Network.passes(&s.Network.Branches[k]) }
	return !s.graph.reach(s.Network.plus(), pass)[s.Network.Branches[load].From]
}

// judgeFuseMade judges a fuse by what its type is made in, and by the current
// that a short can drive through it.
func judgeFuseMade(s *Study, say func(Judgement)) {
	n := s.Network
	for i := range n.Elements {
		e := &n.Elements[i]
		if e.Kind == Fuse && !family(e).made(e.Rating) {
			list := ""
			for k, r := range family(e).ratings {
				if k > 0 {
					list += " "
				}
				list += calc.Format(r, 4)
			}
			say(Judgement{Verdict: calc.Stop, Element: i, Message: "type " + e.Type + " is not made for " + amps(e.Rating),
				Do: "take one of " + list + " A, or another type"})
		}
	}
	for i := range s.Shorts {
		short := &s.Shorts[i]
		if short.Fuse < 0 {
			continue
		}
		if e := &n.Elements[short.Fuse]; calc.Over(short.Amps, family(e).breaks) {
			say(Judgement{Verdict: calc.Check, Element: short.Fuse,
				Message: "a short at " + n.Elements[short.Wire].Name + " drives " + amps(short.Amps) + ", and type " + e.Type + " breaks at most " + amps(family(e).breaks),
				Do:      "put a bolt-down fuse that breaks more at the source"})
		}
	}
}
