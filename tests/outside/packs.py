"""Cut packs, read by libraries that are not ours: drawings by ezdxf, nests by shapely, pictures by resvg, lists by csv."""

import collections
import csv
import io
import math
import pathlib
import re
import tomllib

import ezdxf
import numpy
import resvg_py
from PIL import Image
from shapely import STRtree, affinity
from shapely import unary_union
from shapely.geometry import LineString, Point, Polygon, box

CUTTING = tomllib.loads((pathlib.Path(__file__).parents[2] / "web/ranges/fenland.toml").read_text())["cutting"]

# Corners of an arc are at most so far from it, so polygons of it are a little smaller: millimetres.
CHORD = 0.005


def ring(corners):
    """An outline of corners and bulges as points."""
    points = []
    for (u, v, bulge), (to_u, to_v, _) in zip(corners, corners[1:] + corners[:1]):
        points.append((u, v))
        if bulge == 0:
            continue
        angle = 4 * math.atan(bulge)
        chord = math.hypot(to_u - u, to_v - v)
        radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
        # Centre: from the middle of the chord, to the left for less than half a circle that turns left.
        apothem = radius * math.cos(angle / 2) * (1 if bulge > 0 else -1)
        centre_u = (u + to_u) / 2 - (to_v - v) / chord * apothem
        centre_v = (v + to_v) / 2 + (to_u - u) / chord * apothem
        steps = max(4, math.ceil(abs(angle) / (2 * math.acos(1 - CHORD / max(radius, 2 * CHORD)))))
        start = math.atan2(v - centre_v, u - centre_u)
        points += [
            (centre_u + radius * math.cos(start + angle * step / steps), centre_v + radius * math.sin(start + angle * step / steps))
            for step in range(1, steps)
        ]
    return points


def signed_area(corners):
    """Exactly: the polygon of the corners, and a cap r² (θ − sin θ) / 2 for each arc."""
    area = 0.0
    for (u, v, bulge), (to_u, to_v, _) in zip(corners, corners[1:] + corners[:1]):
        area += (u * to_v - to_u * v) / 2
        if bulge:
            angle = 4 * math.atan(bulge)
            radius = math.hypot(to_u - u, to_v - v) * (1 + bulge * bulge) / (4 * abs(bulge))
            area += radius * radius * (angle - math.sin(angle)) / 2
    return area


def check(packs, near):
    if len(packs) < 200:
        raise SystemExit(f"only {len(packs)} batches could be made")
    across, held, interlocked = 0, collections.Counter(), collections.Counter()
    turns, other = collections.Counter(), collections.Counter()
    for number, pack in enumerate(packs):
        placed = collections.Counter(part["id"] for sheet in pack["sheets"] for part in sheet["parts"])
        same(f"parts of batch {number}, each once", sorted(placed.elements()), sorted(pack["parts"]))
        for at, sheet in enumerate(pack["sheets"]):
            where = f"batch {number}, sheet {at + 1}"
            across += sheet["grain"] == "v"
            interlocked[sheet["grain"]] += nest(where, pack, sheet, near)
            cuts(where, pack, sheet, near)
            if sheet["dxf"]:
                drawing(where, pack, sheet, at + 1, near)
                picture(where, sheet, near)
        for part in pack["alone"]:
            audited(f"batch {number}, part {part['mark']} alone", part, near)
        if pack["parts_csv"]:
            turns += lists(pack)
        held[tuple(pack["hold"])] += len(pack["sheets"])
        other["offcuts"] += any(sheet["stock"].startswith("r") for sheet in pack["sheets"]) if pack["rack"] else 0
        other["short"] += pack["bounds"] > 0
        other[f"{pack['cutter']:g} mm and {pack['gap']:g}"] += 1
    near("sheets across the grain", across, max(across, 20), 0)
    for grain in "uv":
        near(f"parts that interlock, grain along {grain}", interlocked[grain], max(interlocked[grain], 20), 0)
    for turned in ("0", "90", "180", "270"):
        near(f"parts turned by {turned} degrees", turns[turned], max(turns[turned], 1), 0)
    for settings in ("offcuts", "short", "4 mm and 4", "6 mm and 15"):
        near(f"batches with {settings}", other[settings], max(other[settings], 5), 0)
    for hold in [("bridges",), ("skin",), ()]:
        near(f"sheets held by {hold}", held[hold], max(held[hold], 20), 0)


def same(what, found, wanted):
    if found != wanted:
        raise SystemExit(f"{what}: {found} against {wanted}")


def holds(what, true):
    if not true:
        raise SystemExit(what)


def nest(where, pack, sheet, near):
    """Parts inside, apart, along the grain; what is kept lies free. How many are nearer than rectangles round them allow."""
    length, width, trim, gap = sheet["length"], sheet["width"], pack["trim"], pack["gap"]
    outer = [Polygon(ring(part["outline"])) for part in sheet["parts"]]
    inner = box(trim - 0.01, trim - 0.01, length - trim + 0.01, width - trim + 0.01)
    for part, shape in zip(sheet["parts"], outer):
        holds(f"{where}: {part['id']} is no simple outline", shape.is_valid)
        holds(f"{where}: {part['id']} reaches beyond the sheet", inner.contains(shape))
        same(f"{where}: grain of {part['id']}", part["quarters"] % 2 == 1, part["grain"] != sheet["grain"])
        solid = signed_area(part["outline"]) + sum(map(signed_area, part["holes"]))
        near(f"{where}: area of {part['id']}", solid, part["area"], 1e-6)
    kept = [box(*low, *high) for low, high in sheet["kept"]]
    for (low, high), shape in zip(sheet["kept"], kept):
        sides = [high[0] - low[0], high[1] - low[1]]
        along, over = sides if sheet["grain"] == "u" else sides[::-1]
        holds(f"{where}: an offcut is too small", along >= pack["least"][0] - 0.01 and over >= pack["least"][1] - 0.01)
        holds(f"{where}: an offcut reaches beyond the sheet", inner.contains(shape))
    shapes = outer + kept
    tree = STRtree(shapes)
    for at, shape in enumerate(shapes):
        for other in tree.query(shape.buffer(gap)):
            if other > at:
                holds(f"{where}: {at} and {other} are too near", shape.distance(shapes[other]) >= gap - 0.02)
    around = STRtree([box(*shape.bounds) for shape in outer])
    near_boxes = around.query(around.geometries, predicate="intersects")
    return sum(one < other and around.geometries[one].intersection(around.geometries[other]).area > 1 for one, other in near_boxes.T)


def cuts(where, pack, sheet, near):
    """Order, direction, ways in and bridges."""
    solids = [Polygon(ring(part["outline"]), [ring(hole) for hole in part["holes"]]) for part in sheet["parts"]]
    sides = [cut["inside"] for cut in sheet["cuts"]]
    same(f"{where}: inside cuts first", sides, sorted(sides, reverse=True))
    outside = [cut for cut in sheet["cuts"] if not cut["inside"]]
    same(f"{where}: each part once", sorted(cut["part"] for cut in outside), list(range(len(solids))))
    sizes = [sheet["parts"][cut["part"]]["area"] for cut in outside]
    holds(f"{where}: small parts first", all(a <= b + 1e-6 for a, b in zip(sizes, sizes[1:])))
    count = sum(len(part["holes"]) + 1 for part in sheet["parts"])
    same(f"{where}: cuts", len(sheet["cuts"]), count)
    everything = STRtree(solids)
    radius = pack["cutter"] / 2
    # Of the batches that are drawn as well: it takes its time.
    for part, solid in zip(sheet["parts"], solids) if sheet["dxf"] else []:
        # Grown by the cutter and shrunk again a part is as before where the cutter reaches into its corners.
        filled = solid.buffer(radius, quad_segs=48).buffer(-radius, quad_segs=48).difference(solid)
        corners = bow_corners(part["outline"], radius)
        holds(f"{where}: a bow of {part['id']} ends in a corner", not corners or part["id"].endswith("base-lower"))
        for piece in getattr(filled, "geoms", [filled]):
            # Where a bow ends before a straight piece of its edge nothing goes in: that corner stays as round as the cutter.
            left = max((area for corner, area in corners if piece.distance(corner) < 0.01), default=0.1)
            holds(f"{where}: the cutter leaves {piece.area:.3f} mm² in a corner of {part['id']}, {left:.3f} at most", piece.area <= left)
    sheet["kept_by"] = STRtree([as_wide_as_the_cutter(bridge, pack["cutter"]) for cut in outside for bridge in cut["bridges"]])
    for cut in sheet["cuts"]:
        area = signed_area(cut["outline"])
        holds(f"{where}: a cut is not in climb direction", area > 0 if cut["inside"] else area < 0)
        start, end = cut["lead_in"]
        near(f"{where}: a way in ends beside the outline's beginning", math.dist(end, cut["outline"][0][:2]), radius, 0, 1e-6)
        swept = LineString([start, end] if start != end else [start, (start[0] + 1e-9, start[1])]).buffer(radius - 0.005)
        for other in everything.query(swept):
            harm = swept.intersection(solids[other]).area
            holds(f"{where}: a way in cuts {harm:.3f} mm² of {sheet['parts'][other]['id']}", harm < 0.02)
        if not cut["inside"]:
            edge = LineString(ring(cut["outline"]) + [cut["outline"][0][:2]])
            depths(where, pack, sheet, near)
            if "bridges" not in pack["hold"]:
                same(f"{where}: bridges", cut["bridges"] + cut["between"], [])
                continue
            holds(f"{where}: too few bridges", len(cut["bridges"]) >= 2)
            bridged(where, pack, sheet, cut)
            for bridge in cut["bridges"]:
                holds(f"{where}: a bridge is off its edge", edge.distance(LineString(bridge)) < 1e-6)
                holds(f"{where}: a bridge is off its edge", max(edge.distance(LineString([end, end])) for end in bridge) < 1e-6)


def bow_corners(outline, radius):
    """Where a long arc and a straight edge beside it meet in a corner that a cutter does not reach into, and how much it leaves."""
    corners = []
    for at, (u, v, bulge) in enumerate(outline):
        (next_u, next_v, _), after = outline[(at + 1) % len(outline)], outline[(at + 2) % len(outline)]
        long = math.hypot(next_u - u, next_v - v)
        if not bulge or long < 100:
            continue
        chord, half = math.atan2(next_v - v, next_u - u), 2 * math.atan(bulge)
        before = outline[at - 1]
        into = math.atan2(v - before[1], u - before[0])
        out = math.atan2(after[1] - next_v, after[0] - next_u)
        for (x, y), turn in (((u, v), chord - half - into), ((next_u, next_v), out - chord - half)):
            turn = (turn + math.pi) % (2 * math.pi) - math.pi
            if turn < -1e-3:
                # Between two tangents of a circle and the circle: r² (tan β/2 − β/2). The arc itself turns away a little.
                corners.append((Point(x, y), 1.1 * radius**2 * (math.tan(-turn / 2) + turn / 2) + 0.01))
    return corners


def bridged(where, pack, sheet, cut):
    """Bridges lie on plain edges; what is cut between them takes nothing of any bridge of the sheet, and stops for them alone."""
    (low_u, low_v), (high_u, high_v) = sheet["parts"][cut["part"]]["plain"]
    for (u, v), (to_u, to_v) in cut["bridges"]:
        on = any(abs(a - side) < 1e-3 and abs(b - side) < 1e-3 for a, b, side in [(u, to_u, low_u), (u, to_u, high_u), (v, to_v, low_v), (v, to_v, high_v)])
        holds(f"{where}: a bridge lies on a joint", on)
    radius = pack["cutter"] / 2
    ways = [LineString(open_ring(way)) for way in cut["between"]]
    holds(f"{where}: as many ways as bridges at least", len(ways) >= len(cut["bridges"]))
    near_by = sheet["kept_by"].query(LineString(ring(cut["outline"])).envelope.buffer(radius * 6))
    bridges = [sheet["kept_by"].geometries[at] for at in near_by]
    for way in ways:
        # Where the cutter goes, a radius to the left of the way.
        swept = way.offset_curve(radius, quad_segs=32).buffer(radius, quad_segs=32)
        for bridge in bridges:
            holds(f"{where}: a bridge is cut", swept.intersection(bridge).area < 0.02)
    edge = LineString(ring(cut["outline"]) + [cut["outline"][0][:2]])
    # Of an arc and of a part of it the chords differ.
    left = edge.difference(unary_union(ways).buffer(2 * CHORD + 1e-3))
    far = left.difference(unary_union(bridges).buffer(radius * 5))
    holds(f"{where}: {far.length:.3f} mm are not cut through", far.length < 0.05)


def as_wide_as_the_cutter(bridge, cutter):
    """A bridge as an area, to the left of its edge."""
    (u, v), (to_u, to_v) = bridge
    long = math.dist(*bridge)
    out_u, out_v = -(to_v - v) / long * cutter, (to_u - u) / long * cutter
    return Polygon([(u, v), (to_u, to_v), (to_u + out_u, to_v + out_v), (u + out_u, v + out_v)])


def depths(where, pack, sheet, near):
    through, outside = sheet["depths"]
    # By the mean thickness with its coats, down from the upper face.
    near(f"{where}: through", through, sheet["thickness"] + CUTTING["below_mm"], 1e-9)
    left = [sheet["thickness"] - left for left in pack["hold"].values()] or [through]
    near(f"{where}: down to what is left", outside, left[0], 1e-9)


def open_ring(corners):
    """An open way of corners and bulges as points; the bulge of the last one leads nowhere."""
    closed = ring([*corners[:-1], (*corners[-1][:2], 0)])
    return closed


def drawing(where, pack, sheet, number, near):
    """A sheet's drawing has the marks of its parts as well, and in its border the pack's name."""
    document = audited(where, sheet, near)
    texts = document.modelspace().query("TEXT")
    marks = sorted(text.dxf.text for text in texts if text.dxf.layer == "MARK")
    same(f"{where}: marks", marks, sorted(part["mark"] for part in sheet["parts"]))
    names = [(text.dxf.text, text.dxf.align_point.y < pack["trim"]) for text in texts if text.dxf.layer == "PACK"]
    same(f"{where}: name", names, [(f"{pack['name']}/{number}", True)])


def audited(where, sheet, near):
    """What ezdxf makes of a drawing: no error, no repair, the areas of the core."""
    document = ezdxf.read(io.StringIO(sheet["dxf"], newline=None))
    audit = document.audit()
    same(f"{where}: errors", [error.message for error in audit.errors + audit.fixes], [])
    same(f"{where}: unit", document.units, ezdxf.units.MM)
    area, seen = 0.0, collections.Counter()
    for entity in document.modelspace().query("LWPOLYLINE"):
        corners = [tuple(point) for point in entity.get_points("xyb")]
        key = (entity.dxf.layer, tuple(corners))
        seen[key] += 1
        steps = zip(corners, corners[1:] + corners[:1] if entity.closed else corners[1:])
        holds(f"{where}: a line without length", all(math.dist(one[:2], other[:2]) > 1e-4 for one, other in steps))
        operation = entity.dxf.layer.split("-")[0]
        if operation in ("INSIDE", "OUTSIDE"):
            holds(f"{where}: an open outline", entity.closed)
            area -= signed_area(corners)
    same(f"{where}: drawn twice", [key for key, count in seen.items() if count > 1], [])
    near(f"{where}: area of the drawing", area, sheet["used"], 1e-4)
    return document


def picture(where, sheet, near):
    """How much resvg covers with parts, a pixel for each millimetre, against the area of the drawing."""
    head, parts = sheet["svg"].split(">", 1)[0] + ">", re.findall(r"<path class=\"part\"[^>]*/>", sheet["svg"])
    same(f"{where}: parts of the picture", len(parts), len(sheet["parts"]))
    without_lines = head + "".join(part.replace('stroke="#2a2e2b"', 'stroke="none"') for part in parts) + "</svg>"
    png = resvg_py.svg_to_bytes(svg_string=without_lines, dpi=25.4, background="#ffffff")
    pixels = numpy.asarray(Image.open(io.BytesIO(bytes(png))).convert("RGB")).astype(float)
    same(f"{where}: size of the picture", pixels.shape[:2], (round(sheet["width"]), round(sheet["length"])))
    # At a rim a pixel is covered by as much as its blue is on the way from white to wood.
    covered = ((255 - pixels[:, :, 2]) / (255 - 0xA4)).sum()
    near(f"{where}: covered by parts in the picture", covered, sheet["used"], 0.002)


def lists(pack):
    for name in ("parts_csv", "sheets_csv"):
        text = pack[name]
        holds(f"{name}: lines end by CR LF", text.endswith("\r\n") and "\n" not in text.replace("\r\n", ""))
        rows = list(csv.DictReader(io.StringIO(text, newline=""), strict=True))
        holds(f"{name}: every field is there", all(None not in row and None not in row.values() for row in rows))
        wanted = len(pack["parts"]) if name == "parts_csv" else len(pack["sheets"])
        same(f"{name}: rows", len(rows), wanted)
    marks = [row["mark"] for row in csv.DictReader(io.StringIO(pack["parts_csv"], newline=""))]
    same("marks of the list", len(set(marks)), len(marks))
    rows = {row["mark"]: row for row in csv.DictReader(io.StringIO(pack["parts_csv"], newline=""))}
    turns = collections.Counter()
    for part in (part for sheet in pack["sheets"] for part in sheet["parts"]):
        row = rows[part["mark"]]
        turns[row["turned_deg"]] += 1
        # As the list says: turned to the left, then its low corner put there.
        angle = math.radians(int(row["turned_deg"]))
        turned = affinity.rotate(Polygon(ring(part["own"])), angle, origin=(0, 0), use_radians=True)
        low_u, low_v, _, _ = turned.bounds
        placed = affinity.translate(turned, float(row["x_mm"]) - low_u, float(row["y_mm"]) - low_v)
        apart = placed.symmetric_difference(Polygon(ring(part["outline"]))).area
        # The list has hundredths of a millimetre.
        holds(f"{part['id']} lies otherwise than the list says: {apart:.1f} mm2", apart < 0.01 * placed.length + 0.1)
    return turns
