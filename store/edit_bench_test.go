package store

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// sized returns a production of the given number of elements, each of four lines
// and a stand in two scenes, with the given number of corners in all.
func sized(elements, corners int) *prep.Production {
	p := kitchen()
	each := corners / elements / 4
	for i := range elements {
		e := plan.Element{ID: plan.ElementID(fmt.Sprintf("element-%d", i)), Name: fmt.Sprintf("Flat %d", i), Kind: plan.Wall}
		for j := range 4 {
			path := plan.Path{ID: plan.PathID(fmt.Sprintf("%s-%d", e.ID, j)), Role: plan.Outline}
			for k := range each {
				path.Vertices = append(path.Vertices, plane.Vertex{Point: plane.Polar(float64(i)/7+1, float64(k*j)+0.1), Bulge: 0.3})
			}
			e.Paths = append(e.Paths, path)
		}
		e.Stands = []plan.Stand{{Scene: "one", Over: 1}, {Scene: "two", Up: float64(i) / 3}}
		p.Plan.Elements = append(p.Plan.Elements, e)
	}
	return p
}

// One edit, from the copy to the commit on the disk.
func BenchmarkEdit(b *testing.B) {
	for _, size := range []struct{ elements, corners int }{{100, 2000}, {500, 10000}} {
		b.Run(fmt.Sprintf("%d elements", size.elements), func(b *testing.B) {
			f := mustCreate(b, sized(size.elements, size.corners))
			n := 0
			for b.Loop() {
				n++
				mustEdit(b, f, "Move the flat", func(p *prep.Production) {
					for i := range p.Plan.Elements[7].Paths {
						p.Plan.Elements[7].Paths[i].Vertices[0].X = float64(n)
					}
				})
			}
		})
	}
}

func BenchmarkUndoRedo(b *testing.B) {
	f := mustCreate(b, sized(100, 2000))
	mustEdit(b, f, "Call it", setTitle("else"))
	for b.Loop() {
		if _, err := f.Undo(context.Background()); err != nil {
			b.Fatal(err)
		}
		if _, err := f.Redo(context.Background()); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOpen(b *testing.B) {
	f := mustCreate(b, sized(500, 10000))
	f.Close()
	for b.Loop() {
		f, err := Open(context.Background(), f.Path(), "Ada")
		if err != nil {
			b.Fatal(err)
		}
		f.Close()
	}
}

func BenchmarkCreate(b *testing.B) {
	p := sized(500, 10000)
	dir := b.TempDir()
	n := 0
	for b.Loop() {
		n++
		mustCreateAt(b, filepath.Join(dir, fmt.Sprintf("%d.groundrow", n)), "Ada", p).Close()
	}
}
