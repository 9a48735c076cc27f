package drawingin

import (
	"context"
	"math"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plan"
	"groundrow/ui/drawingfile"
)

// makeSense finds out what it can about a page.
func makeSense(ctx context.Context, s *linework.Sheet) (*sensed, error) {
	r, err := drawingfile.Sense(ctx, s)
	if err != nil {
		return nil, err
	}
	out := &sensed{drawn: newDrawn(s)}
	for _, a := range r.Aside {
		out.aside(a.Items, string(a.Category)+": "+a.Why)
	}
	for _, g := range r.Scales {
		out.scales = append(out.scales, scaleProposed(out.drawn, g))
	}
	for _, g := range r.Datums {
		out.datums = append(out.datums, datumProposed(g))
	}
	if len(out.scales) > 0 {
		out.scale = out.scales[0].scaleAnswer
	}
	if len(out.datums) > 0 {
		out.datum = out.datums[0].datumAnswer
	}
	return out, nil
}

// aside proposes to leave items aside.
func (d *drawn) aside(items []int, why string) {
	for _, i := range items {
		d.take[i], d.why[i] = false, why
	}
}

func scaleProposed(d *drawn, g sense.ScaleGuess) scaleProposal {
	trial := *d
	trial.scale.perUnit = g.PerUnit
	return scaleProposal{name: trial.scaleName(), scaleAnswer: scaleAnswer{perUnit: g.PerUnit, why: g.Why}}
}

func datumProposed(g sense.DatumGuess) datumProposal {
	name := "Centre line and " + string(g.Is)
	switch {
	case g.CentreLine < 0:
		name = sentence(string(g.Is)) + " alone"
	case g.Baseline < 0:
		name = "Centre line alone"
	}
	return datumProposal{
		name: name, is: g.Is,
		datumAnswer: datumAnswer{origin: g.Origin, up: g.Turn + math.Pi/2, why: g.Why, set: true},
	}
}

// proposing returns the work of finding out what the lines taken would make. It
// may be done anywhere: nothing of the page is touched by it.
func (p *Page) proposing() func(context.Context) []candidate {
	sheet, levels := p.d.sheet, p.desk.View().P.Plan.Levels
	var keep sense.Set
	for i, on := range p.d.take {
		if on {
			keep = append(keep, i)
		}
	}
	options := sense.Options{PerUnit: p.d.perUnit(), Motion: p.d.axes().Inverse(), Keep: keep}
	return func(context.Context) []candidate {
		return candidatesOf(sense.ProposeElements(sheet, options), levels)
	}
}

func candidatesOf(from sense.Proposal, levels []plan.Level) []candidate {
	out := make([]candidate, len(from.Candidates))
	for i, c := range from.Candidates {
		out[i] = candidate{Element: prep.ElementOf(c, levels, uuid.NewString), items: c.Items, why: c.Why}
	}
	return out
}
