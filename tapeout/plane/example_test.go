package plane_test

import (
	"fmt"

	"groundrow/tapeout/plane"
)

// Two platforms side by side share a wall, which is taped once.
func ExampleArrange() {
	left := plane.Rectangle(plane.Point{X: -2}, plane.Point{Y: 1})
	right := plane.Rectangle(plane.Point{}, plane.Point{X: 2, Y: 1})
	edges := append(left.Edges(), right.Edges()...)

	a := plane.Arrange(edges, 0.005)
	fmt.Println(len(edges), "edges,", len(a.Nodes), "nodes,", len(a.Links), "links")
	fmt.Println(plane.UnionLength(edges, 0.005), "metres of tape")
	// Output:
	// 8 edges, 6 nodes, 7 links
	// 11 metres of tape
}

// The overlap of two discs of radius 1 whose centres are 1 apart.
func ExampleOverlap() {
	a := plane.Circle(plane.Point{}, 1)
	b := plane.Circle(plane.Point{X: 1}, 1)
	fmt.Printf("%.6f\n", plane.Overlap(a, b))
	// Output: 1.228370
}
