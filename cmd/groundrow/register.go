package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"groundrow/assets/desktop"
	"groundrow/store"
)

// registerCommand makes the program known to the desktop.
func registerCommand(s *session) *cobra.Command {
	return &cobra.Command{
		Use:   "register",
		Short: "Put the program into the menu and let it open its files",
		Long: "On Linux, write the program's menu entry, its icon and the type of its files into the person's own data folder, " +
			"so that a double click on a production file opens it. The entry names the program where it lies now.",
		Example: "  groundrow register",
		Args:    cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if runtime.GOOS != "linux" {
				return errors.New("registering is for Linux; on this system choose the program once for a production file, and the system keeps it")
			}
			program, err := os.Executable()
			if err != nil {
				return fmt.Errorf("finding the program: %w", err)
			}
			data, err := dataHome()
			if err != nil {
				return err
			}
			return s.register(program, data)
		},
	}
}

// dataHome is the person's data folder (XDG base directory specification).
func dataHome() (string, error) {
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", fmt.Errorf("finding the home folder: %w", err)
	}
	return filepath.Join(home, ".local", "share"), nil
}

// register writes the three files and has the desktop read them again, where it
// has the programs for that.
func (s *session) register(program, data string) error {
	entry := strings.Replace(desktop.Entry, "Exec=groundrow", "Exec="+quoted(program), 1)
	for _, f := range []struct {
		path    string
		content []byte
	}{
		{"applications/groundrow.desktop", []byte(entry)},
		{"icons/hicolor/scalable/apps/groundrow.svg", desktop.Icon},
		{"mime/packages/groundrow.xml", desktop.Mime},
	} {
		path := filepath.Join(data, filepath.FromSlash(f.path))
		if err := folder(filepath.Dir(path)); err != nil {
			return err
		}
		if err := store.WriteWhole(path, func(w io.Writer) error { _, err := w.Write(f.content); return err }); err != nil {
			return err
		}
		fmt.Fprintln(s.out, path)
	}
	for _, again := range [][]string{
		{"update-mime-database", filepath.Join(data, "mime")},
		{"update-desktop-database", filepath.Join(data, "applications")},
	} {
		if _, err := exec.LookPath(again[0]); err == nil {
			if err := exec.Command(again[0], again[1:]...).Run(); err != nil {
				fmt.Fprintf(s.messages, "%s: %v; sign out and in again\n", again[0], err)
			}
		}
	}
	return nil
}

// quoted writes a program's path as the Exec key wants it (Desktop Entry
// Specification, the Exec key).
func quoted(path string) string {
	return `"` + strings.NewReplacer(`\`, `\\\\`, `"`, `\\"`, "`", "\\\\`", `$`, `\\$`, `%`, `%%`).Replace(path) + `"`
}
