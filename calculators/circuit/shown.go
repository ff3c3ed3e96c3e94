package circuit

// Shown is the name of the state that a view shows.
func (s *Study) Shown(v View) string { return s.Network.States[s.state(v)].Name }
