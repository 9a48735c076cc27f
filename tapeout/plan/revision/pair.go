package revision

import (
	"math"

	"groundrow/tapeout/match"
)

// How much differences count when elements are paired off, in steps of one: a
// pair that costs as much as stranger is two things. Each of the four is a
// distance in the mathematical sense, so that pairs that are alike in everything
// can be settled beforehand without spoiling the least total. The figures are
// judgement: a thing of the same name and kind is itself wherever it has gone and
// however it has been redrawn; without its name it must have kept its shape, or
// most of it and its place.
const (
	stranger  = 3.0
	placeMost = 1.2 // for a thing that has moved far
	placeHalf = 1.0 // metres for half of it
	shapeMost = 1.2
	shapeHalf = 0.3 // metres for half of it
	otherName = 2.0
	halfNamed = 1.5 // one of the two has no name
	commonTo  = 1.0 // neither has a name, or others have the same
	otherKind = 1.0
	level     = 0.5
)

// alike is the cost below which a pair is settled beforehand.
const alike = 1e-6

// pair returns for every old shape the index of the new one that it has become,
// −1 for none.
func pair(old, young []shape) []int {
	partner := make([]int, len(old))
	taken := make([]bool, len(young))
	c := newCosts(old, young)
	settle(c, partner, taken)

	var rows, cols []int
	for i, j := range partner {
		if j < 0 {
			rows = append(rows, i)
		}
	}
	for j := range young {
		if !taken[j] {
			cols = append(cols, j)
		}
	}
	if len(rows) == 0 {
		return partner
	}
	for r, col := range match.Least(c.matrix(rows, cols)) {
		if col >= 0 && col < len(cols) {
			partner[rows[r]] = cols[col]
		}
	}
	return partner
}

// settle pairs what has not changed at all.
func settle(c *costs, partner []int, taken []bool) {
	places := map[[2]int64][]int{}
	for j := range c.young {
		k := c.young[j].cell()
		places[k] = append(places[k], j)
	}
	for i := range partner {
		partner[i] = -1
		k := c.old[i].cell()
		for n := range int64(9) {
			for _, j := range places[[2]int64{k[0] + n%3 - 1, k[1] + n/3 - 1}] {
				if partner[i] < 0 && !taken[j] && c.differ(i, j) < alike {
					partner[i], taken[j] = j, true
				}
			}
		}
	}
}

// cell is the square decimetre of the shape's centre.
func (s *shape) cell() [2]int64 {
	const side = 0.1
	return [2]int64{int64(math.Floor(s.centre.X / side)), int64(math.Floor(s.centre.Y / side))}
}

// costs knows what it costs to pair an old shape with a new one.
type costs struct {
	old, young []shape
	shared     map[string]bool // names that several elements of one list have
}

func newCosts(old, young []shape) *costs {
	c := &costs{old: old, young: young, shared: map[string]bool{}}
	for _, list := range [][]shape{old, young} {
		seen := map[string]bool{}
		for i := range list {
			name := list[i].name
			c.shared[name] = c.shared[name] || seen[name]
			seen[name] = true
		}
	}
	return c
}

// matrix returns the costs of the rows for the columns, and for a column more for
// each row that stands for being gone.
func (c *costs) matrix(rows, cols []int) [][]float64 {
	out := make([][]float64, len(rows))
	for r, i := range rows {
		row := make([]float64, len(cols)+len(rows))
		for k, j := range cols {
			row[k] = c.of(i, j)
			if row[k] >= stranger {
				row[k] = math.Inf(1)
			}
		}
		for k := range rows {
			row[len(cols)+k] = stranger
		}
		out[r] = row
	}
	return out
}

// of returns the whole cost of a pair.
func (c *costs) of(i, j int) float64 { return c.differ(i, j) + c.names(i, j) }

// differ returns the cost of a pair but for what names leave open: a pair whose
// name says little is not dearer for it here.
func (c *costs) differ(i, j int) float64 {
	a, b := &c.old[i], &c.young[j]
	sum := 0.0
	if a.name != b.name {
		sum += otherName
	}
	if a.element.Kind != b.element.Kind {
		sum += otherKind
	}
	if a.element.Level != b.element.Level {
		sum += level
	}
	if (a.total == 0) != (b.total == 0) {
		return sum + placeMost + shapeMost
	}
	return sum + saturate(a.centre.To(b.centre), placeMost, placeHalf) + saturate(a.unlike(b), shapeMost, shapeHalf)
}

// names returns the cost of two names beyond what differ counts.
func (c *costs) names(i, j int) float64 {
	a, b := c.old[i].name, c.young[j].name
	switch {
	case a == b && (a == "" || c.shared[a]):
		return commonTo
	case a != b && (a == "" || b == ""):
		return halfNamed - otherName
	}
	return 0
}

// unlike returns how different two shapes are, in metres, whichever way they are
// turned: the mean difference of their distances from the centre, and what one
// has more of lines.
func (s *shape) unlike(o *shape) float64 {
	sum := math.Abs(s.total-o.total) / 4
	for k := range s.profile {
		sum += math.Abs(s.profile[k]-o.profile[k]) / profileSize
	}
	return sum
}

// saturate turns a distance into a cost that grows to most, half of it at half.
func saturate(d, most, half float64) float64 { return most * d / (half + d) }
