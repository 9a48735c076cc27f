package drawing

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

func mustReadRoom(t *testing.T, text string, o RoomOptions) RoomTable {
	t.Helper()
	got, err := ReadRoom(strings.NewReader(text), o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestReadRoomByWalls(t *testing.T) {
	text := "Wall,Length,Turn\nwindows,40' 0\",\nmirror,30',90 left\ndoors,40 ft,90°\n,29' 11\",\"90,0\"\n"
	got := mustReadRoom(t, text, RoomOptions{Unit: length.FeetInches})
	wantNoProblems(t, got.Problems)
	if fmt.Sprintf("%q", got.Names) != `["windows" "mirror" "doors" ""]` || len(got.Measured.Walls) != 4 {
		t.Errorf("walls %v of names %q", got.Measured.Walls, got.Names)
	}
	if math.Abs(got.Gap-length.Inch) > near {
		t.Errorf("gap %v, want an inch", got.Gap)
	}
	for i, want := range []float64{40 * length.Foot, 30 * length.Foot, 40 * length.Foot, 30*length.Foot - length.Inch} {
		if w := got.Measured.Walls[i]; math.Abs(w.Length-want) > near || w.Turn != 90 {
			t.Errorf("wall %d is %+v, want %v m", i+1, w, want)
		}
	}
}

func TestReadRoomWithDiagonalsAndSquares(t *testing.T) {
	text := "wall,length,turn,square,rise,from,to\nfront,8 m,,,\n,6 m,,,0.4 m\n,,90\n,600 cm,,yes\n,10 m,,,,A,C\n,5 m,,,,b,column\n,6.4 m,,,,a,Column\n"
	got := mustReadRoom(t, text, RoomOptions{Unit: length.Metres})
	wantNoProblems(t, got.Problems)
	m := got.Measured
	if len(m.Walls) != 4 || !m.Walls[3].Square || m.Walls[1].Square || m.Walls[1].Rise != 0.4 || m.Walls[2].Length != 0 || len(m.Points) != 1 || len(m.Diagonals) != 3 {
		t.Fatalf("%+v", m)
	}
	if d := m.Diagonals[0]; d.From != m.Walls[0].ID || d.To != m.Walls[2].ID || m.Diagonals[2].To != m.Points[0].ID {
		t.Errorf("diagonals %+v", m.Diagonals)
	}
	if len(got.Typed) != 7 || got.Typed[3] != (TypedLength{m.Walls[3].ID, "length", "600 cm"}) || got.Typed[2].Text != "0.4 m" {
		t.Errorf("typed %+v", got.Typed)
	}
}

func TestReadRoomTurnsBothWays(t *testing.T) {
	for text, want := range map[string]float64{
		"": 90, "90": 90, "-90": -90, "−90": -90, "45 right": -45, "right": -90, "left": 90, "87.5°": 87.5, "30 deg left": 30, "87,5": 87.5,
	} {
		if got, ok := readTurn(text); !ok || got != want {
			t.Errorf("turn %q = %v, %v; want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"x", "400", "nan", "90 up", "1e9"} {
		if got, ok := readTurn(text); ok {
			t.Errorf("turn %q = %v; want none", text, got)
		}
	}
}

func TestReadRoomByCorners(t *testing.T) {
	text := "corner;x;y\nNE;0;0\nSE;2,5;0\nSW;2,5;3\nNW;0;3\nNE;0;0\n"
	got := mustReadRoom(t, text, RoomOptions{Unit: length.Centimetres, Scale: 100})
	wantNoProblems(t, got.Problems)
	wantPoints(t, got.Outline, plane.Point{}, plane.Point{X: 2.5}, plane.Point{X: 2.5, Y: 3}, plane.Point{Y: 3})
	if len(got.Names) != 4 || got.Measured.Any() || got.Gap != 0 {
		t.Errorf("%+v", got)
	}
}

func TestReadRoomListsProblemsAndGivesNoOutline(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"half a diagonal":   {"length,from,to\n8,,\n6,,\n8,,\n6,,\n9,A,\n", []string{"Row 6, to"}},
		"no such corner":    {"length,from,to\n8,,\n6,,\n8,,\n6,,\n9,A,F\n", []string{"Row 6, to: “F” cannot be used, since “F” is no corner of this room (A to D)"}},
		"no tick":           {"length,square\n8,perhaps\n6,\n8,\n", []string{"Row 2, square"}},
		"a wall of nothing": {"length\n0\n1\n1\n1\n", []string{"Row 2, length"}},
		"all of them":       {"length,turn\nx,y\n1,\n1,\n-1,\n", []string{"Row 2, length", "Row 2, turn", "Row 5, length"}},
		"two walls":         {"length\n4\n5\n", []string{"at least three walls"}},
		"two corners":       {"x,y\n0,0\n1,0\n", []string{"at least three"}},
		"corners in line":   {"x,y\n0,0\n1,0\n2,0\n", []string{"two walls cross"}},
		"walls that cross":  {"x,y\n0,0\n4,4\n4,0\n0,4\n", []string{"cross"}},
		"a missing y":       {"x,y\n0,0\n4,\n4,4\n0,4\n", []string{"Row 3, y: nothing is there"}},
		"too far":           {"x,y\n0,0\n10001,0\n4,4\n0,4\n", []string{"10 km"}},
	} {
		t.Run(name, func(t *testing.T) {
			got := mustReadRoom(t, c.text, RoomOptions{Unit: length.Metres})
			if len(got.Problems) != len(c.want) || len(got.Outline.Vertices) != 0 {
				t.Fatalf("%v, outline %v", got.Problems, got.Outline)
			}
			for i, p := range got.Problems {
				if !strings.Contains(p.String(), c.want[i]) {
					t.Errorf("%q lacks %q", p, c.want[i])
				}
			}
		})
	}
}

func TestWhatIsNoRoomTable(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"both forms":     {"length,x,y\n", "both walls"},
		"half a corner":  {"x\n1\n", "x and y"},
		"only names":     {"wall\nnorth\n", "length, for walls"},
		"nothing":        {"", "is empty"},
		"too many walls": {"length\n" + strings.Repeat("1\n", maxWalls+1), "more than 1000 rows"},
	} {
		t.Run(name, func(t *testing.T) {
			if got, err := ReadRoom(strings.NewReader(c.text), RoomOptions{}); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%+v, %v; want %q", got, err, c.want)
			}
		})
	}
}
