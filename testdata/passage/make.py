"""Widths of ways through seeded rooms on a 5 mm grid: for package passage.

Every grid point knows its true distance to every wall and solid (segments and arcs by
their formulas); the width of a way is the largest w such that points at least w/2 from
everything join both ends, by halving, joined to eight neighbours (scipy.ndimage.label).
"""
import json, math, random, sys
import numpy as np, scipy
from scipy import ndimage

STEP = 0.005


def edges(path):
    v = path["corners"]
    n = len(v) if path["closed"] else len(v) - 1
    return [(v[i][:2], v[(i + 1) % len(v)][:2], v[i][2]) for i in range(n)]


def distance(X, Y, edge):
    (ax, ay), (bx, by), bulge = edge
    dx, dy = bx - ax, by - ay
    if bulge == 0:
        t = np.clip(((X - ax) * dx + (Y - ay) * dy) / (dx * dx + dy * dy), 0, 1)
        return np.hypot(X - ax - t * dx, Y - ay - t * dy)
    k = (1 - bulge * bulge) / (4 * bulge)
    cx, cy = (ax + bx) / 2 - dy * k, (ay + by) / 2 + dx * k
    r = math.hypot(ax - cx, ay - cy)
    start, sweep = math.atan2(ay - cy, ax - cx), 4 * math.atan(bulge)
    turned = np.mod((np.arctan2(Y - cy, X - cx) - start) * np.sign(bulge), 2 * math.pi)
    ends = np.minimum(np.hypot(X - ax, Y - ay), np.hypot(X - bx, Y - by))
    return np.where(turned <= abs(sweep), np.abs(np.hypot(X - cx, Y - cy) - r), ends)


def width(room):
    xs = [c[0] for c in room["outline"]["corners"]]
    ys = [c[1] for c in room["outline"]["corners"]]
    x = np.arange(min(xs), max(xs) + STEP, STEP)
    y = np.arange(min(ys), max(ys) + STEP, STEP)
    X, Y = np.meshgrid(x, y)
    clear = np.full(X.shape, np.inf)
    for path in [room["outline"]] + room["solids"]:
        for e in edges(path):
            np.minimum(clear, distance(X, Y, e), out=clear)
    cell = lambda p: (int(round((p[1] - y[0]) / STEP)), int(round((p[0] - x[0]) / STEP)))
    a, b = cell(room["a"]), cell(room["b"])
    low, high = 0.0, 2 * min(clear[a], clear[b])
    while high - low > 1e-4:
        w = (low + high) / 2
        label, _ = ndimage.label(clear >= w / 2, np.ones((3, 3)))
        if label[a] and label[a] == label[b]:
            low = w
        else:
            high = w
    return 0.0 if low < 4 * STEP else low


def rectangle(x, y, w, h, turn):
    c, s = math.cos(turn), math.sin(turn)
    return {"closed": True, "corners": [[x + c * u - s * v, y + s * u + c * v, 0] for u, v in [(0, 0), (w, 0), (w, h), (0, h)]]}


def circle(x, y, r):
    return {"closed": True, "corners": [[x + r, y, 1], [x - r, y, 1]]}


def line(x, y, length, turn, bulge):
    return {"closed": False, "corners": [[x, y, bulge], [x + length * math.cos(turn), y + length * math.sin(turn), 0]]}


def room(seed):
    r = random.Random(seed)
    w, h = r.uniform(5, 7), r.uniform(4, 5)
    shapes = [
        [[0, 0, 0], [w, 0, 0], [w, h, 0], [0, h, 0]],
        [[0, 0, 0], [w, 0, 0], [w, h * .6, 0], [w * .7, h * .6, 0], [w * .7, h, 0], [0, h, 0]],
        [[0, 0, 0], [w, 0.2, 0], [w - .3, h, 0.25], [0.2, h - .2, 0]],
    ]
    out = {"outline": {"closed": True, "corners": shapes[seed % 3]}, "solids": [], "a": [0.6, 0.6], "b": [w - 0.6, 0.8]}
    X, Y = np.array([[out["a"][0], out["b"][0]]]), np.array([[out["a"][1], out["b"][1]]])
    while len(out["solids"]) < 12:
        x, y, turn = r.uniform(0, w), r.uniform(0, h), r.uniform(0, 7)
        shape = r.choice([
            circle(x, y, r.uniform(.1, .5)), rectangle(x, y, r.uniform(.2, 1.4), r.uniform(.1, .8), turn),
            line(x, y, r.uniform(.5, 2.4), turn, 0), line(x, y, r.uniform(.5, 2), turn, r.uniform(-1.2, 1.2)),
        ])
        if min(float(distance(X, Y, e).min()) for e in edges(shape)) > 0.35:
            out["solids"].append(shape)
    out["width"] = round(width(out), 5)
    return out


rooms = [room(seed) for seed in range(30)]
json.dump({"made by": f"numpy {np.__version__}, scipy {scipy.__version__}", "step": STEP, "rooms": rooms},
          open("rooms.json", "w"), indent=None, separators=(",", ":"))
print([r["width"] for r in rooms], file=sys.stderr)
