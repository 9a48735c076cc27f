package floorpicture

import (
	"groundrow/supplies"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// signs give every kind of mark a form of its own.
var signs = map[marks.Kind]floorcanvas.Sign{
	marks.End: floorcanvas.Cross, marks.Corner: floorcanvas.Cross, marks.Crossing: floorcanvas.Cross,
	marks.Curve: floorcanvas.Ring, marks.Centre: floorcanvas.Disc, marks.Spike: floorcanvas.Triangle,
	marks.CutEnd: floorcanvas.Break, marks.Stop: floorcanvas.Square, marks.OwnDatum: floorcanvas.Target,
}

// cuts signs every end at which the room cuts a line short, whether or not marks
// are shown: nobody may take it for the end of the scenery.
func (d *drawing) cuts() {
	for _, l := range d.w.Lines {
		id := ID(desk.Element, string(l.Element))
		for _, end := range []struct {
			cut bool
			at  plane.Point
		}{{l.Cut.A, l.A}, {l.Cut.B, l.B}} {
			if !end.cut {
				continue
			}
			at := d.fromDatum.Apply(end.at)
			d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{ID: id, At: at, Sign: floorcanvas.Break, Ink: theme.Outside, Size: 13})
			d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
				ID: id, At: at, Text: "cut short", Size: 11, Ink: theme.Outside, Anchor: floorcanvas.BelowRight,
			})
		}
	}
}

// asides signs the datums of what is moved aside, with the offset that is written
// on the floor beside them.
func (d *drawing) asides() {
	for _, n := range d.w.AsideNotes(d.p) {
		at := d.fromDatum.Apply(n.Sign)
		if n.OnFloor {
			d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{At: at, Sign: floorcanvas.Target, Ink: theme.Datum, Size: 15})
		}
		d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
			At: at, Text: n.Text, Ink: theme.Datum, Anchor: floorcanvas.Below, Priority: 2, Offset: 10,
		})
	}
}

// spikeTape draws the tape of spikes and stops as it is laid, each in its colour.
func (d *drawing) spikeTape() {
	arm := d.p.Settings.Allowances.SpikeLeg
	if !(arm > 0) {
		arm = supplies.DefaultAllowances.SpikeLeg
	}
	for _, m := range d.w.Marks {
		tape := m.Tape(arm)
		if len(tape) == 0 {
			continue
		}
		for i := range tape {
			tape[i] = tape[i].Moved(d.fromDatum)
		}
		d.pic.Shapes = append(d.pic.Shapes, d.tapes.tapeShapes(
			ID(desk.Element, string(m.Elements[0])), d.spikeStock(m.Mark), floorcanvas.Solid, tape)...)
	}
}

// spikeStock is the tape of a spike: that of its piece, else the first for spikes.
func (d *drawing) spikeStock(m marks.Mark) plan.StockID {
	if len(m.Stocks) > 0 {
		return m.Stocks[0]
	}
	for _, s := range d.p.Stocks {
		if s.Duty == supplies.Spikes {
			return s.ID
		}
	}
	return ""
}

// sometimes underlays what is down only in some scenes with a broad faint band, so
// that it can be told from what is down all the time without its colour.
func (d *drawing) sometimes() {
	var edges []plane.Edge
	for _, l := range d.w.Lines {
		if len(l.Scenes) > 0 {
			edges = append(edges, l.Edge.Moved(d.fromDatum))
		}
	}
	if len(edges) > 0 {
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{Edges: edges, Ink: theme.GridMajor, Width: sometimesWidth, Z: 0})
	}
}

// sometimesWidth is the width of that band, in toolkit pixels.
const sometimesWidth = 11
