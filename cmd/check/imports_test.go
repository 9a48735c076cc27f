package main

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const module = "groundrow"

// layers from the bottom up. A package may import those of its own layer and of
// the layers below; the innermost folder that is named here counts.
var layers = [][]string{
	{"assets/fonts", "assets/desktop"},
	{"tapeout/plane", "tapeout/length", "tapeout/match"},
	{"tapeout/plan"},
	{"tapeout/floor"},
	{"tapeout/marks"},
	{"tapeout/survey", "tapeout/route", "tapeout/drawing"},
	{"supplies"},
	{"prep"},
	{"prep/sheets"},
	{"assets/demo"},
	{"store"},
	{"ui"},
	{"cmd"},
}

// pure are the folders that compute: no screen, no database, no files.
var pure = []string{"tapeout", "supplies", "prep"}

// kept from them, whole trees included.
var kept = []string{"fyne.io/fyne/v2", "database/sql", "github.com/mattn/go-sqlite3", "os", "path/filepath"}

// goPackage is what go list tells of a package.
type goPackage struct {
	ImportPath string
	Imports    []string
}

// packages are those of the program, with what they import; their tests are left
// out.
func packages(t *testing.T) []goPackage {
	t.Helper()
	cmd := exec.Command("go", "list", "-json=ImportPath,Imports", "./...")
	cmd.Dir = root(t)
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var list []goPackage
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p goPackage
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return list
		} else if err != nil {
			t.Fatalf("go list: %v", err)
		}
		list = append(list, p)
	}
}

func root(t *testing.T) string {
	t.Helper()
	dir, err := filepath.Abs(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

func inFolder(path, folder string) bool { return path == folder || strings.HasPrefix(path, folder+"/") }

// layer returns the height of a package of the program; the longest folder that
// holds it decides, since prep/sheets stands above prep.
func layer(path string) (height int, ok bool) {
	longest := ""
	for i, l := range layers {
		for _, folder := range l {
			if inFolder(path, module+"/"+folder) && len(folder) > len(longest) {
				height, longest = i, folder
			}
		}
	}
	return height, longest != ""
}

func TestImportsRunOneWay(t *testing.T) {
	for _, p := range packages(t) {
		mine, ok := layer(p.ImportPath)
		if !ok {
			t.Errorf("%s belongs to no layer; add its folder where it stands", p.ImportPath)
			continue
		}
		for _, imported := range p.Imports {
			if theirs, ok := layer(imported); ok && theirs > mine {
				t.Errorf("%s imports %s, which stands above it", p.ImportPath, imported)
			}
		}
	}
}

func TestNeighboursDoNotImportEachOther(t *testing.T) {
	for _, p := range packages(t) {
		mine, _ := layer(p.ImportPath)
		for _, imported := range p.Imports {
			theirs, ok := layer(imported)
			if ok && theirs == mine && folderOf(p.ImportPath) != folderOf(imported) {
				t.Errorf("%s imports %s, its neighbour", p.ImportPath, imported)
			}
		}
	}
}

// folderOf returns the folder of the layers that a package lies in.
func folderOf(path string) string {
	height, _ := layer(path)
	i := slices.IndexFunc(layers[height], func(folder string) bool { return inFolder(path, module+"/"+folder) })
	return layers[height][max(i, 0)]
}

func TestComputationsKnowNoScreenNoDatabaseAndNoFiles(t *testing.T) {
	for _, p := range packages(t) {
		if !slices.ContainsFunc(pure, func(folder string) bool { return inFolder(p.ImportPath, module+"/"+folder) }) {
			continue
		}
		for _, imported := range p.Imports {
			for _, k := range kept {
				if imported == k || k != "os" && inFolder(imported, k) {
					t.Errorf("%s imports %s", p.ImportPath, imported)
				}
			}
		}
	}
}

func TestTheTopLevelHoldsOnlyWhatIsAgreed(t *testing.T) {
	agreed := []string{
		"cmd", "ui", "store", "prep", "tapeout", "supplies", "testdata", "assets",
		"go.mod", "go.sum", "README.md", "DEVELOPERS.md", "out", // out is where start writes; it is not kept
	}
	entries, err := os.ReadDir(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !slices.Contains(agreed, e.Name()) {
			t.Errorf("%s does not belong at the top level", e.Name())
		}
	}
}
