package planplace

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

// Columns of the table of where an element stands.
const (
	standTick = iota
	standScene
	standUp
	standOver
	standTurn
)

// standRow is one scene of an element.
type standRow struct {
	ID    string
	In    bool
	Cells []string // without the tick
	Here  bool     // the scene that is looked at
}

func standRows(p *prep.Production, e *plan.Element, here plan.SceneID) []standRow {
	rows := make([]standRow, len(p.Plan.Scenes))
	for i, scene := range p.Plan.Scenes {
		row := standRow{ID: string(scene.ID), In: len(e.Stands) == 0, Cells: []string{scene.Name, "", "", ""}, Here: scene.ID == here}
		if s := standIn(e, scene.ID); s != nil {
			row.In = true
			row.Cells[1] = showUp(p, string(e.ID), standColumn(upColumn, scene.ID), s.Up)
			row.Cells[2] = showOver(p, string(e.ID), standColumn(overColumn, scene.ID), s.Over)
			row.Cells[3] = decimal(s.Turn)
		}
		rows[i] = row
	}
	return rows
}

// standColumn is under what the shift in a scene is kept as typed.
func standColumn(what string, scene plan.SceneID) string { return what + " in " + string(scene) }

// setStand changes one cell of the table. Typing a position puts the element into
// the scene.
func setStand(p *prep.Production, e *plan.Element, scene plan.SceneID, cell int, text string) error {
	text = strings.TrimSpace(text)
	if p.Plan.Scene(scene) == nil {
		return errors.New("the scene is no longer there: somebody has deleted it")
	}
	if err := placeByScene(p, e, true); err != nil {
		return err
	}
	if cell == standTick {
		return standHere(e, scene, text != "")
	}
	if err := standHere(e, scene, true); err != nil {
		return err
	}
	s := standIn(e, scene)
	var err error
	switch cell {
	case standUp:
		s.Up, err = orNothing(text, p.Unit(), length.ParseUp)
		p.KeepTyped(string(e.ID), standColumn(upColumn, scene), text)
	case standOver:
		s.Over, err = orNothing(text, p.Unit(), length.ParseOver)
		p.KeepTyped(string(e.ID), standColumn(overColumn, scene), text)
	case standTurn:
		s.Turn, err = parseDegrees(text)
	}
	return err
}

func orNothing(text string, unit length.Unit, parse func(string, length.Unit) (float64, error)) (float64, error) {
	if text == "" {
		return 0, nil
	}
	return parse(text, unit)
}

// parseDegrees reads an angle in degrees, positive to the left as seen from above,
// up to ten turns; right makes it negative.
func parseDegrees(text string) (float64, error) {
	const most = 3600
	low := strings.ToLower(strings.TrimSpace(text))
	sign := 1.0
	if rest, ok := strings.CutSuffix(low, "right"); ok {
		low, sign = rest, -1
	}
	low = strings.TrimSuffix(strings.TrimSpace(low), "left")
	low = strings.TrimSuffix(strings.TrimSuffix(strings.TrimSpace(low), "degrees"), "°")
	low = strings.ReplaceAll(strings.TrimSpace(low), "−", "-")
	if low == "" {
		return 0, nil
	}
	v, err := strconv.ParseFloat(strings.Replace(low, ",", ".", 1), 64)
	if err != nil || !(math.Abs(v) <= most) {
		return 0, fmt.Errorf("“%s” is not an angle: type degrees such as 90 or -45, positive to the left as seen from above", text)
	}
	return sign * v, nil
}

// decimal writes a number without needless decimals.
func decimal(v float64) string {
	const places = 1e6
	return strconv.FormatFloat(math.Round(v*places)/places+0, 'f', -1, 64)
}

// showTravel writes how far a carrier has gone in a scene.
func showTravel(p *prep.Production, e *plan.Element, scene plan.SceneID) string {
	to := travelOf(p, e.ID, scene)
	if e.Kind == plan.Revolve {
		return decimal(to)
	}
	return p.ShowLength(string(e.ID), standColumn("travel", scene), to)
}

// setTravel takes what was typed: degrees for a revolve, a length along its way
// for a track.
func setTravel(p *prep.Production, e *plan.Element, scene plan.SceneID, text string) error {
	text = strings.TrimSpace(text)
	if e.Kind == plan.Revolve {
		degrees, err := parseDegrees(text)
		if err == nil {
			travel(p, e.ID, scene, degrees)
		}
		return err
	}
	m, err := orNothing(text, p.Unit(), length.Parse)
	if err != nil {
		return err
	}
	most, ok := wayLength(e)
	switch {
	case !ok:
		return errors.New("the track has no way yet: draw a line of it and say that it shows its way")
	case m < 0 || m > most+1e-6:
		return fmt.Errorf("the way is %s long: type a length from 0 to that", p.Style().Format(most))
	}
	travel(p, e.ID, scene, m)
	p.KeepTyped(string(e.ID), standColumn("travel", scene), text)
	return nil
}

// travelHeading says what a carrier's figures are.
func travelHeading(p *prep.Production, e *plan.Element) string {
	if e.Kind == plan.Revolve {
		return "How far it has turned, in degrees to the left as seen from above"
	}
	if most, ok := wayLength(e); ok {
		return "How far along its way, of " + p.Style().Format(most)
	}
	return "How far along its way; draw the way first, among its lines"
}
