package plane

// UnionLength returns the length in metres of all edges together, with stretches
// that coincide within tol counted once.
func UnionLength(edges []Edge, tol float64) float64 {
	sum := 0.0
	for _, l := range Arrange(edges, tol).Links {
		sum += l.Length()
	}
	return sum
}
