package marksplace

import (
	"fmt"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// backPanel measures back a piece that was moved in rehearsal, says what has become
// of it, and lists the moves that are known.
type backPanel struct {
	p       *place
	content fyne.CanvasObject
	piece   *fields.Choice
	how     *fields.Choice
	points  *grid.Grid
	said    *fields.Banner
	reason  *fields.Text
	end     *fields.Form // the reason and what is done with the move
	take    *fields.Button
	note    *fields.Button
	moves   *grid.Grid

	names  map[string]plan.ElementID // what the choice of pieces offers
	chosen plan.ElementID
	typed  map[string][2]string // by label: what was read
	on     ground               // where it was read
	back   prep.Back
}

// ground is a floor of a production file: what is read on one says nothing of another.
type ground struct {
	path  string
	floor floor.ID
}

// The ways in which a piece is measured back.
const (
	byUpAndOver  = "up and over"
	byTapesLeft  = "from pivots 1 and 2, left of their line"
	byTapesRight = "from pivots 1 and 2, right of their line"
)

var sides = map[string]survey.Side{byTapesLeft: survey.Left, byTapesRight: survey.Right}

// wholeFloor measures back the tape-out itself.
const wholeFloor = "the tape-out as a whole"

func newBackPanel(p *place) *backPanel {
	t := &backPanel{p: p, typed: map[string][2]string{}}
	t.piece, t.how = fields.NewChoice(), fields.NewChoice(byUpAndOver, byTapesLeft, byTapesRight)
	t.how.Set(byUpAndOver)
	t.how.OnCommit = func(string) error { t.begin(t.chosen); return nil }
	t.piece.OnCommit = func(name string) error { t.begin(t.names[name]); return nil }
	t.points = grid.New(backColumns(byUpAndOver))
	t.points.ShowTools(false)
	t.points.OnEdit = t.read
	t.points.SetEmpty("Choose the piece that was moved; measure two or more of its marks where they lie now.", "", nil)
	t.said = fields.NewBanner(fields.Note, "", "", nil)
	t.reason = fields.NewText()
	t.reason.SetHint("why it was moved")
	t.take = fields.NewButton("Take it into the plan", func() { t.keep(true) })
	t.note = fields.NewButton("Note it for the transfer", func() { t.keep(false) })
	form := fields.NewForm()
	form.Add("piece", "Piece", t.piece)
	form.Add("how", "Measured by", t.how)
	t.end = fields.NewForm()
	t.end.Add("reason", "Reason", t.reason)
	t.end.AddBeside("take", "", container.NewHBox(t.take, t.note))
	t.moves = t.moveTable()
	upper := container.NewBorder(form, container.NewVBox(t.said, t.end), nil, nil, t.points)
	split := container.NewVSplit(upper, t.moves)
	split.SetOffset(0.68)
	t.content = split
	return t
}

func (t *backPanel) moveTable() *grid.Grid {
	g := grid.New(moveColumns())
	g.OnDelete = t.remove
	g.OnEdit = func(id string, _ int, text string) error {
		if !grid.Ticked(text) {
			return fmt.Errorf("the plan keeps the piece in its new place: use Undo, or set it back on the plan")
		}
		return t.p.desk.TryEdit("Take a move into the plan", func(pr *prep.Production) error { return pr.TakeMove(id) })
	}
	g.SetEmpty("Nothing is known to have moved on this floor.", "", nil)
	return g
}

// remove deletes the records of moves; the plan stays as it is.
func (t *backPanel) remove(ids []string) {
	if len(ids) == 0 {
		return
	}
	t.p.desk.Edit("Delete "+verb(len(ids), "move", "moves"), func(pr *prep.Production) error {
		for _, id := range ids {
			pr.RemoveMove(id)
		}
		return nil
	})
}

// begin looks at another piece or measures it in another way, with nothing read.
func (t *backPanel) begin(e plan.ElementID) {
	t.chosen, t.typed = e, map[string][2]string{}
	t.points.SetColumns(backColumns(t.how.Value()))
	t.p.Show(t.p.view)
}

// read takes one measure of one mark.
func (t *backPanel) read(label string, column int, text string) error {
	pair := t.typed[label]
	before := pair
	pair[column-backFirst] = strings.TrimSpace(text)
	if pair[0] != "" && pair[1] != "" {
		if _, err := t.p.view.Here().ReadBack(t.p.view.P, pair[0], pair[1], sides[t.how.Value()]); err != nil {
			w := t.p.view.Here()
			if base, ok := prep.Pivots(w.Floor); ok {
				t.typed[label] = before
				return fmt.Errorf("%s", cannotMeet(err, base.Base(), t.p.view.Style().Format))
			}
			return err
		}
	}
	t.typed[label] = pair
	t.p.Show(t.p.view)
	return nil
}

// arrive forgets what was read when another floor is looked at, and in another file
// the piece as well.
func (t *backPanel) arrive(v *desk.View) {
	now := ground{v.Path, v.Floor}
	if now == t.on {
		return
	}
	if now.path != t.on.path {
		t.chosen = ""
		t.piece.Set("")
	}
	t.on, t.typed = now, map[string][2]string{}
}

func (t *backPanel) show(v *desk.View, w *prep.FloorWork) {
	t.arrive(v)
	var names []string
	t.names, names = pieces(v)
	t.piece.SetOptions(append([]string{wholeFloor}, names...)...)
	t.moves.SetRows(moveRows(v))
	if t.chosen == "" && t.piece.Value() != wholeFloor {
		t.points.SetRows(nil)
		t.say(v, nil, nil)
		return
	}
	list := w.MarksOfPiece(t.chosen, v.Scene)
	found, where := foundPoints(v.P, w, list, t.typed, sides[t.how.Value()])
	t.points.SetRows(backRows(v, list, t.typed, t.how.Value(), where))
	var err error
	t.back, err = prep.MeasureBack(v.P, w, t.chosen, v.Scene, found)
	t.say(v, found, err)
}

// say sets the answer and what can be done about it.
func (t *backPanel) say(v *desk.View, found []prep.BackPoint, err error) {
	takeable := len(found) > 0 && err == nil && t.back.Takeable()
	t.take.SetEnabled(takeable)
	t.note.SetEnabled(takeable)
	switch {
	case err != nil:
		t.said.Set(fields.Note, sentence(err), "", nil)
	case len(found) == 0:
		t.said.Set(fields.Note, "", "", nil)
	case t.back.Finding == prep.Stayed || t.back.Finding == prep.HasMoved:
		t.said.Set(fields.Good, t.back.Sentence(v.P)+" "+t.back.Next(), "", nil)
	default:
		t.said.Set(fields.Warning, t.back.Sentence(v.P)+" "+t.back.Next(), "", nil)
	}
}

// keep records the move, and with taken puts the piece there on the plan.
func (t *backPanel) keep(taken bool) {
	m := t.back.Move
	var labels []string
	for _, f := range t.back.Points {
		labels = append(labels, f.Label)
	}
	m.ID, m.Points, m.Taken = uuid.NewString(), strings.Join(labels, ", "), taken
	m.Reason, m.By, m.On = strings.TrimSpace(t.reason.Shown()), t.p.view.Who, time.Now()
	if m.Reason == "" {
		t.p.desk.Told("Say why it was moved: the next team was not there.")
		t.end.Focus("reason")
		return
	}
	label := "Note that a piece was moved"
	if taken {
		label = "Move a piece to where it was measured"
	}
	if t.p.desk.Edit(label, func(pr *prep.Production) error { return pr.KeepMove(m) }) {
		t.reason.Set("")
		t.begin(t.chosen)
	}
}
