// Package machine gets a fresh machine ready to build and test the program: the
// C compiler and the headers that the window's drawing needs.
package machine

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
)

// Tags are the build tags of the program as it ships.
const Tags = "migrated_fynedo"

// Need is something that must be there, how to see whether it is, and the Debian
// packages that bring it.
type Need struct {
	What     string
	Found    func() bool
	Packages []string
}

// ToBuild is what building the program takes.
var ToBuild = []Need{
	{"a C compiler", onPath("gcc"), []string{"gcc", "libc6-dev"}},
	{"pkg-config", onPath("pkg-config"), []string{"pkg-config"}},
	{"the headers of OpenGL and X11", pkgConfig("gl", "x11", "xcursor", "xrandr", "xinerama", "xi", "xxf86vm"),
		[]string{"libgl1-mesa-dev", "xorg-dev"}},
}

// ToTest is what the tests take besides.
var ToTest = []Need{
	{"qpdf", onPath("qpdf"), []string{"qpdf"}},
	{"pdftotext and pdftoppm", onPath("pdftotext", "pdftoppm"), []string{"poppler-utils"}},
}

func onPath(names ...string) func() bool {
	return func() bool {
		for _, n := range names {
			if _, err := exec.LookPath(n); err != nil {
				return false
			}
		}
		return true
	}
}

func pkgConfig(modules ...string) func() bool {
	return func() bool {
		return exec.Command("pkg-config", append([]string{"--exists"}, modules...)...).Run() == nil
	}
}

// Prepare installs what is missing. On a machine whose packages it cannot manage
// it says what a person has to install.
func Prepare(needs ...Need) error {
	if runtime.GOOS != "linux" {
		return nil // the compilers of other systems bring their own headers
	}
	var what, packages []string
	for _, n := range needs {
		if !n.Found() {
			what = append(what, n.What)
			packages = append(packages, n.Packages...)
		}
	}
	if len(packages) == 0 {
		return nil
	}
	fmt.Printf("Missing here: %s. Installing %s.\n", strings.Join(what, ", "), strings.Join(packages, " "))
	if err := install(packages); err != nil {
		return fmt.Errorf("install by hand, then run this again: %s (%w)", strings.Join(packages, " "), err)
	}
	return nil
}

func install(packages []string) error {
	if !onPath("apt-get")() {
		return errors.New("no apt-get on this machine")
	}
	var as []string
	if os.Geteuid() != 0 {
		if !onPath("sudo")() {
			return errors.New("neither root nor sudo")
		}
		as = []string{"sudo"}
	}
	if err := Run(append(as, "apt-get", "update", "-qq")...); err != nil {
		return err
	}
	words := append(as, "apt-get", "install", "-y", "-qq", "--no-install-recommends")
	return Run(append(words, packages...)...)
}

// Run runs a command that talks to the person.
func Run(words ...string) error {
	cmd := exec.Command(words[0], words[1:]...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	cmd.Env = append(os.Environ(), "DEBIAN_FRONTEND=noninteractive")
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("%s: %w", strings.Join(words, " "), err)
	}
	return nil
}
