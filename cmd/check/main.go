// Command check passes the tests: formatting, static analysis, every test with
// the race detector. It installs what they need where it can.
package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"time"

	"groundrow/cmd/internal/machine"
)

// step is one check with a name for people.
type step struct {
	name string
	do   func() error
}

func main() {
	run := func(words ...string) func() error { return func() error { return machine.Run(words...) } }
	steps := []step{
		{"what the machine needs", func() error { return machine.Prepare(append(machine.ToBuild, machine.ToTest...)...) }},
		{"formatting", formatted},
		{"vet", run("go", "vet", "-tags", machine.Tags, "./...")},
		{"static analysis", run("go", "tool", "staticcheck", "-tags", machine.Tags, "./...")},
		{"tests", run("go", "test", "-race", "-timeout", "25m", "-tags", machine.Tags, "./...")},
	}
	for _, s := range steps {
		begun := time.Now()
		fmt.Printf("== %s\n", s.name)
		if err := s.do(); err != nil {
			fmt.Fprintf(os.Stderr, "%s: %v\n", s.name, err)
			os.Exit(1)
		}
		fmt.Printf("   %s: good, %.0f s\n", s.name, time.Since(begun).Seconds())
	}
}

func formatted() error {
	out, err := exec.Command("gofmt", "-l", ".").Output()
	if err != nil {
		return fmt.Errorf("gofmt: %w", err)
	}
	if list := strings.TrimSpace(string(out)); list != "" {
		return errors.New("run gofmt on\n" + list)
	}
	return nil
}
