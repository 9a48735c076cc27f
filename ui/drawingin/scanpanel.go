package drawingin

import (
	"context"
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/drawingfile"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/grid"
	"groundrow/ui/theme"
)

// scanPage is the page for a picture without lines: known points are shown in it
// and typed, and then it lies under the plan to be traced.
type scanPage struct {
	page    *Page
	scan    *scan
	title   *widget.Label
	lay     *fields.Button
	said    *fields.Banner
	board   *board
	other   *fields.Button
	way     *fields.Choice
	points  *grid.Grid
	wide    *fields.Length
	deep    *fields.Length
	form    *fields.Form
	w, d    float64
	content fyne.CanvasObject
}

var wayChoices = asOffered(ways)

func newScanPage(p *Page) *scanPage {
	s := &scanPage{page: p, title: heading(""), said: fields.NewBanner(fields.Note, "", "", nil), board: newBoard(p.desk),
		way: fields.NewChoice(wayChoices.names...), form: fields.NewForm()}
	s.lay = fields.NewButton("Lay it under the plan", s.layUnder)
	s.lay.Importance = widget.HighImportance
	s.way.OnCommit = func(text string) error {
		w, _ := wayChoices.value(text)
		s.scan.turn(w)
		s.show(p.desk.View())
		return nil
	}
	s.points = grid.New([]grid.Column{
		{Title: "Point", Width: 150, Grow: true, ReadOnly: true}, {Title: "Shown", Width: 60, ReadOnly: true},
		{Title: "Up", Width: 100, Right: true}, {Title: "Over", Width: 100, Right: true},
	})
	s.points.ShowTools(false)
	s.points.OnEdit = s.typed
	s.wide, s.deep = s.side(&s.w), s.side(&s.d)
	show := fields.NewButton("Show the points in the picture…", s.askPoints)
	s.form.Add("way", "Lay it by", s.way)
	s.form.AddBeside("show", "", show)
	s.form.Add("wide", "Rectangle wide", s.wide)
	s.form.Add("deep", "and deep", s.deep)
	help := wrapped("Up and over as on the plan, in plan axes. The farther apart the points, the truer the picture lies. " +
		"The picture is kept in the production, with where it lies.")
	s.other = fields.NewButton("Another page…", p.pickPage)
	top := container.NewBorder(nil, nil, nil, container.NewHBox(
		s.other, fields.NewButton("Another drawing…", p.Choose), fields.NewButton("Back to the plan", p.leave), s.lay), s.title)
	right := container.NewBorder(container.NewVBox(s.form, s.said), help, nil, nil, s.points)
	split := container.NewHSplit(s.board.content, right)
	split.Offset = 0.62
	s.content = container.NewBorder(top, nil, nil, nil, split)
	s.board.measures.Hide() // nothing can be measured before it lies under the plan
	s.board.touching.Hide()
	s.board.ownInk.Hide()
	s.board.words.Hide()
	return s
}

func (s *scanPage) side(into *float64) *fields.Length {
	l := fields.NewLength(func(text string) (float64, error) { return length.Parse(text, s.page.desk.View().P.Unit()) },
		func(m float64) string { return s.page.desk.View().Style().Bare(m) })
	l.OnBlank = func() error { return nil }
	l.OnCommit = func(_ string, m float64) error {
		*into = m
		if !(s.w > 0) || !(s.d > 0) {
			return nil
		}
		err := s.scan.rectangle(s.w, s.d, s.page.desk.View().Style().Bare)
		s.show(s.page.desk.View())
		return err
	}
	return l
}

// begin shows a picture, where it lies already if it does.
func (s *scanPage) begin(sc *scan) {
	s.scan = sc
	file := s.page.file
	v := s.page.desk.View()
	var points []prep.KnownPoint
	for _, k := range v.P.KnownPoints {
		if k.Drawing == file.kept && file.kept != "" {
			points = append(points, k)
		}
	}
	sc.lie(points, v.Style().Bare)
	w, h := sc.ready.Size()
	words := fmt.Sprintf("From a picture: %s, %d by %d dots", clipped(file.Name), w, h)
	if len(file.Pages) > 1 {
		words = fmt.Sprintf("From a picture: page %d of %s, %d by %d dots", s.page.at+1, clipped(file.Name), w, h)
	}
	s.title.SetText(words)
	setVisible(s.other, len(file.Pages) > 1)
	s.page.turnTo(s.content)
	s.show(v)
	s.board.canvas.Fit()
}

func (s *scanPage) askPoints() {
	n := s.scan.way.points()
	words := "Click two points far apart whose up and over are known, such as two ends of the plaster line."
	if n == 4 {
		words = "Click the four corners of a known rectangle, in this order: downstage right, downstage left, upstage left, upstage right."
	}
	s.board.askFor(asking{words: words, points: n, done: func(ps []plane.Point) {
		for i, p := range ps {
			s.scan.known[i].pixel, s.scan.known[i].set = pixelOf(p), true
		}
		s.show(s.page.desk.View())
	}})
}

// typed takes the up or over of a point.
func (s *scanPage) typed(row string, column int, text string) error {
	n, err := strconv.Atoi(row)
	if err != nil || n >= len(s.scan.known) {
		return nil
	}
	k := &s.scan.known[n]
	unit := s.page.desk.View().P.Unit()
	if column == 2 {
		up, err := length.ParseUp(text, unit)
		if err != nil {
			return err
		}
		k.floor.Y, k.up = up, text
	} else {
		over, err := length.ParseOver(text, unit)
		if err != nil {
			return err
		}
		k.floor.X, k.over = over, text
	}
	s.show(s.page.desk.View())
	return nil
}

func (s *scanPage) show(v *desk.View) {
	if s.scan == nil {
		return
	}
	s.way.Set(wayChoices.name(s.scan.way))
	four := s.scan.way == byFour
	s.form.ShowRow("wide", four)
	s.form.ShowRow("deep", four)
	s.wide.SetUnit(v.P.Unit().Name())
	s.deep.SetUnit(v.P.Unit().Name())
	pic := floorcanvas.Picture{Backdrop: s.scan.raw(), HideDatum: true, Unscaled: true, Style: v.Style()}
	rows := make([]grid.Row, len(s.scan.known))
	for i, k := range s.scan.known {
		name := strconv.Itoa(i + 1)
		if four {
			name += ", " + cornerNames[i]
		}
		shown := "not yet"
		if k.set {
			shown = "yes"
			at := plane.Point{X: k.pixel.X * rawPixel, Y: -k.pixel.Y * rawPixel}
			pic.Dots = append(pic.Dots, floorcanvas.Dot{At: at, Ink: theme.Selection, Size: 14})
			pic.Labels = append(pic.Labels, floorcanvas.Label{At: at, Text: strconv.Itoa(i + 1), Size: 14, Bold: true, Ink: theme.Selection, Anchor: floorcanvas.AboveRight, Fixed: true})
		}
		rows[i] = grid.Row{ID: strconv.Itoa(i), Cells: []string{name, shown, k.up, k.over}}
	}
	s.points.SetRows(rows)
	s.board.canvas.Set(pic)
	missing := s.scan.missing()
	say(s.said, s.content, said{words: missing})
	setEnabled(s.lay, missing == "")
}

// layUnder lays the picture under the plan and keeps it in the production.
func (s *scanPage) layUnder() {
	p := s.page
	p.desk.Run("Laying "+p.file.Name, func(ctx context.Context) (err error) {
		_, err = s.scan.laid(ctx)
		return err
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		name, points := p.file.Name, s.scan.points()
		laid := ""
		if !p.edit("Lay "+name+" under the plan", func(pr *prep.Production) error {
			laid = p.file.kept
			if laid == "" {
				laid = pr.Drawings[len(pr.Drawings)-1].ID
			}
			pr.LayDrawing(laid, points)
			if p.file.Format == drawingfile.PDF {
				pr.NotePage(laid, p.at+1)
			}
			return nil
		}) {
			return
		}
		p.done()
		p.desk.Told(name + " lies under the plan. Trace it with Draw; points snap to its dark lines.")
	})
}
