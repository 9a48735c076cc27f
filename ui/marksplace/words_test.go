package marksplace

import (
	"slices"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

func TestLabelsAndLengthsSortAsTheyAreRead(t *testing.T) {
	labels := []string{"AA", "B", "Z", "A", "AB"}
	slices.SortFunc(labels, byLabel)
	if !slices.Equal(labels, []string{"A", "B", "Z", "AA", "AB"}) {
		t.Errorf("labels: %v", labels)
	}
	lengths := []string{"", `2' 0" SL`, "on centre", `10' 0" SR`, `1' 11" SL`}
	slices.SortFunc(lengths, byLength)
	if !slices.Equal(lengths, []string{`10' 0" SR`, "on centre", `1' 11" SL`, `2' 0" SL`, ""}) {
		t.Errorf("lengths: %q", lengths)
	}
}

func TestSmallErrorsAreShort(t *testing.T) {
	feet := &prep.Production{Settings: prep.Settings{Unit: "ft"}}
	metric := &prep.Production{Settings: prep.Settings{Unit: "m"}}
	for _, c := range []struct {
		p    *prep.Production
		m    float64
		want string
	}{
		{feet, 0.0254 / 2, `1/2"`}, {feet, 0.0254 * 1.25, `1 1/4"`}, {feet, 0.0005, `less than 1/16"`},
		{feet, 0.3048 * 1.5, `1' 6"`}, {metric, 0.012, "12 mm"}, {metric, 0.0004, "less than 1 mm"},
	} {
		if got := c.p.Fine(c.m); got != c.want {
			t.Errorf("%v m reads %q, want %q", c.m, got, c.want)
		}
	}
}

func TestWhyTapesCannotMeetIsSaidInTheProductionsUnit(t *testing.T) {
	pair := survey.TwoTape{B: plane.Point{X: 10 * 0.3048}}
	format := (&prep.Production{Settings: prep.Settings{Unit: "ft", Step: 0.0254 / 8}}).Style().Format
	for _, c := range []struct {
		name string
		a, b float64 // feet
		side survey.Side
		says string
	}{
		{"too short together", 4, 5, survey.Left, `1' 0" short`},
		{"the first too long", 20, 5, survey.Left, "the first is"},
		{"the second too long", 5, 20, survey.Right, "the second is"},
		{"beside the line", 8, 8, survey.OnLine, "say on which side"},
	} {
		_, err := pair.Locate(survey.Reading{A: c.a * 0.3048, B: c.b * 0.3048, Side: c.side})
		if err == nil {
			t.Errorf("%s: the tapes meet", c.name)
			continue
		}
		if text := cannotMeet(err, pair.Base(), format); !strings.Contains(text, c.says) || strings.Contains(text, " m ") {
			t.Errorf("%s: %s", c.name, text)
		}
	}
}

func TestTheStripSaysWhatLimitsTheFloor(t *testing.T) {
	_, d := open(t)
	v := d.View()
	// One corner of the set lies under a column of the hall.
	good, text := quality(v.P, v.Here(), prep.AccuracyOf(v.P, v.Here()))
	if good || !strings.Contains(text, "95 % of the marks") || !strings.Contains(text, "limited by the") || !strings.Contains(text, "No method reaches mark HP") {
		t.Errorf("%v, %s", good, text)
	}
	poor := *v.P
	poor.Settings.TapeSigma = 0.05
	w := prep.Work(&poor, v.Floor, v.Scene)
	if good, text := quality(&poor, w, prep.AccuracyOf(&poor, w)); good || !strings.Contains(text, string(prep.CauseReading)) {
		t.Errorf("with readings five centimetres off: %v, %s", good, text)
	}
	poor.Settings.TapeSigma, poor.Floors = 0.003, slices.Clone(v.P.Floors)
	poor.Floors[0].Obstacles = nil
	w = prep.Work(&poor, v.Floor, v.Scene)
	if good, text := quality(&poor, w, prep.AccuracyOf(&poor, w)); !good {
		t.Errorf("without columns: %s", text)
	}
	if text := rightAngle(v.P, v.Here()); !strings.Contains(text, "5 times as large") {
		t.Errorf("the right angle: %s", text)
	}
}

func TestTwoPivotsInOnePlaceAreNotToBeMeasuredApart(t *testing.T) {
	p, _ := open(t)
	w := p.view.Here()
	w.Floor.Pivots[1].At = w.Floor.Pivots[0].At
	if got := pivotWords(p.view, w); !strings.Contains(got, "in one place") || strings.Contains(got, "apart") {
		t.Errorf("it says %q", got)
	}
}

func TestAMarkThatNothingReachesHasNoFigure(t *testing.T) {
	_, d := open(t)
	v := d.View()
	found := false
	for _, m := range v.Here().Marks {
		if cells := markRow(v, m).Cells; m.OutOfReach() {
			found = true
			if cells[colError] != "none" || cells[colMethod] != "none" {
				t.Errorf("%s is said to lie within %s by %s", m.Label, cells[colError], cells[colMethod])
			}
		}
	}
	if !found {
		t.Fatal("the hall of the demo has a mark behind a column")
	}
	far := *v.P
	far.Settings.TapeLength = 0.1
	w := prep.Work(&far, v.Floor, v.Scene)
	if good, text := quality(&far, w, prep.AccuracyOf(&far, w)); good || !strings.Contains(text, "No method reaches any of the") {
		t.Errorf("with a tape of ten centimetres: %v, %s", good, text)
	}
}
