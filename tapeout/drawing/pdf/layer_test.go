package pdf_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/linework"
)

// layered is a page with a line on each of two layers, W and L, and one on none.
func layered(opening string) page {
	return page{
		catalogue: "/OCProperties << /OCGs [5 0 R 6 0 R] /D << " + opening + " >> >>",
		resources: "/Properties << /W 5 0 R /L 6 0 R /Both 7 0 R >>",
		drawing: "/OC /W BDC 10 10 m 100 10 l S EMC /OC /L BDC 10 20 m 100 20 l S EMC 10 30 m 100 30 l S " +
			"/OC /Both BDC 10 40 m 100 40 l S EMC /OC /W BDC /OC /L BDC 10 50 m 100 50 l S EMC EMC",
		forms: []string{
			"<< /Type /OCG /Name (Walls \\(new\\)) >>",
			"<< /Type /OCG /Name <FEFF004C00EF006E0065> >>",
			"<< /Type /OCMD /OCGs [5 0 R 6 0 R] >>",
		},
	}
}

// Layers that are switched off are in PDFium's list like the others.
func TestLayersAreOnOrOffAsTheFileOpens(t *testing.T) {
	for _, c := range []struct {
		name, opening string
		wallsOff      bool
		linesOff      bool
	}{
		{"all on", "", false, false},
		{"one off", "/OFF [6 0 R]", false, true},
		{"off unless named", "/BaseState /OFF /ON [5 0 R]", false, true},
		{"all off", "/BaseState /OFF", true, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			sheet := read(t, layered(c.opening).file())
			want := []linework.Layer{{Name: "Walls (new)", Off: c.wallsOff}, {Name: "Lïne", Off: c.linesOff}}
			if !slices.Equal(sheet.Layers, want) {
				t.Errorf("layers %+v, want %+v", sheet.Layers, want)
			}
			var got []string
			for _, i := range sheet.Items {
				got = append(got, fmt.Sprintf("%.0f %s %v", i.Edges[0].A.Y, i.Layer, i.Hidden))
			}
			wanted := []string{fmt.Sprint("10 Walls (new) ", c.wallsOff), fmt.Sprint("20 Lïne ", c.linesOff), "30  false", "40  false", fmt.Sprint("50 Lïne ", c.linesOff)}
			if !slices.Equal(got, wanted) {
				t.Errorf("got %q, want %q", got, wanted)
			}
			if !leftAside(sheet, "combination") {
				t.Errorf("nothing is said of the line on two layers: %v", sheet.Left)
			}
		})
	}
}

// leftAside tells whether the sheet says words of something that it leaves aside.
func leftAside(s *linework.Sheet, words string) bool {
	return slices.ContainsFunc(s.Left, func(l linework.LeftAside) bool { return strings.Contains(l.String(), words) })
}

// A form's own layer is that of what it holds.
func TestLayerOfAFormIsThatOfItsLines(t *testing.T) {
	p := layered("/OFF [5 0 R]")
	p.drawing = "/OC /W BDC /F8 Do EMC"
	p.forms = append(p.forms, form("1 0 0 1 0 0", "", "10 10 m 100 10 l S"))
	sheet := read(t, p.file())
	if len(sheet.Items) != 1 || sheet.Items[0].Layer != "Walls (new)" || !sheet.Items[0].Hidden || sheet.Items[0].Group != 1 {
		t.Errorf("got %+v", sheet.Items)
	}
}

// Newer files pack their dictionaries; layers and user units are found all the same.
func TestPackedFileHasItsLayersAndUserUnit(t *testing.T) {
	packed := packed(layered("/OFF [6 0 R]"), "/UserUnit 2")
	if strings.Contains(string(packed[:200]), "FEFF") {
		t.Fatal("the file is not packed")
	}
	sheet := read(t, packed)
	if len(sheet.Layers) != 2 || !sheet.Layers[1].Off {
		t.Errorf("layers %+v", sheet.Layers)
	}
	if e := sheet.Items[0].Edges[0]; e.A.X != 20 || e.B.X != 200 {
		t.Errorf("the line is %v, in user units of two points it runs from 20 to 200", e)
	}
}

// packed writes a page with all but its contents in an object stream, and a
// cross-reference stream (PDF reference 1.7, 3.4.6 and 3.4.7), neither compressed.
func packed(p page, entries string) []byte {
	objects := append([]string{
		"<< /Type /Catalog /Pages 2 0 R " + p.catalogue + " >>",
		"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
		"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources << " + p.resources + " >> " + entries + " >>",
		"",
	}, p.forms...)
	var index, body strings.Builder
	table := []byte{0, 0, 0, 0}
	packing, n := len(objects)+1, 0
	for i, o := range objects {
		if o == "" {
			table = append(table, 1, 0, 9, 0)
			continue
		}
		fmt.Fprintf(&index, "%d %d ", i+1, body.Len())
		body.WriteString(o + " ")
		table = append(table, 2, 0, byte(packing), byte(n))
		n++
	}
	var s strings.Builder
	s.WriteString("%PDF-1.7\n")
	fmt.Fprintf(&s, "4 0 obj\n%s\nendobj\n", stream("", p.drawing))
	table = append(table, 1, byte(s.Len()>>8), byte(s.Len()), 0)
	fmt.Fprintf(&s, "%d 0 obj\n%s\nendobj\n", packing,
		stream(fmt.Sprintf("/Type /ObjStm /N %d /First %d", n, index.Len()), index.String()+body.String()))
	start := s.Len()
	table = append(table, 1, byte(start>>8), byte(start), 0)
	fmt.Fprintf(&s, "%d 0 obj\n%s\nendobj\nstartxref\n%d\n%%%%EOF\n", packing+1,
		stream(fmt.Sprintf("/Type /XRef /Size %d /W [1 2 1] /Root 1 0 R", packing+2), string(table)), start)
	return []byte(s.String())
}
