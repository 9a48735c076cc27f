package dxf_test

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/dxf"
)

// BenchmarkRead reads 5 MB of lines, arcs, polylines, ellipses and inserts.
func BenchmarkRead(b *testing.B) {
	var short strings.Builder
	for i := 0; short.Len() < 4_300_000; i++ {
		x := float64(i%1000) * 10.125
		fmt.Fprintf(&short, "0 LINE|5 %X|100 AcDbEntity|8 WALLS|100 AcDbLine|10 %.6f|20 %.6f|30 0.0|11 %.6f|21 %.6f|31 0.0|", i, x, x/3, x+100, x/7)
		fmt.Fprintf(&short, "0 ARC|8 DOORS|62 3|10 %.6f|20 1.0|30 0.0|40 900.0|50 10.0|51 80.0|", x)
		fmt.Fprintf(&short, "0 LWPOLYLINE|8 WALLS|90 4|70 1|10 %.6f|20 0.0|10 %.6f|20 0.0|42 0.5|10 %.6f|20 50.0|10 0.0|20 50.0|", x, x+50, x+50)
		fmt.Fprintf(&short, "0 INSERT|2 B|8 FURNITURE|10 %.6f|20 5.0|41 2.0|42 2.0|50 30.0|", x)
		if i%10 == 0 {
			short.WriteString("0 ELLIPSE|8 FURNITURE|10 0|20 0|11 300|21 0|40 0.5|")
		}
	}
	block := "0 BLOCK|2 B|0 LINE|8 0|11 5|0 CIRCLE|8 0|40 3|0 ENDBLK"
	file := []byte(section("HEADER", "9 $INSUNITS|70 4") + withBlocks(block, strings.TrimSuffix(short.String(), "|")))
	b.SetBytes(int64(len(file)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := dxf.Read(context.Background(), bytes.NewReader(file), 0.001, nil); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadAMillionLines(b *testing.B) {
	one := []byte(pairs("0 LINE|8 A|10 0|20 0|11 1|21 0"))
	body := bytes.Repeat(one, 1_000_000)
	b.ReportAllocs()
	for b.Loop() {
		file := io.MultiReader(strings.NewReader("0\nSECTION\n2\nENTITIES\n"), bytes.NewReader(body), strings.NewReader("0\nENDSEC\n"+end))
		if _, err := dxf.Read(context.Background(), file, 0.001, nil); err != nil {
			b.Fatal(err)
		}
	}
}
