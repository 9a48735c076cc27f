package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/xml"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/drawing/dxf"
)

// TestExportDXF reads the drawing back: the wall is 6 m, 236.22 inches.
func TestExportDXF(t *testing.T) {
	path := small(t)
	for _, c := range []struct {
		unit string
		want float64
	}{{"", 6}, {"ft", 6 / 0.0254}, {"mm", 6000}} {
		args := []string{"export", path, "dxf"}
		if c.unit != "" {
			args = append(args, "--unit", c.unit)
		}
		sheet, err := dxf.Read(context.Background(), strings.NewReader(must(t, args...)), 1e-4, nil)
		if err != nil {
			t.Fatal(err)
		}
		got := 0.0
		for i := range sheet.Items {
			if strings.HasPrefix(sheet.Items[i].Layer, "Tape") {
				got += sheet.Items[i].Length()
			}
		}
		if math.Abs(got-c.want) > 1e-6*c.want || math.Abs(float64(sheet.Unit)*got-6) > 1e-5 {
			t.Errorf("--unit %q: %g of %v are laid, want %g", c.unit, got, sheet.Unit, c.want)
		}
	}
}

func TestExportSVG(t *testing.T) {
	var d struct {
		XMLName xml.Name `xml:"http://www.w3.org/2000/svg svg"`
		Title   string   `xml:"title"`
		Desc    string   `xml:"desc"`
	}
	if err := xml.Unmarshal([]byte(must(t, "export", small(t), "svg", "--scale", "1:100", "--axes", "room")), &d); err != nil {
		t.Fatal(err)
	}
	if d.Title != "The Salt Road — Rehearsal room" || !strings.Contains(d.Desc, "1:100") || !strings.Contains(d.Desc, "as the room was measured") {
		t.Errorf("the drawing is called %q, %q", d.Title, d.Desc)
	}
}

func TestExportPoints(t *testing.T) {
	for _, c := range []struct {
		name        string
		args        []string
		rows        int
		north, east float64 // of the last mark, the wall's end 5 m up and 3 m to stage left
	}{
		{"as they are", nil, 3, 5, 3},
		{"shifted, with a header", []string{"--north", "100", "--east", "50", "--header"}, 4, 105, 53},
		{"in feet", []string{"--unit", "ft"}, 3, 5 / 0.3048, 3 / 0.3048},
		{"in the room's axes", []string{"--axes", "room"}, 3, 6.5, 9},
	} {
		rows, err := csv.NewReader(strings.NewReader(must(t, append([]string{"export", small(t), "points"}, c.args...)...))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if len(rows) != c.rows {
			t.Fatalf("%s: got %v", c.name, rows)
		}
		last := rows[len(rows)-1]
		for i, want := range map[int]float64{1: c.north, 2: c.east} {
			if got, err := strconv.ParseFloat(last[i], 64); err != nil || math.Abs(got-want) > 6e-5 {
				t.Errorf("%s: the last row is %v, want %g in column %d", c.name, last, want, i+1)
			}
		}
	}
}

func TestExportOfADrawingGivesBackItsBytes(t *testing.T) {
	path := small(t)
	content := []byte("%PDF-1.7\r\n\x00\xff not really\n")
	keep(t, path, "plan rev C.pdf", content)
	keep(t, path, "Section.dxf", []byte("0\nEOF\n"))
	to := filepath.Join(t.TempDir(), "back.pdf")
	must(t, "export", path, "drawing", "plan rev", "--to", to)
	if got, err := os.ReadFile(to); err != nil || !bytes.Equal(got, content) {
		t.Errorf("got %q, %v", got, err)
	}
	if got := must(t, "export", path, "drawing", "plan rev C.pdf"); got != string(content) {
		t.Errorf("on the standard output it is %q", got)
	}
}

// keep puts a drawing into a production file.
func keep(t *testing.T, path, name string, content []byte) {
	t.Helper()
	f, err := store.Open(context.Background(), path, "A tester")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	d := prep.Drawing{ID: name, Name: name, Format: "PDF", Bytes: len(content), On: today, By: "A tester"}
	if err := f.AddDrawing(context.Background(), f.Now(), d, content); err != nil {
		t.Fatal(err)
	}
}

func TestExportSaysWhatItCannotDo(t *testing.T) {
	path := small(t) // its room and its plan came in as tables
	empty := filepath.Join(t.TempDir(), "empty.groundrow")
	must(t, "new", empty, "--title", "Bare", "--unit", "m", "--first", "2031-03-10")
	for _, c := range []struct {
		name string
		args []string
		says string
	}{
		{"no drawing at all", []string{empty, "drawing", "plan.pdf"}, "no drawing has been imported"},
		{"which drawing", []string{path, "drawing"}, "There are: hall.csv; plan.csv"},
		{"no such drawing", []string{path, "drawing", "map"}, "there are: hall.csv; plan.csv"},
		{"a name with something else", []string{path, "svg", "map"}, "takes no"},
		{"axes", []string{path, "svg", "--axes", "stars"}, "there are: datum; room"},
		{"scale", []string{path, "svg", "--scale", "big"}, "--scale"},
		{"unit", []string{path, "points", "--unit", "ell"}, "--unit"},
		{"origin", []string{path, "points", "--north", "high"}, "--north"},
		{"an origin that is too low", []string{path, "points", "--east", "1"}, "an easting of 3 or more"},
	} {
		r := command(t, append([]string{"export"}, c.args...)...)
		if r.status != failed || !strings.Contains(r.messages, c.says) || r.out != "" {
			t.Errorf("%s: status %d, messages %q, out %q", c.name, r.status, r.messages, r.out)
		}
	}
}
