package demo

import (
	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

// standIns lists what the rehearsal stock holds and what it stands for.
func (b *builder) standIns() {
	for _, o := range []struct {
		name, kind       string
		wide, deep, high float64
		count            int
		source           string
		ballast          bool
	}{
		{"Folding table", "table", 6, 2.5, 2.5, 4, "rehearsal stock", false},
		{"Stacking chair", "chair", 1.5, 1.5, 1.5, 30, "rehearsal stock", false},
		{"Music stand", "music stand", 1.5, 1.5, 4, 12, "rehearsal stock", true},
		{"Flat on a rack, 4 ft", "flat on a rack", 4, 3, 8, 3, "shop", true},
		{"Rehearsal block", "block", 1.5, 1.5, 1.5, 10, "rehearsal stock", false},
		{"Bench", "bench", 5, 1.25, 1.5, 2, "rehearsal stock", false},
		{"Rolling bed frame", "bed", 3.5, 6.25, 2, 1, "shop", false},
		{"Rehearsal sofa", "sofa", 5.5, 2.75, 2.5, 1, "rehearsal stock", false},
		{"Coat rail", "rail", 5, 1.5, 5, 2, "rehearsal stock", true},
	} {
		b.p.Objects = append(b.p.Objects, prep.Object{
			ID: id("object " + o.name), Name: o.name, Kind: o.kind, Width: ft(o.wide), Depth: ft(o.deep),
			Height: ft(o.high), Count: o.count, Source: o.source, Ballast: o.ballast,
		})
	}
	for _, s := range []struct {
		element string
		scene   plan.SceneID
		object  string
		number  int
		state   prep.StandInState
	}{
		{"Kitchen table", "", "Folding table", 1, prep.InRoom},
		{"Kitchen chair one", "", "Stacking chair", 1, prep.InRoom},
		{"Kitchen chair two", "", "Stacking chair", 1, prep.InRoom},
		{"Kitchen chair three", "", "Stacking chair", 1, prep.InRoom},
		{"Kitchen chair four", "", "Stacking chair", 1, prep.InRoom},
		{"Sofa", "", "Rehearsal sofa", 1, prep.Confirmed},
		{"Bed", "", "Rolling bed frame", 1, prep.Asked},
		{"Fish stall", "", "Folding table", 1, prep.Confirmed},
		{"Flower stall", "", "Folding table", 1, prep.Confirmed},
		{"Lantern stall", "", "Folding table", 1, prep.Wanted},
		{"Hand cart", "", "Folding table", 1, prep.Wanted},
		{"Upright piano", "", "Bench", 1, prep.Wanted},
		{"Quay bench", "", "Bench", 1, prep.InRoom},
		{"Crate one", "", "Rehearsal block", 2, prep.InRoom},
		{"Crate two", "", "Rehearsal block", 2, prep.InRoom},
		{"Barrel stack", "", "Rehearsal block", 3, prep.Confirmed},
		{"Kitchen door", "", "Music stand", 2, prep.Confirmed},
		{"Parlour door", "", "Music stand", 2, prep.Confirmed},
		{"Pantry door", "", "Music stand", 2, prep.Wanted},
		{"Garden door", "", "Music stand", 2, prep.Wanted},
		{"Boat wagon", "", "Stacking chair", 6, prep.Asked},
		{"Dresser", "", "Coat rail", 1, prep.Confirmed},
		{"Armchair", "", "", 1, prep.Wanted},
	} {
		in := prep.StandIn{
			ID: id("stand-in " + s.element), Element: plan.ElementID(id(s.element)), Scene: s.scene,
			Number: s.number, State: s.state,
		}
		if s.object != "" {
			in.Object = id("object " + s.object)
		}
		b.p.StandIns = append(b.p.StandIns, in)
	}
}

// shelf counts the kit, with what is there already, the orders under way, and
// the notes for the stage.
func (b *builder) shelf() {
	n := 0
	b.p.Items = supplies.StandardKit(length.FeetInches, func() string { n++; return id("item " + string(rune('a'+n))) })
	for i := range b.p.Items {
		// The stores hold one of most things; the rest has to be bought.
		b.p.Items[i].Shelf = 1
	}
	b.p.Orders = []supplies.Order{{
		ID: id("order vinyl"), For: id("stock clear"), Quantity: 1, State: supplies.Ordered,
		Placed: b.start, Expected: b.start.AddDate(0, 0, 5), Supplier: "Harbour Theatrical Supply",
	}}
	for _, note := range []struct{ about, text, owner string }{
		{"Revolve", "The ring on the rehearsal floor is the edge of the moving part; the gap to the fixed stage is not taped.", ines},
		{"Boat wagon", "Was a row of six chairs in rehearsal. Its stops for 1.1 and 2.3 have never been tried at speed.", tobin},
		{"Upper floor edge", "Lay flat beside the kitchen in rehearsal: there was no edge to fall from, and here there is.", ines},
		{"", "The stage is measured from the stage edge at centre, the rehearsal room from the plaster line: five feet between them.", wren},
	} {
		n := prep.Note{ID: id("note " + note.text), Text: note.text, Owner: note.owner, Open: true, On: b.start}
		if note.about != "" {
			n.Element = plan.ElementID(id(note.about))
		}
		b.p.Notes = append(b.p.Notes, n)
	}
}
