package store

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// victim is the environment variable that makes the test binary edit a file
// until it is killed.
const victim = "GROUNDROW_KILL_ME"

func TestMain(m *testing.M) {
	if path := os.Getenv(victim); path != "" {
		editUntilKilled(path)
		return
	}
	os.Exit(m.Run())
}

// editUntilKilled makes the scripted edits, each of several tables, and prints
// the number of each when Edit has returned.
func editUntilKilled(path string) {
	f, err := Open(context.Background(), path, "Ada")
	if err != nil {
		fmt.Println(err)
		return
	}
	for n := len(f.Now().P.Plan.Scenes); ; n++ {
		if err := f.Edit(context.Background(), f.Now(), scripted(n), script(n)); err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(n)
	}
}

func scripted(n int) string { return "Edit " + strconv.Itoa(n) }

// script is the n-th edit: a scene, an element with a line and a stand in that
// scene, and every corner of the first wall moved.
func script(n int) func(*prep.Production) error {
	return func(p *prep.Production) error {
		scene := plan.Scene{ID: plan.SceneID("scene-" + strconv.Itoa(n))}
		p.Plan.Scenes = append(p.Plan.Scenes, scene)
		p.Plan.Elements = append(p.Plan.Elements, plan.Element{
			ID: plan.ElementID("element-" + strconv.Itoa(n)), Level: "stage",
			Paths:  []plan.Path{{ID: "p", Path: plane.Circle(plane.Point{X: float64(n)}, 1.0/3)}},
			Stands: []plan.Stand{{Scene: scene.ID, Over: float64(n) / 7}},
		})
		for i := range p.Plan.Elements[0].Paths[0].Vertices {
			p.Plan.Elements[0].Paths[0].Vertices[i].Y += 1.0 / 3
		}
		return nil
	}
}

// scriptedState is the production after the first edits of the script.
func scriptedState(edits int) *prep.Production {
	p := kitchen()
	first := len(p.Plan.Scenes)
	for n := range edits {
		if err := script(first + n)(p); err != nil {
			panic(err)
		}
	}
	return p
}

// TestNothingSavedIsLostWhenKilled kills an editing program at random moments,
// again and again on one file: every edit that was acknowledged is there whole,
// and undo goes on. GROUNDROW_KILLS sets how often.
func TestNothingSavedIsLostWhenKilled(t *testing.T) {
	kills := 20
	if n, err := strconv.Atoi(os.Getenv("GROUNDROW_KILLS")); err == nil {
		kills = n
	}
	path := filepath.Join(t.TempDir(), "play.groundrow")
	made, acknowledged := 0, 0
	start := func() {
		_ = os.Remove(path)
		mustCreateAt(t, path, "Ada", kitchen()).Close()
		made = 0
	}
	start()
	r := rand.New(rand.NewPCG(1, 2))
	for kill := range kills {
		early := kill%4 == 0 // while the file is being opened, or in the first edit
		last, said := runAndKill(t, path, early, time.Duration(r.IntN(120))*time.Millisecond)
		acknowledged += said
		least := made
		if said > 0 {
			least = last - len(kitchen().Plan.Scenes) + 1
		}
		made = checkAfterKill(t, path, kill, least)
		if made > 60 { // the script's later edits would make the test slow
			start()
		}
	}
	t.Logf("%d kills, %d acknowledged edits, none lost", kills, acknowledged)
	if kills >= 20 && acknowledged == 0 {
		t.Error("no edit was acknowledged before a kill: the test shows nothing")
	}
}

// runAndKill lets the program edit for a time, counted from its start or from its
// first word, and kills it. It returns the last number that the program printed
// and how many.
func runAndKill(t *testing.T, path string, fromStart bool, after time.Duration) (last, said int) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), victim+"="+path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	kill := func() { _ = cmd.Process.Kill() }
	if fromStart {
		time.AfterFunc(after, kill)
	}
	lines := bufio.NewReader(out)
	for {
		line, err := lines.ReadString('\n')
		if err == io.EOF {
			break // a line without its end was not acknowledged
		}
		if last, err = strconv.Atoi(strings.TrimSpace(line)); err != nil {
			t.Fatalf("the program said %q", line)
		}
		if said++; said == 1 && !fromStart {
			time.AfterFunc(after, kill)
		}
	}
	_ = cmd.Wait()
	return last, said
}

// checkAfterKill opens the file, compares it with the script, undoes and redoes,
// and returns how many edits it holds.
func checkAfterKill(t *testing.T, path string, kill, least int) int {
	t.Helper()
	f, err := Open(context.Background(), path, "Ada")
	if err != nil {
		t.Fatalf("kill %d: %v", kill, err)
	}
	defer f.Close()
	base := len(kitchen().Plan.Scenes)
	made := len(f.Now().P.Plan.Scenes) - base
	if made < least || made > least+1 {
		t.Fatalf("kill %d: %d edits in the file, %d acknowledged", kill, made, least)
	}
	if d := alike(scriptedState(made), f.Now().P); d != "" {
		t.Fatalf("kill %d: after %d edits (-want +got)\n%s", kill, made, d)
	}
	if made > 0 {
		mustUndo(t, f, scripted(base+made-1))
		if d := alike(scriptedState(made-1), f.Now().P); d != "" {
			t.Fatalf("kill %d: after undo (-want +got)\n%s", kill, d)
		}
		mustRedo(t, f, scripted(base+made-1))
	}
	return made
}
