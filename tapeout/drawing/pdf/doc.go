// Package pdf reads a page of a vector PDF as line work: strokes, circular arcs and
// words, where they stand on the paper.
//
// The pages are taken apart by PDFium, compiled to WebAssembly and run in a sandbox
// that sees no files and no network and has a bounded memory. Engine is that
// sandbox: started once, in the background, and closed after use.
//
// # Frame and units
//
// The origin is the bottom left corner of the page as a reader of the PDF shows it,
// cropped and turned; X runs right and Y up. One drawing unit is a point, 1/72 inch
// on paper, whatever user unit the page has. Which length on the floor that is (the
// scale of the drawing) is not decided here.
//
// # Precision
//
// PDFium keeps coordinates as float32: 0.0001 point on a sheet a metre wide, a
// hundredth of a millimetre on the floor at 1:50. What the program that wrote the
// file rounded to is usually coarser: two decimals of a point are 0.17 mm on the
// floor at 1:48.
package pdf
