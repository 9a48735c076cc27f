#!/usr/bin/env python3
"""Writes perspective.json: four-point perspective transforms made by OpenCV.

Run it in this folder without arguments; it wants Debian's python3-opencv. Each case
has four pixels and the four real points (metres, Y up) that they show, the matrix
that cv2.getPerspectiveTransform gives, and some more pixels with the places to which
cv2.perspectiveTransform takes them. The real points are taken through an invented
camera, so that their order is one that a picture can have.

OpenCV multiplies pixels by real coordinates in single precision. Pixels are whole
numbers below 4096 and real coordinates multiples of 1/64 m below 16 m here, so that
these products are exact; otherwise its results are good to about 1e-8 only.
"""
import json
import random

import cv2
import numpy as np

rng = random.Random(11)


def camera():
    """Returns a random homography from metres to pixels that does not mirror as seen."""
    turn = rng.uniform(-3.1, 3.1)
    scale = rng.uniform(20, 160)
    c, s = scale * np.cos(turn), scale * np.sin(turn)
    return np.array([
        [c, -s, rng.uniform(1200, 2800)],
        [-s, -c, rng.uniform(1200, 2800)],
        [rng.uniform(-0.02, 0.02), rng.uniform(-0.02, 0.02), 1],
    ])


def shown(h, p):
    x, y, w = h @ np.array([p[0], p[1], 1])
    assert w > 0
    return [float(round(x / w)), float(round(y / w))]


def corners(i):
    w, h = rng.uniform(2, 14), rng.uniform(2, 10)
    x, y = rng.uniform(-8, 2), rng.uniform(-3, 3)
    if i % 2 == 0:
        ps = [[x, y], [x + w, y], [x + w, y + h], [x, y + h]]
    else:
        ps = [[x, y], [x + w, y + 0.3 * h], [x + 0.8 * w, y + h], [x + 0.1 * w, y + 0.7 * h]]
    return [[round(64 * v) / 64 for v in p] for p in ps]


cases = []
while len(cases) < 40:
    real = corners(len(cases))
    h = camera()
    if np.linalg.det(h) > 0:
        continue  # the camera is under the floor
    pixels = [shown(h, p) for p in real]
    if not all(0 <= v < 4096 for p in pixels for v in p) or not all(abs(v) < 16 for p in real for v in p):
        continue
    m = cv2.getPerspectiveTransform(np.float32(pixels), np.float32(real))
    inside = []
    for _ in range(5):
        k = [rng.random() for _ in range(4)]
        inside.append([sum(a * p[j] for a, p in zip(k, pixels)) / sum(k) for j in (0, 1)])
    places = cv2.perspectiveTransform(np.array([inside]), m)[0]
    cases.append({"pixels": pixels, "real_m": real, "matrix": m.flatten().tolist(),
                  "more_pixels": inside, "more_real_m": places.tolist()})
with open("perspective.json", "w") as f:
    text = json.dumps({"versions": {"opencv": cv2.__version__, "numpy": np.__version__}, "cases": cases})
    f.write(text.replace("}, {", "},\n{") + "\n")
