package find

import "strconv"

// testSheet is a sheet of the invented book that the tests search.
type testSheet struct {
	number, title, address, opening string
	words                           []string
	steps                           []string
}

var testSheets = []testSheet{
	{"GR-02", "Ground point on painted steel", "ground/ground-point.html", "A bolted return to the body that reads under its limit and stays so.", []string{"chassis return"}, []string{
		"Mark the point on bare, unseamed sheet away from any airbag bracket.",
		"Drill a 5 mm pilot hole with a depth stop set 3 mm past the sheet.",
		"Sand the paint off to bright metal in a ring wider than the terminal.",
		"Tighten the M6 bolt with its serrated washer to the torque of the table.",
		"Brush primer over the bare ring so that it does not rust.",
	}},
	{"GR-03", "Shared returns and noise", "ground/shared-and-noisy.html", "How a hum or an alternator whine comes about and how it is found.", []string{"whine", "hum"}, []string{
		"Unplug the amplifier inputs and listen whether the whine stays.",
		"Move every earth of the sound system to one bolt.",
	}},
	{"GR-05", "Strap across a hinge", "ground/hinge-strap.html", "A braided ground strap that carries the return of a lid past its hinge.", nil, []string{
		"Measure the slack with the lid fully open.",
		"Crimp a ring terminal on each end of the braid.",
	}},
	{"PA-03", "Through the door boot", "passage/door-boot.html", "Take a cable from the pillar into a door through the rubber boot.", []string{"door bellows", "gaiter"}, []string{
		"Release the boot from the pillar with a plastic pry tool.",
		"Push a greased nylon rod through the boot beside the factory harness.",
		"Pull the cable through and leave slack for the full swing of the door.",
		"Swing the door twenty times and look for chafing.",
	}},
	{"PA-04", "Bulkhead grommet", "passage/bulkhead-grommet.html", "Bring a battery cable into the cab through an existing grommet.", nil, []string{
		"Pierce the grommet with an awl, away from the factory harness.",
		"Form a drip loop on the engine side.",
		"Seal the cable with non-corrosive silicone.",
	}},
	{"PA-07", "A new hole", "passage/new-hole.html", "The last choice: drill, deburr, prime and line a hole in sheet metal.", nil, []string{
		"Look behind the panel with a mirror or an inspection camera.",
		"Drill the pilot, then open it with a step bit.",
		"Deburr both sides and prime the edge.",
		"Press in the grommet before any wire passes.",
	}},
	{"PO-01", "Fuse tap", "power/fuse-tap.html", "Take a switched feed from the fuse box without cutting a wire.", []string{"add-a-circuit", "piggyback"}, []string{
		"Find the feed side of the slot with a meter.",
		"Put the original fuse back in its lower slot of the tap.",
		"Choose the new fuse for the new wire, not for the load.",
	}},
	{"PO-02", "Relay feed", "power/relay-feed.html", "Switch a heavy load from the battery with a small trigger.", nil, []string{
		"Fit the fuse within 200 mm of the battery post.",
		"Wire coil terminals 85 and 86, and a flyback diode if the relay has none.",
		"Wire the load to terminal 87 and the supply to 30.",
	}},
	{"PO-05", "Standby current", "power/standby-current.html", "Measure what the van draws asleep, in milliampere.", []string{"parasitic draw", "dark current"}, []string{
		"Put the meter in series before you lift the negative clamp.",
		"Wait until the modules sleep and read the current.",
	}},
	{"CA-01", "Rear camera", "camera/rear-camera.html", "Mount a camera above the plate, centred and level.", []string{"reversing camera", "backup camera"}, []string{
		"Find the centre between the hinges, not between the handles.",
		"Route the video cable away from the wiper motor.",
		"Connect the trigger wire to the reverse-lamp feed at 12 V.",
		"Tie the GND wire of the camera to a proven point.",
		"Check the picture in the display mirror at night.",
	}},
	{"CA-03", "Aim and prove a camera", "camera/aim-and-prove.html", "Show that the picture holds what stands behind the van.", nil, []string{
		"Set posts at 0.3 m and 3.3 m behind the bumper.",
		"Time the picture from selecting reverse.",
	}},
	{"SP-02", "Speaker adapter ring", "speakers/fit-adapter.html", "Cut and seal a ring that holds a 165 mm speaker clear of the glass.", nil, []string{
		"Lower the window and measure the depth to the glass.",
		"Seal the ring with closed-cell foam.",
		"Mark the polarity of both wires before crimping the spades.",
	}},
	{"WI-01", "Splice and crimp", "wiring/splice-and-crimp.html", "Join two wires so that the joint is stronger than the wire.", []string{"joint", "butt connector"}, []string{
		"Slide the heat-shrink sleeve on first.",
		"Strip 7 mm without nicking a strand.",
		"Crimp with the die for the barrel's colour, then pull.",
	}},
	{"WI-04", "Heat-shrink and seal", "wiring/heat-shrink.html", "Close a joint against water with adhesive-lined sleeve.", nil, []string{
		"Warm from the middle outwards until adhesive shows at both ends.",
	}},
	{"SA-02", "Disconnect the battery", "safety/battery-disconnect.html", "Make the vehicle dead, and bring it back with its memories.", nil, []string{
		"Switch the ignition off and let the modules sleep.",
		"Lift the negative clamp first and insulate it.",
		"Wait as long as the maker's service information says before any airbag work.",
	}},
}

var testCalculators = []Doc{
	{Sheet: -1, Kind: Calculator, Title: "Voltage drop of a wire run", Address: "calculators/wire-drop.html", Text: "What is lost between battery and load, there and back.", Words: []string{"line loss"}},
	{Sheet: -1, Kind: Calculator, Title: "Fuse size", Address: "calculators/fuse-size.html", Text: "The fuse that protects a wire and carries its load."},
	{Sheet: -1, Kind: Calculator, Title: "Drill size for a tap", Address: "calculators/drill-size.html", Text: "The pilot hole for a metric thread."},
}

var testSynonyms = [][]string{
	{"ground", "earth", "gnd", "ground strap", "earthing point"},
	{"AWG", "wire gauge"},
	{"head unit", "receiver", "radio"},
	{"hood", "bonnet"},
	{"crimp connector", "butt connector"},
	{"standby current", "quiescent current", "sleep current"},
}

// testDocs is the invented book, 62 documents.
func testDocs() []Doc {
	var docs []Doc
	for i, s := range testSheets {
		docs = append(docs, Doc{Sheet: int32(i), Kind: Sheet, Title: s.title, Number: s.number, Address: s.address, Text: s.opening, Words: s.words})
		for n, text := range s.steps {
			docs = append(docs, Doc{Sheet: int32(i), Kind: Step, Title: s.title, Number: s.number, Address: s.address + "#step-" + strconv.Itoa(n+1), Text: text})
		}
	}
	docs = append(docs, Doc{Sheet: 0, Kind: Section, Title: "Prove it", Number: "GR-02", Address: "ground/ground-point.html#prove-it", Text: "Load the circuit and read the drop from the ring terminal to the battery post."})
	return append(docs, testCalculators...)
}
