package room

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// reference is a room of testdata/rooms/rooms.json, which scipy has solved.
type reference struct {
	Name  string
	Walls []struct {
		Length float64 `json:"length_m"`
		Turn   float64 `json:"turn_deg"`
		Square bool    `json:"square"`
		Rise   float64 `json:"rise_m"`
	}
	Points    int
	Diagonals []struct {
		From, To int
		Length   float64 `json:"length_m"`
	}
	Sigma  float64 `json:"sigma_m"`
	Square float64 `json:"square_sigma_rad"`
	Solved struct {
		Places     [][2]float64
		Residuals  []float64 `json:"weighted_residuals"`
		Redundancy []float64
	}
}

func references(tb testing.TB) []reference {
	tb.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "rooms", "rooms.json"))
	if err != nil {
		tb.Fatal(err)
	}
	var file struct{ Rooms []reference }
	if err := json.Unmarshal(text, &file); err != nil {
		tb.Fatal(err)
	}
	return file.Rooms
}

// measured is the room as a person would type it.
func (r reference) measured() (m floor.Measured, with Precision) {
	id := func(place int) string {
		if place < len(r.Walls) {
			return fmt.Sprintf("wall %d", place)
		}
		return fmt.Sprintf("point %d", place-len(r.Walls))
	}
	for i, w := range r.Walls {
		m.Walls = append(m.Walls, floor.MeasuredWall{ID: id(i), Length: w.Length, Turn: w.Turn, Square: w.Square, Rise: w.Rise})
	}
	for i := range r.Points {
		m.Points = append(m.Points, floor.MeasuredPoint{ID: id(len(r.Walls) + i), Name: "column"})
	}
	for i, d := range r.Diagonals {
		m.Diagonals = append(m.Diagonals, floor.Diagonal{ID: fmt.Sprintf("diagonal %d", i), From: id(d.From), To: id(d.To), Length: d.Length})
	}
	return m, Precision{Length: r.Sigma, Square: r.Square}
}

// Every corner and every residual agrees with scipy.optimize.least_squares to a
// ten-millionth of a metre, every redundancy with numpy's hat matrix.
func TestRoomsAgreeWithScipy(t *testing.T) {
	const near = 1e-7
	rooms := references(t)
	if len(rooms) < 8 {
		t.Fatalf("only %d rooms", len(rooms))
	}
	worst := 0.0
	for _, r := range rooms {
		t.Run(r.Name, func(t *testing.T) {
			m, with := r.measured()
			s, err := Solve(m, with)
			if err != nil {
				t.Fatal(err)
			}
			at := append(s.Outline.Points(), s.Points...)
			if len(at) != len(r.Solved.Places) || len(s.Measures) != len(r.Solved.Residuals) {
				t.Fatalf("%d places and %d measures, want %d and %d", len(at), len(s.Measures), len(r.Solved.Places), len(r.Solved.Residuals))
			}
			for i, want := range r.Solved.Places {
				off := at[i].To(plane.Point{X: want[0], Y: want[1]})
				worst = math.Max(worst, off)
				if off > near {
					t.Errorf("place %d is %.2g m from scipy's", i, off)
				}
			}
			for i, got := range s.Measures {
				sigma := with.Length
				if got.Kind == Square {
					sigma = with.Square
				}
				if off := math.Abs(got.Residual() - sigma*r.Solved.Residuals[i]); off > near {
					t.Errorf("residual of %s differs by %.2g", got.Name, off)
				}
				if off := math.Abs(got.Redundancy - r.Solved.Redundancy[i]); off > 1e-6 {
					t.Errorf("redundancy of %s differs by %.2g", got.Name, off)
				}
			}
			if want := len(s.Measures) - (2*len(at) - 3); s.Freedom != want || s.Open != 0 {
				t.Errorf("freedom %d, open %d; want %d and 0", s.Freedom, s.Open, want)
			}
		})
	}
	t.Logf("farthest from scipy: %.2g m", worst)
}

// The two rooms with a blunder name it; the others are clean. In the second the
// corners that were tried with a 3-4-5 lie on one circle, so that another length of
// the wall A–B explains the readings nearly as well, by none of the usual slips.
func TestBlunderOfAFootIsNamed(t *testing.T) {
	blunders := map[string][]string{
		"one diagonal a foot too long": {"B–E a whole foot too long"},
		"one wall a foot too short":    {"B–C a whole foot too short", "A–B"},
	}
	for _, r := range references(t) {
		m, with := r.measured()
		s, err := Solve(m, with)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, f := range s.Verdict.Faults {
			got = append(got, strings.TrimSpace(s.Measures[f.Measure].Name+" "+f.Cause))
		}
		if want := blunders[r.Name]; !slices.Equal(got, want) || s.Verdict.Together {
			t.Errorf("%s: accused %q, want %q", r.Name, got, want)
		}
	}
}

func BenchmarkRooms(b *testing.B) {
	rooms := references(b)
	for b.Loop() {
		for _, r := range rooms {
			m, with := r.measured()
			if _, err := Solve(m, with); err != nil {
				b.Fatal(err)
			}
		}
	}
}
