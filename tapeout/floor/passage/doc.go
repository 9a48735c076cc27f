// Package passage finds how wide a person can be who gets from one place on a floor
// to another, and where the way is narrowest.
//
// A person is a disc. What cannot be walked through is cut into straight edges and
// into arcs too short to rise by more than two millimetres. A disc of diameter w
// cannot pass between two edges whose gap is at most w, so it gets from A to B unless
// edges that are joined by such gaps close a ring with one of A and B inside. The
// smallest w at which that happens is the width of the way:
//
//	gaps are taken up from the smallest to the largest into a forest of edges;
//	with every edge goes how often the way to it from its root winds round A and B,
//	odd or even; the first gap that closes a ring with an odd sum parts A from B.
//
// It is exact for straight edges: discs grown round them overlap in convex pieces, so
// that every ring of the grown edges is a ring of gaps. Where two arcs, or an arc and
// an edge, come near each other twice within one such piece of arc, the rise of the
// piece is the error. The disc must also find room where the way begins and ends.
package passage
