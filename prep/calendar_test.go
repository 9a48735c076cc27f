package prep

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	ics "github.com/arran4/golang-ical"
)

var update = flag.Bool("update", false, "write the golden files anew")

// calls returns a plan whose texts hold everything that RFC 5545 has escaped.
func calls() (*Production, CrewPlan) {
	p := small()
	p.Settings.Title = "The Lamp Room; a musical, in two acts\\"
	p.Tasks[0].Name = "Clean, mop; and dry – twice, since this is a line that has to be folded when it is written"
	return p, Schedule(p, TaskQuantities{"room": {Marks: 100, Tape: 200}}, time.Time{})
}

// The golden file has been read back by Debian's python3-icalendar 4.0.3 with
// the script beside it, which prints the events that are kept in calls.txt.
func TestCalendarIsAsItWasChecked(t *testing.T) {
	p, plan := calls()
	var buf bytes.Buffer
	if err := WriteCalendar(&buf, p, plan, "", monday); err != nil {
		t.Fatal(err)
	}
	golden := filepath.Join("testdata", "calls.ics")
	if *update {
		if err := os.WriteFile(golden, buf.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(buf.Bytes(), want) {
		t.Errorf("calendar has changed; check it anew with the script beside %s:\n%s", golden, buf.String())
	}
}

func TestCalendarKeepsToTheFormat(t *testing.T) {
	p, plan := calls()
	var buf bytes.Buffer
	if err := WriteCalendar(&buf, p, plan, "", monday); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.SplitAfter(buf.String(), "\n") {
		if line != "" && !strings.HasSuffix(line, "\r\n") {
			t.Errorf("line %q does not end in CR LF", line)
		}
		// RFC 5545, section 3.1: lines should not be longer than 75 octets.
		if len(strings.TrimRight(line, "\r\n")) > 75 {
			t.Errorf("line of %d octets: %q", len(line), line)
		}
	}
}

func TestCalendarOfOnePersonHoldsTheirCallsAlone(t *testing.T) {
	p, plan := calls()
	var buf bytes.Buffer
	if err := WriteCalendar(&buf, p, plan, "ada", monday); err != nil {
		t.Fatal(err)
	}
	cal, err := ics.ParseCalendar(&buf)
	if err != nil {
		t.Fatal(err)
	}
	want := 1 // the first rehearsal
	for _, c := range plan.Calls() {
		if c.Person == "ada" {
			want++
		}
	}
	if n := len(cal.Events()); n != want || want < 2 {
		t.Errorf("%d events, want %d", n, want)
	}
	for _, e := range cal.Events() {
		if s := e.GetProperty(ics.ComponentPropertySummary).Value; strings.Contains(s, "Ben") {
			t.Errorf("Ada's calendar holds %q", s)
		}
	}
}

func TestNamesWithControlCharactersStayReadable(t *testing.T) {
	p, _ := calls()
	p.Settings.Title = "A\x00B\r\nBEGIN:VEVENT\xff"
	var buf bytes.Buffer
	if err := WriteCalendar(&buf, p, CrewPlan{}, "", monday); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(buf.String(), "\nBEGIN:VEVENT"); n != 1 {
		t.Errorf("%d events, want the rehearsal alone:\n%s", n, buf.String())
	}
}
