//! A plate: its outline through the whole thickness.

use slotwright_core::cabinet::panel::Panel;
use slotwright_core::geometry::outline::Outline;

use crate::mesh::Mesh;
use crate::path::{Piece, pieces};

pub(crate) fn mesh(panel: &Panel, tolerance: f64) -> Mesh {
    let outlines: Vec<Outline> = core::iter::once(panel.outline()).chain(panel.holes()).collect();
    extruded(&outlines, panel.thickness.in_mm(), tolerance)
}

/// The first outline less the others, through a thickness; all in millimetres.
pub fn extruded(outlines: &[Outline], thickness: f64, tolerance: f64) -> Mesh {
    let loops: Vec<Vec<Piece>> = outlines.iter().map(|outline| pieces(outline, tolerance)).collect();
    let mut mesh = Mesh::default();
    mesh.sheet(&loops, 0.0, -1.0);
    mesh.sheet(&loops, thickness, 1.0);
    mesh.shaft(loops.iter().flatten(), thickness);
    mesh
}
