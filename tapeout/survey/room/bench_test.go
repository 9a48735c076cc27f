package room

import (
	"fmt"
	"math"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// ring is a round room of as many walls as there may be, each corner measured to a few
// of the next ones; spread is how far these reach round.
func ring(lengths int, spread int) floor.Measured {
	at := make([]plane.Point, MostWalls)
	for i := range at {
		at[i] = plane.Polar(12+0.3*math.Sin(float64(7*i)), 2*math.Pi*float64(i)/MostWalls)
	}
	read := func(from, to plane.Point, k int) float64 { return from.To(to) + 0.0028*math.Sin(float64(k)*12.9898) }
	var m floor.Measured
	for i := range at {
		m.Walls = append(m.Walls, floor.MeasuredWall{ID: fmt.Sprint("w", i), Length: read(at[i], at[(i+1)%MostWalls], i)})
	}
	for k := range lengths {
		from := k % MostWalls
		to := (from + 2 + k/MostWalls*spread) % MostWalls
		m.Diagonals = append(m.Diagonals, floor.Diagonal{
			ID: fmt.Sprint("d", k), From: m.Walls[from].ID, To: m.Walls[to].ID, Length: read(at[from], at[to], MostWalls+k)})
	}
	return m
}

func BenchmarkLargeRoom(b *testing.B) {
	for name, m := range map[string]floor.Measured{
		"walls alone": ring(0, 1), "barely determined": ring(57, 1), "well determined": ring(200, 9), "the same ones again": ring(200, 0),
	} {
		for does, solve := range map[string]func(floor.Measured, Precision) (Solution, error){"shape": afresh, "judged": Solve} {
			b.Run(name+", "+does, func(b *testing.B) {
				for b.Loop() {
					if _, err := solve(m, WithTape(0.002)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// afresh is Shape of a room that was not asked for last.
func afresh(m floor.Measured, with Precision) (Solution, error) {
	_, s, err := settled(m, with)
	return s, err
}

// A room changed in place is another one, and what was given out may be changed.
func TestShapeAskedAgainIsTheSameAndOfWhatIsMeasuredNow(t *testing.T) {
	m := ring(200, 9)
	one, _ := Shape(m, WithTape(0.002))
	one.Outline.Vertices[3].X += 5
	again, _ := Shape(m, WithTape(0.002))
	want, _ := afresh(m, WithTape(0.002))
	if off := again.Off(want.Outline); off > 1e-12 {
		t.Errorf("asked again it is %g m off", off)
	}
	m.Walls[0].Length += 0.01
	changed, _ := Shape(m, WithTape(0.002))
	if want, _ = afresh(m, WithTape(0.002)); changed.Off(want.Outline) > 1e-12 || changed.Off(again.Outline) < 1e-6 {
		t.Errorf("a longer wall leaves the shape as it was")
	}
}

// What is quick is the same room as what is judged.
func TestShapeIsThatOfTheSolution(t *testing.T) {
	for _, m := range []floor.Measured{ring(0, 1), ring(57, 1), ring(200, 9)} {
		shape, err := Shape(m, WithTape(0.002))
		if err != nil {
			t.Fatal(err)
		}
		full, err := Solve(m, WithTape(0.002))
		if err != nil {
			t.Fatal(err)
		}
		if off := full.Off(shape.Outline); off > 1e-9 || len(shape.Outline.Vertices) != MostWalls {
			t.Errorf("the shape of %d walls is %g m off", len(shape.Outline.Vertices), off)
		}
	}
}
