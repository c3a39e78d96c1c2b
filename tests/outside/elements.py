"""Beams and plates by finite elements, for the checks beside this file."""

from Pynite import FEModel3D
from skfem import Basis, BilinearForm, ElementTriMorley, LinearForm, MeshTri
from skfem.helpers import dd, ddot, eye, trace
import numpy


def beam(span, inertia, stiffness, supports, spread=0.0, points=()):
    """A beam by finite elements (PyNite), in mm, bending alone; spread in N/mm."""
    model = FEModel3D()
    model.add_material("wood", stiffness, stiffness / 16, 0.3, 0)
    model.add_section("strip", 1e4, inertia, inertia, inertia)
    places = sorted({0.0, span, *supports, *(at for at, _ in points)})
    for number, at in enumerate(places):
        model.add_node(f"N{number}", at, 0, 0)
        held = at in supports
        model.def_support(f"N{number}", number == 0, held, True, number == 0, number == 0, False)
    for number in range(len(places) - 1):
        model.add_member(f"M{number}", f"N{number}", f"N{number + 1}", "wood", "strip")
        if spread:
            model.add_member_dist_load(f"M{number}", "FY", -spread, -spread)
    for at, force in points:
        model.add_node_load(f"N{places.index(at)}", "FY", -force)
    model.analyze_linear()
    return model, places


def sag_at(model, places, at):
    for number in range(len(places) - 1):
        low, high = places[number], places[number + 1]
        if low <= at <= high:
            return -model.members[f"M{number}"].deflection("dy", at - low)
    raise ValueError(at)


def plate(mesh, stiffness, thick, poisson, load, held):
    """Deflections of a thin plate by Morley elements (scikit-fem); held(x) says where it is simply supported."""
    rigid = stiffness * thick**3 / (12 * (1 - poisson**2))
    basis = Basis(mesh, ElementTriMorley())

    @BilinearForm
    def bent(u, v, w):
        def curved(w_):
            return rigid * ((1 - poisson) * dd(w_) + poisson * eye(trace(dd(w_)), 2))
        return ddot(curved(u), dd(v))

    @LinearForm
    def pressed(v, w):
        return load * v

    edge = basis.get_dofs(mesh.facets_satisfying(held)).all("u")
    return basis, bent.assemble(basis), pressed.assemble(basis), edge, rigid


def rectangle(long, wide, across, up):
    return MeshTri.init_tensor(numpy.linspace(0, long, across), numpy.linspace(0, wide, up))
