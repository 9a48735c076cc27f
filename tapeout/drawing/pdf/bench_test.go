package pdf_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
)

// BenchmarkRead reads a page of 20,000 segments.
func BenchmarkRead(b *testing.B) {
	var s strings.Builder
	for i := range 20_000 {
		x, y := float64(i%200)*3, float64(i/200)*7
		fmt.Fprintf(&s, "%.3f %.3f m %.3f %.3f l S\n", x, y, x+2.5, y+4.25)
	}
	data := page{drawing: s.String()}.file()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := engine.Read(context.Background(), data, 1, tolerance, nil); err != nil {
			b.Fatal(err)
		}
	}
}
