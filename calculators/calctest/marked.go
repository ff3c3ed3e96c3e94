package calctest

// drawn are the calculators that must have a figure, because a person would
// rather look than read.
var drawn = []string{
	"wire-drop", "fuse-tap", "supply-budget", "feed-plan", "second-battery", "pulse-average",
	"coil-load", "crossover", "sealed-box", "vented-box", "speaker-fit", "adapter-ring", "damping-cover",
	"camera-view", "rear-objects", "guide-lines", "sensor-row",
	"bundle", "hinge-slack",
}
