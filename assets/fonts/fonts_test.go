package fonts

import (
	"strings"
	"testing"

	"golang.org/x/image/font/sfnt"
)

// signs are what sheets and screens write beside letters and figures.
const signs = "→←↑↓✓■□●○▲△▼≤≥½¼¾⅛⅜⅝⅞′″×°±Ø–—−·…“”‘’☐☑√≈"

func TestEveryFaceHasTheSignsTheProgramWrites(t *testing.T) {
	for name, file := range map[string][]byte{"regular": Regular, "bold": Bold, "mono": Mono} {
		t.Run(name, func(t *testing.T) {
			f, err := sfnt.Parse(file)
			if err != nil {
				t.Fatalf("read the face: %v", err)
			}
			var buf sfnt.Buffer
			for _, r := range signs {
				if g, err := f.GlyphIndex(&buf, r); err != nil || g == 0 {
					t.Errorf("%c is missing (%v)", r, err)
				}
			}
		})
	}
}

func TestLicenceTravelsWithTheFonts(t *testing.T) {
	if !strings.Contains(Licence, "Permission is hereby granted") {
		t.Error("the licence text is not the fonts' own")
	}
}
