package floorsplace

import (
	"fyne.io/fyne/v2"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
)

// The tools that add a feature of the room and a way across it.
const (
	drawFeature tool = "feature"
	drawWay     tool = "way"
)

// moreTools is the button under which they are.
const moreTools = "More…"

// featureHints say what each feature waits for.
var featureHints = map[floor.FeatureKind]string{
	floor.RoomDoor:    "Click the door's hinge, then its other jamb. Esc gives up.",
	floor.RoomWindow:  "Click the two ends of the window. Esc gives up.",
	floor.WallMirror:  "Click the ends of the mirror along its wall; Enter or a double click ends it. Esc gives up.",
	floor.PowerOutlet: "Click the power outlet.",
	floor.Seam:        "Click along the seam; Enter or a double click ends it. Esc gives up.",
	floor.SprungFloor: "Click the corners of the sprung floor; click the first one again to close it. Esc gives up.",
	floor.DanceFloor:  "Click the corners of the dance floor; click the first one again to close it. Esc gives up.",
}

const wayHint = "Click where the way begins and where it ends: a door, an exit, a wing, any place. Esc gives up."

// askMore opens the menu of what else is in a room.
func (p *place) askMore() {
	item := func(text string, do func()) *fyne.MenuItem { return fyne.NewMenuItem(text, do) }
	menu := fyne.NewMenu("", item("A way across the floor", func() { p.take(drawWay) }),
		item("A step in the floor", func() { p.take(drawStep) }), fyne.NewMenuItemSeparator())
	for _, kind := range floor.FeatureKinds {
		menu.Items = append(menu.Items, item(capital(string(kind)), func() { p.takeFeature(kind) }))
	}
	menu.Items = append(menu.Items, fyne.NewMenuItemSeparator(), item("Type one in…", p.askThing),
		item(fromTable, func() { askRoomTable(p.desk) }))
	p.bar.ShowMenu(moreTools, menu)
}

func (p *place) takeFeature(kind floor.FeatureKind) {
	p.drawing = kind
	p.take(drawFeature)
}

// pointing tells whether the tool in the hand takes a single click.
func (p *place) pointing() bool {
	return p.tool == setPivot || p.tool == drawFeature && p.drawing == floor.PowerOutlet
}

// enough ends a line that needs just two points.
func (p *place) enough(points []plane.Point) {
	two := p.tool == drawWay || p.tool == drawFeature && (p.drawing == floor.RoomDoor || p.drawing == floor.RoomWindow)
	if two && len(points) == 2 {
		p.canvas.FinishDrawing(false)
	}
}

// addDrawn adds the feature or the way that was drawn.
func (p *place) addDrawn(t tool, points []plane.Point) {
	switch t {
	case drawFeature:
		p.addFeature(p.drawing, points)
	case drawWay:
		p.addWay(points[0], points[len(points)-1])
	}
}

func (p *place) addFeature(kind floor.FeatureKind, points []plane.Point) {
	var id string
	if p.edit("Add a "+string(kind), func(f *floor.Floor) (err error) { id, err = addFeature(f, kind, points); return err }) {
		p.desk.Select(desk.Select(desk.Feature, id))
	}
}

func (p *place) addWay(from, to plane.Point) {
	from, to = p.rounded(from), p.rounded(to)
	var id string
	if p.edit("Add a way", func(f *floor.Floor) error { id = addWay(f, from, to); return nil }) {
		p.desk.Select(desk.Select(desk.Way, id))
	}
}
