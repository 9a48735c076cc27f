package main

import (
	"fmt"
	"image/png"
	"io"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/spf13/cobra"

	"groundrow/store"
	"groundrow/ui"
	"groundrow/ui/desk"
	looks "groundrow/ui/theme"
)

// Sizes of a picture in pixels.
const (
	leastSide = 320
	mostSide  = 8192
)

// pictures are the options of the command.
type pictures struct {
	*session
	to, size, look string
}

// picturesCommand draws the window without a display.
func picturesCommand(s *session) *cobra.Command {
	r := &pictures{session: s}
	c := &cobra.Command{
		Use:   "pictures FILE",
		Short: "Draw every place of the window as a picture, without a display",
		Long: "Draw the window at each of its places as a PNG, for a page, a message, or a look at a file on a machine without a screen. " +
			"The menu bar is not part of the pictures.",
		Example: "  groundrow pictures demo.groundrow --to pictures\n  groundrow pictures demo.groundrow --size 1920x1080 --look dark --to pictures",
		Args:    takes("FILE"),
		RunE:    func(c *cobra.Command, args []string) error { return r.draw(c, args[0]) },
	}
	c.Flags().StringVar(&r.to, "to", "", "the folder to write to")
	c.Flags().StringVar(&r.size, "size", "1366x768", "width and height in pixels")
	c.Flags().StringVar(&r.look, "look", string(looks.Light), "light or dark")
	s.asksFloor(c)
	s.asksScene(c)
	return c
}

func (r *pictures) draw(c *cobra.Command, path string) (err error) {
	size, err := sizeTyped(r.size)
	if err != nil {
		return err
	}
	if r.look != string(looks.Light) && r.look != string(looks.Dark) {
		return fmt.Errorf("--look: %q is neither light nor dark", r.look)
	}
	p, err := r.open(c.Context(), path)
	if err != nil {
		return err
	}
	f, scene, err := r.chosen(p.P)
	if err == nil {
		err = folder(r.to)
	}
	if err != nil {
		p.Close()
		return err
	}
	a := test.NewApp()
	defer a.Quit()
	w := ui.New(a)
	w.Look(looks.Choice(r.look))
	w.Load(p.File)
	defer w.Desk().Close()
	w.Desk().ChooseFloor(f.ID)
	w.Desk().ChooseScene(scene)
	return r.write(w, size)
}

func (r *pictures) write(w *ui.Window, size fyne.Size) error {
	for i, place := range desk.Names {
		path := filepath.Join(r.to, fmt.Sprintf("%02d-%s.png", i+1, fileName(string(place))))
		picture := w.Picture(place, size)
		if err := store.WriteWhole(path, func(out io.Writer) error { return png.Encode(out, picture) }); err != nil {
			return err
		}
		fmt.Fprintln(r.out, path)
	}
	return nil
}

func sizeTyped(text string) (fyne.Size, error) {
	var wide, high int
	if _, err := fmt.Sscanf(strings.ToLower(text)+"\n", "%dx%d\n", &wide, &high); err != nil ||
		min(wide, high) < leastSide || max(wide, high) > mostSide {
		return fyne.Size{}, fmt.Errorf("--size: %q is no size; write width and height in pixels from %d to %d, as 1366x768", text, leastSide, mostSide)
	}
	return fyne.NewSize(float32(wide), float32(high)), nil
}
