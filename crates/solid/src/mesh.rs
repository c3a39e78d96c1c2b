//! Triangle meshes of panels.

use slotwright_core::cabinet::panel::{Feature, Panel};
use slotwright_core::geometry::outline::{Outline, Point};
use slotwright_core::geometry::space::{Lie, Placement};
use slotwright_core::units::quantity::Length;

use crate::path::Piece;
use crate::{leaf, path, plate};

/// Which of a panel's surfaces a triangle belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// One of the two faces, or what is rounded out of them.
    Face,
    /// An edge, where the plies show.
    Edge,
}

/// A corner of a triangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// On the panel: u, v and the depth into its thickness, in millimetres.
    pub at: [f64; 3],
    /// The outward normal there, in the same axes, of length 1.
    pub normal: [f64; 3],
}

/// A closed mesh in the axes of its panel: u, v, and w into the thickness from the lower face.
///
/// Seen against u × v = w its triangles run counter-clockwise from outside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    /// The vertices.
    pub vertices: Vec<Vertex>,
    /// Triangles of the faces, by vertex.
    pub faces: Vec<[u32; 3]>,
    /// Triangles of the edges.
    pub edges: Vec<[u32; 3]>,
}

impl Mesh {
    /// The mesh of a panel. No chord of an arc is further from it than `tolerance`.
    pub fn of(panel: &Panel, tolerance: Length) -> Self {
        if is_turned(panel) { leaf::mesh(panel, tolerance.in_mm()) } else { plate::mesh(panel, tolerance.in_mm()) }
    }

    /// The mesh where its panel stands in the unit: x to the right, y to the rear, z up, millimetres;
    /// counter-clockwise from outside.
    #[must_use]
    pub fn in_case(&self, place: Placement) -> Self {
        // Facing front or turned from there, u × v points to the front, against the thickness: the mesh is a mirrored one.
        let mirrored = matches!(place.lie, Lie::Facing | Lie::Turned(_));
        let way = |[a, b, c]: &[u32; 3]| if mirrored { [*a, *c, *b] } else { [*a, *b, *c] };
        let axes = |[u, v, w]: [f64; 3]| match place.lie {
            Lie::Flat => [u, v, w],
            Lie::Facing => [u, w, v],
            Lie::Side => [w, u, v],
            Lie::Turned(aim) => [u * aim.x - w * aim.y, u * aim.y + w * aim.x, v],
        };
        let vertices = self.vertices.iter().map(|vertex| {
            let [u, v, w] = vertex.at.map(Length::mm);
            let spot = place.spot(Point::new(u, v), w);
            Vertex { at: [spot.x.in_mm(), spot.y.in_mm(), spot.z.in_mm()], normal: axes(vertex.normal) }
        });
        Self {
            vertices: vertices.collect(),
            faces: self.faces.iter().map(way).collect(),
            edges: self.edges.iter().map(way).collect(),
        }
    }

    /// All triangles.
    pub fn triangles(&self) -> impl Iterator<Item = [u32; 3]> + '_ {
        self.faces.iter().chain(&self.edges).copied()
    }

    /// The enclosed volume in cubic millimetres: the sum of the tetrahedra to the origin.
    pub fn volume_mm3(&self) -> f64 {
        let corner = |index: u32| self.vertices.get(index as usize).map_or([0.0; 3], |vertex| vertex.at);
        let six = self.triangles().map(|[a, b, c]| {
            let ([ax, ay, az], [bx, by, bz], [cx, cy, cz]) = (corner(a), corner(b), corner(c));
            ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
        });
        six.sum::<f64>() / 6.0
    }

    pub(crate) fn add(&mut self, at: [f64; 3], normal: [f64; 3]) -> u32 {
        let index = u32::try_from(self.vertices.len()).unwrap_or(u32::MAX);
        self.vertices.push(Vertex { at, normal });
        index
    }

    /// Adds the part of a face within the first loop and outside the others, at `w` with its normal along `out`.
    pub(crate) fn sheet(&mut self, loops: &[Vec<Piece>], w: f64, out: f64) {
        let first = u32::try_from(self.vertices.len()).unwrap_or(u32::MAX);
        for piece in loops.iter().flatten() {
            let [u, v] = piece.from;
            self.add([u, v, w], [0.0, 0.0, out]);
        }
        self.faces.extend(path::triangles(loops).into_iter().map(|[a, b, c]| {
            let [a, b, c] = [first + a, first + b, first + c];
            if out < 0.0 { [a, c, b] } else { [a, b, c] }
        }));
    }

    /// Adds the walls of loops through a thickness.
    pub(crate) fn shaft<'a>(&mut self, loops: impl Iterator<Item = &'a Piece>, thickness: f64) {
        for Piece { from: [au, av], to: [bu, bv], normals } in loops.copied() {
            let corners = [[au, av, 0.0], [bu, bv, 0.0], [bu, bv, thickness], [au, av, thickness]];
            self.wall(Surface::Edge, corners, normals.map(|[u, v]| [u, v, 0.0]));
        }
    }

    /// Adds a wall between two corners of a loop, from `low` to `high` along the third axis.
    pub(crate) fn wall(&mut self, surface: Surface, corners: [[f64; 3]; 4], normals: [[f64; 3]; 2]) {
        let ([a, b, c, d], [start, end]) = (corners, normals);
        let [a, b, c, d] = [self.add(a, start), self.add(b, end), self.add(c, end), self.add(d, start)];
        let triangles = [[a, b, c], [a, c, d]];
        match surface {
            Surface::Face => self.faces.extend(triangles),
            Surface::Edge => self.edges.extend(triangles),
        }
    }
}

/// A leaf: rounded, with round pivots.
fn is_turned(panel: &Panel) -> bool {
    panel.features.iter().any(|feature| matches!(feature, Feature::Pivot { .. }))
}

/// The sharp edges of a panel as closed lines in the axes of its mesh.
pub fn sharp_edges(panel: &Panel, tolerance: Length) -> Vec<Vec<[f64; 3]>> {
    if is_turned(panel) {
        return leaf::sharp_edges(panel, tolerance.in_mm());
    }
    through(core::iter::once(panel.outline()).chain(panel.holes()), panel, tolerance).collect()
}

/// Outlines on both faces of a panel.
pub(crate) fn through(
    outlines: impl Iterator<Item = Outline>,
    panel: &Panel,
    tolerance: Length,
) -> impl Iterator<Item = Vec<[f64; 3]>> {
    outlines.flat_map(move |outline| {
        let points = path::polygon(&outline, tolerance);
        [0.0, panel.thickness.in_mm()].map(|w| points.iter().map(|[u, v]| [*u, *v, w]).collect())
    })
}

#[cfg(test)]
mod tests;
