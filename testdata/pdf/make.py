#!/usr/bin/env python3
"""Draws the ground plan of a show that does not exist, for tests and to try imports on.

    python3 make.py

writes, beside itself,
    plan.pdf        the plan at 1/4" = 1'-0" with layers, as a drawing program exports it
    plan.csv        what is on it: metres on the floor, from the datum
    plan-cairo.pdf  the same page written by another program (cairo, with pdftocairo)
    plan-mupdf.pdf  and by a third one (MuPDF, with mutool)
    scan.pdf        the same page as a picture only
"""
import csv
import math
import os
import subprocess
import zlib

FOOT = 0.3048
POINTS_PER_FOOT = 18.0  # a quarter of an inch
PAGE = (1728.0, 1296.0)  # 24 x 18 in
DATUM = (864.0, 520.0)  # centre line and baseline, on the paper
KAPPA = 4 / 3 * math.tan(math.pi / 8)

here = os.path.dirname(os.path.abspath(__file__))
truth = []
content = []
layer_now = ""


def paper(p):
    return (DATUM[0] + p[0] * POINTS_PER_FOOT, DATUM[1] + p[1] * POINTS_PER_FOOT)


def at(p):
    return "%.3f %.3f" % paper(p)


def note(kind, *numbers):
    truth.append([layer_now, kind] + ["%.6f" % (n * FOOT) for n in numbers])


class layer:
    """All that is drawn inside the with block stands on the layer."""

    names = []

    def __init__(self, name, width, colour=(0, 0, 0), dash=""):
        if name not in layer.names:
            layer.names.append(name)
        self.name = name
        self.pen = "%.2f w %g %g %g RG [%s] 0 d" % (width, *colour, dash)

    def __enter__(self):
        global layer_now
        layer_now = self.name
        content.append("/OC /L%d BDC q %s" % (layer.names.index(self.name), self.pen))

    def __exit__(self, *_):
        content.append("Q EMC")


def line(a, b):
    content.append("%s m %s l S" % (at(a), at(b)))
    note("line", *a, *b)


def polygon(points, paint="s"):
    content.append(" ".join("%s %s" % (at(p), "l" if i else "m") for i, p in enumerate(points)) + " " + paint)
    for a, b in zip(points, points[1:] + points[:1]):
        note("line", *a, *b)


def box(x, y, w, h):
    polygon([(x, y), (x + w, y), (x + w, y + h), (x, y + h)])


def curves(centre, r, start, sweep):
    """Bezier curves of at most a quarter turn each, as drawing programs write arcs."""
    parts = math.ceil(abs(sweep) / (math.pi / 2) - 1e-9)
    step = sweep / parts
    k = 4 / 3 * math.tan(step / 4) * r
    on = lambda a: (centre[0] + r * math.cos(a), centre[1] + r * math.sin(a))
    out = ["%s m" % at(on(start))]
    for i in range(parts):
        a, b = start + i * step, start + (i + 1) * step
        p, q = on(a), on(b)
        c = (p[0] - k * math.sin(a), p[1] + k * math.cos(a))
        d = (q[0] + k * math.sin(b), q[1] - k * math.cos(b))
        out.append("%s %s %s c" % (at(c), at(d), at(q)))
    return " ".join(out)


def arc(centre, r, start, sweep):
    content.append(curves(centre, r, start, sweep) + " S")
    note("arc", *centre, r)
    truth[-1] += ["%.6f" % start, "%.6f" % sweep]


def circle(centre, r):
    content.append(curves(centre, r, 0, 2 * math.pi) + " s")
    note("circle", *centre, r)


def words(p, size, text, turned=False):
    escaped = text.replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)")
    x, y = paper(p)
    content.append("BT /F %g Tf %s %.3f %.3f Tm (%s) Tj ET" % (size, "0 1 -1 0" if turned else "1 0 0 1", x, y, escaped))


def feet(n):
    whole = int(n + 1e-9)
    return "%d'-%g\"" % (whole, round((n - whole) * 12, 2))


def across(x1, x2, y, reach):
    """A dimension between two places, drawn at y, with lines up to reach."""
    line((x1, y), (x2, y))
    for x in (x1, x2):
        line((x, y - 0.5), (x, reach))
        line((x - 0.25, y - 0.25), (x + 0.25, y + 0.25))
    words(((x1 + x2) / 2 - 1, y + 0.25), 7, feet(x2 - x1))


def upwards(y1, y2, x, reach):
    line((x, y1), (x, y2))
    for y in (y1, y2):
        line((x - 0.5, y), (reach, y))
        line((x - 0.25, y - 0.25), (x + 0.25, y + 0.25))
    words((x - 0.25, (y1 + y2) / 2 - 1), 7, feet(y2 - y1), turned=True)


def hatch(points, gap):
    """Lines at 45 degrees, clipped to the outline by the file, not by this script."""
    content.append("q " + " ".join("%s %s" % (at(p), "l" if i else "m") for i, p in enumerate(points)) + " h W n")
    x1, x2 = min(p[0] for p in points), max(p[0] for p in points)
    y1, y2 = min(p[1] for p in points), max(p[1] for p in points)
    x = x1 - (y2 - y1)
    while x < x2:
        content.append("%s m %s l S" % (at((x, y1)), at((x + y2 - y1, y2))))
        x += gap
    content.append("Q")


def house():
    with layer("HOUSE", 1.4):
        for side in (-1, 1):
            polygon([(side * 18, 0), (side * 24, 0), (side * 24, -1.5), (side * 18, -1.5)])
            line((side * 30, 1), (side * 30, 28))
        line((-30, 28), (30, 28))
        arc((0, 30), 36, math.radians(240), math.radians(60))  # the edge of the stage
    with layer("CENTRE LINE", 0.5, (0.8, 0, 0), "18 4 4 4"):
        line((0, -7), (0, 27))
    with layer("CENTRE LINE", 0.5, (0.8, 0, 0)):
        line((-24, 0), (24, 0))
        words((0.3, 25.5), 8, "CL")
        words((18.5, 0.3), 8, "PLASTER LINE")


def wall(a, b, thickness=0.5):
    n = math.hypot(b[0] - a[0], b[1] - a[1])
    u = ((b[0] - a[0]) / n, (b[1] - a[1]) / n)
    off = (-u[1] * thickness, u[0] * thickness)
    polygon([a, b, (b[0] + off[0], b[1] + off[1]), (a[0] + off[0], a[1] + off[1])])


def door(hinge, width, start, turn):
    leaf = math.radians(start + turn)
    line(hinge, (hinge[0] + width * math.cos(leaf), hinge[1] + width * math.sin(leaf)))
    arc(hinge, width, math.radians(start), math.radians(turn))


def room():
    with layer("SET WALLS", 1.0):
        wall((-16, 3), (-14.5, 10))
        wall((-14, 12.5), (-12.5, 19))
        wall((-12.5, 19), (-4, 19))
        wall((-1, 19), (6, 19))
        wall((6, 19), (12.5, 19.0))
        wall((12.5, 19), (14, 12.5))
        wall((14.5, 10), (16, 3))
        wall((-10, 22), (10, 22), 0.25)
    with layer("SET DOORS", 0.7):
        door((-14.5, 10), 2.5, 75, -70)
        door((-4, 19), 3, 0, 80)
        door((14.5, 10), 2.5, 105, 75)
    with layer("SET PLATFORMS", 0.9, (0, 0, 0.6)):
        polygon([(3, 13), (12, 13), (12, 18.5), (3, 18.5)])
        for i in range(4):
            box(3 - 0.9 * (i + 1), 14, 0.9, 3)
        words((6.5, 15.5), 9, "+1'-6\"")
        for i in range(8):  # an escape stair behind the wall
            box(-12 + 0.9 * i, 19.75, 0.9, 2)
        circle((-7, 9), 4.5)  # a round step in front of the window
        circle((-7, 9), 3.5)
    with layer("HATCH", 0.2, (0.5, 0.5, 0.5)):
        hatch([(3, 13), (12, 13), (12, 18.5), (3, 18.5)], 0.8)
    with layer("SET PLATFORMS", 0.6, (0, 0, 0.6), "6 3"):
        box(-2, 5, 4, 4)  # a trap
        words((-1, 6.6), 8, "TRAP")


def furniture():
    with layer("FURNITURE", 0.5, (0, 0.4, 0)):
        circle((-7, 9), 1.5)
        for i in range(5):
            a = math.radians(90 + 72 * i)
            circle((-7 + 2.4 * math.cos(a), 9 + 2.4 * math.sin(a)), 0.5)
        box(5, 5, 6, 2.75)
        box(5.25, 5.25, 5.5, 2)
        box(9, 15.5, 2.5, 1.25)
        words((6.6, 6.1), 7, "SETTEE")
        words((-8, 8.9), 7, "TABLE")
        for i in range(6):
            box(-11 + 1.2 * i, 17.5, 1.1, 1)


def dimensions():
    with layer("DIMENSIONS", 0.3, (0.3, 0.3, 0.3)):
        across(-18, 18, -5, -1.5)
        across(-16, 0, -3.5, 3)
        across(0, 16, -3.5, 3)
        across(3, 12, 20.5, 18.5)
        upwards(0, 3, 26, 16)
        upwards(0, 19, 28, 12.5)
        upwards(0, 13, 22, 12)


def title():
    with layer("TITLE", 0.8):
        left, low = -46.5, -27.5
        box(left, low, 93, 69)
        box(20, low, 26.5, 11)
        for i in (3, 5, 7):
            line((20, low + i), (46.5, low + i))
        words((21, low + 8), 22, "THE SALT MARSH")
        words((21, low + 5.5), 10, "GROUND PLAN  ACT ONE: THE PILOT'S HOUSE")
        words((21, low + 3.5), 10, "SCALE: 1/4\" = 1'-0\"")
        words((34, low + 3.5), 10, "SHEET 2 OF 9")
        words((21, low + 1), 10, "REVISION C, 14 MARCH")
    with layer("ELECTRICS", 0.4, (0.7, 0, 0.7)):
        for y in (6, 14, 23):
            line((-22, y), (22, y))
            for x in range(-20, 21, 4):
                circle((x, y), 0.4)


def objects_of(stream):
    groups = len(layer.names)
    refs = " ".join("%d 0 R" % (6 + i) for i in range(groups))
    off = 6 + layer.names.index("ELECTRICS")
    packed = zlib.compress("\n".join(stream).encode("latin-1"), 9)
    properties = "".join("/L%d %d 0 R" % (i, 6 + i) for i in range(groups))
    return [
        b"<</Type/Catalog/Pages 2 0 R/OCProperties<</OCGs[%s]/D<</Order[%s]/OFF[%d 0 R]>>>>>>" % (refs.encode(), refs.encode(), off),
        b"<</Type/Pages/Kids[3 0 R]/Count 1>>",
        b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 %d %d]/Contents 4 0 R/Resources<</Font<</F 5 0 R>>/Properties<<%s>>>>>>"
        % (PAGE[0], PAGE[1], properties.encode()),
        b"<</Filter/FlateDecode/Length %d>>stream\n%s\nendstream" % (len(packed), packed),
        b"<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>",
    ] + [b"<</Type/OCG/Name(%s)>>" % name.encode() for name in layer.names]


def write(name, objects):
    out = b"%PDF-1.5\n%\xe2\xe3\xcf\xd3\n"
    starts = []
    for i, o in enumerate(objects):
        starts.append(len(out))
        out += b"%d 0 obj\n%s\nendobj\n" % (i + 1, o)
    table = len(out)
    out += b"xref\n0 %d\n0000000000 65535 f \n" % (len(objects) + 1)
    out += b"".join(b"%010d 00000 n \n" % s for s in starts)
    out += b"trailer\n<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n" % (len(objects) + 1, table)
    with open(os.path.join(here, name), "wb") as f:
        f.write(out)


def scan():
    """A grey picture of the page and nothing else."""
    subprocess.run(["pdftocairo", "-jpeg", "-gray", "-r", "60", "-singlefile", "plan.pdf", "scan"], cwd=here, check=True)
    subprocess.run(["mutool", "convert", "-o", "scan.pdf", "scan.jpg"], cwd=here, check=True)
    os.remove(os.path.join(here, "scan.jpg"))


def main():
    for part in (house, room, furniture, dimensions, title):
        part()
    write("plan.pdf", objects_of(content))
    with open(os.path.join(here, "plan.csv"), "w", newline="") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(["layer", "kind", "x", "y", "x or radius", "y or start", "sweep"])
        w.writerows(truth)
    subprocess.run(["pdftocairo", "-pdf", "plan.pdf", "plan-cairo.pdf"], cwd=here, check=True)
    subprocess.run(["mutool", "convert", "-o", "plan-mupdf.pdf", "plan.pdf"], cwd=here, check=True)
    scan()
    print(len(truth), "entities")


if __name__ == "__main__":
    main()
