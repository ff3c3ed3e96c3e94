package draw

import "baybook/calculators/circuit"

// plan makes the layout nodes: one for each source and output, then for whatever
// they do not reach.
func (p *layouter) plan() *layoutNode {
	all := &layoutNode{bare: true, exit: -1}
	for i := range p.Network.Branches {
		if b := &p.Network.Branches[i]; b.Pushes() && !p.visited[b.To] {
			all.kids = append(all.kids, p.root(b.To))
		}
	}
	all.kids = p.meet(all.kids, true)
	for i := 0; i < len(all.kids); i++ {
		if v := all.kids[i].exit; v >= 0 {
			p.mark(all.kids[i])
			if !p.visited[v] {
				all.kids = append(all.kids, p.root(v))
			}
		}
	}
	for node := p.highest(); node >= 0; node = p.highest() {
		all.kids = append(all.kids, p.root(node))
	}
	return all
}

// root starts a layout node at a node.
func (p *layouter) root(node int) *layoutNode {
	p.visited[node] = true
	st := &layoutNode{exit: -1}
	out := p.outputAt(node)
	switch {
	case out >= 0: // an output stands at the top itself, and its way ends on its other terminal
		p.used[out] = true
		st.add(item{branch: out, flip: true, node: node})
	case p.joint[node] < 0:
		st.add(item{kind: railItem, branch: -1, node: node})
	}
	p.divide(st, node)
	return st
}

// outputAt is the branch of the amplifier's output of which a node is the
// positive terminal, -1 for none.
func (p *layouter) outputAt(node int) int {
	for i := range p.Network.Branches {
		if b := &p.Network.Branches[i]; b.Role == circuit.Output && b.To == node {
			return i
		}
	}
	return -1
}

// highest is the highest node from which something is still to be drawn, -1
// for none.
func (p *layouter) highest() int {
	best := -1
	for b := range p.Network.Branches {
		br := &p.Network.Branches[b]
		for _, node := range [...]int{br.From, br.To} {
			if (best < 0 || p.order[node] < p.order[best]) && p.down(b, node) {
				best = node
			}
		}
	}
	return best
}

// divide draws on from a node: its splice, then a layout node for every way down.
func (p *layouter) divide(st *layoutNode, node int) {
	if p.joint[node] >= 0 {
		st.add(item{kind: jointItem, branch: -1, node: node})
	}
	var kids []*layoutNode
	for _, sources := range [...]bool{true, false} {
		for _, b := range p.Graph.At[node] {
			if p.down(b, node) && p.Network.Branches[b].Pushes() == sources {
				kids = append(kids, p.way(b, node))
			}
		}
	}
	kids = p.meet(kids, false)
	p.leave(st, kids)
	if len(kids) == 1 {
		k := kids[0]
		st.items = append(st.items, k.items...)
		st.kids, st.after = k.kids, k.after
		return
	}
	st.kids = kids
}

// way draws one branch from a node down, and on from its other end.
func (p *layouter) way(b, node int) *layoutNode {
	p.used[b] = true
	br := &p.Network.Branches[b]
	next := p.Graph.Other(b, node)
	st := &layoutNode{exit: -1, items: []item{{branch: b, flip: br.To == node, node: next}}}
	for _, l := range p.linked[br.Part] {
		if br.Role == circuit.Through || br.Role == circuit.SupplyInput {
			st.add(item{kind: linkItem, branch: -1, node: br.Part, text: p.linkText(l, br.Part)})
		}
	}
	switch {
	case p.inner(b):
	case p.lug[next] >= 0:
		st.add(item{branch: p.lug[next]})
	case p.minus[next] && !br.Pushes():
		st.add(item{kind: minusItem, branch: -1, node: next})
	case p.visited[next]:
		st.add(item{kind: flagItem, branch: -1, node: next})
	case p.into[next] > 1 && !p.minus[next]:
		st.exit, st.ends = next, 1
	default:
		p.visited[next] = true
		p.divide(st, next)
		if br.Pushes() && len(st.items) == 1 && len(st.kids) == 0 {
			st.add(item{kind: minusItem, branch: -1, node: next})
		}
	}
	return st
}

// linkText names the other end of a cable: "video to mirror".
func (p *layouter) linkText(link, from int) string {
	l := p.Network.Parts[link].(*circuit.Link)
	if p.Network.Name(from) == l.From {
		return l.Carries + " to " + l.To
	}
	return l.Carries + " from " + l.From
}

// meet closes the nodes on which all the ways that lead to them end among
// these layout nodes: those become one, with the node and what follows below.
func (p *layouter) meet(kids []*layoutNode, bare bool) []*layoutNode {
	for {
		node, first := -1, -1
		for i, k := range kids {
			if k.exit >= 0 && !p.visited[k.exit] && p.endsOn(kids, k.exit) == p.into[k.exit] {
				node, first = k.exit, i
				break
			}
		}
		if node < 0 {
			return kids
		}
		p.visited[node] = true
		whole := &layoutNode{bare: bare, exit: -1}
		var rest []*layoutNode
		for i, k := range kids {
			if i == first {
				rest = append(rest, whole)
			}
			if k.exit == node {
				whole.kids = append(whole.kids, k)
			} else {
				rest = append(rest, k)
			}
		}
		whole.after = &layoutNode{exit: -1}
		p.divide(whole.after, node)
		whole.exit, whole.ends = whole.after.exit, whole.after.ends
		kids = rest
	}
}

// endsOn counts the ways of some layout nodes that end on a node.
func (p *layouter) endsOn(kids []*layoutNode, node int) int {
	n := 0
	for _, k := range kids {
		if k.exit == node {
			n += k.ends
		}
	}
	return n
}

// leave gives a layout node the exit of its kids. Where they have several, the
// one with the most ways stays, and the others end in marks.
func (p *layouter) leave(st *layoutNode, kids []*layoutNode) {
	for _, k := range kids {
		if k.exit < 0 {
			continue
		}
		if ends := p.endsOn(kids, k.exit); ends > st.ends {
			st.exit, st.ends = k.exit, ends
		}
	}
	for _, k := range kids {
		if k.exit >= 0 && k.exit != st.exit {
			p.mark(k)
		}
	}
}

// mark ends the ways that leave a layout node in marks instead.
func (p *layouter) mark(st *layoutNode) {
	p.into[st.exit] -= st.ends
	unhook(st, st.exit)
}

func unhook(st *layoutNode, node int) {
	if st.exit != node {
		return
	}
	st.exit, st.ends = -1, 0
	if st.after != nil {
		unhook(st.after, node)
		return
	}
	inside := false
	for _, k := range st.kids {
		if k.exit == node {
			unhook(k, node)
			inside = true
		}
	}
	if !inside {
		st.add(item{kind: flagItem, branch: -1, node: node})
	}
}
