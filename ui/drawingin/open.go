package drawingin

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"groundrow/ui/drawingfile"
)

var dialogSize = fyne.NewSize(900, 600)

// opened is a drawing on its way in.
type opened struct {
	drawingfile.File
	kept string // the identifier under which the production keeps it already; empty: it does not
}

// sheet reads a page, with what can be found out about it.
func (o opened) sheet(ctx context.Context, n int) (*sensed, error) {
	s, err := o.Sheet(ctx, n, nil)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", o.Name, err)
	}
	return makeSense(ctx, s)
}

// Choose asks for a drawing.
func (p *Page) Choose() {
	dlg := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil || r == nil {
			p.fail(err)
			return
		}
		path := r.URI().Path()
		r.Close()
		p.Open(path)
	}, p.desk.Window())
	dlg.SetFilter(storage.NewExtensionFileFilter(append(slices.Clone(tables), drawingfile.Extensions...)))
	dlg.Resize(dialogSize)
	dlg.Show()
}

// tables are the endings of files that hold a table of corners and no drawing.
var tables = []string{".csv", ".tsv", ".txt"}

// Open reads a drawing from a file, off the UI goroutine.
func (p *Page) Open(path string) {
	if slices.Contains(tables, strings.ToLower(filepath.Ext(path))) {
		p.desk.TakeTable(path)
		return
	}
	var src drawingfile.Source
	p.desk.Run("Opening "+filepath.Base(path), func(context.Context) (err error) {
		src, err = drawingfile.Read(path)
		return err
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		p.read(src, "")
	})
}

// read opens what a source holds; kept is its identifier when the production keeps
// it already.
func (p *Page) read(src drawingfile.Source, kept string) {
	file := opened{kept: kept}
	if src.Format.Picture() {
		file.Source = src
		p.readScan(file)
		return
	}
	var sheet *sensed
	p.desk.Run("Reading "+src.Name, func(ctx context.Context) (err error) {
		file.File, err = drawingfile.Open(ctx, src)
		if err != nil {
			return fmt.Errorf("%s: %w", src.Name, err)
		}
		sheet, err = file.sheet(ctx, file.First())
		return err
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		p.file = file
		p.take(file.First(), sheet)
	})
}

// openSheet reads another page of the file.
func (p *Page) openSheet(n int) {
	var sheet *sensed
	file := p.file
	p.desk.Run(fmt.Sprintf("Reading page %d", n+1), func(ctx context.Context) (err error) {
		sheet, err = file.sheet(ctx, n)
		return err
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		p.take(n, sheet)
	})
}

// sensed is a page with what could be found out about it.
type sensed struct {
	*drawn
	scales []scaleProposal
	datums []datumProposal
}

// take shows a page that has been read.
func (p *Page) take(n int, s *sensed) {
	p.calling()
	p.at, p.d, p.scales, p.datums, p.coming = n, s.drawn, s.scales, s.datums, coming{}
	p.changes, p.means, p.revising = changes{}, "", len(p.desk.View().P.Plan.Elements) > 0
	p.dim = p.d.dimensionOf()
	p.baseline = p.desk.View().P.Plan.Baseline
	if len(p.datums) > 0 {
		p.baseline = p.datums[0].is
	}
	p.title.SetText("From a drawing: " + clipped(p.file.Name))
	p.questions.open = whichLines
	p.turnTo(p.work)
	p.ask(p.firstOpen())
	p.board.canvas.Fit()
	p.propose()
}

// firstOpen is the question that wants an answer first.
func (p *Page) firstOpen() question {
	for i, a := range p.d.answers(p.at, len(p.file.Pages)) {
		if !a.settled {
			return question(i)
		}
	}
	return whichLines
}
