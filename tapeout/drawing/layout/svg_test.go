package layout_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// drawing is what the tests read back of an SVG file.
type drawing struct {
	XMLName xml.Name `xml:"http://www.w3.org/2000/svg svg"`
	Width   string   `xml:"width,attr"`
	Height  string   `xml:"height,attr"`
	ViewBox string   `xml:"viewBox,attr"`
	Title   string   `xml:"title"`
	Desc    string   `xml:"desc"`
	Groups  []group  `xml:"g"`
}

type group struct {
	Title  string  `xml:"title"`
	Dash   string  `xml:"stroke-dasharray,attr"`
	Stroke string  `xml:"stroke,attr"`
	Groups []group `xml:"g"`
	Paths  []struct {
		D    string `xml:"d,attr"`
		Dash string `xml:"stroke-dasharray,attr"`
	} `xml:"path"`
	Dots []struct {
		X float64 `xml:"cx,attr"`
		Y float64 `xml:"cy,attr"`
	} `xml:"circle"`
	Texts []string `xml:"text"`
}

func drawn(t *testing.T, l *layout.Layout, scale length.Scale) drawing {
	t.Helper()
	var b strings.Builder
	if err := l.WriteSVG(&b, scale); err != nil {
		t.Fatal(err)
	}
	var d drawing
	if err := xml.Unmarshal([]byte(b.String()), &d); err != nil {
		t.Fatal(err)
	}
	return d
}

// lines is the group of a layer's black lines: the last but for the words.
func (g group) lines(t *testing.T) group {
	t.Helper()
	for _, in := range g.Groups {
		if in.Stroke == "black" {
			return in
		}
	}
	t.Fatalf("the layer %s has no lines", g.Title)
	return group{}
}

var commands = regexp.MustCompile(`([MLA])([^MLA]*)`)

// pathLength measures the data of a path with nothing of the package under test:
// an arc's chord c and radius r give the angle 2 asin(c/2r), or the rest of the
// turn when it is the large one. The implementation notes of SVG 1.1, F.6.6, make
// a radius that is too small for its chord half of it.
func pathLength(t *testing.T, d string) (total float64) {
	t.Helper()
	var from plane.Point
	for _, c := range commands.FindAllStringSubmatch(d, -1) {
		var v []float64
		for _, f := range strings.Fields(c[2]) {
			x, err := strconv.ParseFloat(f, 64)
			if err != nil {
				t.Fatal(err)
			}
			v = append(v, x)
		}
		to := plane.Point{X: v[len(v)-2], Y: v[len(v)-1]}
		chord := from.To(to)
		switch c[1] {
		case "L":
			total += chord
		case "A":
			r := max(v[0], chord/2)
			angle := 2 * math.Asin(min(chord/2/r, 1))
			if v[3] == 1 {
				angle = 2*math.Pi - angle
			}
			total += r * angle
		}
		from = to
	}
	return total
}

func TestLengthsInTheDrawingAreTrueToScale(t *testing.T) {
	for _, axes := range layout.AllAxes {
		for _, scale := range []length.Scale{48, 50, 1, 200} {
			l := layout.Of(source(), axes)
			d := drawn(t, l, scale)
			for i, layer := range l.Layers {
				if len(layer.Paths) == 0 {
					continue
				}
				for j, p := range d.Groups[i].lines(t).Paths {
					got, want := pathLength(t, p.D)*float64(scale)/1000, sum(layer.Paths[j].Edges)
					if math.Abs(got-want) > 1e-6 {
						t.Errorf("%s, 1:%g, %s, path %d: %.8f m, want %.8f", axes, float64(scale), layer.Name, j, got, want)
					}
				}
			}
		}
	}
}

func TestTheDrawingIsAsLargeAsItSays(t *testing.T) {
	l := layout.Of(source(), layout.FromRoom)
	d := drawn(t, l, 50)
	size := strings.TrimSuffix(d.Width, "mm") + " " + strings.TrimSuffix(d.Height, "mm")
	if d.ViewBox != "0 0 "+size {
		t.Errorf("it is %s by %s with a view box of %s: not one to one", d.Width, d.Height, d.ViewBox)
	}
	if d.Title != "The Salt Road — Mill Hall" || !strings.Contains(d.Desc, "1:50") || !strings.Contains(d.Desc, "revision C") {
		t.Errorf("it is called %q, %q", d.Title, d.Desc)
	}
}

func TestArcsBulgeTheRightWay(t *testing.T) {
	s := source()
	s.Lines = []floor.Line{{Edge: plane.Edge{A: at(0, 0), B: at(4, 0), Bulge: 0.5}}, {Edge: plane.Edge{A: at(0, 3), B: at(4, 3), Bulge: -1.5}, Element: "x"}}
	l := layout.Of(s, layout.FromDatum)
	d := drawn(t, l, 100)
	var got []string
	for i, layer := range l.Layers {
		if layer.Use == layout.Tape {
			for _, p := range d.Groups[i].lines(t).Paths {
				f := strings.Fields(p.D[strings.Index(p.D, "A"):])
				got = append(got, f[4])
			}
		}
	}
	// Counter-clockwise from left to right hangs below its chord, on the floor and on
	// paper: no sweep. The other one is clockwise.
	if strings.Join(got, " ") != "0 1" {
		t.Errorf("the arcs sweep %v", got)
	}
}

func TestStocksAreToldApartWithoutColour(t *testing.T) {
	s := source()
	for i := range 20 {
		id := plan.StockID(rune('A' + i))
		s.Stocks = append(s.Stocks, layout.Stock{ID: id, Name: string(id)})
		s.Lines = append(s.Lines, floor.Line{Edge: plane.Edge{B: at(1, 0)}, Stock: id})
	}
	l := layout.Of(s, layout.FromDatum)
	d := drawn(t, l, 50)
	taken := map[string]string{}
	for i, layer := range l.Layers {
		if layer.Use != layout.Tape {
			continue
		}
		dash := d.Groups[i].lines(t).Dash
		if other, ok := taken[dash]; ok {
			t.Errorf("%s and %s are both drawn with the pattern %q", layer.Name, other, dash)
		}
		taken[dash] = layer.Name
	}
}

func TestTheLegendShowsWhatIsDrawnAsABrokenLine(t *testing.T) {
	l := layout.Of(source(), layout.FromRoom)
	d := drawn(t, l, 50)
	legend := d.Groups[len(d.Groups)-1]
	words := legend.Groups[len(legend.Groups)-1].Texts
	samples := map[string]string{}
	n := 0
	for _, g := range legend.Groups {
		if g.Stroke == "black" {
			samples[words[n]] = g.Dash
			n++
		}
	}
	for _, name := range []string{"Seams", "Other surfaces", "Tape Blue"} {
		if samples[name] != "0.3 0.9" {
			t.Errorf("%s is shown by the pattern %q, and drawn dotted", name, samples[name])
		}
	}
	for _, name := range []string{"Doors", "Tape Red 1 cloth"} {
		if samples[name] == "0.3 0.9" {
			t.Errorf("%s is shown dotted", name)
		}
	}
}

func TestWordsAndTitlesSurviveXML(t *testing.T) {
	s := source()
	s.Title = `Salt & <Road> "2"` + "\x01"
	s.Floor.Obstacles[0].Name = "Column <1> & wall"
	l := layout.Of(s, layout.FromDatum)
	d := drawn(t, l, 50)
	if !strings.HasPrefix(d.Title, `Salt & <Road> "2"`) {
		t.Errorf("the title is %q", d.Title)
	}
	words := d.Groups[1].Groups[1].Texts
	if len(words) != 1 || words[0] != "Column <1> & wall" {
		t.Errorf("the words are %q", words)
	}
}

func TestWhatCannotBeDrawnIsRefused(t *testing.T) {
	good := layout.Of(source(), layout.FromDatum)
	broken := layout.Of(source(), layout.FromDatum)
	broken.Layers[0].Paths[0].Edges[0].A.X = math.Inf(1)
	for _, c := range []struct {
		name  string
		l     *layout.Layout
		scale length.Scale
	}{{"no scale", good, 0}, {"no number", good, length.Scale(math.NaN())}, {"nothing", &layout.Layout{}, 50}, {"endless", broken, 50}} {
		var b strings.Builder
		if err := c.l.WriteSVG(&b, c.scale); err == nil || b.Len() > 0 {
			t.Errorf("%s: got %v and %d bytes", c.name, err, b.Len())
		}
	}
	if err := good.WriteSVG(full{}, 50); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("a full disk: got %v", err)
	}
}

// full is a disk that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }
