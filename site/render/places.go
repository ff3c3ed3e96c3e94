package render

import (
	"html/template"
	"slices"
	"strconv"
)

// PlacesPage lists the sheets by the places of the vehicle on the cover.
const PlacesPage = "places.html"

// coverBody is what the cover shows.
type coverBody struct {
	Areas []Area
	// Vehicle is the drawing, and Places what its numbers stand for.
	Vehicle template.HTML
	Places  []PlaceOnVehicle
}

// A PlaceOnVehicle is a place with the sheets whose steps work there, those with
// the most steps first.
type PlaceOnVehicle struct {
	Number int
	ID     string
	Title  string
	Sheets []AreaSheet
}

// places gathers the sheets of each place. A sheet of many places, such as a
// walk round the vehicle, stands with those where it does most.
func (r *Renderer) places() []PlaceOnVehicle {
	var list []PlaceOnVehicle
	for i, p := range r.Book.Areas.Places {
		place := PlaceOnVehicle{Number: i + 1, ID: "place-" + strconv.Itoa(i+1), Title: p.Title}
		steps := make(map[string]int)
		for _, s := range r.Book.Sheets {
			n := 0
			for _, id := range r.messages(s).At {
				if slices.Contains(p.Things, id) {
					n++
				}
			}
			if n > 0 {
				steps[s.Path] = n
				place.Sheets = append(place.Sheets, AreaSheet{Sheet: s, Page: PageOf(s), Kind: kindTitles[s.Front.Kind], Skill: skillTitles[s.Front.Skill]})
			}
		}
		slices.SortStableFunc(place.Sheets, func(a, b AreaSheet) int { return steps[b.Sheet.Path] - steps[a.Sheet.Path] })
		list = append(list, place)
	}
	return list
}

// Places renders the page of the places.
func (r *Renderer) Places() ([]byte, error) {
	body := coverBody{Places: r.places()}
	if v := r.Book.Areas.Vehicle; r.Figures != nil && v != "" {
		body.Vehicle = template.HTML(r.Figures(v))
	}
	return r.print("places.html", r.newPage("list", PlacesPage, "Where on the vehicle", body))
}
