package circuit

import (
	"strconv"
	"strings"
)

// AppendNetlist writes the circuit in one state as a SPICE deck that finds the
// same operating point: relays and amplifiers as this solver found them,
// loads as sources whose current depends on their voltage.
func AppendNetlist(b []byte, n *Network, state int) []byte {
	s := newSolver(n)
	s.settle(state)
	b = append(b, "* "+oneLine(n.Title)+", state "+oneLine(n.States[state].Name)+"\n"...)
	node := func(i int) string {
		if s.pinned[i] {
			return "0"
		}
		return "n" + strconv.Itoa(i)
	}
	for i := range s.live {
		br := &s.live[i]
		if s.open[i] || br.From == br.To {
			continue
		}
		name := oneLine(n.of(br).Name + " " + br.Part)
		b = append(b, "* "+strings.TrimSpace(name)+"\n"...)
		b = appendDevice(b, br, strconv.Itoa(i), node(br.From), node(br.To), s.floor)
	}
	b = append(b, ".options reltol=1e-9 abstol=1e-12 vntol=1e-10 gmin=1e-18\n.op\n.end\n"...)
	return b
}

// appendDevice writes one branch.
func appendDevice(b []byte, br *Branch, id, from, to string, floor float64) []byte {
	v := "V(" + from + "," + to + ")"
	switch br.Law {
	case Resists:
		return append(b, "R"+id+" "+from+" "+to+" "+decimal(br.Ohms)+"\n"...)
	case Drives:
		inner := "s" + id
		b = append(b, "V"+id+" "+inner+" "+from+" "+decimal(br.Volts)+"\n"...)
		return append(b, "R"+id+" "+inner+" "+to+" "+decimal(br.Ohms)+"\n"...)
	case Takes:
		return append(b, "B"+id+" "+from+" "+to+" I = "+v+" >= "+decimal(floor)+" ? "+decimal(br.Amps)+" : "+
			decimal(br.Amps/floor)+"*"+v+"\n"...)
	case Converts:
		return append(b, "B"+id+" "+from+" "+to+" I = "+v+" >= "+decimal(floor)+" ? "+decimal(br.Watts)+"/"+v+" : "+
			decimal(br.Watts/(floor*floor))+"*"+v+"\n"...)
	}
	return append(b, "B"+id+" "+from+" "+to+" I = "+v+" > "+decimal(br.Volts)+" ? "+
		decimal(leak+br.Strings/br.Ohms)+"*"+v+" - "+decimal(br.Strings/br.Ohms*br.Volts)+" : "+decimal(leak)+"*"+v+"\n"...)
}

// decimal writes a number so that reading it gives it again.
func decimal(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// oneLine keeps a comment of the deck on its line.
func oneLine(s string) string {
	return strings.Map(func(c rune) rune {
		if c < ' ' {
			return ' '
		}
		return c
	}, s)
}
