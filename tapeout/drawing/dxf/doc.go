// Package dxf reads and writes drawings in the drawing exchange format, ASCII,
// releases R12 to R2018, after its published reference.
//
// A file is a sequence of pairs of lines, a group code and a value. What becomes
// of it:
//
//	pairs (scanner) ─▶ one entity's pairs (record) ─▶ entity ─▶ placed in the plan ─▶ linework.Sheet
//	                                                     └─▶ kept in its block, placed with each insert
//
// Everything is seen from above: heights are dropped, with a word in Sheet.Left
// where something does not lie flat. Arcs stay arcs wherever they are circular in
// the plan; what an uneven scale turns into an ellipse is flattened, as splines are.
// Only model space is read; paper space is the layout of printed sheets.
package dxf
