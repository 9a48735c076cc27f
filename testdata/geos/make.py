#!/usr/bin/env python3
"""Makes the reference results in this folder with GEOS, through shapely 1.8.

Run it here without arguments: it writes segments.json and regions.json. With the
word time it reads segments.json instead, and prints the seconds that GEOS takes for
the union and its length, best of the number of runs given (3 if none is).

Coordinates are whole numbers of 1/1024 m, so that overlapping stretches on the grid
and on its diagonals coincide exactly in binary floating point as well.
"""
import json
import random
import sys
import time

import numpy
import shapely
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components
from scipy.spatial import cKDTree
from shapely import geos
from shapely.geometry import LineString, MultiLineString, Polygon
from shapely.ops import unary_union

UNIT = 1 / 1024
WELD = 1e-6  # metres: nodes nearer than this are one
VERSIONS = {"shapely": shapely.__version__, "geos": geos.geos_version_string}


def segment(rng, kind, width, height):
    """One segment in units: anywhere, along the half-metre grid, or on a diagonal."""
    if kind == "anywhere":
        x, y = rng.randrange(width), rng.randrange(height)
        return [x, y, x + rng.randint(-4096, 4096), y + rng.randint(-4096, 4096)]
    x, y = rng.randrange(0, width, 512), rng.randrange(0, height, 512)
    run = rng.randint(1, 12) * 512
    dx, dy = (rng.choice([(1, 0), (0, 1)]) if kind == "grid" else rng.choice([(1, 1), (1, -1)]))
    return [x, y, x + dx * run, y + dy * run]


def line_work(seed, count, width, height):
    """Segments of all kinds, a tenth of them repeated, some of those reversed."""
    rng = random.Random(seed)
    kinds = ["anywhere"] * 6 + ["grid"] * 3 + ["diagonal"]
    out = []
    while len(out) < count:
        if out and rng.random() < 0.1:
            s = rng.choice(out)
            out.append(s if rng.random() < 0.5 else s[2:] + s[:2])
            continue
        s = segment(rng, rng.choice(kinds), width, height)
        if s[:2] != s[2:]:
            out.append(s)
    return out


def lines(segments):
    return MultiLineString([[(a * UNIT, b * UNIT), (c * UNIT, d * UNIT)] for a, b, c, d in segments])


def arranged(segments):
    """Nodes and links of the noded union, after welding, and its length."""
    union = unary_union(lines(segments))
    ends = numpy.array([p for g in union.geoms for p in (g.coords[0], g.coords[-1])])
    assert all(len(g.coords) == 2 for g in union.geoms)
    pairs = cKDTree(ends).query_pairs(WELD, output_type="ndarray")
    one = numpy.ones(len(pairs))
    graph = coo_matrix((one, (pairs[:, 0], pairs[:, 1])), shape=(len(ends),) * 2)
    nodes, label = connected_components(graph, directed=False)
    links = {tuple(sorted(pair)) for pair in label.reshape(-1, 2).tolist() if pair[0] != pair[1]}
    first = numpy.unique(label, return_index=True)[1]
    gap = cKDTree(ends[first]).query(ends[first], k=2)[0][:, 1].min()
    return {"nodes": int(nodes), "links": len(links), "length_m": union.length, "closest_nodes_m": float(gap)}


def star(rng, reach):
    """A simple polygon in units, with corners at growing angles round its middle."""
    x, y = rng.randint(0, reach), rng.randint(0, reach)
    angles = sorted(rng.uniform(0, 2 * numpy.pi) for _ in range(rng.randint(4, 14)))
    return [[round(x + r * numpy.cos(a)), round(y + r * numpy.sin(a))]
            for a in angles for r in [rng.uniform(0.2, 1) * reach]]


def polygon(units):
    return Polygon([(x * UNIT, y * UNIT) for x, y in units])


def region_cases(seed, count):
    rng = random.Random(seed)
    out = []
    while len(out) < count:
        a, b = star(rng, 6000), star(rng, 6000)
        if rng.random() < 0.3:
            shift = 2 * 6000
            b = [[x + shift, y] for x, y in b]
        p, q = polygon(a), polygon(b)
        if not (p.is_valid and q.is_valid):
            continue
        cut = [rng.randint(-3000, 9000) for _ in range(4)]
        line = LineString([(cut[0] * UNIT, cut[1] * UNIT), (cut[2] * UNIT, cut[3] * UNIT)])
        out.append({
            "a": a, "b": b, "cut": cut,
            "area_a_m2": p.area, "centroid_a_m": list(p.centroid.coords[0]),
            "overlap_m2": p.intersection(q).area, "distance_m": p.distance(q),
            "clip_length_m": p.intersection(line).length,
        })
    return out


def write(name, value):
    with open(name, "w") as f:
        text = json.dumps({"versions": VERSIONS, "unit_m": "1/1024", **value})
        f.write(text.replace('"segments": [[', '"segments":\n[[').replace("}, {", "},\n{") + "\n")


def make():
    sizes = {"few": (1, 60, 8192, 8192), "some": (2, 800, 30720, 20480), "many": (3, 10000, 122880, 81920)}
    cases = []
    for name, size in sizes.items():
        segments = line_work(*size)
        result = arranged(segments)
        assert result["closest_nodes_m"] > 5 * WELD, (name, result)
        cases.append({"name": name, **result, "segments": segments})
    write("segments.json", {"weld_m": WELD, "cases": cases})
    write("regions.json", {"cases": region_cases(4, 120)})


def measure(runs):
    with open("segments.json") as f:
        work = lines(json.load(f)["cases"][-1]["segments"])
    best = float("inf")
    for _ in range(runs):
        start = time.perf_counter()
        unary_union(work).length
        best = min(best, time.perf_counter() - start)
    print(best)


if __name__ == "__main__":
    if sys.argv[1:2] == ["time"]:
        measure(int((sys.argv[2:] or ["3"])[0]))
    else:
        make()
