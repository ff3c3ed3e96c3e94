package calctest

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/fstest"

	"baybook/calculators/calc"
)

// sound is a calculator in which the kit finds no fault; tests break a copy.
func sound() *calc.Calculator {
	return &calc.Calculator{
		Name: "double-it", Title: "Twice a length", Question: "How long?", Decides: "twice", Doc: "Twice as long.",
		Inputs: []calc.Input{
			{Name: "length", Label: "Length", Unit: "m", Min: 0, Max: 10, Default: "1", Help: "Measure it."},
			{Name: "way", Label: "Way", Kind: calc.Word, Words: []string{"up", "down"}, Default: "up", Help: "Either."},
		},
		Outputs: []calc.Output{{Name: "twice", Label: "Twice", Unit: "mm"}, {Name: "word", Label: "Word", Text: true}},
		Sources: []calc.Source{{Text: "arithmetic"}}, Limits: []string{"None."}, Cautions: []string{"None."},
		Run: func(in *calc.Values, out *calc.Result) *calc.Problem {
			out.SetSI("twice", 2*in.SI("length"))
			out.SetText("word", in.Word("way"))
			out.Work("2 × {length} = {twice}")
			return nil
		},
		Figure: func(_ *calc.Values, out *calc.Result) *calc.Drawing {
			d := calc.NewDrawing(320, 100, out.Fill("{twice} long"))
			d.Text(calc.Point{X: 10, Y: 20}, calc.Start, out.Fill("{twice}"))
			d.Text(calc.Point{X: 310, Y: 20}, calc.End, "end")
			return d
		},
	}
}

const goodTable = "query,output,expected,unit,tolerance,source\n"

func folder(name, rows string) fstest.MapFS {
	return fstest.MapFS{name: {Data: []byte(goodTable + rows)}}
}

const goodRow = "length=2m,twice,4,m,1e-9,arithmetic\n"

func TestRows(t *testing.T) {
	for _, test := range []struct{ row, says string }{
		{"length=2m,twice,4,m,1e-9,arithmetic", ""},
		{"length=2m,twice,4000,mm,1e-9,arithmetic", ""},
		{"length=2m,twice,4.1,m,0.2abs,arithmetic", ""},
		{"length=2m,word,up,,,arithmetic", ""},
		{"length=2m,verdict,ok,,,arithmetic", ""},
		{"length=20m,,refused,,,arithmetic", ""},
		{"length=2m,twice,4.1,m,1e-3,arithmetic", "published 4.1"},
		{"length=2m,twice,NaN,m,1e-3,arithmetic", "published NaN"},
		{"length=2m,twice,4,kg,1e-9,arithmetic", "does not convert"},
		{"length=2m,twice,4,m,,arithmetic", "needs a tolerance"},
		{"length=2m,word,down,,,arithmetic", `"up", want "down"`},
		{"length=2m,verdict,stop,,,arithmetic", `"ok", want "stop"`},
		{"length=2m,twice,absent,,,arithmetic", "want it absent"},
		{"length=2m,thrice,6,m,1e-9,arithmetic", "no output"},
		{"length=2m,,refused,,,arithmetic", "want it refused"},
		{"length=20m,twice,40,m,1e-9,arithmetic", "outside"},
	} {
		rows, err := ReadPublished(folder("double-it.csv", test.row+"\n"), "double-it")
		if err != nil {
			t.Fatal(err)
		}
		err = rows[0].Check(sound())
		if test.says == "" && err != nil || test.says != "" && (err == nil || !strings.Contains(err.Error(), test.says)) {
			t.Errorf("%s: %v, want %q", test.row, err, test.says)
		}
	}
}

func TestReadPublishedRefuses(t *testing.T) {
	for _, test := range []struct{ rows, says string }{
		{"length=2m,twice,4,m,1e-9,", "no source"},
		{"length=2m,twice,,m,1e-9,arithmetic", "nothing expected"},
		{"length=2m,twice,4,m,0.5,arithmetic", "accepts anything"},
		{"length=2m,twice,4,m,-1,arithmetic", "is not a number of 0 or more"},
		{"length=2m,twice,4,m,1e-9", "wrong number of fields"},
	} {
		if _, err := ReadPublished(folder("x.csv", test.rows+"\n"), "x"); err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: %v, want %q", test.rows, err, test.says)
		}
	}
	if _, err := ReadPublished(fstest.MapFS{"x.csv": {Data: []byte("query,output\n")}}, "x"); err == nil {
		t.Error("a table without its first line is read")
	}
}

func TestNear(t *testing.T) {
	if !Near(1.01, 1, 0.01, false) || Near(1.011, 1, 0.01, false) || !Near(5.2, 5, 0.2, true) || Near(math.NaN(), 1, 1, true) || !Near(0, 0, 0, false) {
		t.Error("near is wrong")
	}
}

// TestValidate breaks a sound calculator in one way at a time.
func TestValidate(t *testing.T) {
	published := folder("double-it.csv", goodRow)
	if err := Validate([]*calc.Calculator{sound()}, published); err != nil {
		t.Errorf("a sound one: %v", err)
	}
	for _, test := range []struct {
		says   string
		damage func(c *calc.Calculator)
	}{
		{"not lower-kebab", func(c *calc.Calculator) { c.Name = "Double_it" }},
		{"wants a title", func(c *calc.Calculator) { c.Question = "How long" }},
		{"wants sources", func(c *calc.Calculator) { c.Cautions = nil }},
		{"has the standing", func(c *calc.Calculator) { c.Sources[0].Standing = "hearsay" }},
		{"must have a figure", func(c *calc.Calculator) { c.Name, c.Figure = "bundle", nil }},
		{"does not exist", func(c *calc.Calculator) { c.Name = "triple-it" }},
		{"there is no calculator double-it", func(c *calc.Calculator) { c.Name = "triple-it" }},
		{"there twice or not lower_snake", func(c *calc.Calculator) { c.Inputs[1].Name = "length" }},
		{"wants a label and help", func(c *calc.Calculator) { c.Inputs[0].Help = "" }},
		{"not known", func(c *calc.Calculator) { c.Inputs[0].Unit = "furlong" }},
		{"has no range", func(c *calc.Calculator) { c.Inputs[0].Max = 0 }},
		{"default of input length cannot be read", func(c *calc.Calculator) { c.Inputs[0].Default = "11" }},
		{"name of an input", func(c *calc.Calculator) { c.Outputs[1].Name = "way" }},
		{"is not known or not its own", func(c *calc.Calculator) { c.Outputs[1].Unit = "m" }},
		{"nothing to run", func(c *calc.Calculator) { c.Run = nil }},
		{"does not compute with its defaults", func(c *calc.Calculator) {
			c.Run = func(*calc.Values, *calc.Result) *calc.Problem { return calc.NewProblem("", "never") }
		}},
		{"shows no working", func(c *calc.Calculator) {
			run := c.Run
			c.Run = func(in *calc.Values, out *calc.Result) *calc.Problem {
				p := run(in, out)
				out.Working = nil
				return p
			}
		}},
		{"absent without a reason", func(c *calc.Calculator) {
			c.Run = func(_ *calc.Values, out *calc.Result) *calc.Problem {
				out.Work("nothing")
				return nil
			}
		}},
	} {
		c := sound()
		test.damage(c)
		if err := Validate([]*calc.Calculator{c}, published); err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("want %q, found %v", test.says, err)
		}
	}
	if err := Validate([]*calc.Calculator{sound(), sound()}, published); err == nil || !strings.Contains(err.Error(), "listed twice") {
		t.Errorf("the same calculator twice: %v", err)
	}
}

func TestCheckFigure(t *testing.T) {
	c := sound()
	if err := CheckFigure(c, "length=3"); err != nil {
		t.Errorf("a sound figure: %v", err)
	}
	for _, test := range []struct {
		says string
		draw func(d *calc.Drawing)
	}{
		{"stand over each other", func(d *calc.Drawing) { d.Text(calc.Point{X: 20, Y: 24}, calc.Start, "over it") }},
		{"leaves the drawing", func(d *calc.Drawing) { d.Text(calc.Point{X: 300, Y: 80}, calc.Start, "too far right") }},
		{"leaves the drawing", func(d *calc.Drawing) { d.Text(calc.Point{X: 30, Y: 120}, calc.Start, "too low") }},
		{"XML", func(d *calc.Drawing) { d.Raw("<g>") }},
		{"unbounded", func(d *calc.Drawing) { d.Text(calc.Point{X: 30, Y: 60}, calc.Start, "NaN mm") }},
		{"wants a title", func(d *calc.Drawing) { d.Title = "" }},
	} {
		c := sound()
		plain := c.Figure
		c.Figure = func(in *calc.Values, out *calc.Result) *calc.Drawing {
			d := plain(in, out)
			test.draw(d)
			return d
		}
		if err := CheckFigure(c, "length=3"); err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("want %q, found %v", test.says, err)
		}
	}
}

// TestRandomQuery: every random query is in range, and both ends of a range
// come up.
func TestRandomQuery(t *testing.T) {
	c := sound()
	r := rand.New(rand.NewPCG(1, 1))
	low, high := false, false
	for range 200 {
		query := RandomQuery(r, c)
		if !Computes(c, query) {
			t.Fatalf("%s is refused", query)
		}
		low = low || strings.Contains(query, "length=0&")
		high = high || strings.Contains(query, "length=10&")
	}
	if !low || !high {
		t.Errorf("ends of the range drawn: %v, %v", low, high)
	}
}
