package judge

var wrong = Rule{Name: "wrong"}

var wrongManual = Manual{
	Rule:  "wrong",
	Firm:  true,
	Title: "A drawing that is marked as showing a mistake shows that mistake",
	Why: `The mark wrong: [tap-turned] keeps the mistake from stopping the book, so the
mistake has to be there. A drawing put right loses its mark.`,
	Good: tapCircuit,
	Mistake: []string{
		`  tap: {rating: 2 A, taps: slot 12, from: slot 12.out}
`,
		`  tap: {rating: 2 A, taps: slot 12}
`,
	},
}
