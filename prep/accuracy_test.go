package prep

import (
	"math"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

func TestSquareOnFitsTheRoom(t *testing.T) {
	var p *Production
	var room *floor.Floor // 6 m to either side of the datum and 8 m up
	for _, c := range []struct {
		name     string
		change   func()
		up, over float64
		ok       bool
	}{
		// 0.3 m is left before every wall: 5.7 m across allow 1.5 × 3, 7.7 m up 1.5 × 4.
		{"up to the walls", func() {}, 6, 4.5, true},
		{"a column upstage of the datum", func() {
			room.Obstacles = []floor.Obstacle{{ID: "o", Shape: plane.Rectangle(pt(-0.2, 4), pt(0.2, 4.4))}}
		}, 3, 4, true},
		{"a short tape", func() { p.Settings.TapeLength = 5 }, 4, 3, true},
		{"a datum outside the room", func() { room.Placement.Shift = pt(20, 0) }, 0, 0, false},
		{"a room that is not measured", func() { room.Outline = plane.Path{} }, 0, 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p = small()
			p.Settings.Unit = "m"
			room = p.Floor("room")
			c.change()
			a, ok := SquareOn(p, Work(p, "room", ""))
			if ok != c.ok || math.Abs(a.Up-c.up) > 1e-9 || math.Abs(a.Over-c.over) > 1e-9 {
				t.Fatalf("got %+v, %v; want %v m up and %v m over", a, ok, c.up, c.over)
			}
		})
	}
}

func TestAccuracyNamesTheWorstMarkAndWhatLimitsIt(t *testing.T) {
	p := small()
	w := Work(p, "room", "")
	a := AccuracyOf(p, w)
	if a.Worst < 0 || a.Limit == "" {
		t.Fatalf("got %+v", a)
	}
	worst := w.Marks[a.Worst].Error
	if !(a.Within > 0 && a.Within <= worst) {
		t.Errorf("95 %% within %v m, but the worst mark is within %v m", a.Within, worst)
	}
	for i, m := range w.Marks {
		if m.Error > worst {
			t.Errorf("mark %d is worse than the worst", i)
		}
		if m.Good != (m.Error <= p.Errors().Allowed) {
			t.Errorf("mark %d with %v m is called good: %v", i, m.Error, m.Good)
		}
	}
}

func TestAPoorReadingIsNamedAsTheLimit(t *testing.T) {
	p := small()
	p.Settings.TapeSigma = 0.05
	w := Work(p, "room", "")
	a := AccuracyOf(p, w)
	if a.Limit != CauseReading || a.Poor != len(w.Marks) {
		t.Fatalf("limited by %q, %d of %d poor", a.Limit, a.Poor, len(w.Marks))
	}
}

func TestMarksOutOfReachAreNotPlacedByTwoTapes(t *testing.T) {
	p := small()
	reached := func() (n int) {
		for i, m := range Work(p, "room", "").Marks {
			if m.Way(survey.TwoTapes).Usable {
				n++
			} else if m.Method == survey.TwoTapes {
				t.Errorf("mark %d is out of reach of two tapes, but to be placed with them", i)
			}
		}
		return n
	}
	if reached() == 0 {
		t.Fatal("two tapes reach no mark of the room")
	}
	p.Settings.TapeLength = 1 // no mark is within a metre of both pivots, which are ten apart
	if n := reached(); n != 0 {
		t.Errorf("tapes of a metre reach %d marks", n)
	}
}

// Of equal marks 95 % lie within the 95 % radius of each.
func TestWithin95OfEqualMarksIsTheirOwn(t *testing.T) {
	if got := within95([]float64{0.01, 0.01, 0.01}); math.Abs(got-0.01) > 1e-6 {
		t.Fatalf("got %v", got)
	}
	if got := within95([]float64{0, 0}); got != 0 {
		t.Fatalf("marks without error lie within %v", got)
	}
}

func TestWithPivotsMeasuresAgainAndLeavesTheFloorAlone(t *testing.T) {
	p := small()
	w := Work(p, "room", "")
	before := w.Marks[0].Tapes.A
	moved := append([]floor.Pivot(nil), w.Floor.Pivots...)
	moved[0].At = moved[0].At.Add(pt(0, -1))
	other := w.WithPivots(p, moved)
	want := other.Marks[0].At.To(pt(-5, -1))
	if math.Abs(other.Marks[0].Tapes.A-want) > 1e-9 {
		t.Errorf("tape 1 reads %v, want %v", other.Marks[0].Tapes.A, want)
	}
	if w.Marks[0].Tapes.A != before || p.Floor("room").Pivots[0].At != pt(-5, 0) {
		t.Error("the floor itself has changed")
	}
}

func TestChecksCoverEveryMarkAndTheDiagonalsOfARectangle(t *testing.T) {
	p := small()
	w := Work(p, "stage", "")
	seen := map[int]bool{}
	diagonals := 0
	for _, c := range ChecksOf(p, w) {
		seen[c.From], seen[c.To] = true, true
		if c.Why == survey.Diagonal {
			diagonals++
		}
	}
	for i := range w.Marks {
		if !seen[i] {
			t.Errorf("mark %s is in no check", w.Marks[i].Label)
		}
	}
	if diagonals != 2 {
		t.Errorf("%d diagonals, want the two of the stair", diagonals)
	}
}

// Twice √(3·9 + 2/12) mm is 10.4 mm, so 11 steps.
func TestCheckAllowedIsAWholeNumberOfSteps(t *testing.T) {
	p := &Production{Settings: Settings{Unit: "mm", Step: 0.001, TapeSigma: 0.003}}
	if got := p.CheckAllowed(); math.Abs(got-0.011) > 1e-9 {
		t.Fatalf("got %v m", got)
	}
}
