#!/usr/bin/env python3
"""Makes the drawings of this folder with ezdxf, and lengths.json.

Run it here without arguments. kinds-*.dxf hold every kind of entity that is read, in
each release; lengths.json holds the length of line work on each layer, of all and of
what is seen. plan.dxf is a ground plan as a drawing office might send it.

The lengths are computed here, from the entities as ezdxf reads them and the matrices
that it gives for inserts. ezdxf's paths are not used: they go through Bezier curves and
are about 3e-5 too long. Nor are its exploded inserts: a block that stands turned inside
an unevenly scaled one is sheared, which an insert cannot be, and loses that.

    lines                    exact
    arcs, ellipses, splines  Gauss-Legendre quadrature of the speed, exact to rounding
    splines through points   scipy's natural cubic over chord length

Visibility follows the rules for layers and blocks: a frozen layer of an insert hides
everything inside; one that is only off hides what inherits it, being on layer 0.
"""
import json
import math

import ezdxf
import numpy as np
from ezdxf.enums import TextEntityAlignment
from ezdxf.math import Matrix44, Vec3
from scipy.interpolate import BSpline, CubicSpline

VERSIONS = ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]
NODES, WEIGHTS = np.polynomial.legendre.leggauss(40)


def quadrature(speed, knots):
    """Integral of speed over the stretches between knots, each in 16 pieces."""
    total = 0.0
    for a, b in zip(knots[:-1], knots[1:]):
        if b <= a:
            continue
        cuts = np.linspace(a, b, 17)
        for lo, hi in zip(cuts[:-1], cuts[1:]):
            t = (lo + hi) / 2 + (hi - lo) / 2 * NODES
            total += (hi - lo) / 2 * float(np.dot(WEIGHTS, [speed(x) for x in t]))
    return total


def space(v):
    return np.array([v[0], v[1], v[2] if len(v) > 2 else 0.0], dtype=float)


def bulged(points, closed):
    """Pieces of (x, y, bulge) corners: the arc over a chord has 4 atan(bulge) of angle."""
    n = len(points)
    for i in range(n if closed else n - 1):
        (x1, y1, b), (x2, y2, _) = points[i], points[(i + 1) % n]
        chord = np.array([x2 - x1, y2 - y1, 0.0])
        if b == 0:
            yield "line", chord
            continue
        half = 2 * math.atan(abs(b))
        radius = math.hypot(x2 - x1, y2 - y1) / 2 / math.sin(half)
        out = np.array([chord[1], -chord[0], 0.0]) / np.hypot(chord[0], chord[1])
        along = chord / np.hypot(chord[0], chord[1])
        yield "ellipse", out * radius, along * radius, -half, half


def turning(start, end):
    """Parameters counter-clockwise from start to end, in radians."""
    return start, start + ((end - start) % math.tau or math.tau)


def circular(radius, start, end):
    x, y = np.array([radius, 0, 0.0]), np.array([0, radius, 0.0])
    yield "ellipse", x, y, *turning(math.radians(start), math.radians(end))


def spline(e):
    if len(e.control_points) == 0:
        p = np.array([space(v) for v in e.fit_points])
        u = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(p, axis=0), axis=1))])
        yield "curve", CubicSpline(u, p, bc_type="natural").derivative(), u
        return
    control = np.array([space(v) for v in e.control_points])
    weights = np.array(list(e.weights) or [1.0] * len(control))
    knots, degree = np.array(list(e.knots)), e.dxf.degree
    top = BSpline(knots, control * weights[:, None], degree)
    bottom = BSpline(knots, weights, degree)
    dtop, dbottom = top.derivative(), bottom.derivative()
    slope = lambda t: (dtop(t) - top(t) / bottom(t) * dbottom(t)) / bottom(t)
    yield "curve", slope, knots[degree:len(control) + 1]


def boundary(path):
    if path.type.name == "POLYLINE":
        yield from bulged(path.vertices, path.is_closed)
        return
    for edge in path.edges:
        kind = edge.type.name
        if kind == "LINE":
            yield "line", space(edge.end) - space(edge.start)
        elif kind == "ARC":
            yield from circular(edge.radius, edge.start_angle, edge.end_angle)
        elif kind == "ELLIPSE":
            major = space(edge.major_axis)
            minor = np.array([-major[1], major[0], 0.0]) * edge.ratio
            yield "ellipse", major, minor, *turning(edge.start_param, edge.end_param)
        else:
            raise ValueError(kind)


def own_pieces(e):
    """Pieces in the entity's own plane."""
    kind = e.dxftype()
    if kind == "CIRCLE":
        yield from circular(e.dxf.radius, 0, 360)
    elif kind == "ARC":
        yield from circular(e.dxf.radius, e.dxf.start_angle, e.dxf.end_angle)
    elif kind == "LWPOLYLINE":
        yield from bulged(list(e.get_points("xyb")), e.closed)
    elif kind == "POLYLINE":
        yield from bulged([(v.dxf.location.x, v.dxf.location.y, v.dxf.bulge) for v in e.vertices], e.is_closed)
    elif kind in ("SOLID", "TRACE"):
        p = [space(v) for v in (e.dxf.vtx0, e.dxf.vtx1, e.dxf.vtx3, e.dxf.vtx2)]
        for i in range(4):
            yield "line", p[(i + 1) % 4] - p[i]
    elif kind == "HATCH":
        for path in e.paths:
            yield from boundary(path)


def pieces(e):
    """Pieces of an entity in the coordinates of its block, without their places."""
    kind = e.dxftype()
    if kind == "LINE":
        yield "line", space(e.dxf.end) - space(e.dxf.start)
    elif kind == "ELLIPSE":
        yield "ellipse", space(e.dxf.major_axis), space(e.minor_axis), *turning(e.dxf.start_param, e.dxf.end_param)
    elif kind == "SPLINE":
        yield from spline(e)
    elif kind == "POLYLINE" and e.is_3d_polyline:
        p = [space(v.dxf.location) for v in e.vertices]
        for i in range(len(p) if e.is_closed else len(p) - 1):
            yield "line", p[(i + 1) % len(p)] - p[i]
    else:
        out = lambda v: space(e.ocs().to_wcs(Vec3(*v)))
        for name, *rest in own_pieces(e):
            if name == "line":
                yield name, out(rest[0])
            else:
                yield name, out(rest[0]), out(rest[1]), rest[2], rest[3]


def length(e, matrix):
    """Length seen from above, once matrix has placed it; None if e has no lines."""
    turn = np.array(list(matrix)).reshape(4, 4)[:3, :2]
    total, any_piece = 0.0, False
    for name, *rest in pieces(e):
        any_piece = True
        if name == "line":
            total += float(np.hypot(*(rest[0] @ turn)))
        elif name == "ellipse":
            u, v, start, end = rest
            u, v = u @ turn, v @ turn
            total += quadrature(lambda t: np.hypot(*(v * math.cos(t) - u * math.sin(t))), [start, end])
        else:
            slope, knots = rest
            total += quadrature(lambda t: np.hypot(*(slope(t) @ turn)), knots)
    return total if any_piece else None


class Sum:
    """Adds up lengths by layer, following blocks."""

    def __init__(self, doc):
        self.doc, self.all, self.seen = doc, {}, {}

    def state(self, name):
        layer = self.doc.layers.get(name)
        return layer.is_off(), layer.is_frozen()

    def add(self, entities, matrix=Matrix44(), inherited=None, hidden=False):
        for e in entities:
            name = e.dxf.layer
            if name == "0" and inherited:
                name = inherited
            off, frozen = self.state(name)
            if e.dxftype() in ("INSERT", "DIMENSION"):
                for block, place in copies(self.doc, e):
                    self.add(block, place * matrix, name, hidden or frozen)
                continue
            size = length(e, matrix)
            if size is None:
                continue
            self.all[name] = self.all.get(name, 0.0) + size
            if not (hidden or off or frozen):
                self.seen[name] = self.seen.get(name, 0.0) + size


def copies(doc, e):
    """The blocks that e places, each with its matrix (of row vectors)."""
    if e.dxftype() == "DIMENSION":
        yield doc.blocks.get(e.dxf.geometry), Matrix44()
        return
    for one in e.multi_insert() if e.mcount > 1 else [e]:
        yield doc.blocks.get(one.dxf.name), one.matrix44()


def straight_and_round(m, old):
    at = {"layer": "LINES"}
    m.add_line((0, 0), (3000, 4000), at)
    m.add_line((0, 0, 0), (3000, 0, 4000), at)
    m.add_arc((500, 500), 250, 350, 80, dxfattribs={"layer": "ARCS"})
    m.add_circle((0, 0), 100, {"layer": "ARCS"})
    m.add_arc((70, 10), 25, 10, 130, dxfattribs={"layer": "ARCS", "extrusion": (0, 0, -1)})
    m.add_polyline2d([(0, 0, 0.5), (100, 0, 0), (100, 100, -1), (0, 100, 0.2)], format="xyb", close=True,
                     dxfattribs={"layer": "POLY"})
    m.add_polyline2d([(0, 0, 0.3), (50, 0, 0), (50, 80, 0)], format="xyb",
                     dxfattribs={"layer": "POLY", "extrusion": (0, 0, -1)})
    m.add_polyline3d([(0, 0, 0), (300, 0, 100), (300, 400, 200)], dxfattribs={"layer": "POLY3D"})
    m.add_solid([(0, 0), (10, 0), (0, 20), (10, 20)], {"layer": "SOLID"})
    m.add_trace([(0, 0), (30, 0), (0, 40), (30, 40)], {"layer": "SOLID"})
    if not old:
        m.add_lwpolyline([(0, 0, 0), (1000, 0, 1), (1000, 500, 0), (0, 500, -0.25)], format="xyb", close=True,
                         dxfattribs={"layer": "POLY", "elevation": 30})
        h = m.add_hatch(dxfattribs={"layer": "HATCH"})
        h.paths.add_polyline_path([(0, 0, 0), (10, 0, 1), (10, 10, 0), (0, 10, 0)], is_closed=True)
        edges = h.paths.add_edge_path()
        edges.add_line((0, 0), (40, 0))
        edges.add_arc((20, 0), 20, 0, 180, ccw=True)
        edges = h.paths.add_edge_path()
        edges.add_arc((20, 50), 20, 20, 140, ccw=False)
        edges.add_ellipse((90, 0), (30, 0), 0.5, 20, 200, ccw=True)


def curves(m):
    m.add_ellipse((0, 0), (200, 100), 0.4, dxfattribs={"layer": "ELLIPSES"})
    m.add_ellipse((0, 0), (50, 0), 0.9, 1, 4, dxfattribs={"layer": "ELLIPSES"})
    m.add_ellipse((9, 9), (0, 70), 0.3, 5, 2, dxfattribs={"layer": "ELLIPSES", "extrusion": (0, 0, -1)})
    m.add_open_spline([(0, 0), (100, 200), (200, -100), (300, 50), (400, 0)], degree=3, dxfattribs={"layer": "SPLINES"})
    m.add_rational_spline([(0, 0), (100, 0), (100, 100), (0, 100)], [1, 0.5, 2, 1], degree=3, dxfattribs={"layer": "SPLINES"})
    m.add_spline(dxfattribs={"layer": "SPLINES"}).set_closed([(0, 0, 0), (100, 0, 0), (100, 100, 0), (0, 100, 0)], degree=3)
    m.add_spline([(0, 0), (100, 50), (150, 150), (300, 100)], dxfattribs={"layer": "FITTED"})


def door(doc, old):
    b = doc.blocks.new("DOOR", base_point=(10, 5))
    b.add_line((0, 0), (900, 0))
    b.add_arc((0, 0), 900, 0, 90, dxfattribs={"layer": "SWING"})
    b.add_line((0, 0), (0, 900), {"layer": "SWING"})
    b.add_polyline2d([(0, 0, 0.4), (40, 0, 0), (40, 100, 0)], format="xyb")
    b.add_attdef("NUMBER", (100, 100), dxfattribs={"height": 60})
    outer = doc.blocks.new("WALL WITH DOORS")
    outer.add_line((0, 0), (4000, 0))
    outer.add_blockref("DOOR", (1000, 0))
    outer.add_blockref("DOOR", (2500, 0), {"xscale": -1, "rotation": 30, "layer": "INNER"})
    return b


def blocks(doc, m, old):
    door(doc, old)
    place = lambda name, at, **attributes: m.add_blockref(name, at, attributes)
    one = place("DOOR", (0, 0), layer="EVEN", rotation=17, xscale=2, yscale=2, zscale=2)
    one.add_attrib("NUMBER", "D 1", (55, 66), {"height": 60, "layer": "EVEN"})
    place("WALL WITH DOORS", (0, 0), layer="EVEN", xscale=-1, rotation=45)
    place("WALL WITH DOORS", (100, 0), layer="EVEN", extrusion=(0, 0, -1), rotation=10)
    place("DOOR", (0, 0), layer="ARRAY", column_count=3, row_count=2, column_spacing=1500, row_spacing=2500, rotation=20)
    place("WALL WITH DOORS", (0, 0), layer="OFF")
    place("WALL WITH DOORS", (0, 0), layer="FROZEN")
    place("DOOR", (0, 0), layer="UNEVEN", xscale=2, yscale=0.5, rotation=33)
    place("WALL WITH DOORS", (0, 0), layer="UNEVEN", xscale=-3, yscale=1, rotation=10)
    m.add_line((0, 0), (50, 0), {"layer": "OFF"})
    m.add_line((0, 0), (70, 0), {"layer": "FROZEN"})


def words(m, old):
    m.add_text("Caf\u00e9 %%c20 %%d", dxfattribs={"height": 50, "layer": "WORDS", "rotation": 30}).set_placement((10, 20))
    m.add_text("MIDDLE", dxfattribs={"height": 50, "layer": "WORDS"}).set_placement(
        (300, 400), align=TextEntityAlignment.MIDDLE_CENTER)
    if not old:
        m.add_mtext("{\\fSans|b1;Stage} \\H2x;left\\Pof \\S1/2; \u2300", dxfattribs={
            "char_height": 40, "layer": "WORDS", "insert": (7, 8), "rotation": 90})


LAYERS = ["LINES", "ARCS", "POLY", "POLY3D", "SOLID", "HATCH", "ELLIPSES", "SPLINES", "FITTED", "SWING", "INNER",
          "EVEN", "ARRAY", "OFF", "FROZEN", "UNEVEN", "WORDS", "DIMS"]
CURVED = ["ELLIPSES", "SPLINES", "FITTED", "UNEVEN", "HATCH", "SWING", "INNER"]


def kinds(version):
    doc = ezdxf.new(version, setup=True)
    old = version == "R12"
    for i, name in enumerate(LAYERS):
        doc.layers.add(name, color=i + 1, linetype="DASHED" if name == "SWING" else "CONTINUOUS")
    doc.layers.get("OFF").off()
    doc.layers.get("FROZEN").freeze()
    doc.header["$LTSCALE"] = 100
    if not old:
        doc.units = ezdxf.units.MM
        doc.layers.get("POLY").rgb = (18, 52, 86)
    m = doc.modelspace()
    straight_and_round(m, old)
    if not old:
        curves(m)
        doc.layout("Layout1").add_line((0, 0), (1, 1))
    blocks(doc, m, old)
    words(m, old)
    m.add_linear_dim(base=(0, -200), p1=(0, 0), p2=(3000, 0), dimstyle="EZDXF",
                     dxfattribs={"layer": "DIMS"}).render()
    m.add_point((1, 1))
    name = f"kinds-{version}.dxf"
    doc.saveas(name)
    doc = ezdxf.readfile(name)
    total = Sum(doc)
    total.add(doc.modelspace())
    return {"file": name, "version": version, "all": total.all, "seen": total.seen}


def colours():
    from ezdxf.colors import DXF_DEFAULT_COLORS
    return DXF_DEFAULT_COLORS[1:256]


if __name__ == "__main__":
    from plan import write_plan
    result = {
        "made with": f"ezdxf {ezdxf.__version__}",
        "curved": CURVED,
        "colours": colours(),
        "files": [kinds(v) for v in VERSIONS],
    }
    write_plan("plan.dxf")
    doc = ezdxf.readfile("plan.dxf")
    total = Sum(doc)
    total.add(doc.modelspace())
    result["files"].append({"file": "plan.dxf", "version": "R2010", "all": total.all, "seen": total.seen})
    with open("lengths.json", "w") as out:
        json.dump(result, out, indent=1, sort_keys=True)
        out.write("\n")
