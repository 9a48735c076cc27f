#!/usr/bin/env python3
"""Writes arcs.json: arcs given by bulge, with centre, radius and angles from ezdxf.

ezdxf follows the DXF reference: the bulge is the tangent of a quarter of the arc's
angle, negative when the arc runs clockwise from start to end, 0 for a straight
segment and 1 for a half circle.
"""
import json
import random

import ezdxf
from ezdxf.math import bulge_center, bulge_radius, bulge_to_arc

rng = random.Random(5)
cases = []
for _ in range(40):
    a = [rng.randint(-500, 500) / 64, rng.randint(-500, 500) / 64]
    b = [rng.randint(-500, 500) / 64, rng.randint(-500, 500) / 64]
    bulge = rng.choice([1, -1]) * rng.choice([0.05, 0.25, 0.4142, 0.75, 1, 1.5, 3])
    centre, start, end, radius = bulge_to_arc(a, b, bulge)
    assert abs(bulge_radius(a, b, bulge)) - radius < 1e-9
    assert bulge_center(a, b, bulge).isclose(centre)
    cases.append({"a": a, "b": b, "bulge": bulge, "centre": [centre.x, centre.y],
                  "radius_m": radius, "start_rad": start, "end_rad": end})
with open("arcs.json", "w") as f:
    f.write(json.dumps({"versions": {"ezdxf": ezdxf.__version__}, "cases": cases}).replace("}, {", "},\n{") + "\n")
