package marks

import (
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// spikes returns the marks that give movable pieces their places: an L at each
// of the two upstage corners, which the audience does not see (common practice,
// no source); one mark in the middle of a round piece.
func spikes(pieces []floor.Piece) []Mark {
	var out []Mark
	for _, piece := range pieces {
		for _, at := range spikePoints(piece.Paths) {
			out = append(out, Mark{
				Kind: Spike, At: at, Scenes: piece.Scenes,
				Elements: []plan.ElementID{piece.Element}, Stocks: []plan.StockID{},
			})
		}
	}
	return out
}

func spikePoints(paths []plan.Path) []plane.Point {
	for _, path := range paths {
		if path.Role != plan.Outline || len(path.Vertices) == 0 {
			continue
		}
		if round(path.Path) {
			box, _ := path.Bounds()
			return []plane.Point{box.Centre()}
		}
		ps := path.Points()
		slices.SortStableFunc(ps, func(a, b plane.Point) int { return compare(b.Y, a.Y, a.X, b.X) })
		ps = ps[:min(2, len(ps))]
		slices.SortFunc(ps, func(a, b plane.Point) int { return compare(a.X, b.X, a.Y, b.Y) })
		return ps
	}
	return nil
}

// round tells whether every edge is an arc: there is no corner to spike.
func round(p plane.Path) bool {
	edges := p.Edges()
	for _, e := range edges {
		if e.Straight() {
			return false
		}
	}
	return len(edges) > 0
}
