package demo

import (
	"testing"
	"time"

	"groundrow/prep"
)

// BenchmarkWork is everything that one edit makes the program work out for the hall;
// BenchmarkWorkWithoutWays the same without its ways, which are most likely to cost.
func BenchmarkWork(b *testing.B) {
	p := Production(time.Date(2027, 3, 1, 9, 0, 0, 0, time.UTC))
	for b.Loop() {
		prep.Work(p, roomID, "")
	}
}

func BenchmarkWorkWithoutWays(b *testing.B) {
	p := Production(time.Date(2027, 3, 1, 9, 0, 0, 0, time.UTC))
	p.Floor(roomID).Ways = nil
	for b.Loop() {
		prep.Work(p, roomID, "")
	}
}
