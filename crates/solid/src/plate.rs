//! A plate: its outline through the whole thickness.

use slotwright_core::outline::Outline;
use slotwright_core::panel::Panel;

use crate::mesh::{Mesh, Surface};
use crate::path::{Piece, pieces, triangles};

pub(crate) fn mesh(panel: &Panel, tolerance: f64) -> Mesh {
    let outlines: Vec<Outline> = core::iter::once(panel.outline()).chain(panel.holes()).collect();
    extruded(&outlines, panel.thickness.in_mm(), tolerance)
}

/// The first outline less the others, through a thickness; all in millimetres.
pub fn extruded(outlines: &[Outline], thickness: f64, tolerance: f64) -> Mesh {
    let loops: Vec<Vec<Piece>> = outlines.iter().map(|outline| pieces(outline, tolerance)).collect();
    let mut mesh = Mesh::default();
    let caps = triangles(&loops);
    for (w, normal, turned) in [(0.0, -1.0, true), (thickness, 1.0, false)] {
        let first = u32::try_from(mesh.vertices.len()).unwrap_or(u32::MAX);
        for piece in loops.iter().flatten() {
            let [u, v] = piece.from;
            mesh.add([u, v, w], [0.0, 0.0, normal]);
        }
        mesh.faces.extend(caps.iter().map(|[a, b, c]| {
            let [a, b, c] = [first + a, first + b, first + c];
            if turned { [a, c, b] } else { [a, b, c] }
        }));
    }
    for Piece { from: [au, av], to: [bu, bv], normals } in loops.into_iter().flatten() {
        let corners = [[au, av, 0.0], [bu, bv, 0.0], [bu, bv, thickness], [au, av, thickness]];
        mesh.wall(Surface::Edge, corners, normals.map(|[u, v]| [u, v, 0.0]));
    }
    mesh
}
