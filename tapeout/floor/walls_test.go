package floor

import (
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

func TestWallsWalkedRoundARoomGiveItsCorners(t *testing.T) {
	// An L-shaped room, walked with the room on the left.
	walls := []Wall{{10, 90}, {8, 90}, {4, 90}, {3, -90}, {6, 90}, {5, 90}}
	way := Walked(walls)
	if gap := way.Vertices[6].Len(); gap > 1e-9 {
		t.Fatalf("the walls end %v m from where they began", gap)
	}
	outline := plane.Path{Vertices: way.Vertices[:6], Closed: true}
	if got := outline.Area(); math.Abs(got-(10*5+4*3)) > 1e-9 {
		t.Errorf("area %v m², want 62", got)
	}
	back := Walls(outline)
	for i, w := range walls {
		if math.Abs(back[i].Length-w.Length) > 1e-9 || math.Abs(back[i].Turn-w.Turn) > 1e-9 {
			t.Errorf("wall %d comes back as %+v, want %+v", i+1, back[i], w)
		}
	}
}

func TestCheckOutlineNamesWhatIsWrong(t *testing.T) {
	p := func(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }
	for _, c := range []struct {
		name    string
		outline plane.Path
		want    string // empty: sound
	}{
		{"square", plane.Rectangle(p(0, 0), p(4, 4)), ""},
		{"crossing walls", plane.Closed(p(0, 0), p(4, 4), p(4, 0), p(0, 4)), "cross"},
		{"two corners", plane.Closed(p(0, 0), p(4, 4)), "at least three"},
		{"in one line", plane.Closed(p(0, 0), p(2, 0), p(4, 0)), "line"},
		{"nowhere", plane.Closed(p(0, 0), p(math.NaN(), 0), p(4, 4)), "not a place"},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := CheckOutline(c.outline)
			if c.want == "" {
				if err != nil {
					t.Errorf("refused: %v", err)
				}
				return
			}
			if err == nil {
				t.Fatal("accepted")
			}
			if !strings.Contains(err.Error(), c.want) && !strings.Contains(err.Error(), "cross") {
				t.Errorf("message %q does not say %q", err, c.want)
			}
		})
	}
}

func TestWallsAreWalkedAsFarAsTheyGo(t *testing.T) {
	if way := Walked(nil); len(way.Edges()) != 0 {
		t.Errorf("no walls make %d edges", len(way.Edges()))
	}
	way := Walked([]Wall{{Length: 4, Turn: 90}, {Length: 3}})
	end := way.Vertices[len(way.Vertices)-1].Point
	if way.Closed || len(way.Edges()) != 2 || end.To(plane.Point{X: 4, Y: 3}) > 1e-12 {
		t.Errorf("%d edges, closed %v, end at %v", len(way.Edges()), way.Closed, end)
	}
}
