"""Rooms and plans by a seeded generator, and the best placement of each by exhaustive search.

Independent of the program: for every half degree all shifts on a 25 mm grid are scored at
once by FFT correlation (scipy) of the sampled lines and areas with the raster of the free
floor; the best of them are refined with exact lengths and areas from GEOS (shapely).

    python3 exhaustive.py            writes cases.json beside this script
    python3 exhaustive.py 3 7        does only these seeds again
"""
import json
import math
import os
import random
import sys

import numpy as np
import scipy
import scipy.fft
import shapely
import shapely.geos
import shapely.vectorized
from shapely.geometry import LineString, Polygon
from shapely.prepared import prep

CELL = 0.025          # metres
STEP = 0.5            # degrees
TOUCH = 1e-4          # metres by which a line may overshoot a wall and still touch it
HERE = os.path.dirname(os.path.abspath(__file__))

ROOMS = {
    "rectangle": [(0, 0), (11.2, 0), (11.2, 8.3), (0, 8.3)],
    "square": [(0, 0), (9.1, 0), (9.1, 9.1), (0, 9.1)],
    "long": [(0, 0), (15.4, 0), (15.4, 6.6), (0, 6.6)],
    "slanted": [(0, 0), (12.1, 0.4), (11.3, 8.9), (-0.6, 8.1)],
    "L": [(0, 0), (12.5, 0), (12.5, 5.7), (6.9, 5.7), (6.9, 10.2), (0, 10.2)],
    "T": [(0, 4.1), (3.8, 4.1), (3.8, 0), (9.9, 0), (9.9, 4.1), (13.7, 4.1), (13.7, 9.6), (0, 9.6)],
    "hexagon": [(2.2, 0), (9.4, 0.3), (12.0, 4.2), (9.1, 8.8), (2.6, 9.3), (-0.3, 4.9)],
}

# seed: room, columns, areas to keep clear, elements, width and depth of the plan, essential ones, angles, front walls, what area counts
CASES = {
    1: ("rectangle", 0, 0, 5, 8.0, 6.0, 2, "any", [], 0),
    2: ("rectangle", 0, 0, 20, 12.5, 9.0, 0, "any", [], 0),
    3: ("L", 0, 1, 30, 11.0, 8.5, 0, "any", [], 0),
    4: ("T", 0, 0, 40, 12.0, 9.0, 0, "any", [], 1),
    5: ("square", 2, 0, 50, 11.0, 8.0, 0, "any", [], 0),
    6: ("L", 2, 2, 60, 11.5, 9.0, 0, "any", [], 0.5),
    7: ("slanted", 1, 1, 25, 13.0, 9.5, 0, "any", [], 0),
    8: ("T", 2, 1, 100, 12.5, 9.5, 0, "any", [], 0),
    9: ("rectangle", 2, 1, 30, 11.5, 8.6, 4, "any", [], 1),
    10: ("L", 1, 1, 50, 11.0, 8.0, 3, "any", [], 0),
    11: ("long", 1, 1, 40, 13.0, 8.0, 0, "parallel", [0], 1),
    12: ("hexagon", 1, 0, 30, 11.0, 8.5, 0, "steps", [], 0),
    13: ("rectangle", 3, 2, 100, 13.5, 10.0, 0, "any", [0, 1], 1),
    14: ("hexagon", 0, 1, 70, 12.5, 9.0, 2, "any", [], 0),
}


def rectangle(cx, cy, w, d, turn):
    c, s = math.cos(turn), math.sin(turn)
    return [(cx + c * x - s * y, cy + s * x + c * y)
            for x, y in ((-w / 2, -d / 2), (w / 2, -d / 2), (w / 2, d / 2), (-w / 2, d / 2))]


def make(seed):
    room, columns, clears, count, width, depth, essential, angles, fronts, area = CASES[seed]
    rnd = random.Random(seed)
    outline = ROOMS[room]
    shape = Polygon(outline)
    x0, y0, x1, y1 = shape.bounds
    obstacles = []
    while len(obstacles) < columns:
        x, y = rnd.uniform(x0 + 1, x1 - 1), rnd.uniform(y0 + 1, y1 - 1)
        col = rectangle(x, y, rnd.uniform(0.25, 0.5), rnd.uniform(0.25, 0.5), 0)
        if shape.contains(Polygon(col)) and shape.exterior.distance(Polygon(col)) > 0.6:
            obstacles.append(col)
    keep = []
    while len(keep) < clears:
        i = rnd.randrange(len(outline))
        a, b = outline[i], outline[(i + 1) % len(outline)]
        t, turn = rnd.uniform(0.2, 0.8), math.atan2(b[1] - a[1], b[0] - a[0])
        keep.append(rectangle(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), 1.1, 1.8, turn))
    elements = []
    for i in range(count):
        small = i < essential
        spread = 0.25 if small else 0.5
        x, y = rnd.uniform(-spread, spread) * width, rnd.uniform(0.5 - spread, 0.5 + spread) * depth
        turn = rnd.choice([0, 0, 0, math.pi / 2, math.pi / 2, rnd.uniform(0, math.pi)])
        if i == essential + 1:
            x, y, turn = 0, depth, 0  # the back wall, all across
            points, closed = [(-width / 2, depth), (width / 2, depth)], False
        elif i == essential + 2:
            points, closed = [(-width / 2, 0), (-width / 2, depth)], False
        elif rnd.random() < 0.4:
            points, closed = rectangle(x, y, rnd.uniform(0.6, 2.6), rnd.uniform(0.5, 1.8), turn), True
        else:
            n, at, points, closed = rnd.randint(1, 3), (x, y), [(x, y)], False
            for _ in range(n):
                step = rnd.uniform(0.4, 2.2)
                at = (at[0] + step * math.cos(turn), at[1] + step * math.sin(turn))
                points.append(at)
                turn += rnd.choice([-1, 1]) * math.pi / 2
        elements.append({"id": f"e{i + 1}", "essential": small, "weight": 4 if small else rnd.choice([1, 2, 2, 3]),
                         "closed": closed, "points": [[round(u, 4), round(v, 4)] for u, v in points]})
    return {"seed": seed, "room": room, "outline": outline, "obstacles": obstacles, "clears": keep, "elements": elements,
            "angles": angles, "step": 15, "fronts": fronts, "area": area}


class Case:
    def __init__(self, case):
        free = Polygon(case["outline"]).buffer(TOUCH, join_style=2)
        for p in case["obstacles"] + case["clears"]:
            free = free.difference(Polygon(p).buffer(TOUCH, join_style=2))
        self.free = free
        self.prepared = prep(free)
        a, b, w, must = [], [], [], []
        self.polygons, self.pw, self.pmust = [], [], []
        for e in case["elements"]:
            pts = [tuple(p) for p in e["points"]]
            ring = pts + pts[:1] if e["closed"] else pts
            for p, q in zip(ring, ring[1:]):
                a.append(p), b.append(q), w.append(e["weight"]), must.append(e["essential"])
            if e["closed"]:
                self.polygons.append(np.array(pts))
                self.pw.append(e["weight"])
                self.pmust.append(e["essential"])
        self.a, self.b, self.w, self.must = np.array(a), np.array(b), np.array(w, float), np.array(must)
        self.pw, self.pmust = np.array(self.pw, float), np.array(self.pmust, bool)
        self.lengths = np.hypot(*(self.b - self.a).T)
        self.areas = np.array([Polygon(p).area for p in self.polygons])
        self.total = float((self.w * self.lengths).sum())
        self.total_area = float((self.pw * self.areas).sum())
        self.ac = case["area"] if self.total_area > 0 else 0

    def score(self, turn, x, y):
        """The score by GEOS; minus what is outside when an essential one does not fit."""
        c, s = math.cos(turn), math.sin(turn)
        m, shift = np.array([[c, s], [-s, c]]), np.array([x, y])
        kept = self.inside(map(LineString, np.stack([self.a @ m + shift, self.b @ m + shift], axis=1)), "length")
        lost = float((self.lengths - kept)[self.must].sum())
        score = float((self.w * kept).sum()) / self.total
        if self.polygons and (self.ac or self.pmust.any()):
            ka = self.inside((Polygon(p @ m + shift) for p in self.polygons), "area")
            lost += float((self.areas - ka)[self.pmust].sum())
            if self.ac:
                score = (score + self.ac * float((self.pw * ka).sum()) / self.total_area) / (1 + self.ac)
        return -lost if lost > 1e-6 else score

    def inside(self, shapes, measure):
        return np.array([getattr(s if self.prepared.contains(s) else s.intersection(self.free), measure) for s in shapes])

    def samples(self):
        """Points that stand for lines and areas, their weights, and those of essential ones."""
        pts, w, must = [], [], []
        for a, b, weight, n, m in zip(self.a, self.b, self.w, self.lengths, self.must):
            k = max(1, int(math.ceil(n / (CELL / 3))))
            t = (np.arange(k) + 0.5)[:, None] / k
            pts.append(a + t * (b - a))
            w.append(np.full(k, weight * n / k / self.total / (1 + self.ac)))
            must.append(np.full(k, n / k if m else 0.0))
        for p, weight, area, m in zip(self.polygons, self.pw, self.areas, self.pmust):
            if not (self.ac or m):
                continue
            lo, hi = p.min(0), p.max(0)
            h = CELL / 1.5
            gx, gy = np.meshgrid(np.arange(lo[0] + h / 2, hi[0], h), np.arange(lo[1] + h / 2, hi[1], h))
            inside = shapely.vectorized.contains(Polygon(p), gx.ravel(), gy.ravel())
            q = np.stack([gx.ravel()[inside], gy.ravel()[inside]], axis=1)
            pts.append(q)
            each = area / len(q)
            w.append(np.full(len(q), self.ac * weight * each / self.total_area / (1 + self.ac) if self.ac else 0.0))
            must.append(np.full(len(q), each if m else 0.0))
        return np.concatenate(pts), np.concatenate(w), np.concatenate(must)


def turns(case):
    """All turns that are looked at, in degrees: the way downstage points to a front wall."""
    out = case["outline"]
    walls = []
    for p, q in zip(out, out[1:] + out[:1]):
        walls.append(math.degrees(math.atan2(q[1] - p[1], q[0] - p[0])))  # downstage is to the right of it: outward
    allowed = [walls[i] for i in case["fronts"]] or walls
    if case["angles"] == "parallel":
        return sorted(set(round(t % 360, 9) for t in allowed))
    step = case["step"] if case["angles"] == "steps" else STEP
    every = np.arange(0, 360, step)
    if not case["fronts"]:
        return list(every)
    near = lambda t: any(abs((t - w + 180) % 360 - 180) <= 45 + 1e-9 for w in allowed)
    return [t for t in every if near(t)]


def search(case):
    c = Case(case)
    pts, w, must = c.samples()
    x0, y0, x1, y1 = c.free.bounds
    nx, ny = int((x1 - x0) / CELL) + 2, int((y1 - y0) / CELL) + 2
    gx, gy = np.meshgrid(x0 + (np.arange(nx) + 0.5) * CELL, y0 + (np.arange(ny) + 0.5) * CELL)
    mask = shapely.vectorized.contains(c.free, gx.ravel(), gy.ravel()).reshape(ny, nx).astype(np.float32)
    reach = 2 * np.hypot(*(pts - (pts.min(0) + pts.max(0)) / 2).T).max()
    px = int(reach / CELL) + 4
    size = (scipy.fft.next_fast_len(ny + px, True), scipy.fft.next_fast_len(nx + px, True))
    fmask = scipy.fft.rfft2(mask, size)
    total_must = must.sum()

    def correlate(q, weights, lo):
        i = ((q - lo) / CELL).astype(int)
        img = np.zeros((px, px), np.float32)
        np.add.at(img, (i[:, 1], i[:, 0]), weights)
        return scipy.fft.irfft2(fmask * np.conj(scipy.fft.rfft2(img, size)), size)

    found = []
    for deg in turns(case):
        t = math.radians(deg)
        q = pts @ np.array([[math.cos(t), math.sin(t)], [-math.sin(t), math.cos(t)]])
        lo = q.min(0)
        value = correlate(q, w, lo)
        if total_must:
            value = np.where(correlate(q, must, lo) >= total_must * 0.97, value, value - 2)
        for k in np.argsort(value, axis=None)[-1:]:
            j, i = np.unravel_index(k, value.shape)
            j, i = (j - size[0] if j > ny else j), (i - size[1] if i > nx else i)
            found.append((float(value.flat[k]), t, x0 + i * CELL - lo[0], y0 + j * CELL - lo[1]))
    found.sort(reverse=True)
    best, starts = (-9, 0, 0, 0), found[:4]
    for f in found[4:]:  # and the best of every other neighbourhood of turns
        if all(abs((f[1] - s[1] + math.pi) % (2 * math.pi) - math.pi) > math.radians(3) for s in starts) and f[0] > found[0][0] - 0.03:
            starts.append(f)
    fixed = case["angles"] != "any"
    for _, t, x, y in starts[:10]:
        best = max(best, refine(c, t, x, y, fixed))
    return best


def refine(c, t, x, y, fixed):
    """Compass search with random directions, from steps of a cell down to 0.05 mm."""
    rnd = random.Random(1)
    at = (c.score(t, x, y), t, x, y)
    size, angle, misses = 0.03, math.radians(0.4), 0
    while size > 5e-5:
        if misses < 6:
            k = misses // 2
            d = [0.0, 0.0, 0.0]
            d[k] = 1 if misses % 2 else -1
        else:
            d = [rnd.gauss(0, 1) for _ in range(3)]
        if fixed:
            d[0] = 0
        new = (at[1] + d[0] * angle, at[2] + d[1] * size, at[3] + d[2] * size)
        s = c.score(*new)
        if s > at[0] + 1e-12:
            at, misses = (s, *new), 0
        else:
            misses += 1
            if misses >= 12:
                size, angle, misses = size / 2, angle / 2, 0
    return at


def main():
    path = os.path.join(HERE, "cases.json")
    cases = {}
    if os.path.exists(path):
        cases = {c["seed"]: c for c in json.load(open(path))["cases"]}
    for seed in [int(a) for a in sys.argv[1:]] or list(CASES):
        case = make(seed)
        s, t, x, y = search(case)
        case["best"] = {"score": s, "turn_rad": t % (2 * math.pi), "x_m": x, "y_m": y}
        print(seed, case["room"], len(case["elements"]), case["best"], flush=True)
        cases[seed] = case
        versions = {"numpy": np.__version__, "scipy": scipy.__version__, "shapely": shapely.__version__, "geos": ".".join(map(str, shapely.geos.geos_version))}
        json.dump({"made with": versions, "cases": [cases[k] for k in sorted(cases)]}, open(path, "w"), indent=None)


main()
