package prep

import (
	"math"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func handed(t *testing.T, p *Production) Transfer {
	t.Helper()
	tr, err := TransferRows(p, "room", "stage")
	if err != nil {
		t.Fatal(err)
	}
	return tr
}

func rowOf(t *testing.T, tr Transfer, id plan.ElementID) TransferRow {
	t.Helper()
	i := slices.IndexFunc(tr.Rows, func(r TransferRow) bool { return r.Element == id })
	if i < 0 {
		t.Fatalf("no row for %s", id)
	}
	return tr.Rows[i]
}

func TestTransferUndoesWhatWasMovedAside(t *testing.T) {
	p := small()
	wall := rowOf(t, handed(t, p), "wall")
	if len(wall.Changes) != 1 || !strings.Contains(wall.Changes[0], "to stage left") || !strings.Contains(wall.Changes[0], "goes back") {
		t.Errorf("changes %q, want the offset and that it is undone", wall.Changes)
	}
	// Drawn from 2 m right to 2 m left, 3 m up: the stage has no offset.
	for _, want := range []plane.Point{pt(-2, 3), pt(2, 3)} {
		if !slices.ContainsFunc(wall.Marks, func(m MeasuredMark) bool { return m.At.To(want) < 1e-6 }) {
			t.Errorf("no mark of the wall at %v on the stage", want)
		}
	}
}

func TestTransferReadsPositionsFromTheNextFloorsOwnDatum(t *testing.T) {
	p := small()
	stage := &p.Floors[1]
	stage.Placement = plane.Motion{Shift: pt(1, 2)}
	stage.OwnDatum, stage.Datum = true, plane.Motion{Turn: math.Pi / 2, Shift: pt(4, 0)}
	wall := rowOf(t, handed(t, p), "wall")
	// The wall's left end lies at (3, 5) of the stage's floor axes, 1 m stage
	// right and 5 m up of the datum's origin; the datum's axes are turned left.
	want := pt(5, 1)
	if !slices.ContainsFunc(wall.Marks, func(m MeasuredMark) bool { return m.At.To(want) < 1e-6 }) {
		t.Errorf("marks %+v, want one at %v", wall.Marks, want)
	}
}

func TestADanceLineLiesWhereItWasThoughTheNextFloorMeasuresFromElsewhere(t *testing.T) {
	p := small()
	p.DanceLines[0].Up = 1
	stage := &p.Floors[1]
	stage.OwnDatum, stage.Datum = true, plane.Motion{Shift: pt(0, -0.5)}
	d := handed(t, p).Dance[0]
	if math.Abs(d.Line.Up-1.5) > 1e-9 || math.Abs(d.Figures[0].At.Y-1.5) > 1e-9 {
		t.Errorf("the line is %v up and its figures %v, want both 1.5 m", d.Line.Up, d.Figures[0].At.Y)
	}
	if p.DanceLines[0].Up != 1 {
		t.Error("the room's own line has moved")
	}
}

func TestTransferNamesWhatIsRealThere(t *testing.T) {
	stair := rowOf(t, handed(t, small()), "stair")
	if !stair.Goes || len(stair.Changes) != 1 || !strings.HasPrefix(stair.Changes[0], "Left out here, real there (no room)") {
		t.Errorf("row %+v, want a stair that goes and was left out here", stair)
	}
}

func TestTransferGathersNotesAndDanceLines(t *testing.T) {
	tr := handed(t, small())
	if len(tr.Open) != 1 || len(tr.Closed) != 1 {
		t.Errorf("%d open and %d closed notes, want one each", len(tr.Open), len(tr.Closed))
	}
	if n := rowOf(t, tr, "wall").Notes; len(n) != 1 || n[0].ID != "n1" {
		t.Errorf("notes of the wall %+v, want n1", n)
	}
	if len(tr.Dance) != 1 || tr.Dance[0].Here || len(tr.Dance[0].Figures) == 0 {
		t.Errorf("dance %+v, want the room's line to be laid again", tr.Dance)
	}
	if len(tr.Tape) == 0 {
		t.Error("no tape to bring")
	}
}

func TestTransferProblems(t *testing.T) {
	rules := func(p *Production) []string {
		var out []string
		for _, pr := range handed(t, p).Problems {
			out = append(out, pr.Rule)
		}
		return out
	}
	for name, c := range map[string]struct {
		change func(*Production)
		rule   string
	}{
		"open note":       {func(*Production) {}, RuleNote},
		"not measured":    {func(p *Production) { p.Floors[1].Outline = plane.Path{} }, RuleNotMeasured},
		"owner not asked": {func(p *Production) { p.Floors[1].Rule = "" }, RuleOwner},
		"no pivots":       {func(p *Production) { p.Floors[1].Pivots = nil }, RulePivots},
		"no lines":        {func(p *Production) { p.Plan.Elements[0].Paths = nil }, RuleNoPosition},
		"no stock":        {func(p *Production) { p.RemoveStock("red") }, RuleNoStock},
	} {
		t.Run(name, func(t *testing.T) {
			p := small()
			c.change(p)
			if got := rules(p); !slices.Contains(got, c.rule) {
				t.Errorf("problems %v, want %s", got, c.rule)
			}
		})
	}
}

func TestTransferNeedsTwoFloors(t *testing.T) {
	for _, pair := range [][2]floor.ID{{"room", "room"}, {"room", "moon"}, {"moon", "room"}, {"", ""}} {
		if _, err := TransferRows(small(), pair[0], pair[1]); err == nil {
			t.Errorf("%v: no error", pair)
		}
	}
}

func TestChangesInWords(t *testing.T) {
	style := length.Style{Unit: length.Metres, Step: 0.005}
	aside := func(over, up float64) floor.Treatment {
		return floor.Treatment{How: floor.MovedAside, Over: over, Up: up}
	}
	how := func(h floor.How) floor.Treatment { return floor.Treatment{How: h} }
	for name, c := range map[string]struct {
		here, there floor.Treatment
		want        string
	}{
		"the same":              {how(floor.AsDrawn), how(floor.AsDrawn), ""},
		"both short":            {how(floor.CutShort), how(floor.CutShort), ""},
		"outline":               {how(floor.OutlineOnly), how(floor.AsDrawn), "Outline only here, with its inner lines there."},
		"cut here, built there": {how(floor.CutShort), floor.Treatment{How: floor.LeftOut, Reason: "part of the building"}, "Cut short here at the room. Not laid there (part of the building)."},
		"left out there":        {how(floor.AsDrawn), how(floor.LeftOut), "Not laid there."},
		"moved":                 {aside(1, 0), how(floor.AsDrawn), "Moved here 1.000 m to stage left; there it goes back to where it is drawn."},
		"moved two ways":        {aside(-1, -0.5), how(floor.AsDrawn), "Moved here 0.500 m downstage and 1.000 m to stage right; there it goes back to where it is drawn."},
		"moved the same":        {aside(1, 0), aside(1, 0), ""},
		"moved differently":     {aside(1, 0), aside(1, 2), "Stood here 2.000 m downstage of where it stands there."},
		"moved there":           {how(floor.AsDrawn), aside(0, 1), "Moved there 1.000 m upstage."},
		"moved, then no more":   {aside(1, 0), how(floor.LeftOut), "Moved here 1.000 m to stage left. Not laid there."},
	} {
		if got := strings.Join(changes(style, c.here, c.there), " "); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
