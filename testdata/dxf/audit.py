#!/usr/bin/env python3
"""Reads drawings with ezdxf and prints, as JSON, what its audit finds in each, the
length of line work by layer, the words, and the unit. The files are the arguments."""
import json
import sys

import ezdxf

from make import Sum

for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    auditor = doc.audit()
    total = Sum(doc)
    total.add(doc.modelspace())
    print(json.dumps({
        "file": name,
        "errors": [e.message for e in auditor.errors],
        "fixes": [e.message for e in auditor.fixes],
        "all": total.all, "seen": total.seen,
        "words": [t.plain_text() for t in doc.modelspace().query("TEXT")],
        "unit": doc.header.get("$INSUNITS", 0),
        "layers": {l.dxf.name: [l.color, l.is_off(), l.is_frozen()] for l in doc.layers},
    }, sort_keys=True))
