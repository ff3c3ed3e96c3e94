package render

// needEntries are the rules over the order of work: what must come before a
// step and what no sheet leaves behind, each with its reason and source.
func (r *Renderer) needEntries() string {
	var entries []entry
	add := func(name, do, why, source string) {
		entries = append(entries, entry{term: name, lines: [][2]string{{"Do", do}, {"Why", why}, {"Source", source}}})
	}
	lists := r.Book.Work.Lists
	for _, n := range lists.Needs {
		add(n.ID, n.Do, n.Why, n.Source)
	}
	for _, e := range lists.Ends {
		add("not left "+e.State, e.Do, e.Why, e.Source)
	}
	return entriesMarkup(entries)
}

// neverEntries are the orders that no sheet gives, with what is done instead.
func (r *Renderer) neverEntries() string {
	var entries []entry
	for _, n := range r.Book.Work.Nevers {
		entries = append(entries, entry{term: n.ID, lines: [][2]string{{"Instead", n.Instead}, {"Source", n.Source}}})
	}
	return entriesMarkup(entries)
}
