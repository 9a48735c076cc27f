package route

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// ByRows returns the indices of points row by row, downstage to upstage, to and
// fro: a tape that lies along the up axis is walked up once, and the over measure
// is pulled to either side of it. A row reaches up to row metres above its first
// point. The first row begins at the end nearer to start.
func ByRows(start plane.Point, points []plane.Point, row float64) []int {
	order := inputOrder(len(points))
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(points[i].Y, points[j].Y) })
	from := start
	for rest := order; len(rest) > 0; {
		end := 1
		for end < len(rest) && points[rest[end]].Y-points[rest[0]].Y <= row {
			end++
		}
		line := rest[:end]
		slices.SortStableFunc(line, func(i, j int) int { return cmp.Compare(points[i].X, points[j].X) })
		first, last := points[line[0]], points[line[end-1]]
		if math.Abs(last.X-from.X) < math.Abs(first.X-from.X) {
			slices.Reverse(line)
		}
		from = points[line[end-1]]
		rest = rest[end:]
	}
	return order
}
