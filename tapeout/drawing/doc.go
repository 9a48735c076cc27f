// Package drawing reads and writes plans, rooms and marks as tables: CSV as in
// RFC 4180, made for a person with a spreadsheet.
//
// # A ground plan measured off paper
//
// One row for each point. The first row names the columns, in any order and in
// capitals or not; only element, up and over are required:
//
//	element  what the thing is called; empty: the same as in the row above
//	kind     wall, door, platform …; empty in every row: other
//	level    the storey by name; empty: the stage floor
//	height   of the level above the stage floor
//	use      essential, danced on, useful or never used
//	note     anything
//	path     tells the lines of one element apart: 1, 2 …; empty: the same as above
//	role     outline, inner, swing, above or way; empty: outline
//	close    yes joins the last point to the first
//	up       distance up from the baseline; DS or a minus sign for downstage
//	over     distance from the centre line; SR or a minus sign for stage right
//	curve    how the line goes on from here; see below
//
// The rows of one element and one path are joined in their order, wherever they
// stand. What is said of an element or a path once, in any of its rows, holds for
// all of them. In the column curve
//
//	(empty)       the line goes straight to the next point
//	through       this is no corner: an arc runs through it, from the point before to the point after
//	bulge 0.4142  the line to the next point is an arc; the tangent of a quarter of
//	              its angle, positive counter-clockwise
//	circle 2' 0"  a full circle of this radius around the point, joined to nothing
//
// Lengths are in any spelling of package length. Not carried by the table: tape
// stocks, where an element stands from scene to scene, and what it rides on.
//
// # A room
//
// Either its walls in the order in which they are walked with the room on the
// left, or its corners (corner, x, y) from any origin. Of walls the columns are
//
//	wall    a name
//	length  from corner to corner, of a curved wall its chord; empty: not measured
//	turn    degrees to the left at the wall's end, as seen by eye; empty: 90
//	square  yes where the corner at its end was found to be a right angle
//	rise    of a curved wall, outwards; into the room with a minus sign
//	from    with to and length: no wall but a length across, between two corners by
//	to      their letters, A where the first wall begins, or points by any other name
package drawing
