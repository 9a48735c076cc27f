package dxf

import (
	"fmt"
	"strings"

	"groundrow/tapeout/drawing/linework"
)

// header is what is used of the HEADER section.
type header struct {
	release   string // of $ACADVER, as AC1009
	unit      int    // of $INSUNITS; -1: not there
	metric    int    // of $MEASUREMENT: 0 inches, 1 metric; -1: not there
	lengths   int    // of $LUNITS: 3 and 4 are feet and inches; -1: not there
	lineScale float64
}

// releases are the values of $ACADVER. From R2007 on, text is UTF-8.
var releases = map[string]string{
	"AC1009": "R12", "AC1012": "R13", "AC1014": "R14", "AC1015": "R2000", "AC1018": "R2004",
	"AC1021": "R2007", "AC1024": "R2010", "AC1027": "R2013", "AC1032": "R2018",
}

const firstUTF8 = "AC1021"

// readHeader reads the variables up to the end of the section.
func (r *reader) readHeader() error {
	for {
		code, value, err := r.in.next()
		if err != nil {
			return r.cut(err)
		}
		if code == 0 {
			r.in.putBack()
			return nil
		}
		if code != 9 {
			continue
		}
		name := string(value)
		if err := r.in.readRecord(&r.record, 9); err != nil {
			return err
		}
		r.variable(name, &r.record)
	}
}

func (r *reader) variable(name string, e *record) {
	h := &r.header
	switch name {
	case "$ACADVER":
		v, _ := e.find(1)
		h.release = strings.ToUpper(strings.TrimSpace(string(v)))
		r.text.utf8 = h.release >= firstUTF8
	case "$DWGCODEPAGE":
		v, _ := e.find(3)
		r.text.page = codePages[strings.ToLower(strings.TrimSpace(string(v)))]
	case "$INSUNITS":
		h.unit = e.whole(70, -1)
	case "$MEASUREMENT":
		h.metric = e.whole(70, -1)
	case "$LUNITS":
		h.lengths = e.whole(70, -1)
	case "$LTSCALE":
		if s := e.num(40, 1); s > 0 {
			h.lineScale = s
		}
	}
}

// insertUnits are the values of $INSUNITS. Those of astronomy are not among them.
var insertUnits = map[int]linework.Unit{
	1: linework.Inch, 2: linework.Foot, 3: linework.Mile, 4: linework.Millimetre, 5: linework.Centimetre,
	6: linework.Metre, 7: linework.Kilometre, 8: linework.Inch / 1e6, 9: linework.Inch / 1000, 10: linework.Yard,
	11: 1e-10, 12: 1e-9, 13: 1e-6, 14: linework.Decimetre, 15: 10, 16: 100,
	21: linework.SurveyFoot, 22: linework.SurveyFoot / 12, 23: linework.SurveyFoot * 3, 24: linework.SurveyFoot * 5280,
}

// units returns the unit, the likely one where it is not stated, and why.
func (h *header) units() (unit, hint linework.Unit, why string) {
	if u, ok := insertUnits[h.unit]; ok {
		return u, 0, fmt.Sprintf("The file says that one drawing unit is one %v ($INSUNITS is %d).", u, h.unit)
	}
	missing := "The file does not say how long one drawing unit is ($INSUNITS is missing)"
	switch {
	case h.unit == 0:
		missing = "The file leaves open how long one drawing unit is ($INSUNITS is 0)"
	case h.unit > 0:
		missing = fmt.Sprintf("The file names a unit that no stage is drawn in ($INSUNITS is %d)", h.unit)
	}
	switch {
	case h.lengths == 3 || h.lengths == 4:
		return 0, linework.Inch, missing + "; it shows lengths in feet and inches, so that it is likely an inch."
	case h.metric == 1:
		return 0, linework.Millimetre, missing + "; it was set up for metric work, so that it is likely a millimetre."
	case h.metric == 0:
		return 0, linework.Inch, missing + "; it was set up for work in inches, so that it is likely an inch."
	}
	return 0, 0, missing + ", and nothing in it hints at one. Measure a known length."
}

// fineness returns how finely curves are flattened for a tolerance in metres.
func (h *header) fineness(tol float64) fineness {
	const share = 1e-4
	if unit, _, _ := h.units(); unit > 0 {
		return fineness{tol: tol / float64(unit)}
	}
	return fineness{relative: share}
}

func (h *header) version() string {
	if name, ok := releases[h.release]; ok {
		return name
	}
	return h.release
}
