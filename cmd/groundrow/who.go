package main

import (
	"encoding/json"
	"os"
	"os/user"
	"path/filepath"
)

// worker is the name under which changes go into the history. It is the one that
// the window goes by, so that undo takes back the same person's changes in both.
func (s *session) worker() string {
	if s.who != "" {
		return s.who
	}
	if who := toldToWindow(); who != "" {
		return who
	}
	if u, err := user.Current(); err == nil && u.Name != "" {
		return u.Name
	}
	return "stage management"
}

// toldToWindow reads the name from the window's settings, where the toolkit keeps
// them; empty when there are none yet.
func toldToWindow() string {
	dir, err := os.UserConfigDir()
	if err != nil {
		return ""
	}
	text, err := os.ReadFile(filepath.Join(dir, "fyne", appID, "preferences.json"))
	if err != nil {
		return ""
	}
	var kept struct {
		Who string `json:"who"`
	}
	if json.Unmarshal(text, &kept) != nil {
		return ""
	}
	return kept.Who
}
