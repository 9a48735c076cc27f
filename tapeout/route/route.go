// Package route puts floor points into an order that does not send people back
// and forth.
package route

import "groundrow/tapeout/plane"

// Order returns the indices of points in the order of a short walk that begins
// at start and ends anywhere: nearest neighbour first, then pieces are turned
// round (2-opt) and moved elsewhere (Or-opt) while that shortens the walk, then a
// fixed number of small disturbances is tried. The same points always give the
// same order, and the walk is never longer than the order of the input.
//
// The walk is short, not proven shortest: closed walks by the same search come
// within 3 % of the optimum of each published instance in the tests, and within
// 1 % on average.
func Order(start plane.Point, points []plane.Point) []int {
	n := len(points)
	if n < 2 {
		return inputOrder(n)
	}
	order := make([]int, 0, n)
	for _, stop := range newSearch(points, &start).run() {
		if stop < n {
			order = append(order, stop)
		}
	}
	if !(Walk(start, points, order) <= Walk(start, points, inputOrder(n))) {
		return inputOrder(n)
	}
	return order
}

// Walk returns the metres walked from start through points in order.
func Walk(start plane.Point, points []plane.Point, order []int) float64 {
	sum, from := 0.0, start
	for _, i := range order {
		sum += from.To(points[i])
		from = points[i]
	}
	return sum
}

func inputOrder(n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	return order
}
