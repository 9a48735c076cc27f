package marks

import (
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// laid is how one line goes down: in which tape, broken or solid.
type laid struct {
	stock  plan.StockID
	dashed bool
}

// changeOf tells why two straight pieces in one line need a mark where they meet;
// ok is false where they do not.
//
// Whoever lays the line must know where to change to another tape, or from solid
// to broken: an opening drawn only above the floor would be lost in the walls on
// either side of it without a mark at its jambs. A line that goes on only in
// other scenes ends here for the scene that does without the rest. Where nothing
// but the element changes the line is laid in one piece. Common practice, no
// source.
func changeOf(lines []floor.Line, a, b []int) (Kind, bool) {
	switch {
	case !sameLaid(lines, a, b) || !sameLaid(lines, b, a):
		return Change, true
	case !sameScenes(lines, a, b):
		return End, true
	}
	return "", false
}

// sameLaid tells whether all that a lays is laid by b too.
func sameLaid(lines []floor.Line, a, b []int) bool {
	for _, i := range a {
		if !slices.ContainsFunc(b, func(j int) bool { return laidAs(lines[i]) == laidAs(lines[j]) }) {
			return false
		}
	}
	return true
}

func laidAs(l floor.Line) laid { return laid{l.Stock, l.Role.Dashed()} }

// sameScenes tells whether both pieces are needed in the same scenes.
func sameScenes(lines []floor.Line, a, b []int) bool {
	var before, after Mark
	before.meet(lines, a)
	after.meet(lines, b)
	slices.Sort(before.Scenes)
	slices.Sort(after.Scenes)
	return slices.Equal(before.Scenes, after.Scenes)
}
