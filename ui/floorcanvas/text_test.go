package floorcanvas

import "testing"

// The letters of such pairs overlap a little at any size, and by the same part of it.
func TestPairsOfLettersKeepTheirDistanceAtEverySize(t *testing.T) {
	set := newTypesetter()
	part := func(size float64) float64 {
		apart := set.width(keyOf("T", size, false)) + set.width(keyOf("a", size, false))
		return (apart - set.width(keyOf("Ta", size, false))) / size
	}
	large := part(200)
	if large <= 0 || large > 0.2 {
		t.Fatalf("T and a are drawn together by %v of the size", large)
	}
	for _, size := range []float64{9, 11, 14, 32} {
		// Advances and kerning are in 64ths of a pixel: three of them may round.
		if got, slack := part(size), 4.0/64/size; got < large-slack || got > large+slack {
			t.Errorf("at %v pixels: %v of the size, want %v", size, got, large)
		}
	}
}
