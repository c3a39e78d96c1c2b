"""What stands out of parts under a knock, and what is slender under a push, by finite elements on their true outlines.

The core has formulas of beams for both. What stands out is shorter than it is wide, so beams say little of where the stress is most:
each check says by how much.
"""

import math
import sys

import numpy
from scipy.spatial import Delaunay
from shapely import contains_xy, distance, points
from shapely.geometry import Polygon, box
from skfem import (Basis, BilinearForm, ElementHex2, ElementTriMorley, ElementTriP2, ElementVector, FacetBasis, LinearForm,
                   MeshHex, MeshTri, condense, solve)
from skfem.helpers import dd, grad

from elements import beam, sag_at
from packs import ring

FINE, COARSE = 0.8, 4.0  # mm between the corners of the mesh, near the root and far from it


def outwards(stub, panel):
    """The outline of a panel round what stands out, with x out of its edge and y along it from its middle, and its grain there."""
    outline = ring(panel["outline"])
    middle = (stub["from"] + stub["to"]) / 2
    wide, high = max(u for u, _ in outline) - stub["out"], max(v for _, v in outline) - stub["out"]
    turn = {
        "bottom": lambda u, v: (-v, u - middle), "top": lambda u, v: (v - high, u - middle),
        "left": lambda u, v: (-u, v - middle), "right": lambda u, v: (u - wide, v - middle),
    }[stub["edge"]]
    whole = Polygon([turn(u, v) for u, v in outline]).buffer(0)
    half = 1.5 * (stub["to"] - stub["from"] + stub.get("rise", 0.0))
    seen = whole.intersection(box(-half, -half, stub["out"] + 1, half))
    seen = max(getattr(seen, "geoms", [seen]), key=lambda piece: piece.area)
    return seen, half, (panel["grain"] == "v") == (stub["edge"] in ("bottom", "top"))


def meshed(shape, focus, fine=FINE):
    """Triangles of an area, fine round a box and coarse far from it."""
    near = lambda at: numpy.asarray(distance(points(at), focus)) < 3
    rim = []
    for edge in [shape.exterior, *shape.interiors]:
        corners = numpy.array(edge.coords)
        for start, end in zip(corners, corners[1:]):
            long = math.dist(start, end)
            # An arc comes as short chords.
            size = fine if near([start])[0] or near([end])[0] or near([(start + end) / 2])[0] else COARSE
            count = max(1, math.ceil(long / size))
            rim += [tuple(start + (end - start) * step / count) for step in range(count)]
    rim = numpy.array(rim)
    inner = []
    for size, wanted in ((fine, True), (COARSE, False)):
        low_x, low_y, high_x, high_y = shape.bounds
        rows = numpy.arange(low_y, high_y, size * math.sqrt(0.75))
        grid = numpy.array([(x + (row % 2) * size / 2, y) for row, y in enumerate(rows) for x in numpy.arange(low_x, high_x, size)])
        grid = grid[contains_xy(shape, grid[:, 0], grid[:, 1]) & (near(grid) == wanted)]
        inner.append(grid[numpy.asarray(distance(points(grid), shape.boundary)) > 0.6 * size])
    corners = numpy.vstack([rim, *inner])
    triangles = Delaunay(corners).simplices
    middles = corners[triangles].mean(axis=1)
    (ax, ay), (bx, by), (cx, cy) = (corners[triangles[:, at]].T for at in range(3))
    areas = abs((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2
    kept = triangles[contains_xy(shape, middles[:, 0], middles[:, 1]) & (areas > 1e-4)]
    used, numbers = numpy.unique(kept, return_inverse=True)
    return MeshTri(corners[used].T.copy(), numbers.reshape(kept.shape).T.copy())


class Plane:
    """What stands out in plane stress, held where its panel goes on, under a knock along the edge or against it at some facets."""

    def __init__(self, stub, panel, board):
        shape, self.half, standing = outwards(stub, panel)
        self.shape, self.thick = shape, board["thickness"]
        half = (stub["to"] - stub["from"]) / 2
        focus = box(-8, -half - 8, stub["out"], half + 8)
        self.mesh = meshed(shape, focus)
        self.basis = Basis(self.mesh, ElementVector(ElementTriP2()))
        along, across = (board["along"], board["across"]) if standing else (board["across"], board["along"])
        self.stiff = [along, across, board["panel_shear"]]

    def stress(self, u):
        """Along x, along y and in shear: a board stretched one way hardly shrinks the other way (0.03 to 0.07, from memory)."""
        strain, (x, y, shear) = grad(u), self.stiff
        return x * strain[0, 0], y * strain[1, 1], shear * (strain[0, 1] + strain[1, 0])

    def knocked(self, force, where):
        """Places and stresses, at the quadrature points of all elements."""
        @BilinearForm
        def strained(u, v, _):
            x, y, shear = self.stress(u)
            strain = grad(v)
            return self.thick * (x * strain[0, 0] + y * strain[1, 1] + shear * (strain[0, 1] + strain[1, 0]))

        facets = self.mesh.facets_satisfying(where, boundaries_only=True)
        side = FacetBasis(self.mesh, ElementVector(ElementTriP2()), facets=facets)
        long = numpy.sum(side.dx)
        load = LinearForm(lambda v, _: (force[0] * v[0] + force[1] * v[1]) / long).assemble(side)
        held = self.mesh.facets_satisfying(lambda x: (x[0] < 1 - self.half) | (abs(x[1]) > self.half - 1e-6), boundaries_only=True)
        found = solve(*condense(strained.assemble(self.basis), load, D=self.basis.get_dofs(held)))
        self.weights = self.basis.dx
        return self.basis.global_coordinates().value, numpy.array(self.stress(self.basis.interpolate(found)))


def most(stresses):
    """The largest principal stress, pulled or pressed."""
    x, y, shear = stresses
    return numpy.max(abs(x + y) / 2 + numpy.sqrt(((x - y) / 2) ** 2 + shear**2))


def knocks(strength, near):
    """Tabs and hooks on their true outlines, reliefs and all, knocked in their plane: the most stress anywhere, in the corner of a
    relief, beside what the formula has at the root, and beside what the board bears."""
    force, seen, ratios, borne = strength["knock"], set(), [], []
    for unit, stub in ((unit, stub) for unit in strength["units"] for stub in unit["stubs"]):
        kind = (stub["part"].split("-")[0], stub["edge"], unit["boards"][stub["stock"]]["thickness"])
        if kind in seen:
            continue
        seen.add(kind)
        panel = next(panel for panel in unit["parts"]["panels"] if panel["id"] == stub["part"])
        board = unit["boards"][stub["stock"]]
        plane = Plane(stub, panel, board)
        at, stresses = plane.knocked((0, force), lambda x: x[0] > stub["out"] - 1e-2)
        # The elements carry the moment of statics, in a stretch in the middle of what stands out.
        low, high = (share * stub.get("neck", stub["out"]) for share in (0.3, 0.6))
        within = (at[0] > low) & (at[0] < high)
        moment = numpy.sum((plane.weights * plane.thick * stresses[0] * at[1])[within]) / (high - low)
        near(f"moment in {kind}", abs(moment), force * (stub["out"] - (low + high) / 2), 0.03)
        bears = board["bearing"] * strength["short"]
        ratios.append(most(stresses) / stub["sections"]["root"]["in_plane"][0])
        borne.append(most(stresses) / bears)
        if "neck" in stub:
            _, pulled = plane.knocked((force, 0), lambda x: x[1] > (stub["to"] - stub["from"]) / 2 + stub["rise"] - 1e-2)
            borne.append(most(pulled) / bears)
    if len(seen) < 8 or not (min(ratios) > 1 and max(ratios) < 8 and max(borne) < 0.5):
        sys.exit(f"knock: {len(seen)} kinds, {ratios} times the formulas, {borne} of what the board bears")
    print(f"knock in the plane: {len(seen)} kinds; in the corner of a relief {min(ratios):.1f} to {max(ratios):.1f} times the formula of the root, at most {max(borne):.0%} of what the board bears")


def long_stub(near):
    """Of what is long and has no relief the formula is right: 100 by 20 mm, two thirds of its length from its end."""
    stub = {"from": 90.0, "to": 110.0, "out": 100.0, "edge": "top"}
    corners = [(0, 0), (200, 0), (200, 60), (110, 60), (110, 160), (90, 160), (90, 60), (0, 60)]
    panel = {"outline": [(u, v, 0) for u, v in corners], "grain": "v"}
    plane = Plane(stub, panel, {"along": 10048.0, "across": 7452.0, "panel_shear": 620.0, "thickness": 17.7})
    at, stresses = plane.knocked((0, 50.0), lambda x: x[0] > 100 - 1e-2)
    near_by = (abs(at[0] - 100 / 3) < FINE) & (abs(at[1]) > 9)
    # By least squares through the fibres there, out to the edge.
    share = numpy.sum(abs(stresses[0][near_by]) * abs(at[1][near_by])) / numpy.sum(at[1][near_by] ** 2)
    near("a long stub", share * 10, 6 * 50 * (200 / 3) / (17.7 * 20**2), 0.02)


def twisted(wide, high, shears=(1.0, 1.0)):
    """What a rectangular rod bears of a moment of 1 that twists it, by Prandtl's stress function: the most shear in the board's
    plane, along its width, and between its plies."""
    basis = Basis(MeshTri.init_tensor(numpy.linspace(0, wide, 41), numpy.linspace(0, high, 41)), ElementTriP2())
    in_plane, between = shears
    # φ is 0 all round; τ in the plane is its slope through the thickness, τ between plies that along the width.
    stiff = BilinearForm(lambda u, v, _: grad(u)[0] * grad(v)[0] / between + grad(u)[1] * grad(v)[1] / in_plane).assemble(basis)
    load = LinearForm(lambda v, _: 2.0 * v).assemble(basis)
    found = solve(*condense(stiff, load, D=basis.get_dofs()))
    moment = 2 * numpy.sum(basis.interpolate(found).value * basis.dx)
    slopes = basis.interpolate(found).grad
    return numpy.max(abs(slopes[1])) / moment, numpy.max(abs(slopes[0])) / moment


def twists(strength, near):
    """The formula for twist is that of one shear modulus. A board slides more easily between its plies than it shears in its
    plane: there it bears less than the formula has, and that is what is judged."""
    force, shares, seen = strength["knock"], [], set()
    for unit in strength["units"]:
        for stub in unit["stubs"]:
            for section in stub["sections"].values():
                wide, thick = section["width"], section["thickness"]
                if (round(wide, 1), thick) in seen:
                    continue
                seen.add((round(wide, 1), thick))
                moment, alone = force * section["beside"], 1.5 * force / (wide * thick)
                near("shear and twist", section["across"][1] - alone, moment * max(twisted(wide, thick)), 0.02, 1e-9)
                board = unit["boards"][stub["stock"]]
                shares.append(twisted(wide, thick, (board["panel_shear"], board["planar"]))[1] / max(twisted(wide, thick)))
    if not max(shares) < 1:
        sys.exit(f"twist: {max(shares)} times the formula between plies")
    print(f"twist: between plies {min(shares):.0%} to {max(shares):.0%} of the formula")


THROUGH = 600.0  # N/mm²: a board's modulus through its thickness, from memory; it has little to bear that way


def hook_in_space(stub, board, force):
    """A hook without its reliefs, in three dimensions, knocked across its face at the tip of its nose: places and stresses."""
    neck, out, deep, thick = stub["neck"], stub["out"], stub["to"] - stub["from"], board["thickness"]
    cells = lambda *stretches: numpy.unique(numpy.concatenate([numpy.linspace(low, high, count + 1) for low, high, count in stretches]))
    x = cells((-36, 0, 4), (0, neck, 4), (neck, out, 3))
    y = cells((-36, 0, 3), (0, deep, 4), (deep, deep + stub["rise"], 3), (deep + stub["rise"], deep + 56, 3))
    whole = MeshHex.init_tensor(x, y, numpy.linspace(0, thick, 4))
    middle = whole.p[:, whole.t].mean(axis=1)
    stands_out = (middle[0] > 0) & ((middle[1] < 0) | (middle[1] > deep + stub["rise"]) | ((middle[1] > deep) & (middle[0] < neck)))
    mesh = whole.restrict(numpy.flatnonzero(~stands_out))
    element = ElementVector(ElementHex2())
    basis = Basis(mesh, element, intorder=4)
    # Along x uprights have the grain across.
    normal = [board["across"], board["along"], THROUGH]
    shears = {(0, 1): board["panel_shear"], (0, 2): board["planar"], (1, 2): board["planar"]}

    def stress(u):
        strain = grad(u)
        return [normal[at] * strain[at, at] for at in range(3)], {pair: share * (strain[pair] + strain[pair[::-1]]) for pair, share in shears.items()}

    @BilinearForm
    def strained(u, v, _):
        pulled, sheared = stress(u)
        strain = grad(v)
        return sum(pulled[at] * strain[at, at] for at in range(3)) + sum(sheared[pair] * (strain[pair] + strain[pair[::-1]]) for pair in shears)

    tip = mesh.facets_satisfying(lambda x: (x[1] > deep + stub["rise"] - 1e-6) & (x[0] > neck + 1e-6), boundaries_only=True)
    side = FacetBasis(mesh, element, facets=tip, intorder=4)
    area = numpy.sum(side.dx)
    load = LinearForm(lambda v, _: force / area * v[2]).assemble(side)
    held = mesh.facets_satisfying(lambda x: (x[0] < -36 + 1e-6) | (x[1] < -36 + 1e-6) | (x[1] > deep + 56 - 1e-6), boundaries_only=True)
    found = solve(*condense(strained.assemble(basis), load, D=basis.get_dofs(held)))
    pulled, sheared = stress(basis.interpolate(found))
    return basis.global_coordinates().value, pulled[0], sheared


def knocked_across(strength, near):
    """A hook in space: in the middle of its neck the formula of bending holds, and what plies bear on each other is less than
    that of shear and twist has at the root."""
    force, seen = strength["knock"], {}
    for unit, stub in ((unit, stub) for unit in strength["units"] for stub in unit["stubs"] if "neck" in stub):
        seen.setdefault(round(stub["neck"]), (unit["boards"]["body"], stub))
    bends, shears = [], []
    for board, stub in seen.values():
        at, pulled, sheared = hook_in_space(stub, board, force)
        deep, thick = stub["to"] - stub["from"], board["thickness"]
        neck = (at[1] > 0) & (at[1] < deep)
        middle = neck & (abs(at[0] - stub["neck"] / 2) < stub["neck"] / 20)
        # The elements carry the moment of statics there.
        formula = 6 * force * (stub["out"] - stub["neck"] / 2) / (deep * thick**2)
        bends.append(numpy.max(abs(pulled[middle])) / formula)
        whole = neck & (at[0] > 0.1 * stub["neck"]) & (at[0] < 0.9 * stub["neck"])
        root = stub["sections"]["root"]["across"]
        shears.append(numpy.max(abs(sheared[(0, 2)][whole])) / root[1])
        near("bending in a neck, at its root", numpy.max(abs(pulled[neck])), 0.0, 0, 0.5 * board["bearing"] * strength["short"])
    if len(seen) < 2 or not (0.9 < min(bends) and max(bends) < 1.5 and 0.4 < min(shears) and max(shears) < 0.8):
        sys.exit(f"knock across a hook: {bends} times the formula of bending, {shears} of that of shear")
    print(f"knock across a hook: in its neck {min(bends):.2f} to {max(bends):.2f} times the formula of bending, between plies {min(shears):.0%} to {max(shears):.0%} of that of shear and twist")


def pushes(strength, near):
    """Staves, stiles and stops as beams under a push in the middle; leaves as plates, held by their pivots and their stop."""
    force, shears, leaves, twists, seen = strength["push"], [], [], [], set()
    for unit in strength["units"]:
        board = unit["boards"]["body"]
        for part in unit["slender"]:
            key = (part["part"].split("-")[0], round(part["height"]), round(part["width"]))
            if key in seen:
                continue
            seen.add(key)
            long, wide = part["height"], part["width"]
            inertia = wide * board["thickness"] ** 3 / 12
            model, places = beam(long, inertia, board["along"], (0.0, long), 0.0, [(long / 2, force)])
            near(f"push on {key}", part["bent"], sag_at(model, places, long / 2), 0.002)
            shears.append(part["bow"] / part["bent"] - 1)
            if part["pivot"] is not None:
                # A strip from end to end is the formula; a low wide leaf spans from its pivots to its stop as well.
                bend = leaf(part, board, force)
                twists.append(corner(part, board, force) / part["twist"])
                leaves.append((bend / part["bow"], bend * strength["push_span_over"] / max(long, wide), long > 1.5 * wide))
    kinds = {kind for kind, _, _ in seen}
    tall, low = ([share for share, _, is_tall in leaves if is_tall is wanted] for wanted in (True, False))
    most_of_all = max(share for _, share, _ in leaves)
    if kinds != {"stile", "stop", "stave", "leaf"} or not (max(tall) < 1.05 and most_of_all < 0.3):
        sys.exit(f"push: {kinds}, leaves {leaves}")
    # Between its corners a plate is no even saddle: it gives a little less.
    if not 0.9 < min(twists) <= max(twists) < 1.0:
        sys.exit(f"push at the free corner of leaves: {twists} of the formula")
    print(f"push: the free corner of leaves gives {min(twists):.1%} to {max(twists):.1%} of the formula")
    print(f"push: {len(seen)} parts, shear adds {min(shears):.1%} to {max(shears):.1%}; leaves as plates bend {min(tall):.0%} to {max(tall):.0%} of the strip that the core takes, those that are not tall {min(low):.0%} to {max(low):.0%}; at most {most_of_all:.0%} of what the range allows")


def leaf(part, board, force):
    """How far a push in the middle bends a leaf that its pivots hold at two points and its stop along its free edge."""
    high, wide = part["height"], part["width"]
    free = wide if part["pivot"] < wide / 2 else 0.0
    return plywood(part, board, force, (high / 2, wide / 2), [], lambda x: abs(x[1] - free) < 1e-6)


def corner(part, board, force):
    """How far a push at its lower free corner moves a leaf that its pivots and its upper free corner hold."""
    high, wide = part["height"], part["width"]
    free = wide if part["pivot"] < wide / 2 else 0.0
    return plywood(part, board, force, (0.0, free), [(high, free)], None)


def plywood(part, board, force, pushed, points, line):
    """How far a plate on its pivots moves where it is pushed, held at points and along a line as well."""
    high, wide = part["height"], part["width"]
    mesh = MeshTri.init_tensor(numpy.linspace(0, high, 41), numpy.union1d(numpy.linspace(0, wide, 25), [part["pivot"]]))
    basis = Basis(mesh, ElementTriMorley())
    up, across, twist = (board[key] * board["thickness"] ** 3 / 12 for key in ("along", "across", "panel_shear"))

    @BilinearForm
    def bent(u, v, _):
        return up * dd(u)[0, 0] * dd(v)[0, 0] + across * dd(u)[1, 1] * dd(v)[1, 1] + 4 * twist * dd(u)[0, 1] * dd(v)[0, 1]

    at = lambda x, y: int(numpy.argmin((mesh.p[0] - x) ** 2 + (mesh.p[1] - y) ** 2))
    corners = basis.nodal_dofs[0]
    held = [corners[at(*spot)] for spot in [(0.0, part["pivot"]), (high, part["pivot"]), *points]]
    if line is not None:
        held = numpy.union1d(held, basis.get_dofs(mesh.facets_satisfying(line)).all("u"))
    load = numpy.zeros(basis.N)
    there = corners[at(*pushed)]
    load[there] = force
    return solve(*condense(bent.assemble(basis), load, D=numpy.array(held)))[there]


# Of veneers along the tension; what does not run one way of a board runs the other way: from memory.
VENEER = 17500


def lifted(case):
    """A stop's tongue lifted at the tip of its nose by a newton: how far that goes, how far the end of its upper side goes, and the
    most stress beside its root."""
    corners = numpy.array(ring(case["outline"]))
    out = corners[corners[:, 0] < -1]
    tip, over = out[numpy.argmin(out[:, 1])], out[:, 1].max()
    end = out[(out[:, 1] > over - 1e-6)][:, 0].min()
    root, low = max(u for u, v, _ in case["outline"] if abs(v - over) < 1e-6), over - 140
    shape = Polygon(corners).buffer(0).intersection(box(-60, low, 400, over + 60))
    mesh = meshed(shape, box(root - 15, tip[1] - 12, root + 6, over + 3), 0.3)
    basis, board = Basis(mesh, ElementVector(ElementTriP2())), case["board"]
    stiff = board["plane_across"], VENEER - board["plane_across"], board["panel_shear"]

    def stress(u):
        strain = grad(u)
        return stiff[0] * strain[0, 0], stiff[1] * strain[1, 1], stiff[2] * (strain[0, 1] + strain[1, 0])

    @BilinearForm
    def strained(u, v, _):
        (x, y, shear), strain = stress(u), grad(v)
        return board["thickness"] * (x * strain[0, 0] + y * strain[1, 1] + shear * (strain[0, 1] + strain[1, 0]))

    load, moves = numpy.zeros(basis.N), lambda at: basis.nodal_dofs[1, numpy.argmin(((mesh.p.T - at) ** 2).sum(1))]
    load[moves(tip)] = 1
    # The stop goes on below, and its tab stands in the top.
    top = corners[:, 1].max()
    held = mesh.facets_satisfying(lambda x: (x[1] < low + 1e-6) | (x[1] > top - 1e-6), boundaries_only=True)
    found = solve(*condense(strained.assemble(basis), load, D=basis.get_dofs(held)))
    at, stresses = basis.global_coordinates().value, numpy.array(stress(basis.interpolate(found)))
    return found[moves(tip)], found[moves((end, over))], most(stresses[:, at[0] > root / 2])


def detents(strength, near):
    """Tongues of stops on their true outlines: how they give with the wood behind them, what the corners at their root bear, and how
    far the top lets them go."""
    ratios = []
    for case in strength["detents"]:
        by, end, stress = lifted(case)
        near("force on a tongue", 1 / by, case["force"], 0.03)
        near("lift of a nose", case["travel"] * by / end, case["lifts"], 0.01)
        ratios.append(stress / by / case["stress"])
    if len(ratios) < 5 or not 0.85 < min(ratios) <= max(ratios) < 1.0:
        sys.exit(f"detents: {ratios} of what the formula has at the root")
    print(f"detents: {len(ratios)} tongues; their corners bear {min(ratios):.0%} to {max(ratios):.0%} of what the formula has")


def check(strength, near):
    detents(strength, near)
    long_stub(near)
    knocks(strength, near)
    knocked_across(strength, near)
    twists(strength, near)
    pushes(strength, near)
