"""The ground plan of an invented show, drawn in millimetres as a drawing office might:
The Lantern Ferry, act one, by nobody, at the Marrow Lane Playhouse, which is nowhere.

X runs across the stage from the centre line, to stage left; Y upstage from the setting
line. make.py runs this.
"""
import math

import ezdxf
from ezdxf.enums import TextEntityAlignment

LAYERS = [  # name, colour, linetype
    ("HOUSE", 8, "CONTINUOUS"), ("CENTRE LINE", 1, "CENTER"), ("SETTING LINE", 1, "DASHED"),
    ("SET WALLS", 7, "CONTINUOUS"), ("SET DOORS", 4, "CONTINUOUS"), ("SET DOOR SWINGS", 4, "DASHED"),
    ("SET PLATFORMS", 3, "CONTINUOUS"), ("SET STAIRS", 30, "CONTINUOUS"), ("SET REVOLVE", 6, "CONTINUOUS"),
    ("FURNITURE", 5, "CONTINUOUS"), ("OVERHEAD", 9, "HIDDEN"), ("MASKING", 8, "CONTINUOUS"),
    ("DIMENSIONS", 2, "CONTINUOUS"), ("HATCHING", 252, "CONTINUOUS"), ("NOTES", 7, "CONTINUOUS"),
    ("TITLE BLOCK", 7, "CONTINUOUS"), ("LIGHTING", 140, "CONTINUOUS"), ("OLD VERSION", 253, "CONTINUOUS"),
]


def door_blocks(doc):
    """A door leaf of 900 hung at the origin, its jambs, and its swing."""
    b = doc.blocks.new("DOOR 900")
    for x in (-50, 900):
        b.add_lwpolyline([(x, -50), (x + 50, -50), (x + 50, 50), (x, 50)], close=True)
    b.add_line((0, 0), (0, 900), {"layer": "SET DOOR SWINGS"})
    b.add_arc((0, 0), 900, 0, 90, dxfattribs={"layer": "SET DOOR SWINGS"})
    b.add_attdef("NUMBER", (450, 150), dxfattribs={"height": 120, "layer": "NOTES"})
    w = doc.blocks.new("WINDOW 1200")
    w.add_lwpolyline([(0, -50), (1200, -50), (1200, 50), (0, 50)], close=True)
    w.add_line((0, 0), (1200, 0))


def chair_block(doc):
    b = doc.blocks.new("CHAIR")
    b.add_lwpolyline([(-225, -225), (225, -225), (225, 225), (-225, 225)], close=True)
    b.add_lwpolyline([(-225, 225, -0.2), (225, 225, 0)], format="xyb")
    t = doc.blocks.new("TABLE AND CHAIRS")
    t.add_circle((0, 0), 600)
    for i in range(4):
        a = math.radians(90 * i)
        t.add_blockref("CHAIR", (850 * math.cos(a), 850 * math.sin(a)), {"rotation": 90 * i - 90})


def house(m):
    at = {"layer": "HOUSE"}
    for side in (-1, 1):
        wall = [(side * 5500, 0), (side * 5500, 600), (side * 9000, 600), (side * 9000, 11000)]
        m.add_lwpolyline(wall, dxfattribs=at)
    m.add_line((-9000, 11000), (9000, 11000), at)
    m.add_lwpolyline([(-5500, 0, 0.18), (5500, 0, 0)], format="xyb", dxfattribs=at)
    m.add_line((0, -1200), (0, 11000), {"layer": "CENTRE LINE"})
    m.add_line((-5500, 600), (5500, 600), {"layer": "SETTING LINE"})


def wall(m, a, b, thick=100):
    """Two faces and two ends of a wall along a to b."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    n = thick / 2 / math.hypot(dx, dy)
    ox, oy = -dy * n, dx * n
    m.add_lwpolyline([(a[0] + ox, a[1] + oy), (b[0] + ox, b[1] + oy), (b[0] - ox, b[1] - oy), (a[0] - ox, a[1] - oy)],
                     close=True, dxfattribs={"layer": "SET WALLS"})


def ferry_house(m):
    for a, b in [((-4200, 2200), (-3600, 4800)), ((-3600, 4800), (-2000, 4800)), ((-1050, 4800), (900, 4800)),
                 ((2150, 4800), (3400, 4800)), ((3400, 4800), (3750, 3450)), ((3990, 2560), (4200, 1800))]:
        wall(m, a, b)
    one = m.add_blockref("DOOR 900", (-1975, 4800), {"layer": "SET DOORS"})
    one.add_attrib("NUMBER", "D1", (-1600, 4950), {"height": 120, "layer": "NOTES"})
    two = m.add_blockref("DOOR 900", (3762, 3425), {"layer": "SET DOORS", "rotation": -75.5, "yscale": -1})
    two.add_attrib("NUMBER", "D2", (3950, 3000), {"height": 120, "layer": "NOTES"})
    m.add_blockref("WINDOW 1200", (925, 4800), {"layer": "SET DOORS"})


def platforms(m):
    at = {"layer": "SET PLATFORMS"}
    m.add_lwpolyline([(-6200, 5600), (-2600, 5600), (-2600, 8000), (-6200, 8000)], close=True, dxfattribs=at)
    m.add_lwpolyline([(2600, 5800), (6000, 6400), (5600, 8700), (2200, 8100)], close=True, dxfattribs=at)
    for i in range(5):
        m.add_lwpolyline([(-2600 + 250 * i, 6200), (-2350 + 250 * i, 6200), (-2350 + 250 * i, 7200), (-2600 + 250 * i, 7200)],
                         close=True, dxfattribs={"layer": "SET STAIRS"})
    m.add_circle((300, 7600), 1800, {"layer": "SET REVOLVE"})
    m.add_circle((300, 7600), 60, {"layer": "SET REVOLVE"})
    m.add_spline([(-5200, 900), (-3000, 1500), (0, 1150), (3000, 1600), (5200, 1000)], dxfattribs={"layer": "OVERHEAD"})
    h = m.add_hatch(color=252, dxfattribs={"layer": "HATCHING"})
    h.set_pattern_fill("ANSI31", scale=20)
    h.paths.add_polyline_path([(-6200, 5600), (-2600, 5600), (-2600, 8000), (-6200, 8000)], is_closed=True)


def furniture(m):
    m.add_blockref("TABLE AND CHAIRS", (-900, 2600), {"layer": "FURNITURE", "rotation": 20})
    m.add_blockref("TABLE AND CHAIRS", (2000, 2300), {"layer": "FURNITURE", "rotation": -35, "xscale": 1.3})
    m.add_ellipse((-2600, 3600), (700, 200), 0.45, dxfattribs={"layer": "FURNITURE"})
    for side in (-1, 1):
        for up in (2500, 5000, 7500):
            m.add_line((side * 6800, up), (side * 8600, up + 300), {"layer": "MASKING"})


def dimensions(m):
    def across(y, a, b):
        m.add_linear_dim(base=(0, y), p1=a, p2=b, dimstyle="PLAN", dxfattribs={"layer": "DIMENSIONS"}).render()

    across(-2200, (-5500, 0), (5500, 0))
    across(9300, (-6200, 8000), (-2600, 8000))
    m.add_linear_dim(base=(-7000, 0), p1=(-6200, 5600), p2=(-6200, 8000), angle=90, dimstyle="PLAN",
                     dxfattribs={"layer": "DIMENSIONS"}).render()
    m.add_linear_dim(base=(1200, 0), p1=(0, 600), p2=(0, 4750), angle=90, dimstyle="PLAN",
                     dxfattribs={"layer": "DIMENSIONS"}).render()


def words(m):
    def note(text, at, height=150, layer="NOTES", align=TextEntityAlignment.LEFT):
        m.add_text(text, dxfattribs={"height": height, "layer": layer}).set_placement(at, align=align)

    note("PLATFORM +600", (-4400, 6800), align=TextEntityAlignment.MIDDLE_CENTER)
    note("PLATFORM +900", (4100, 7250), align=TextEntityAlignment.MIDDLE_CENTER)
    note("REVOLVE %%c3600", (300, 7900), align=TextEntityAlignment.MIDDLE_CENTER)
    note("UP 4 STEPS", (-2500, 7300))
    m.add_lwpolyline([(3000, -6200), (9000, -6200), (9000, -3600), (3000, -3600)], close=True, dxfattribs={"layer": "TITLE BLOCK"})
    m.add_line((3000, -4600), (9000, -4600), {"layer": "TITLE BLOCK"})
    note("THE LANTERN FERRY", (3200, -4300), 320, "TITLE BLOCK")
    note("GROUND PLAN, ACT ONE", (3200, -5000), 200, "TITLE BLOCK")
    note("SCALE 1:25", (3200, -5400), 200, "TITLE BLOCK")
    note("REVISION C", (6400, -5400), 200, "TITLE BLOCK")
    note("ALL SIZES IN MILLIMETRES", (3200, -5800), 140, "TITLE BLOCK")
    m.add_mtext("{\\C1;Marrow Lane Playhouse}\\PDo not scale off this drawing", dxfattribs={
        "char_height": 140, "insert": (6400, -4800), "layer": "TITLE BLOCK"})


def hidden(m):
    for i in range(6):
        m.add_circle((-4000 + 1600 * i, 3000), 150, {"layer": "LIGHTING"})
    m.add_lwpolyline([(-4500, 2000), (-3800, 5000), (3600, 5000), (4400, 2000)], dxfattribs={"layer": "OLD VERSION"})


def write_plan(path):
    doc = ezdxf.new("R2010", setup=True)
    doc.units = ezdxf.units.MM
    doc.header["$LTSCALE"] = 250
    for name, colour, linetype in LAYERS:
        doc.layers.add(name, color=colour, linetype=linetype)
    doc.layers.get("LIGHTING").off()
    doc.layers.get("OLD VERSION").freeze()
    doc.dimstyles.duplicate_entry("EZDXF", "PLAN")
    doc.dimstyles.get("PLAN").dxf.dimtxt = 150
    doc.dimstyles.get("PLAN").dxf.dimasz = 100
    doc.dimstyles.get("PLAN").dxf.dimlfac = 1
    doc.dimstyles.get("PLAN").dxf.dimdec = 0
    door_blocks(doc)
    chair_block(doc)
    m = doc.modelspace()
    for part in (house, ferry_house, platforms, furniture, dimensions, words, hidden):
        part(m)
    doc.saveas(path)
