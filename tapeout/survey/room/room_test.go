package room

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

var tape = WithTape(0.003)

// walked makes measured walls of these lengths, with the turns given by eye; a
// turn of zero is not known.
func walked(lengths []float64, turns ...float64) (m floor.Measured) {
	for i, l := range lengths {
		w := floor.MeasuredWall{ID: Corner(i), Length: l}
		if i < len(turns) {
			w.Turn = turns[i]
		}
		m.Walls = append(m.Walls, w)
	}
	return m
}

// across adds a length between two corners by their letters.
func across(m floor.Measured, from, to string, l float64) floor.Measured {
	m.Diagonals = append(m.Diagonals[:len(m.Diagonals):len(m.Diagonals)], floor.Diagonal{ID: from + to, From: from, To: to, Length: l})
	return m
}

func square(m floor.Measured, ends ...int) floor.Measured {
	for _, i := range ends {
		m.Walls[i].Square = true
	}
	return m
}

func mustSolve(t *testing.T, m floor.Measured) Solution {
	t.Helper()
	s, err := Solve(m, tape)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func names(pairs []Pair) string {
	out := make([]string, len(pairs))
	for i, p := range pairs {
		out[i] = p.Name
	}
	return strings.Join(out, " ")
}

// Without a diagonal four walls can lean; the eye's right angles are where the
// drawing begins, and no more than that.
func TestWhatIsMissingIsSaid(t *testing.T) {
	tests := map[string]struct {
		m             floor.Measured
		freedom, open int
		next          string
	}{
		"four walls lean":              {walked([]float64{8, 6, 8, 6}, 90, 90, 90, 90), 0, 1, "A–C"},
		"a diagonal fixes them":        {across(walked([]float64{8, 6, 8, 6}), "A", "C", 10), 0, 0, "B–D"},
		"both diagonals check them":    {across(across(walked([]float64{8, 6, 8, 6}), "A", "C", 10), "B", "D", 10), 1, 0, ""},
		"one right angle fixes them":   {square(walked([]float64{8, 6, 8, 6}), 0), 0, 0, "A–C"},
		"four right angles check them": {square(walked([]float64{8, 6, 8, 6}), 0, 1, 2, 3), 3, 0, "A–C"},
		"a triangle is fixed":          {walked([]float64{3, 4, 5}), 0, 0, ""},
		"an L wants three":             {walked([]float64{10, 4, 4, 4, 6, 8}, 90, 90, -90, 90, 90, 90), 0, 3, "D–F A–D B–D"},
		"a wall left out wants two":    {walked([]float64{8, 6, 8, 0}, 90, 90, 90, 90), 0, 2, "A–D A–C"},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			s := mustSolve(t, tt.m)
			if s.Freedom != tt.freedom || s.Open != tt.open {
				t.Errorf("freedom %d, open %d; want %d and %d", s.Freedom, s.Open, tt.freedom, tt.open)
			}
			if got := names(s.Next); got != tt.next {
				t.Errorf("next is %q, want %q", got, tt.next)
			}
			if s.Open > 0 && len(s.Next) != s.Open {
				t.Errorf("%d measurements for %d that are open", len(s.Next), s.Open)
			}
		})
	}
}

// Whatever is said to be missing fixes the shape when it is measured, and with no
// fewer: on random rooms with walls alone.
func TestWhatIsMissingFixesTheShape(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 40 {
		shape := randomRoom(r, 3+r.IntN(8))
		m := walledIn(shape)
		s := mustSolve(t, m)
		if s.Open != len(m.Walls)-3 || len(s.Next) != s.Open {
			t.Fatalf("%d walls leave %d open and ask for %s", len(m.Walls), s.Open, names(s.Next))
		}
		for i, p := range s.Next {
			from, _ := m.Corner(p.From)
			to, _ := m.Corner(p.To)
			m = across(m, p.From, p.To, shape[from].To(shape[to]))
			if again := mustSolve(t, m); again.Open != s.Open-i-1 {
				t.Fatalf("after %s %d are open", p.Name, again.Open)
			}
		}
		done := mustSolve(t, m)
		for i, v := range done.Outline.Vertices {
			if d := math.Abs(v.Point.To(done.Outline.Vertices[0].Point) - shape[i].To(shape[0])); d > 1e-6 {
				t.Fatalf("corner %s lies %.2g m off", Corner(i), d)
			}
		}
	}
}

// randomRoom is a room whose corners all see its middle.
func randomRoom(r *rand.Rand, n int) []plane.Point {
	out := make([]plane.Point, n)
	for i := range out {
		out[i] = plane.Polar(5+3*r.Float64(), 2*math.Pi*(float64(i)+0.6*r.Float64())/float64(n))
	}
	return out
}

// walledIn measures the walls of a shape and sees its turns to five degrees.
func walledIn(shape []plane.Point) floor.Measured {
	walls := floor.Walls(plane.Closed(shape...))
	lengths, turns := make([]float64, len(walls)), make([]float64, len(walls))
	for i, w := range walls {
		lengths[i], turns[i] = w.Length, math.Round(w.Turn/5)*5
	}
	return walked(lengths, turns...)
}

// Where the walk began, and in which order a diagonal's ends were typed, changes
// no distance in the room.
func TestShapeDoesNotDependOnWhereTheWalkBegan(t *testing.T) {
	for _, r := range references(t) {
		m, with := r.measured()
		s, err := Solve(m, with)
		if err != nil {
			t.Fatal(err)
		}
		turned := m
		turned.Walls = append(append([]floor.MeasuredWall(nil), m.Walls[2:]...), m.Walls[:2]...)
		for i, d := range turned.Diagonals {
			turned.Diagonals[i].From, turned.Diagonals[i].To = d.To, d.From
		}
		again, err := Solve(turned, with)
		if err != nil {
			t.Fatalf("%s: %v", r.Name, err)
		}
		n := len(m.Walls)
		for i := range n {
			was := s.Outline.Vertices[i].Point.To(s.Outline.Vertices[(i+1)%n].Point)
			is := again.Outline.Vertices[(i+n-2)%n].Point.To(again.Outline.Vertices[(i+n-1)%n].Point)
			if math.Abs(was-is) > 1e-6 {
				t.Errorf("%s: wall %d is %.9f or %.9f", r.Name, i, was, is)
			}
		}
	}
}

func TestWhatIsNoRoomIsRefusedInWords(t *testing.T) {
	diagonal := func(from, to string, l float64) floor.Measured {
		return across(walked([]float64{8, 6, 8, 6}, 90, 90, 90, 90), from, to, l)
	}
	tests := map[string]struct {
		m    floor.Measured
		want []string
	}{
		"two walls":                {walked([]float64{3, 4}), []string{"at least three walls"}},
		"nothing measured":         {walked([]float64{0, 0, 0}), []string{"no wall has a length"}},
		"no triangle":              {diagonal("A", "C", 14.5), []string{"A–C is 14.500 m", "A–B–C", "14.000 m", "Measure A–C again"}},
		"too short a diagonal":     {diagonal("A", "C", 1.5), []string{"A–B is 8.000 m", "A–C–B", "7.500 m"}},
		"walls that cannot meet":   {walked([]float64{20, 6, 5, 6}), []string{"the walls cannot close", "A–B is 20.000 m", "17.000 m"}},
		"a triangle of walls":      {walked([]float64{3, 4, 9}), []string{"the walls cannot close", "C–A"}},
		"walls that cross":         {walked([]float64{10, 2, 10, 8}, 60, -150, -60, 90), []string{"cross"}},
		"one length, two readings": {across(diagonal("A", "C", 10), "C", "A", 10.3048), []string{"C–A was measured twice, as 10.305 m and as 10.000 m", "Measure it again"}},
		"a diagonal to itself":     {diagonal("B", "B", 3), []string{"from B to itself"}},
		"a diagonal to nowhere":    {diagonal("B", "gone", 3), []string{"not there any more"}},
		"a diagonal of nothing":    {diagonal("A", "C", 0), []string{"A–C has no length"}},
		"not a length":             {walked([]float64{3, math.NaN(), 5}), []string{"the wall B–C has no length"}},
		"endless":                  {walked([]float64{3, math.Inf(1), 5}), []string{"the wall B–C has no length"}},
		"not a turn":               {walked([]float64{3, 4, 5}, math.NaN()), []string{"the end of the wall A–B"}},
		"a square curve": {func() floor.Measured {
			m := square(walked([]float64{8, 6, 8, 6}), 1)
			m.Walls[2].Rise = 1
			return m
		}(), []string{"corner C", "curved"}},
		"a wall of many": {walked(make([]float64, MostWalls+1)), []string{"more than"}},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			s, err := Solve(tt.m, tape)
			if err == nil {
				t.Fatalf("solved as %v", s.Outline)
			}
			for _, w := range tt.want {
				if !strings.Contains(err.Error(), w) {
					t.Errorf("%q lacks %q", err, w)
				}
			}
		})
	}
}

// A curved wall is a circle through both corners that rises as measured, outwards
// or into the room. Sagitta: any route-surveying handbook.
func TestCurvedWallRisesAsMeasured(t *testing.T) {
	for _, rise := range []float64{1.2, -0.7} {
		m := across(walked([]float64{8, 6, 8, 6}), "A", "C", 10)
		m.Walls[1].Rise = rise
		s := mustSolve(t, m)
		e := s.Outline.Edges()[1]
		chord := e.B.Sub(e.A)
		out := -chord.Cross(e.At(0.5).Sub(e.A)) / chord.Len() // the room is on the left
		if math.Abs(out-rise) > 1e-9 {
			t.Errorf("the wall rises %.9f beyond its chord, want %v", out, rise)
		}
		area := s.Outline.Area()
		if bigger := area > 48; bigger != (rise > 0) {
			t.Errorf("area %.3f with a rise of %v", area, rise)
		}
	}
}

// A slip in one length of a well checked room is named with its cause, whichever
// length it is; a right angle that is none is named as well.
func TestEverySlipIsNamed(t *testing.T) {
	shape := []plane.Point{{}, {X: 9.2, Y: -0.3}, {X: 13, Y: 3.9}, {X: 11.2, Y: 8.8}, {X: 3.1, Y: 9.9}, {X: -1.4, Y: 5.2}}
	r := rand.New(rand.NewPCG(5, 6))
	whole := func() floor.Measured {
		m := walledIn(shape)
		for i := range shape {
			m.Walls[i].Length += 0.002 * r.NormFloat64()
			for j := i + 2; j < len(shape); j++ {
				if i > 0 || j < len(shape)-1 {
					m = across(m, Corner(i), Corner(j), shape[i].To(shape[j])+0.002*r.NormFloat64())
				}
			}
		}
		return m
	}
	slips := map[string]float64{"a whole foot too long": 0.3048, "ten centimetres too short": -0.1, "an inch too long": 0.0254, "a whole metre too short": -1}
	for cause, by := range slips {
		solved, named := 0, 0
		for i := range shape {
			m := whole()
			m.Walls[i].Length += by
			s, err := Solve(m, tape)
			if err != nil {
				continue // so short that it makes no triangle: said before anything is worked out
			}
			solved++
			v := s.Verdict
			if len(v.Faults) == 0 || s.Measures[v.Faults[0].Measure].ID != Corner(i) || v.Together || !v.Sure() && math.Abs(by) > 0.03 {
				t.Errorf("wall %s %s: %+v", Corner(i), cause, v)
				continue
			}
			if v.Faults[0].Cause == cause {
				named++
			}
		}
		// Now and then the figures fit another slip better, such as a 6 read as a 9.
		if solved < 4 || named < solved-2 {
			t.Errorf("%s: named in %d rooms of %d", cause, named, solved)
		}
	}
	m := whole()
	m.Walls[2].Square = true // the corner D, which turns 77 degrees
	v := mustSolve(t, m).Verdict
	if !v.Sure() || mustSolve(t, m).Measures[v.Faults[0].Measure].Kind != Square {
		t.Errorf("a corner that is not square: %+v", v)
	}
}

// In a room that chance alone has measured nobody is accused more than rarely.
func TestChanceAccusesRarely(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	accused := 0
	const rooms = 300
	for range rooms {
		shape := randomRoom(r, 4+r.IntN(4))
		m := walledIn(shape)
		for i := range shape {
			m.Walls[i].Length += tape.Length * r.NormFloat64()
			for j := i + 2; j < len(shape); j++ {
				if (i > 0 || j < len(shape)-1) && r.IntN(3) > 0 {
					m = across(m, Corner(i), Corner(j), shape[i].To(shape[j])+tape.Length*r.NormFloat64())
				}
			}
		}
		if len(mustSolve(t, m).Verdict.Faults) > 0 {
			accused++
		}
	}
	// One reading in a thousand goes beyond Doubtful, of some ten in a room.
	if accused > 10 {
		t.Errorf("%d of %d rooms without a fault are accused", accused, rooms)
	}
}

// With one measurement too many a contradiction shows, but not where it comes
// from: all that can have made it are named, the usual slips first.
func TestWhatCannotBeToldApartIsNotGuessed(t *testing.T) {
	m := across(across(walked([]float64{8, 6, 8, 6}), "A", "C", 10), "B", "D", 10.3048)
	s := mustSolve(t, m)
	if len(s.Verdict.Faults) != len(s.Measures) || s.Verdict.Together || s.Verdict.Sure() {
		t.Fatalf("accused %+v", s.Verdict)
	}
	if first := s.Verdict.Faults[0]; first.Cause == "" {
		t.Errorf("the first accused, %s, has no cause", s.Measures[first.Measure].Name)
	}
}

func TestTwoBlundersAreBothNamed(t *testing.T) {
	r := references(t)[4] // the hexagon with all its diagonals and one of them a foot too long
	m, with := r.measured()
	m.Walls[5].Length += 0.5
	s, err := Solve(m, with)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]bool{}
	for _, f := range s.Verdict.Faults {
		got[s.Measures[f.Measure].Name] = true
	}
	if !s.Verdict.Together || !got["B–E"] || !got["F–A"] || len(got) != 2 {
		t.Errorf("accused %v", got)
	}
}

func TestSolutionLiesWhereTheRoomLay(t *testing.T) {
	s := mustSolve(t, across(walked([]float64{8, 6, 8, 6}), "A", "C", 10))
	old := plane.Closed(plane.Point{X: 3, Y: 1}, plane.Point{X: 3, Y: 9}, plane.Point{X: -3, Y: 9}, plane.Point{X: -3, Y: 1})
	if off := s.Off(old); off > 1e-9 {
		t.Errorf("the same room, turned, is %.2g m off", off)
	}
	old.Vertices[2].X += 0.05
	if off := s.Off(old); math.Abs(off-0.05) > 1e-6 {
		t.Errorf("a corner moved by 50 mm shows as %.4f m", off)
	}
	if off := s.Off(plane.Closed(plane.Point{}, plane.Point{X: 1}, plane.Point{Y: 1})); !math.IsInf(off, 1) {
		t.Errorf("a room of three walls is %.2g m off", off)
	}
}

// No measurements, however absurd, do anything but give a room or a sentence.
func FuzzSolve(f *testing.F) {
	f.Add(int64(1), 4, 2, 10.0)
	f.Add(int64(2), 12, 9, 1e-9)
	f.Add(int64(3), 3, 0, 1e3)
	f.Fuzz(func(t *testing.T, seed int64, walls, diagonals int, size float64) {
		r := rand.New(rand.NewPCG(uint64(seed), 9))
		var m floor.Measured
		for i := range ((walls%14)+14)%14 + 1 {
			m.Walls = append(m.Walls, floor.MeasuredWall{ID: fmt.Sprint(i), Length: size * r.ExpFloat64(), Turn: float64(r.IntN(5)-2) * 90,
				Square: r.IntN(4) == 0, Rise: float64(r.IntN(5)/4) * size * r.NormFloat64()})
		}
		for i := range ((diagonals % 9) + 9) % 9 {
			m = across(m, fmt.Sprint(r.IntN(len(m.Walls))), fmt.Sprint(r.IntN(len(m.Walls))), size*r.ExpFloat64())
			m.Diagonals[i].ID = fmt.Sprint("d", i)
		}
		s, err := Solve(m, tape)
		if err != nil {
			if s.Outline.Vertices != nil || err.Error() == "" {
				t.Fatalf("%v with %v", err, s.Outline)
			}
			return
		}
		for _, v := range s.Outline.Vertices {
			if !v.Finite() {
				t.Fatalf("a corner at %v", v)
			}
		}
	})
}
