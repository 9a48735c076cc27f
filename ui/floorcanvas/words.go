package floorcanvas

import "groundrow/tapeout/plane"

// placeWords says where a point of the picture is: up, then over with its side.
func (s *scene) placeWords(p plane.Point) string {
	return s.upOver(s.Datum.Inverse().Apply(p), "up", "down", "SL", "SR")
}

// shiftWords says by how far something is moved.
func (s *scene) shiftWords(d plane.Point) string {
	return s.upOver(s.Datum.Inverse().Rotate(d), "US", "DS", "SL", "SR")
}

func (s *scene) upOver(q plane.Point, up, down, left, right string) string {
	if q.Y < 0 {
		q.Y, up = -q.Y, down
	}
	if q.X < 0 {
		q.X, left = -q.X, right
	}
	return s.Style.Format(q.Y) + " " + up + ", " + s.Style.Format(q.X) + " " + left
}
