package floor

import (
	"testing"

	"groundrow/tapeout/plane"
)

func TestATapeDoesNotPassWallsObstaclesOrSteps(t *testing.T) {
	f := &Floor{
		Outline:   plane.Closed(plane.Point{}, plane.Point{X: 10}, plane.Point{X: 10, Y: 4}, plane.Point{X: 4, Y: 4}, plane.Point{X: 4, Y: 10}, plane.Point{Y: 10}),
		Steps:     []Step{{ID: "step", Line: plane.Open(plane.Point{X: 8, Y: 0.2}, plane.Point{X: 8, Y: 0.8})}},
		Obstacles: []Obstacle{{ID: "column", Shape: plane.Rectangle(plane.Point{X: 1, Y: 5}, plane.Point{X: 2, Y: 6})}},
	}
	stops := SightOn(f, nil).Blocked
	for _, c := range []struct {
		name     string
		from, to plane.Point
		want     bool
	}{
		{"across the open floor", plane.Point{X: 1, Y: 1}, plane.Point{X: 9, Y: 3}, false},
		{"from corner to corner along a wall", plane.Point{}, plane.Point{X: 10}, false},
		{"through the column", plane.Point{X: 1.5, Y: 1}, plane.Point{X: 1.5, Y: 9}, true},
		{"from the face of the column away from it", plane.Point{X: 1.5, Y: 5}, plane.Point{X: 1.5, Y: 1}, false},
		{"over a step in the floor", plane.Point{X: 7, Y: 0.5}, plane.Point{X: 9, Y: 0.5}, true},
		{"round the corner of the room", plane.Point{X: 9, Y: 3}, plane.Point{X: 3, Y: 9}, true},
	} {
		if got := stops(c.from, c.to); got != c.want {
			t.Errorf("%s: stopped %v, want %v", c.name, got, c.want)
		}
	}
}
