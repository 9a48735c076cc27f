package prep

import "fmt"

// NoTriangle is three readings between the same three places that no floor can
// have: one is longer than the other two together.
type NoTriangle struct {
	Long, A, B int     // indices into Verdict.Readings
	By         float64 // metres by which the long one is too long
}

// noTriangles finds readings that cannot form a triangle, beyond what reading and
// rounding explain.
func noTriangles(v *Verdict, allowed float64) []NoTriangle {
	at := map[string][]int{}
	for i, r := range v.Readings {
		if r.Grade != NoSuchMark {
			at[r.From], at[r.To] = append(at[r.From], i), append(at[r.To], i)
		}
	}
	var out []NoTriangle
	for i, long := range v.Readings {
		for _, a := range at[long.From] {
			through := other(v.Readings[a].Reading, long.From)
			if a == i || long.Grade == NoSuchMark || through == long.To {
				continue
			}
			for _, b := range at[long.To] {
				by := long.Metres - v.Readings[a].Metres - v.Readings[b].Metres
				if b != i && v.Readings[b].Joins(through, long.To) && by > allowed {
					out = append(out, NoTriangle{Long: i, A: a, B: b, By: by})
				}
			}
		}
	}
	return out
}

// other returns the end of a reading that is not the one named.
func other(r Reading, end string) string {
	if r.From == end {
		return r.To
	}
	return r.From
}

// TriangleSentence says which readings cannot be, and what to do.
func (v Verdict) TriangleSentence(p *Production, n NoTriangle) string {
	name := func(i int) string { return v.Readings[i].From + "–" + v.Readings[i].To }
	return fmt.Sprintf("%s, %s and %s cannot form a triangle: %s is %s longer than the other two together; read all three again.",
		name(n.Long), name(n.A), name(n.B), name(n.Long), p.Style().FormatSmall(n.By))
}
