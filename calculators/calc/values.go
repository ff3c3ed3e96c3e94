package calc

// Values are the inputs of one computation, read and in range.
type Values struct {
	calculator *Calculator
	list       []Value // parallel to the calculator's Inputs
	// found is the calculator's search, and more whether it goes on.
	found Search
	more  bool
}

// Calculator is the calculator that the values are for.
func (v *Values) Calculator() *Calculator { return v.calculator }

// At is the value of the i-th input.
func (v *Values) At(i int) Value { return v.list[i] }

// Get is the value of the named input. It panics on a name that the
// calculator does not list, which is a fault of the program.
func (v *Values) Get(name string) Value { return *v.at(name) }

// at is Get without the copy.
func (v *Values) at(name string) *Value { return &v.list[v.calculator.input(name)] }

// Num is a number in the input's own unit.
func (v *Values) Num(name string) float64 { return v.at(name).Num }

// SI is a number in the base unit of its dimension: m, m2, A, V, ohm, rad,
// parts of one for a percentage, degrees Celsius for a temperature. A wire's
// is its area in m2.
func (v *Values) SI(name string) float64 {
	i := v.calculator.input(name)
	u := mustUnit(v.calculator.Inputs[i].unit())
	return v.list[i].Num*u.Base + u.Zero
}

// Int is a count.
func (v *Values) Int(name string) int { return int(v.at(name).Num) }

// Word is the word given.
func (v *Values) Word(name string) string { return v.at(name).Text }

// Given reports whether an input has a value; an optional one may have none.
func (v *Values) Given(name string) bool { return v.at(name).Text != "" }

// unit is the unit of the input's number: a wire counts in mm2.
func (in *Input) unit() string {
	if in.Kind == Wire {
		return "mm2"
	}
	return in.Unit
}
