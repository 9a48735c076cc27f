package floorsplace

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/fields"
)

// readTable reads a table of a room as the dialog's file does, up to its preview.
func readTable(t *testing.T, p *place, name, content string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
	p.desk.Still()
	readRoomTable(p.desk, path)
	p.desk.Settle()
}

// shown gathers what the dialog on top says, and its buttons by their names.
func shown(t *testing.T, p *place) (words string, buttons map[string]*fields.Button) {
	t.Helper()
	top := p.desk.Window().Canvas().Overlays().Top()
	if top == nil {
		t.Fatal("there is no dialog")
	}
	buttons = map[string]*fields.Button{}
	for _, o := range test.LaidOutObjects(top) {
		switch x := o.(type) {
		case *fields.Button:
			buttons[x.Text] = x
		case *widget.Label:
			words += x.Text + "\n"
		}
	}
	return words, buttons
}

func tap(t *testing.T, buttons map[string]*fields.Button, name string) {
	t.Helper()
	b := buttons[name]
	if b == nil {
		t.Fatalf("there is no button %q", name)
	}
	test.Tap(fyne.Tappable(b))
}

// Walls of 4 and 3 metres with the diagonal of 5 are a rectangle of 12 m².
const threeFourFive = "wall\tlength\tfrom\tto\nSouth\t4 m\t\t\nEast\t3 m\t\t\nNorth\t4 m\t\t\nWest\t3 m\t\t\n\t5 m\tA\tC\n"

func TestARoomComesInFromATable(t *testing.T) {
	p := openPlace(t)
	before := p.here().Outline.Area()
	readTable(t, p, "hall.tsv", threeFourFive)
	words, buttons := shown(t, p)
	for _, want := range []string{"4 walls and 1 length across", "takes the place of the walls that Tannery Hall has now"} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is not said: %q", want, words)
		}
	}
	if p.here().Outline.Area() != before {
		t.Error("the room is changed before anybody has said so")
	}
	tap(t, buttons, "Bring it in")
	if got := p.here(); math.Abs(got.Outline.Area()-12) > 1e-6 || len(got.Measured.Walls) != 4 {
		t.Errorf("the room is %.4f m² with %d walls measured", got.Outline.Area(), len(got.Measured.Walls))
	}
	kept := p.view.P.Drawings
	if len(kept) == 0 || kept[len(kept)-1].Name != "hall.tsv" {
		t.Errorf("the table is not kept: %+v", kept)
	}
	p.desk.Undo()
	if got := p.here().Outline.Area(); got != before {
		t.Errorf("after one undo it is %.3f m², want %.3f", got, before)
	}
}

func TestATableOfCornersComesIn(t *testing.T) {
	p := openPlace(t)
	readTable(t, p, "hall.csv", "corner,x,y\nA,0 m,0 m\nB,12 m,0 m\nC,12 m,9 m\nD,0 m,9 m\n")
	_, buttons := shown(t, p)
	tap(t, buttons, "Bring it in")
	if got := p.here(); math.Abs(got.Outline.Area()-108) > 1e-9 || got.Measured.Any() {
		t.Errorf("the room is %.4f m², measured %v", got.Outline.Area(), got.Measured.Any())
	}
}

func TestWhatIsWrongWithATableOfARoomIsSaidLineByLine(t *testing.T) {
	for _, c := range []struct {
		name, content string
		want          []string
	}{
		{"cells", "length,turn\n4 m,90\nlong,90\n4 m,about square\n-3 m,90\n", []string{"Row 3, length: “long”", "Row 4, turn: “about square”", "Row 5, length: “-3 m”"}},
		{"a contradiction", "length,from,to\n4 m,,\n3 m,,\n4 m,,\n3 m,,\n22 m,A,C\n", []string{"A–C is"}},
		{"two walls", "length\n4 m\n3 m\n", []string{"at least three walls"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := openPlace(t)
			before := p.here().Outline.Area()
			readTable(t, p, "hall.csv", c.content)
			words, buttons := shown(t, p)
			for _, want := range c.want {
				if !strings.Contains(words, want) {
					t.Errorf("%q is not said: %q", want, words)
				}
			}
			if b := buttons["Bring it in"]; b == nil || !b.Disabled() {
				t.Error("it can be brought in")
			}
			tap(t, buttons, "Cancel")
			if p.here().Outline.Area() != before || len(p.view.P.Drawings) != 0 {
				t.Error("something has changed")
			}
		})
	}
}

func TestWhatIsNoTableOfARoomIsSaid(t *testing.T) {
	p := openPlace(t)
	readTable(t, p, "plan.csv", "element,up,over\nWall,0,0\n")
	if words, buttons := shown(t, p); buttons["Bring it in"] != nil || !strings.Contains(words, "plan.csv is no table of a room") {
		t.Errorf("it says %q", words)
	}
	p = openPlace(t)
	readRoomTable(p.desk, filepath.Join(t.TempDir(), "none.csv"))
	if words, _ := shown(t, p); !strings.Contains(words, "none.csv") {
		t.Errorf("a file that is not there: %q", words)
	}
}

func TestLengthsOffThePaperAreScaled(t *testing.T) {
	p := openPlace(t)
	readTable(t, p, "sheet.csv", "length\n100 mm\n50 mm\n100 mm\n50 mm\n")
	top := p.desk.Window().Canvas().Overlays().Top()
	for _, o := range test.LaidOutObjects(top) {
		if tick, ok := o.(*fields.Tick); ok {
			if err := tick.OnCommit(true); err != nil {
				t.Fatal(err)
			}
		}
	}
	p.desk.Settle()
	_, buttons := shown(t, p)
	tap(t, buttons, "Bring it in")
	scale := p.view.P.Plan.Scale
	if got, want := p.here().Measured.Walls[0].Length, 0.1*scale; !(scale > 1) || math.Abs(got-want) > 1e-9 {
		t.Errorf("the first wall is %.4f m, want %.4f at 1:%g", got, want, scale)
	}
}
