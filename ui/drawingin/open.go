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
	*drawingfile.File
	kept string // the identifier under which the production keeps it already; empty: it does not
}

// scanDPI is how finely a page is drawn to be traced, in dots to an inch of paper:
// a sixteenth of an inch on the floor at 1:12, a quarter at 1:48. Known points are
// kept in these dots, so that it can never change.
const scanDPI = 200

// opening is a page that has been read: with its lines, or as a picture.
type opening struct {
	lines *sensed
	scan  *scan
}

// page reads a page. One that is a picture, and one that is to be traced although
// it has lines, is drawn.
func (o opened) page(ctx context.Context, n int, trace bool, progress func(float64)) (got opening, err error) {
	if trace || o.Pages[n].Scan {
		img, err := o.Picture(ctx, n, scanDPI)
		if err != nil {
			return got, fmt.Errorf("%s: %w", o.Name, err)
		}
		return opening{scan: newScan(img)}, nil
	}
	s, err := o.Sheet(ctx, n, progress)
	if err != nil {
		return got, fmt.Errorf("%s: %w", o.Name, err)
	}
	got.lines, err = makeSense(ctx, s)
	return got, err
}

// Choose asks for a drawing.
func (p *Page) Choose() {
	p.desk.Quietly(func(context.Context) { drawingfile.Warm() }, func() {})
	dlg := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil || r == nil {
			p.fail(err)
			return
		}
		path := r.URI().Path()
		r.Close()
		p.Open(path)
	}, p.desk.Window())
	dlg.SetFilter(storage.NewExtensionFileFilter(append(slices.Clone(drawingfile.TableExtensions), drawingfile.Extensions...)))
	dlg.Resize(dialogSize)
	dlg.Show()
}

// Open reads a drawing from a file, off the UI goroutine.
func (p *Page) Open(path string) {
	if slices.Contains(drawingfile.TableExtensions, strings.ToLower(filepath.Ext(path))) {
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
		p.read(src, "", 0)
	})
}

// read opens what a source holds; kept is its identifier when the production keeps
// it already, and page the one, from 1, that lies under the plan; 0: none does. Of
// several pages a person picks one.
func (p *Page) read(src drawingfile.Source, kept string, page int) {
	file := opened{kept: kept}
	var got opening
	p.desk.RunTelling("Reading "+src.Name, func(ctx context.Context, tell func(float64)) (err error) {
		if file.File, err = drawingfile.Open(ctx, src); err != nil {
			return fmt.Errorf("%s: %w", src.Name, err)
		}
		if len(file.Pages) == 1 || page > 0 {
			got, err = file.page(ctx, max(page-1, 0), page > 0, tell)
		}
		if err != nil {
			file.Close()
		}
		return err
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		p.forget()
		p.file = file
		if got == (opening{}) {
			p.picker.begin()
			return
		}
		p.show(max(page-1, 0), got)
	})
}

// openPage reads another page of the file; trace wants it as a picture.
func (p *Page) openPage(n int, trace bool) {
	var got opening
	file := p.file
	p.picker.rest()
	p.desk.RunTelling(fmt.Sprintf("Reading page %d", n+1), func(ctx context.Context, tell func(float64)) (err error) {
		got, err = file.page(ctx, n, trace, tell)
		if ctx.Err() != nil { // nothing to tell a person who has cancelled it
			got, err = opening{}, nil
		}
		return err
	}, func(err error) {
		p.fail(err)
		if got == (opening{}) {
			p.picker.wake()
			return
		}
		p.show(n, got)
	})
}

// show shows a page that has been read.
func (p *Page) show(n int, got opening) {
	if got.scan != nil {
		p.at, p.d = n, nil
		p.scans.begin(got.scan)
		return
	}
	p.take(n, got.lines)
}

// forget gives up the drawing that is open.
func (p *Page) forget() {
	p.calling()
	p.picker.rest()
	if old := p.file.File; old != nil {
		p.desk.Quietly(func(context.Context) { old.Close() }, func() {})
	}
	p.file, p.d, p.coming, p.changes = opened{}, nil, coming{}, changes{}
}

// sensed is a page with what could be found out about it.
type sensed struct {
	*drawn
	scales []scaleProposal
	datums []datumProposal
}

// take shows a page with its lines.
func (p *Page) take(n int, s *sensed) {
	p.calling()
	p.at, p.d, p.scales, p.datums, p.coming = n, s.drawn, s.scales, s.datums, coming{}
	p.changes, p.means, p.revising = changes{}, meaning{}, len(p.desk.View().P.Plan.Elements) > 0
	p.dim = p.d.dimensionOf()
	p.baseline = p.desk.View().P.Plan.Baseline
	if len(p.datums) > 0 {
		p.baseline = p.datums[0].is
	}
	p.title.SetText("From a drawing: " + clipped(p.file.Name))
	p.questions.open = whichLines
	p.come.turnTo(p.revising)
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
