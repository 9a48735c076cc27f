// Package picture makes a scanned or photographed ground plan fit to be traced: it
// opens the picture, finds where its points lie on the plan from two or four of
// them that are known, straightens it, and finds the middle of the drawn line
// nearest to a pointer.
//
// # Frames
//
// Pixel coordinates are those of image.Image as a continuous plane: X to the right,
// Y down, and the pixel in column i and row j covers the square from (i, j) to
// (i+1, j+1), so that its centre is at (i+½, j+½). Real coordinates are metres with
// Y up, as everywhere in the program. A picture is never mirrored: what is to the
// left on it stays to the left of an observer who looks the same way.
package picture
