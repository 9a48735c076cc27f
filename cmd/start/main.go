// Command start builds the program and opens the demo production. Where there is
// no display it writes the demo's paperwork and pictures of its screens instead.
package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"groundrow/cmd/internal/display"
	"groundrow/cmd/internal/machine"
)

// out is where everything is written, below the folder that start runs in.
const out = "out"

func main() {
	if err := start(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func start() error {
	if err := machine.Prepare(machine.ToBuild...); err != nil {
		return err
	}
	program := filepath.Join(out, "groundrow")
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	fmt.Println("Building the program; the first time takes some minutes.")
	if err := machine.Run("go", "build", "-tags", machine.Tags, "-o", program, "./cmd/groundrow"); err != nil {
		return err
	}
	demo := filepath.Join(out, "demo.groundrow")
	if err := fresh(program, demo); err != nil {
		return err
	}
	if display.Named() {
		fmt.Println("Opening", demo)
		return machine.Run(program, demo)
	}
	paper, pictures := filepath.Join(out, "paper"), filepath.Join(out, "pictures")
	fmt.Println("There is no display here: the demo's paperwork and pictures of its screens are written instead.")
	if err := machine.Run(program, "print", demo, "--to", paper); err != nil {
		return err
	}
	if err := machine.Run(program, "pictures", demo, "--to", pictures); err != nil {
		return err
	}
	fmt.Printf("Paperwork in %s, pictures in %s.\n", paper, pictures)
	return nil
}

// fresh makes the demo file unless there is one from an earlier start, which a
// person may have worked in.
func fresh(program, demo string) error {
	_, err := os.Stat(demo)
	if !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return machine.Run(program, "demo", demo)
}
