package electrical_test

import (
	"fmt"
	"math"
	"testing"

	"baybook/calculators/electrical"
)

// TestGroundScales: a reading at any current tells the same joint, and at its
// own current it tells itself.
func TestGroundScales(t *testing.T) {
	for _, current := range []float64{0.5, 4, 20, 250} {
		r := compute(t, electrical.GroundTest, fmt.Sprintf("drop=%gmV&current=%gA&full_load=%gA", 3*current, current, current))
		if !same(r.Num("resistance"), 3) || !same(r.Num("at_full_load"), 3*current) || !same(r.Num("heat"), 3e-3*current*current) {
			t.Errorf("3 mohm at %g A reads %+v", current, r.Outputs)
		}
	}
	if r := compute(t, electrical.GroundTest, "drop=0.06V&current=20000mA"); !same(r.Num("resistance"), 3) {
		t.Errorf("60 mV at 20 A is %g mohm", r.Num("resistance"))
	}
}

// TestStandbyRunsDown draws the battery down hour by hour and stops at the
// floor.
func TestStandbyRunsDown(t *testing.T) {
	r := compute(t, electrical.Standby, "battery=70Ah&charge=90%25&floor=40%25&standing=35mA&added=120mA&self_discharge=4%25")
	charge, hours := 0.9*70, 0.0
	for charge > 0.4*70 {
		charge -= 0.035 + 0.120 + 70*0.04/730.5
		hours++
	}
	if got := r.Num("lasts") * 24; got > hours || got < hours-1 {
		t.Errorf("lasts %.2f h, run down in %g h", got, hours)
	}
	double := compute(t, electrical.Standby, "battery=140Ah&charge=90%25&floor=40%25&standing=70mA&added=0.24A&self_discharge=4%25")
	if !same(double.Num("lasts"), r.Num("lasts")) || !same(double.Num("draw"), 2*r.Num("draw")) {
		t.Errorf("twice the battery and twice the draw: %+v and %+v", r.Outputs, double.Outputs)
	}
}

// TestNextE24: over six decades the value is of the series, at or above what
// is asked; the widest step of the series is 13 to 15.
func TestNextE24(t *testing.T) {
	for ohms := 0.011; ohms < 1e4; ohms *= 1.013 {
		got := electrical.NextE24(ohms)
		if got < ohms*(1-1e-9) || got > 15.0/13*ohms {
			t.Errorf("%g ohm gets %g ohm", ohms, got)
		}
		if again := electrical.NextE24(got); again != got {
			t.Errorf("%g ohm is of the series, but gets %g ohm", got, again)
		}
		// two figures of the decade, IEC 60063
		mantissa := got / math.Pow(10, math.Floor(math.Log10(got)+1e-9)-1)
		if math.Abs(mantissa-math.Round(mantissa)) > 1e-6 {
			t.Errorf("%g ohm has more than two figures", got)
		}
	}
}

// TestLEDHeat: heat is I²R, the current is never over what was asked, and the
// size takes twice the heat.
func TestLEDHeat(t *testing.T) {
	for _, current := range []float64{1, 7, 20, 150} {
		for count := 1; count <= 6; count++ {
			r := compute(t, electrical.LEDResistor, fmt.Sprintf("supply=14.4&forward=2.1&count=%d&current=%gmA", count, current))
			amps := r.Num("actual") / 1e3
			if !same(r.Num("power"), amps*amps*r.Num("resistor")) || r.Num("actual") > current*(1+1e-9) {
				t.Errorf("%d LEDs at %g mA: %+v", count, current, r.Outputs)
			}
			if a := r.Get("rating"); a.Present && a.Num < 2*r.Num("power")*(1-1e-9) {
				t.Errorf("%d LEDs at %g mA: %g W in a resistor of %g W", count, current, r.Num("power"), a.Num)
			}
		}
	}
}

// TestClassB averages a sine from a class B stage on an ideal supply, and
// finds the share of the full-power current at a share of the power.
func TestClassB(t *testing.T) {
	drawn := func(amplitude float64) float64 { // mean of the half-wave current
		const n = 20000
		sum := 0.0
		for i := range n {
			sum += math.Abs(amplitude * math.Sin(2*math.Pi*(float64(i)+0.5)/n))
		}
		return sum / n
	}
	for _, share := range []float64{0.01, 0.125, 1.0 / 3, 0.5, 1} {
		want := drawn(math.Sqrt(share)) / drawn(1)
		if got := electrical.AverageShare("ab", share); math.Abs(got-want) > 1e-9 {
			t.Errorf("at %g of the power class ab draws %g, a sine draws %g", share, got, want)
		}
		if d := electrical.AverageShare("d", share); d > electrical.AverageShare("ab", share)+1e-12 {
			t.Errorf("at %g of the power class d draws %g, more than class ab", share, d)
		}
	}
}

// TestBudgetAdds: what is left and what is drawn make up the alternator.
func TestBudgetAdds(t *testing.T) {
	r := compute(t, electrical.SupplyBudget, "alternator=90&idle_share=40%25&base=30&other=6&amp_power=0.6kW&amp_class=ab&efficiency=60%25&voltage=13.5")
	drawn := 36 + r.Num("average")
	if !same(r.Num("cruise_spare")+drawn, 90) || !same(r.Num("idle_spare")+drawn, 36) || !same(r.Num("full_power")*0.6*13.5, 600) {
		t.Errorf("%+v", r.Outputs)
	}
}
