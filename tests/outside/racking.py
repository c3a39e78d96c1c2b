"""Racking of whole units: how far a push at the top leans it, by a plane model of finite elements and contacts.

Seen from the front. The base stands on the floor. Uprights are beams (Hermite elements) whose tabs stand in the base and in the
top with their clearances; the back is a sheet in plane stress that hangs on the hooks, stands on the base and has tabs in base
and top; shelves and the top are rigid. Parts touch where joints say so, without friction: it would only help. Their own weight
holds them down, and nothing stands on them. Left out as well: what stiles, stops, leaves and staves hold, and the slots of the back.
"""

import sys

import numpy
from scipy.sparse import block_diag, coo_matrix, csc_matrix, diags
from scipy.sparse.linalg import splu
from skfem import Basis, BilinearForm, ElementLineHermite, ElementQuad2, ElementVector, MeshLine, MeshQuad
from skfem.helpers import dd, ddot, grad

G = 9.80665  # m/s², ISO 80000-3:2006, 3-9.1
TOUCH = 2e4  # N/mm: what touches gives way by a micrometre or so
HAND = 50.0  # N: a hand that leans on it
NEAR = 2.0  # N/mm that hold each part where the round before left it


class Model:
    """Bodies with their degrees of freedom, and what may touch: rows, each with the gap that it leaves."""

    def __init__(self):
        self.stiffness, self.near, self.force, self.rows, self.gaps = [], [], [], [], []
        self.size = 0

    def body(self, stiffness):
        """The number of a body's first degree of freedom."""
        first, self.size = self.size, self.size + stiffness.shape[0]
        self.stiffness.append(stiffness)
        self.near += [NEAR / stiffness.shape[0]] * stiffness.shape[0]
        self.force += [0.0] * stiffness.shape[0]
        return first

    def touch(self, row, gap):
        """Keeps a sum of moves, by number of the degree of freedom, at most as large as a gap."""
        self.rows.append(row)
        self.gaps.append(gap)

    def within(self, one, other, play):
        """Keeps two moves at most so far apart, to both sides."""
        apart = minus(one, other)
        self.touch(apart, play)
        self.touch({at: -share for at, share in apart.items()}, play)

    def solve(self, extra):
        """The moves of least energy.

        Each round looks near the last one (a proximal point), so that what nothing holds goes no further than it must; in it Newton's
        method, with a line search, on a convex function that is quadratic in pieces.
        """
        rows = [number for number, row in enumerate(self.rows) for _ in row]
        places = [at for row in self.rows for at in row]
        shares = [share for row in self.rows for share in row.values()]
        touches = coo_matrix((shares, (rows, places)), (len(self.rows), self.size)).tocsr()
        near = numpy.array(self.near)
        stiff = block_diag(self.stiffness, format="csr") + diags(near)
        force, gaps = numpy.array(self.force), numpy.array(self.gaps)
        for at, share in extra.items():
            force[at] += share
        moves = numpy.zeros(self.size)
        for _ in range(300):
            last = moves
            moves = nearest(stiff, force + near * last, touches, gaps, last)
            if abs(moves - last).max() < 1e-5:
                return moves
        raise SystemExit("racking: the unit does not come to rest")


def nearest(stiff, force, touches, gaps, moves):
    for _ in range(200):
        into = touches @ moves - gaps
        active = touches[into > 0]
        slope = stiff @ moves - force + TOUCH * (active.T @ into[into > 0])
        if abs(slope).max() < 1e-4:
            return moves
        step = splu(csc_matrix(stiff + TOUCH * (active.T @ active))).solve(-slope)
        # As far along the step as the energy falls.
        start, bend, more = step @ (stiff @ moves - force), step @ (stiff @ step), touches @ step
        falls = lambda share: start + share * bend + TOUCH * (more @ numpy.maximum(into + share * more, 0)) < 0
        low, high = (1.0, 1.0) if falls(1.0) else (0.0, 1.0)
        while high - low > 1e-9:
            low, high = ((low + high) / 2, high) if falls((low + high) / 2) else (low, (low + high) / 2)
        moves = moves + (low + high) / 2 * step
    raise SystemExit(f"racking: the contacts do not settle, {abs(slope).max()} N are left")


def minus(one, other):
    row = dict(one)
    for at, share in other.items():
        row[at] = row.get(at, 0.0) - share
    return row


class Rigid:
    """A part that moves and turns in the plane about its middle."""

    def __init__(self, model, middle):
        self.first, self.middle = model.body(csc_matrix((3, 3))), middle

    def x(self, _, z):
        return {self.first: 1.0, self.first + 2: -(z - self.middle[1])}

    def z(self, x, _):
        return {self.first + 1: 1.0, self.first + 2: x - self.middle[0]}

    def weigh(self, model, weight):
        model.force[self.first + 1] -= weight


class Beam:
    """An upright: it bends to the side, and moves up and down as a whole."""

    def __init__(self, model, middle, heights, rigid):
        self.heights, self.middle = apart(heights, 8.0), middle
        basis = Basis(MeshLine(self.heights), ElementLineHermite())
        bent = BilinearForm(lambda u, v, _: rigid * ddot(dd(u), dd(v))).assemble(basis)
        self.at, self.slope = basis.nodal_dofs
        # Nodes of the mesh stand in the order of their heights.
        self.first = model.body(block_diag([bent, csc_matrix((1, 1))], format="csr"))
        self.up = self.first + bent.shape[0]

    def node(self, z):
        return int(numpy.argmin(abs(self.heights - z)))

    def x(self, _, z):
        return {self.first + int(self.at[self.node(z)]): 1.0}

    def z(self, x, z):
        # What leans to the right goes down at its right edge.
        return {self.up: 1.0, self.first + int(self.slope[self.node(z)]): -(x - self.middle)}

    def weigh(self, model, weight):
        model.force[self.up] -= weight


class Sheet:
    """The back, in plane stress."""

    def __init__(self, model, across, up, board):
        lines = [filled(values, 90.0) for values in (across, up)]
        self.mesh = MeshQuad.init_tensor(*lines)
        basis = Basis(self.mesh, ElementVector(ElementQuad2()))
        # In its plane a board is about as stiff along as across; what is less in bending is on the safe side.
        young, shear, thick = min(board["along"], board["across"]), board["panel_shear"], board["thickness"]

        @BilinearForm
        def strained(u, v, _):
            u, v = grad(u), grad(v)
            return thick * (young * (u[0, 0] * v[0, 0] + u[1, 1] * v[1, 1]) + shear * (u[0, 1] + u[1, 0]) * (v[0, 1] + v[1, 0]))

        self.basis = basis
        self.first = model.body(strained.assemble(basis))

    def nearest(self, x, z):
        return int(numpy.argmin((self.mesh.p[0] - x) ** 2 + (self.mesh.p[1] - z) ** 2))

    def x(self, x, z):
        return {self.first + int(self.basis.nodal_dofs[0][self.nearest(x, z)]): 1.0}

    def z(self, x, z):
        return {self.first + int(self.basis.nodal_dofs[1][self.nearest(x, z)]): 1.0}

    def weigh(self, model, weight):
        corners = self.basis.nodal_dofs[1]
        for at in corners:
            model.force[self.first + int(at)] -= weight / len(corners)


class Ground:
    """What does not move."""

    def x(self, *_):
        return {}

    def z(self, *_):
        return {}


def apart(values, least):
    """Places in their order, without those that are nearly one: short elements are so stiff that nothing else is seen."""
    kept = []
    for value in sorted(values):
        if not kept or value - kept[-1] >= least:
            kept.append(value)
    return numpy.array(kept)


def filled(values, wide):
    """Places in their order, with others between them where they are far apart."""
    values = apart(values, 8.0)
    pieces = [numpy.linspace(low, high, max(1, round((high - low) / wide)) + 1)[:-1] for low, high in zip(values, values[1:])]
    return numpy.append(numpy.concatenate(pieces), values[-1])


def model_of(unit, without=()):
    """The plane model of a unit, without some of its parts."""
    model, parts = Model(), {part["id"]: part for part in unit["parts"]["panels"] if part["id"] not in without}
    joints = unit["parts"]["joints"]
    floor, ceiling, body = unit["floor"], unit["ceiling"], unit["boards"]["body"]
    bodies = {name: Ground() for name in ("base-lower", "base-upper")}
    bodies["top"] = Rigid(model, (parts["top"]["origin_mm"][0] + parts["top"]["blank_mm"][0] / 2, ceiling))
    of = lambda name: [joint for joint in joints if name in (joint["goes_in"], joint["takes"])]
    ends = lambda all, axis: [joint[key][axis] for joint in all for key in ("from_mm", "to_mm")]
    middles = lambda all, axis: [(joint["from_mm"][axis] + joint["to_mm"][axis]) / 2 for joint in all]
    for name, part in parts.items():
        if name.startswith("upright"):
            deep = part["blank_mm"][0]
            rigid = body["along"] * deep * body["thickness"] ** 3 / 12
            bodies[name] = Beam(model, part["origin_mm"][0] + part["thickness_mm"] / 2, [floor, ceiling, *ends(of(name), 2), *middles(of(name), 2)], rigid)
        elif name.startswith("shelf"):
            bodies[name] = Rigid(model, (part["origin_mm"][0] + part["blank_mm"][0] / 2, part["origin_mm"][2]))
        elif name == "back":
            left = part["origin_mm"][0]
            sides = [left, left + part["blank_mm"][0]]
            bodies[name] = Sheet(model, [*sides, *ends(of(name), 0), *middles(of(name), 0)], [floor, ceiling, *middles(of(name), 2)], unit["boards"]["back"])
            for side in sides:
                model.touch(minus({}, bodies[name].z(side, floor)), 0.0)
    for name, part in parts.items():
        if name in bodies and not isinstance(bodies[name], Ground):
            bodies[name].weigh(model, part["mass_g"] / 1000 * G)
    for joint in joints:
        if joint["goes_in"] in bodies and joint["takes"] in bodies:
            join(model, joint, bodies[joint["goes_in"]], bodies[joint["takes"]], floor, ceiling)
    return model, bodies


def join(model, joint, one, other, floor, ceiling):
    """What a joint lets two parts do in the plane."""
    (left, _, low), (right, _, high) = joint["from_mm"], joint["to_mm"]
    x, z, play = (left + right) / 2, (low + high) / 2, joint["clearance_mm"] / 2
    if joint["kind"] == "hook":
        # The upper end of the slot lies on the neck.
        model.within(one.x(x, z), other.x(x, z), play)
        model.touch(minus(one.z(x, z), other.z(x, z)), 0.0)
    elif joint["takes"] in ("base-lower", "base-upper", "top"):
        for height in (low, high):
            model.within(one.x(x, height), other.x(x, height), play)
        if joint["takes"] == "base-upper":
            for side in (left, right):
                model.touch(minus(other.z(side, floor), one.z(side, floor)), 0.0)
        elif joint["takes"] == "top":
            for side in (left, right):
                model.touch(minus(one.z(side, ceiling), other.z(side, ceiling)), 0.0)
    else:
        # A shelf's ear in an upright, whose face stands before its shoulder, or its tab in the back.
        model.within(one.x(x, z), other.x(x, z), play)
        for side in (left, right):
            model.within(one.z(side, z), other.z(side, z), play)


def lean(unit, push, without=()):
    """How far the top goes to the side under a push there."""
    model, bodies = model_of(unit, without)
    top = bodies["top"].x(0, unit["ceiling"])
    moves = model.solve({at: share * push for at, share in top.items()})
    return sum(share * moves[at] for at, share in top.items())


def check(strength, near):
    """The unit of each model as it begins, and seeded ones: how far a push to the side leans them, as shares of what tips them."""
    light, hard = [], []
    for unit in strength["units"][:7]:
        free, push = lean(unit, 1.0), min(HAND, 0.3 * unit["tips"])
        # To both sides alike, but for what is cut and hung at one of them.
        near("lean to the left", -lean(unit, -1.0), free, 0.2)
        pushed = lean(unit, push)
        light.append((free, pushed, unit["height"], push))
        # The top goes as far as its slots and those of the base let it; what the back then gives is little.
        plays = sum(widest(unit, taker) for taker in ("top", "base-upper"))
        if not (0 < free < 1.01 * plays and free <= pushed < 0.3):
            sys.exit(f"racking: {unit['model']} leans {free:.3f} mm, under {push:.0f} N {pushed:.3f} mm")
        hard.append(lean(unit, 0.8 * unit["tips"]) / unit["height"])
    # A model that sees nothing fall would be none: without the back uprights lean until their tabs bind.
    first = strength["units"][0]
    bare = lean(first, light[0][3], ("back",))
    near("lean without a back", bare, max(bare, 2.0), 0)
    for free, pushed, high, push in light[:3]:
        print(f"racking: {high:.0f} mm high, free lean {free:.2f} mm, {pushed:.2f} mm under {push:.0f} N (calculated)")
    worst = max(pushed for _, pushed, _, _ in light)
    print(f"racking: at most {worst:.2f} mm of all under {HAND:g} N or 0.3 of what tips them; under 0.8 of that {min(hard):.2%} to {max(hard):.2%} of the height; without a back {bare:.1f} mm (calculated)")


def widest(unit, taker):
    """The play of the widest slots of a part, to one side."""
    return max(joint["clearance_mm"] for joint in unit["parts"]["joints"] if joint["takes"] == taker and joint["kind"] == "tab") / 2
