"""Rooms with redundant measurements, solved by scipy.optimize.least_squares.

Each room is a true shape whose walls, diagonals and right angles are "measured"
with normal errors (seeded); in some one measurement is a blunder. The solution is
that of the weighted residuals alone: no code of the program is used.

    python3 make.py > rooms.json
"""
import json
import sys

import numpy
import scipy
from scipy.optimize import least_squares

FOOT = 0.3048


def measured(shape, seed, diagonals, squares=(), missing=(), rises=None, points=(), blunder=None, turns=True):
    """The measurements of a shape: a list of corners, walked with the room on the left."""
    rng = numpy.random.default_rng(seed)
    sigma, angle = 0.003, 0.0018
    places = numpy.array(list(shape) + list(points), float)
    n = len(shape)
    walls = []
    for i in range(n):
        a, b, c = places[i], places[(i + 1) % n], places[(i + 2) % n]
        turn = numpy.degrees(numpy.arctan2(numpy.cross(b - a, c - b), numpy.dot(b - a, c - b)))
        length = 0 if i in missing else float(numpy.linalg.norm(b - a) + rng.normal(0, sigma))
        walls.append({"length_m": round(length, 4), "turn_deg": float(round(turn / 5) * 5) if turns else 0,
                      "square": i in squares, "rise_m": (rises or {}).get(i, 0)})
    across = [{"from": a, "to": b, "length_m": round(float(numpy.linalg.norm(places[b] - places[a]) + rng.normal(0, sigma)), 4)}
              for a, b in diagonals]
    if blunder:
        where, i, by = blunder
        (walls if where == "wall" else across)[i]["length_m"] += by
    return {"walls": walls, "points": len(points), "diagonals": across, "sigma_m": sigma, "square_sigma_rad": angle,
            "truth": places.tolist()}


def solve(room):
    walls, n = room["walls"], len(room["walls"])
    truth = numpy.array(room["truth"])
    total = len(truth)
    turn = -numpy.arctan2(*(truth[1] - truth[0])[::-1])
    spin = numpy.array([[numpy.cos(turn), -numpy.sin(turn)], [numpy.sin(turn), numpy.cos(turn)]])
    start = (truth - truth[0]) @ spin.T

    def places(x):
        return numpy.vstack([[0, 0], [x[0], 0], x[1:].reshape(total - 2, 2)])

    def residuals(x):
        p, out = places(x), []
        for i, w in enumerate(walls):
            if w["length_m"]:
                out.append((numpy.linalg.norm(p[(i + 1) % n] - p[i]) - w["length_m"]) / room["sigma_m"])
        for d in room["diagonals"]:
            out.append((numpy.linalg.norm(p[d["to"]] - p[d["from"]]) - d["length_m"]) / room["sigma_m"])
        for i, w in enumerate(walls):
            if w["square"]:
                u, v = p[(i + 1) % n] - p[i], p[(i + 2) % n] - p[(i + 1) % n]
                angle = numpy.arctan2(numpy.cross(u, v), numpy.dot(u, v))
                side = -1 if w["turn_deg"] < 0 else 1
                out.append((angle - side * numpy.pi / 2) / room["square_sigma_rad"])
        return numpy.array(out)

    first = numpy.concatenate([[start[1][0]], start[2:].ravel()])
    best = least_squares(residuals, first, method="lm", xtol=3e-16, ftol=3e-16, gtol=3e-16, max_nfev=100000)
    best = least_squares(residuals, best.x, jac="3-point", method="trf", xtol=3e-16, ftol=3e-16, gtol=3e-16, max_nfev=1000)
    hat = best.jac @ numpy.linalg.inv(best.jac.T @ best.jac) @ best.jac.T
    return {"places": places(best.x).tolist(), "weighted_residuals": residuals(best.x).tolist(),
            "redundancy": (1 - numpy.diag(hat)).tolist()}


ROOMS = {
    "a hall out of square, both diagonals": measured(
        [(0, 0), (14.2, 0), (14.35, 9.1), (-.1, 9.24)], 1, [(0, 2), (1, 3)]),
    "an L with five diagonals": measured(
        [(0, 0), (12.1, 0), (12, 5.05), (6.9, 5), (6.95, 9.8), (.05, 9.75)], 2, [(0, 2), (0, 3), (1, 3), (3, 5), (0, 4), (2, 4)]),
    "a chapel with a curved end": measured(
        [(0, 0), (11, .1), (13.4, 3.2), (11.1, 6.6), (.1, 6.5)], 3, [(0, 2), (0, 3), (1, 3), (1, 4), (2, 4)], rises={4: 1.1, 1: .2}),
    "right angles where they were tried, one wall behind the seating": measured(
        [(0, 0), (10, 0), (10, 4), (6.2, 4), (6.2, 8.1), (0, 8.1)], 4, [(0, 2), (5, 3)], squares=(0, 1, 2, 3, 4), missing=(4,)),
    "one diagonal a foot too long": measured(
        [(0, 0), (9.2, -.3), (13, 3.9), (11.2, 8.8), (3.1, 9.9), (-1.4, 5.2)], 5,
        [(0, 2), (0, 3), (0, 4), (1, 3), (1, 4), (1, 5), (2, 4), (2, 5), (3, 5)], blunder=("diagonal", 4, FOOT)),
    "one wall a foot too short": measured(
        [(0, 0), (15.5, 0), (15.5, 11 - .3 * 15.2 / 11), (.3, 11)], 6, [(0, 2), (1, 3)], squares=(0, 2), blunder=("wall", 1, -FOOT)),
    "a column found from four corners": measured(
        [(0, 0), (12, .3), (11.8, 8), (-.2, 7.9)], 7, [(0, 2), (1, 3), (0, 4), (1, 4), (2, 4), (3, 4)], points=[(4.1, 3.3)]),
    "a T whose turns nobody wrote down": measured(
        [(0, 0), (4.1, 0), (4, 6), (8.2, 6.1), (8.1, 10), (-3.9, 9.9), (-4, 6), (.1, 6.1)], 8,
        [(0, 2), (1, 7), (0, 3), (3, 5), (4, 6), (1, 5), (0, 4), (2, 7), (2, 6), (3, 7)], turns=False),
}

if __name__ == "__main__":
    json.dump({"scipy": scipy.__version__, "numpy": numpy.__version__,
               "rooms": [dict(name=name, **room, solved=solve(room)) for name, room in ROOMS.items()]}, sys.stdout, indent=1)
