// Package calculators is the list of every calculator, in the order in which
// a reader should meet them, and nothing else.
package calculators

import (
	"baybook/calculators/audio"
	"baybook/calculators/calc"
	"baybook/calculators/camera"
	"baybook/calculators/electrical"
	"baybook/calculators/mechanical"
	"baybook/calculators/shop"
)

// All are the calculators.
var All = []*calc.Calculator{
	electrical.WireDrop,
	electrical.FeedPlan,
	electrical.FuseSize,
	electrical.FuseTap,
	electrical.GroundTest,
	electrical.Standby,
	electrical.BatteryRun,
	electrical.SecondBattery,
	electrical.LEDResistor,
	electrical.SupplyBudget,
	electrical.PulseAverage,
	audio.CoilLoad,
	audio.GainVoltage,
	audio.Crossover,
	audio.SealedBox,
	audio.VentedBox,
	audio.Delay,
	audio.Loudness,
	audio.SpeakerFit,
	audio.AdapterRing,
	audio.DampingCover,
	camera.CameraView,
	camera.GuideLines,
	camera.RearObjects,
	camera.VideoLevel,
	camera.SensorRow,
	mechanical.BundleSize,
	mechanical.PassHole,
	mechanical.ShrinkTube,
	mechanical.HingeSlack,
	mechanical.BoltTorque,
	mechanical.DrillSize,
	shop.JobPrice,
}

// Named finds a calculator, nil where there is none.
func Named(name string) *calc.Calculator {
	for _, c := range All {
		if c.Name == name {
			return c
		}
	}
	return nil
}

// Names lists the names of all calculators.
func Names() []string {
	var names []string
	for _, c := range All {
		names = append(names, c.Name)
	}
	return names
}
