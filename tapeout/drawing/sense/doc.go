// Package sense makes sense of the lines of a drawing file: at which scale it is,
// where its centre line and baseline lie, what of it is not scenery, and which
// lines belong together as elements of a ground plan.
//
// Everything here is a proposal with its reason in words, for a person to confirm,
// change or turn down. Nothing is decided and no line is lost: what is left aside
// is named by the indices of its items in the sheet.
//
// Coordinates are those of linework.Sheet, in drawing units, unless a comment says
// metres or plan axes. Results are the same for the same sheet, in the same order.
package sense
