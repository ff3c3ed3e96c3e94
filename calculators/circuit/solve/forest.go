package solve

// A forest unites numbers into sets.
type forest []int

func newForest(n int) forest {
	f := make(forest, n)
	for i := range f {
		f[i] = i
	}
	return f
}

func (f forest) root(i int) int {
	for f[i] != i {
		f[i] = f[f[i]]
		i = f[i]
	}
	return i
}

func (f forest) join(i, j int) {
	i, j = f.root(i), f.root(j)
	f[max(i, j)] = min(i, j)
}
