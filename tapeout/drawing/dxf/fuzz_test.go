package dxf_test

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
)

// Whatever the file, reading ends with a sheet whose numbers are numbers and which
// can be written and read again, or with a fault in words.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"kinds-R12.dxf", "kinds-R2018.dxf"} {
		raw, err := os.ReadFile(filepath.Join(testdata, name))
		if err != nil {
			f.Fatal(err)
		}
		if i := bytes.Index(raw, []byte("ENTITIES")); i > 0 {
			f.Add(append([]byte("  0\r\nSECTION\r\n  2\r\n"), raw[i:]...))
		}
	}
	for _, seed := range []string{
		withBlocks(chain(3, 3), "0 INSERT|2 B0|70 2|71 2|44 5|45 5|41 2|50 10"),
		section("TABLES", "0 LAYER|2 A|62 -1|0 LTYPE|2 D|49 1|49 -1") + drawing("0 LINE|8 A|6 D|11 5"),
		drawing("0 HATCH|91 2|92 1|93 2|72 1|10 0|20 0|11 1|21 1|72 2|10 0|20 0|40 1|50 0|51 90|73 0|92 2|72 1|73 1|93 2|10 0|20 0|42 1|10 5|20 5|42 1|75 0"),
		drawing("0 SPLINE|71 2|40 0|40 0|40 0|40 1|40 1|40 1|10 0|20 0|10 2|20 5|10 4|20 0"),
		drawing("0 POLYLINE|66 1|70 8|0 VERTEX|10 1|30 2|0 VERTEX|20 1|0 SEQEND|0 MTEXT|3 {\\H1;a|1 b}|0 ELLIPSE|11 1|40 0.5|41 1|42 2"),
		section("HEADER", "9 $INSUNITS|70 1|9 $LTSCALE|40 2") + drawing("0 DIMENSION|70 0|13 1|14 2|1 <>|0 3DFACE|10 1|11 2|12 3|13 4|0 LEADER|72 1|10 1|10 2|10 3|20 5"),
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, file []byte) {
		s, err := dxf.Read(context.Background(), bytes.NewReader(file), 0.01, nil)
		if err != nil {
			var fault *linework.Fault
			if !errors.As(err, &fault) || fault.What == "" {
				t.Fatalf("not a fault: %v", err)
			}
			return
		}
		for i := range s.Items {
			if len(s.Items[i].Edges) == 0 {
				t.Fatalf("item %d has no edges", i)
			}
		}
		var out bytes.Buffer
		if err := dxf.Write(&out, s); err != nil {
			t.Fatal(err)
		}
		if _, err := dxf.Read(context.Background(), &out, 0.01, nil); err != nil {
			t.Fatalf("what was written cannot be read: %v", err)
		}
	})
}
