"""The core's strength, stability and fit, by libraries that are not ours.

Reads the figures that `figures` writes and says what differs. Sources stand beside each check.
"""

import itertools
import json
import math
import sys

import numpy
from Pynite import FEModel3D
from scipy import stats
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import eigsh, spsolve
from skfem import Basis, BilinearForm, ElementTriMorley, condense, solve
from skfem.helpers import dd, grad

import business
import packs
import racking
import strength
from elements import beam, plate, rectangle, sag_at

G = 9.80665  # m/s², ISO 80000-3:2006, 3-9.1

checks = 0
ALL = object()  # held everywhere


def near(what, found, wanted, share, least=0.0):
    """Counts a check and stops at what differs by more than a share."""
    global checks
    checks += 1
    if abs(found - wanted) > max(abs(wanted) * share, least):
        sys.exit(f"{what}: {found} against {wanted}, more than {share:.2%} apart")


def sheared(span, rigid, slides, spread=0.0, points=()):
    """Deflection in mid-span of a Timoshenko beam on simple supports, by linear elements of one Gauss point each for
    deflection and turn of the section: bending on the turn alone, shear on what lies between it and the slope."""
    count = 4000
    long = span / count
    ends = numpy.arange(count)
    rows, columns, values = [], [], []
    # Degrees of freedom: deflection 2 i, turn 2 i + 1.
    slope = numpy.array([-1 / long, -0.5, 1 / long, -0.5])
    turned = numpy.array([0, -1 / long, 0, 1 / long])
    element = (numpy.outer(slope, slope) / slides + numpy.outer(turned, turned) * rigid) * long
    for one in range(4):
        for other in range(4):
            rows.append(2 * ends + one)
            columns.append(2 * ends + other)
            values.append(numpy.full(count, element[one, other]))
    size = 2 * (count + 1)
    stiff = csc_matrix((numpy.concatenate(values), (numpy.concatenate(rows), numpy.concatenate(columns))), (size, size))
    load = numpy.zeros(size)
    load[0::2] = spread * long
    load[0] = load[-2] = spread * long / 2
    for at, force in points:
        load[2 * round(at / long)] += force
    free = numpy.setdiff1d(numpy.arange(size), [0, size - 2])
    found = numpy.zeros(size)
    found[free] = spsolve(stiff[free][:, free], load[free])
    return found[count]


def slides(case):
    """1 / (G A') of a strip 1 mm wide, A' = 5/6 of its section."""
    return 1 / (case["planar"] * case["thickness"] * 5 / 6)


def shelves(figures):
    # Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 and table 9-1: simple ends, uniform load.
    for case in figures["shelves"]:
        span, thick, stiffness = case["span"], case["thickness"], case["stiffness"]
        inertia, spread = thick**3 / 12, case["load"] * G / 1e6  # N/mm² on a strip 1 mm wide
        model, places = beam(span, inertia, stiffness, (0.0, span), spread)
        near("sag of a shelf, bent", case["bent"], sag_at(model, places, span / 2), 0.002)
        both = lambda long: sheared(long, stiffness * inertia, slides(case), spread)
        near("sag of a shelf", case["sag"], both(span), 0.002)
        near("widest span", both(case["widest"]), case["widest"] / 200, 0.002)
    shares = [case["sag"] / case["bent"] - 1 for case in figures["shelves"]]
    print(f"shear adds {min(shares):.1%} to {max(shares):.1%}")
    for case in figures["points"]:
        span, rigid = case["span"], case["stiffness"] * case["thickness"] ** 3 / 12
        points = [(case["from"], case["force"] / case["strip"])]
        near("sag under a force", case["sag"], sheared(span, rigid, slides(case), 0.0, points), 0.002)


def two_bays(figures):
    # Lindeburg, Civil Engineering Reference Manual, 15th ed.: two equal spans, 0.00541 w L⁴/(E I) at 0.4215 L.
    case = next(case for case in figures["shelves"] if case["span"] == 800.0)
    span, inertia, spread = case["span"], case["thickness"] ** 3 / 12, case["load"] * G / 1e6
    model, places = beam(2 * span, inertia, case["stiffness"], (0.0, span, 2 * span), spread)
    whole = spread * span**4 / (case["stiffness"] * inertia)
    found = sag_at(model, places, 0.4215 * span)
    near("two bays", found / whole, 0.00541, 0.003)
    # The core takes each bay by itself: on the safe side, by 5/384 over 0.00541.
    near("one bay for two", case["bent"] / found, 5 / 384 / 0.00541, 0.005)


def leaf():
    # Wood Handbook, table 9-1: cantilever, uniform load, 1/8; an open leaf's own weight on its lower pivot's line.
    span, inertia, stiffness, spread = 500.0, 900.0 * 17.7**3 / 12, 7452.0, 0.1
    model = FEModel3D()
    model.add_material("wood", stiffness, stiffness / 16, 0.3, 0)
    model.add_section("strip", 1e5, inertia, inertia, inertia)
    model.add_node("root", 0, 0, 0)
    model.add_node("tip", span, 0, 0)
    model.def_support("root", True, True, True, True, True, True)
    model.add_member("leaf", "root", "tip", "wood", "strip")
    model.add_member_dist_load("leaf", "FY", -spread, -spread)
    model.analyze_linear()
    near("cantilever", -model.members["leaf"].deflection("dy", span), spread * span**4 / (8 * stiffness * inertia), 0.002)


def plates(figures):
    # Roark's Formulas, 7th ed., table 11.4, case 1a: 420 × 300, t 17.6, E 8000, q 0.0024 N/mm²: 0.0343 mm.
    mesh = rectangle(420, 300, 57, 41)
    sides = lambda x: (x[0] < 1e-6) | (x[0] > 420 - 1e-6) | (x[1] < 1e-6) | (x[1] > 300 - 1e-6)
    basis, bent, pressed, edge, _ = plate(mesh, 8000, 17.6, 0.3, 0.0024, sides)
    found = solve(*condense(bent, pressed, D=edge))
    near("plate on four edges", found[basis.nodal_dofs[0]].max(), 0.0343, 0.01)
    # A shelf 800 × 300 on two edges is a beam as long as nothing is held crosswise (ν = 0).
    mesh = rectangle(800, 300, 65, 25)
    ends = lambda x: (x[0] < 1e-6) | (x[0] > 800 - 1e-6)
    case = next(case for case in figures["shelves"] if (case["span"], case["stiffness"]) == (800.0, 10048.0))
    basis, bent, pressed, edge, _ = plate(mesh, 10048, 17.6, 0.0, case["load"] * G / 1e6, ends)
    found = solve(*condense(bent, pressed, D=edge))
    near("shelf as a plate", case["bent"], found[basis.nodal_dofs[0]].max(), 0.01)


def buckles(high, deep, rigid, held_at, forces, lines=48, rows=12):
    """The factor on forces under which an orthotropic plate buckles, by Morley elements (scikit-fem): held at both
    ends, and at its rear at these heights, or all along it. rigid: D11 upwards, D22 across, D66. forces: height at which
    each comes in, its share of the depth from the front on, the force."""
    mesh = rectangle(high, deep, lines + 1, rows + 1)  # y = 0 is the rear
    basis = Basis(mesh, ElementTriMorley())
    up, across, twist = rigid

    @BilinearForm
    def bent(u, v, w):
        return up * dd(u)[0, 0] * dd(v)[0, 0] + across * dd(u)[1, 1] * dd(v)[1, 1] + 4 * twist * dd(u)[0, 1] * dd(v)[0, 1]

    @BilinearForm
    def pushed(u, v, w):
        along, front = w.x[0], w.x[1]
        there = [force / (share * deep) * ((along < at) & (front > deep * (1 - share))) for at, share, force in forces]
        return sum(there) * grad(u)[0] * grad(v)[0]

    held = lambda x: (x[0] < 1e-6) | (x[0] > high - 1e-6) | ((x[1] < 1e-6) & (held_at is ALL))
    edge = basis.get_dofs(mesh.facets_satisfying(held)).all("u")
    if held_at is not ALL:
        # A hook holds the corner of the mesh that is nearest to it.
        rear = numpy.flatnonzero(mesh.p[1] < 1e-6)
        nearest = [rear[numpy.argmin(abs(mesh.p[0][rear] - at))] for at in held_at]
        edge = numpy.union1d(edge, basis.nodal_dofs[0][nearest])
    free = numpy.setdiff1d(numpy.arange(basis.N), edge)
    stiff, geometric = bent.assemble(basis)[free][:, free], pushed.assemble(basis)[free][:, free]
    found = eigsh(geometric, k=1, M=stiff, which="LA", tol=1e-6, return_eigenvectors=False)
    return 1 / found[0]


def rigidity(case, bending, across, twisting, by=1.0):
    return [case[key] / by * case["thickness"] ** 3 / 12 for key in (bending, across, twisting)]


def buckling(figures):
    global checks
    # Bank and Yin (1996), Kollár (2002): orthotropic strip, one long edge held, the other free; from memory, so the
    # finite elements are the judge. The formula leaves the strip straight across, so it comes out a little higher.
    for case in figures["strips"]:
        deep, high = case["depth"], case["height"]
        rigid = rigidity(case, "bending", "across", "twisting")
        near("strip held along the back", case["held"], buckles(high, deep, rigid, ALL, [(high, 1.0, 1.0)]), 0.04)
        # Between two hooks, free at both edges: a plate as high as that, held at its ends. A wide low one gives way at its
        # edges first, which the column does not know.
        between = case["between"]
        if between > deep:
            near("free column", case["free"], buckles(between, deep, rigid, [], [(between, 1.0, 1.0)]), 0.04)
    # Whole units: each shelf's load where its ears bring it in, the top's on the whole depth, held by its hooks. The
    # core never lets an upright carry more than that.
    spare = []
    for case in [cabinet["upright"] for cabinet in figures["cabinets"]]:
        high, own = case["height"], case["density"] * case["thickness"] / 1000
        sides = []
        for bay in case["bays"]:
            on = lambda load, depth: (load + own) * bay["clear"] * depth / 1e6 * G / 2
            shelves = [(at, case["slot"], on(case["on_shelf"], case["depth"])) for at in bay["shelves"]]
            sides.append(shelves + [(high, 1.0, on(case["on_top"], case["top_depth"]))])
        rigid = rigidity(case, "along", "across", "twisting", 1 + case["creep"])
        uprights = [left + right for left, right in zip([[]] + sides, sides + [[]])]
        heaviest = max(uprights, key=lambda forces: sum(force for *_, force in forces))
        real = buckles(high, case["depth"], rigid, case["hooks"], heaviest)
        spare.append(real / case["times"])
        checks += 1
        if case["times"] > real:
            sys.exit(f"buckling: {case['times']} times its load, finite elements say {real}")
    if len(spare) < 20:
        sys.exit(f"buckling: only {len(spare)} units were judged")
    print(f"uprights buckle at {min(spare):.2f} to {max(spare):.2f} times what the core lets them carry")


def stability(figures):
    rises = []
    for case in figures["cabinets"]:
        points = [(kg, behind, up) for kg, behind, up in case["burdens"]]
        tilt = tipped(points)
        near("slope that tips", case["steepest"], math.tan(tilt), 1e-4)
        near("moment by hand", case["left"], sum(kg * G * behind / 1000 for kg, behind, _ in points), 1e-9)
        # From each part's exact centre of gravity, every combination of open leaves: the worst is all open,
        # and the core's middles of rectangles are near it.
        leaves = [at for at, part in enumerate(case["parts"]) if part["axis"]]
        angles = {}
        for states in itertools.product((False, True), repeat=len(leaves)):
            opened = {leaf for leaf, is_open in zip(leaves, states) if is_open}
            angles[states] = tipped([point(part, at in opened, case["foot"][0]) for at, part in enumerate(case["parts"])])
        worst = min(angles, key=angles.get)
        if not all(worst):
            sys.exit(f"stability: {worst} is worse than all leaves open")
        near("slope from centres of gravity", case["steepest"], math.tan(angles[worst]), 0.05, 0.005)
        pushes(case, leaves, rises)
    print(f"of {len(rises)} pushes {sum(rises)} raise the case out of its base")


def pushes(case, leaves, rises):
    """The least push at the top to each side over every combination of open leaves, empty and loaded, by moments: of the whole unit over
    its foot, or of what its uprights carry, which nothing but weight keeps in the base."""
    (_, depth, high), loads = case["size"], case["loads"]
    more = [(loads["on_shelf"] * area / 1e6, x, loads["behind"]) for area, x in loads["shelves"]]
    area, middle = case["top"]
    more.append((loads["on_top"] * area / 1e6, middle, depth / 2))
    front, rear, left, right = case["foot"]
    sides = [lambda x, y: y - front, lambda x, y: rear - y, lambda x, y: x - left, lambda x, y: right - x]
    case_front, case_rear, case_left, case_right, low = case["uprights"]
    edges = [lambda x, y: y - case_front, lambda x, y: case_rear - y, lambda x, y: x - case_left, lambda x, y: case_right - x]
    kinds = [part["part"].split("-")[0] for part in case["parts"]]
    for side, edge, arc, found in zip(sides, edges, [None, None, *case["arcs"]], case["pushes"]):
        moment = lambda parts: sum(kg * G * side(x, y) for kg, x, y in parts)
        # A foot that ends in an arc ends there where the common centre goes over it.
        further = lambda parts: 0 if arc is None else curve(parts, *arc)
        states = []
        for state in itertools.product((False, True), repeat=len(leaves)):
            opened = {leaf for leaf, is_open in zip(leaves, state) if is_open}
            states.append([placed(part, at in opened) for at, part in enumerate(case["parts"])])
        worst = min(states, key=moment)
        # A leaf leans with the case about its lower pivot; stiles, stops and staves stand beside it.
        about = lambda part: edge(*part["axis"]) if part["axis"] else 0
        raised = lambda state: sum(kg * G * (edge(x, y) - about(part)) for (kg, x, y), part, kind in zip(state, case["parts"], kinds)
                                   if kind in ("upright", "back", "shelf", "leaf", "top"))
        least = min(map(raised, states))
        for name, parts, loads_on, force in [("empty", worst, [], found[0]), ("loaded", worst + more, more, found[1])]:
            tied = max(moment(parts) - further(parts), 0) / high
            alone = max(least + sum(kg * G * edge(x, y) for kg, x, y in loads_on), 0) / (high - low)
            near(f"push, {name}", force, min(tied, alone), 1e-9, 1e-9)
            rises.append(alone < tied)
    front, _, left, right = [empty for empty, _ in case["pushes"]]
    near("least push", case["least"], min(front, left, right), 1e-12)


def curve(parts, middle, radius):
    """How much less masses hold a unit whose foot is an arc there than one that is straight at its outermost point."""
    weight = sum(kg * G for kg, _, _ in parts)
    behind = sum(kg * G * y for kg, _, y in parts) / weight
    return weight * (radius - (radius ** 2 - (behind - middle) ** 2) ** 0.5)


def placed(part, is_open):
    """A part's mass from left to right and from front to rear."""
    x, y, _ = part["at"]
    if is_open:
        axis_x, axis_y = part["axis"]
        x, y = axis_x, axis_y - abs(x - axis_x)
    return part["kg"], x, y


def point(part, is_open, edge):
    """A part's mass behind the foot's edge and over the floor; an open leaf is turned about its pivots."""
    x, y, z = part["at"]
    if is_open:
        y = part["axis"][1] - abs(x - part["axis"][0])
    return part["kg"], y - edge, z


def tipped(points):
    """The tilt at which mass points fall over their edge, by turning them in ever smaller steps."""
    angle, step = 0.0, math.radians(1)
    while step > 1e-7:
        turned = angle + step
        if sum(kg * (behind * math.cos(turned) - up * math.sin(turned)) for kg, behind, up in points) > 0:
            angle = turned
        else:
            step /= 10
    return angle


def fits(figures):
    # Monte Carlo, PCG64 with a fixed seed: within four standard errors; SciPy's normal distribution exactly.
    draw = numpy.random.Generator(numpy.random.PCG64(20261126))
    count = 400_000
    for case in figures["fits"]:
        mean, shared, own = case["mean"], case["shared"], case["own"]
        sigma = math.hypot(shared, own)
        near("tight", case["tight"], stats.norm.cdf(0, mean, sigma), 1e-9)
        outside = stats.norm.cdf(0.1, mean, sigma) + stats.norm.sf(0.2, mean, sigma)
        near("outside", case["outside"], outside, 1e-9)
        of_panel = draw.normal(mean, shared, count)
        joints = of_panel[:, None] + draw.normal(0, own, (count, 12))
        drawn = [("tight", case["tight"], (joints[:, 0] < 0).mean()),
                 ("outside", case["outside"], ((joints[:, 0] < 0.1) | (joints[:, 0] > 0.2)).mean()),
                 ("any of twelve", case["any_of_12"], (joints < 0).any(axis=1).mean())]
        for what, share, found in drawn:
            near(f"{what}, drawn", found, share, 0, 4 * math.sqrt(max(share, 1 / count) * (1 - share) / count))


if __name__ == "__main__":
    figures = json.load(sys.stdin)
    for check in (shelves, two_bays, plates, buckling, stability, fits):
        check(figures)
    leaf()
    business.check(figures, near)
    packs.check(figures["packs"], near)
    strength.check(figures["strength"], near)
    racking.check(figures["strength"], near)
    print(f"{checks} figures agree")
