package drawingfile

import (
	"context"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
)

// Reading is a page with what can be found out about it; everything but the sheet
// is a proposal.
type Reading struct {
	Sheet  *linework.Sheet
	Aside  []sense.Aside
	Scales []sense.ScaleGuess // the likeliest first
	Datums []sense.DatumGuess // the likeliest first
}

// Sense finds out what it can about a page.
func Sense(ctx context.Context, s *linework.Sheet) (Reading, error) {
	r := Reading{Sheet: s, Aside: sense.ProposeAside(s)}
	if err := ctx.Err(); err != nil {
		return r, err
	}
	r.Scales = sense.ProposeScale(s)
	if err := ctx.Err(); err != nil {
		return r, err
	}
	r.Datums = sense.ProposeDatum(s)
	return r, ctx.Err()
}

// Keep returns the items that are proposed to be taken.
func (r *Reading) Keep() sense.Set {
	keep := sense.Seen(r.Sheet)
	for _, a := range r.Aside {
		keep = keep.Without(a.Items)
	}
	return keep
}
