package main

import (
	"fmt"
	"strings"
	"testing"
)

func TestWearIsToldAndListed(t *testing.T) {
	path := small(t)
	label := decode[[]mark](t, must(t, "marks", path, "--json"))[0].Label
	must(t, "tick", path, "placed", strings.ToLower(label), "--who", "Wren")
	got := decode[wear](t, must(t, "tick", path, "worn", label, "--who", "Wren", "--json"))
	if len(got.Worn) != 1 || got.Worn[0].Label != label || got.Worn[0].By != "Wren" || len(got.Strips) == 0 || len(got.Tape) == 0 {
		t.Errorf("got %+v", got)
	}
	if said := must(t, "retape", path); !strings.Contains(said, "Bring ") || !strings.Contains(said, "around "+label) {
		t.Errorf("said %s", said)
	}
	if said := must(t, "tick", path, "taped again", label); !strings.Contains(said, "nothing is said to be worn") {
		t.Errorf("said %s", said)
	}
	for _, args := range [][]string{{"worn", "QQ"}, {"painted", label}, {"taped again", label}, {"worn"}} {
		if r := command(t, append([]string{"tick", path}, args...)...); r.status != failed || r.messages == "" {
			t.Errorf("%v: status %d, %q", args, r.status, r.messages)
		}
	}
}

func TestAPieceIsMeasuredBack(t *testing.T) {
	path := small(t)
	piece, at := "", []string{}
	for _, m := range decode[[]mark](t, must(t, "marks", path, "--json")) {
		if (piece == "" || m.What == piece) && (m.Kind == "end" || m.Kind == "corner") && !strings.Contains(m.What, ",") {
			piece = m.What
			at = append(at, "--at", fmt.Sprintf("%s=%.4f m, %.4f m", m.Label, float64(m.Up)+0.25, float64(m.Over)))
		}
	}
	args := append([]string{"moved", path, piece, "--json"}, at...)
	got := decode[measured](t, must(t, args...))
	if got.Finding != "moved" || got.Up < 0.2499 || got.Up > 0.2501 || got.Kept {
		t.Fatalf("%v: got %+v", args, got)
	}
	if r := command(t, append(args, "--take")...); r.status != failed || !strings.Contains(r.messages, "--reason") {
		t.Errorf("without a reason: status %d, %q", r.status, r.messages)
	}
	got = decode[measured](t, must(t, append(args, "--take", "--reason", "sight lines", "--who", "Wren")...))
	if !got.Taken || !strings.HasPrefix(got.Next, "Kept: the plan has it in the new place") {
		t.Errorf("got %+v", got)
	}
	for _, bad := range [][]string{{"--at", "A"}, {"--at", "A=1 m, 1 m", "--tapes", "up"}, {"--at", "A=x, 1 m"}, {}} {
		if r := command(t, append([]string{"moved", path, piece}, bad...)...); r.status != failed || r.messages == "" {
			t.Errorf("%v: status %d, %q", bad, r.status, r.messages)
		}
	}
}
