package list

import (
	"strconv"

	"baybook/calculators/circuit"
)

// A Pinout is a connector as it is loaded, both halves seen from the side on
// which their wires go in.
type Pinout struct {
	Connector string
	Ways      []PinoutWay
}

// A PinoutWay is one way of a connector: the wires on the half that current
// comes from and on the other, with their colors and sizes; both are empty for
// a way that stays free.
type PinoutWay struct {
	Number   string
	In, Out  []Wire
	Function string
}

// Pinouts are those of every connector that is not there already.
func Pinouts(n *circuit.Network) []Pinout {
	var list []Pinout
	for i, p := range n.Parts {
		c, ok := p.(*circuit.Connector)
		if !ok || c.Vehicle {
			continue
		}
		out := Pinout{Connector: c.Name}
		for w := 1; w <= c.Ways; w++ {
			number := strconv.Itoa(w)
			way := PinoutWay{Number: number, In: wiresAt(n, i, number+".in"), Out: wiresAt(n, i, number+".out")}
			for _, wires := range [...][]Wire{way.In, way.Out} {
				for _, wire := range wires {
					if way.Function == "" {
						way.Function = wire.Function
					}
				}
			}
			out.Ways = append(out.Ways, way)
		}
		list = append(list, out)
	}
	return list
}

// wiresAt are the wires of which an end lies on a terminal.
func wiresAt(n *circuit.Network, part int, pin string) []Wire {
	var list []Wire
	for _, w := range Wires(n) {
		at, _ := n.Part(w.Number).(*circuit.Wire)
		for _, end := range at.Ends {
			if end == (circuit.End{Part: part, Pin: pin}) {
				list = append(list, w)
			}
		}
	}
	return list
}
