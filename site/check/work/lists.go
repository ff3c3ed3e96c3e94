// Package work knows what a step of a sheet does: the acts, things, tools and
// states that a shop has lists of, how a link or plain words declare them,
// what a step changes at the vehicle, and what follows from it. It reads no
// file and knows no page, so that the checks, the tests and the browser can
// use it.
package work

import "slices"

// Lists are what a step can be about, and the rules over it:
// content/work.yaml. A Lists is not changed after Settle, and any number of
// goroutines may share it.
type Lists struct {
	Acts, Things, Tools, States []Entry
	// Effects are changes of state that an act makes only at some things.
	Effects []Effect
	Needs   []Need
	Nevers  []Never
	Ends    []End

	entries map[string]*Entry
	// has holds for each entry its id, what it is like, and its properties.
	has map[string]map[string]bool
}

// An Entry is an act, a thing or place, a tool or substance, or a state.
type Entry struct {
	ID string
	// Choose says how to tell it from its neighbors in the list.
	Choose   string
	Examples []string
	// Words are the verbs or nouns that it goes by, as phrases.
	Words []string
	// Said are phrases that show an act without a verb.
	Said []string
	// Is lists properties, by which rules speak of many entries at once.
	Is []string
	// Near lists things that lie within reach of it.
	Near []string
	// Sets and Clears are the states that an act begins and ends.
	Sets, Clears []string
	// Like is the entry whose place it takes in every rule, for a shop's own.
	Like string
	Kind Kind
}

// A Kind is which of the four lists an entry stands in.
type Kind uint8

const (
	Act Kind = iota
	Thing
	Tool
	State
)

// String is the kind as a finding names it.
func (k Kind) String() string {
	return [...]string{"act", "thing", "tool", "state"}[k]
}

// A When is a condition over the work of one step. Each list that is not
// empty has to be met by one of its names, which are ids or properties.
type When struct {
	Act []string
	// At is what the work is done to, or what is declared near it; Reach takes
	// the neighbors of a place too.
	At, Reach []string
	// On is what the work is done to, and nothing that is only near.
	On []string
	// Beside is a second thing of the same step.
	Beside []string
	With   []string
	// State and Also hold at the step, declared or from an earlier one.
	State, Also []string
	// Without names what must not be there, of any kind.
	Without []string
}

// An Effect is a change of state by work that meets When.
type Effect struct {
	When         []When
	Sets, Clears []string
}

// A Need is something that must come before a step: a state that an earlier
// step has set, or, where the sheet has both, an earlier step.
type Need struct {
	ID   string
	When []When
	// Need lists states of which one must hold.
	Need []string
	// First is work that must not come later than the step, where the sheet
	// does both.
	First []When
	// Do is what to do about it, for a finding.
	Do     string
	Why    string
	Source string
}

// A Never is an order that no sheet may give.
type Never struct {
	ID   string
	When []When
	// Says are phrases that give the order in words; Unless take them back.
	Says, Unless []string
	// Instead is what to do in its place.
	Instead string
	Source  string
}

// An End is a state that must not be left when a sheet ends.
type End struct {
	State  string
	Do     string
	Why    string
	Source string
}

// Settle prepares the lists for lookups. It must be called once they are read.
func (l *Lists) Settle() {
	l.entries = make(map[string]*Entry)
	for _, list := range l.kinds() {
		for i := range *list.entries {
			e := &(*list.entries)[i]
			e.Kind = list.kind
			if l.entries[e.ID] == nil {
				l.entries[e.ID] = e
			}
		}
	}
	l.has = make(map[string]map[string]bool)
	for id, e := range l.entries {
		has := make(map[string]bool)
		l.gather(has, e, 0)
		l.has[id] = has
	}
}

// gather notes an entry's names: its own, its properties, and those of what
// it is like.
func (l *Lists) gather(has map[string]bool, e *Entry, depth int) {
	const deepest = 4 // a ring of likes ends here
	if e == nil || depth > deepest {
		return
	}
	has[e.ID] = true
	for _, p := range e.Is {
		has[p] = true
	}
	if e.Like != "" {
		l.gather(has, l.entries[e.Like], depth+1)
	}
}

type kindList struct {
	kind    Kind
	entries *[]Entry
}

func (l *Lists) kinds() []kindList {
	return []kindList{{Act, &l.Acts}, {Thing, &l.Things}, {Tool, &l.Tools}, {State, &l.States}}
}

// Entry finds an entry by id, nil where there is none.
func (l *Lists) Entry(id string) *Entry { return l.entries[id] }

// Of lists the entries of one kind.
func (l *Lists) Of(k Kind) []Entry {
	for _, list := range l.kinds() {
		if list.kind == k {
			return *list.entries
		}
	}
	return nil
}

// IDs lists the ids of one kind, in the file's order.
func (l *Lists) IDs(k Kind) []string {
	var ids []string
	for _, e := range l.Of(k) {
		ids = append(ids, e.ID)
	}
	return ids
}

// Empty reports lists that hold no act, as those of a book without the file.
func (l *Lists) Empty() bool { return l == nil || len(l.Acts) == 0 }

// Is reports whether an entry has a name: its id, a property, or either of
// what it is like.
func (l *Lists) Is(id, name string) bool { return l.has[id][name] }

// Known reports a name that an entry of the kind has, as id or property.
func (l *Lists) Known(name string, kinds ...Kind) bool {
	for _, k := range kinds {
		for _, e := range l.Of(k) {
			if l.Is(e.ID, name) {
				return true
			}
		}
	}
	return false
}

// Neighbors lists what lies within reach of a thing: its own list, that of
// what it is like, and the thing itself.
func (l *Lists) Neighbors(id string) []string {
	list := []string{id}
	for depth, e := 0, l.entries[id]; e != nil && depth < 4; depth, e = depth+1, l.entries[e.Like] {
		for _, n := range e.Near {
			if !slices.Contains(list, n) {
				list = append(list, n)
			}
		}
	}
	return list
}
