// Package match pairs things off at the least total cost: the assignment problem.
package match

import "math"

// None marks a row that got no column.
const None = -1

// Least gives each row a column of its own so that the costs add up to as little
// as they can, and returns the column of each row. cost has a value for each row
// and column; rows are as long as the first. With fewer columns than rows, those
// rows that are dearest to serve get None. An infinite or undefined cost forbids
// a pair: a row left with nothing else gets None.
//
// It is the shortest augmenting path method with potentials, whose time grows as
// the square of the smaller side times the larger: R. Burkard, M. Dell'Amico,
// S. Martello, Assignment Problems, SIAM 2009, from memory.
func Least(cost [][]float64) []int {
	rows := len(cost)
	if rows == 0 {
		return nil
	}
	cols := len(cost[0])
	s := newSolver(cost, rows, cols)
	for i := 1; i <= rows; i++ {
		s.augment(i)
	}
	out := make([]int, rows)
	for i := range out {
		out[i] = None
	}
	for j := 1; j <= cols; j++ {
		if i := s.rowOf[j]; i > 0 && !forbidden(cost[i-1][j-1]) {
			out[i-1] = j - 1
		}
	}
	return out
}

func forbidden(c float64) bool { return math.IsNaN(c) || math.IsInf(c, 0) }

// solver counts rows and columns from one; zero is no row, and a column before
// the first. Each row has a column more of its own, beyond cols, that stands for
// None and costs more than every choice of real pairs together.
type solver struct {
	cost      [][]float64
	cols, all int
	none      float64
	rowOf     []int // the row that holds each column
	u, v      []float64
	least     []float64
	from      []int
	done      []bool
}

func newSolver(cost [][]float64, rows, cols int) *solver {
	s := &solver{cost: cost, cols: cols, all: cols + rows, none: 1}
	for _, row := range cost {
		most := 0.0
		for _, c := range row {
			if !forbidden(c) {
				most = max(most, math.Abs(c))
			}
		}
		s.none += 2 * most
	}
	s.rowOf, s.from = make([]int, s.all+1), make([]int, s.all+1)
	s.u, s.v = make([]float64, rows+1), make([]float64, s.all+1)
	s.least, s.done = make([]float64, s.all+1), make([]bool, s.all+1)
	return s
}

// at returns the cost of row i in column j, both from one.
func (s *solver) at(i, j int) float64 {
	if j <= s.cols {
		if c := s.cost[i-1][j-1]; !forbidden(c) {
			return c
		}
		return math.Inf(1)
	}
	if j-s.cols == i {
		return s.none
	}
	return math.Inf(1)
}

// augment brings row i in and moves other rows over as far as that pays.
func (s *solver) augment(i int) {
	for j := range s.least {
		s.least[j], s.done[j] = math.Inf(1), false
	}
	s.rowOf[0] = i
	j := 0
	for s.rowOf[j] != 0 {
		j = s.step(j)
	}
	for j != 0 {
		back := s.from[j]
		s.rowOf[j] = s.rowOf[back]
		j = back
	}
	s.rowOf[0] = 0
}

// step settles column j and returns the cheapest of those not settled. There is
// always one, since the row's own column for None is free until it is taken.
func (s *solver) step(j int) int {
	s.done[j] = true
	i, next, delta := s.rowOf[j], 0, math.Inf(1)
	for k := 1; k <= s.all; k++ {
		if s.done[k] {
			continue
		}
		if c := s.at(i, k) - s.u[i] - s.v[k]; c < s.least[k] {
			s.least[k], s.from[k] = c, j
		}
		if s.least[k] < delta {
			delta, next = s.least[k], k
		}
	}
	for k := 0; k <= s.all; k++ {
		if s.done[k] {
			s.u[s.rowOf[k]] += delta
			s.v[k] -= delta
		} else {
			s.least[k] -= delta
		}
	}
	return next
}
