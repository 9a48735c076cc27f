"""Reads calls.ics and prints its events; run by hand after the file changes.

python3 read_calls.py calls.ics > calls.txt
"""
import sys

import icalendar

with open(sys.argv[1], "rb") as f:
    cal = icalendar.Calendar.from_ical(f.read())
print("icalendar", icalendar.__version__)
for e in cal.walk("VEVENT"):
    end = e.get("dtend")
    print(e["uid"], e["dtstamp"].dt.isoformat(), e["dtstart"].dt.isoformat(), end and end.dt.isoformat())
    for key in ("summary", "description", "location"):
        if key in e:
            print("   ", key, repr(str(e[key])))
