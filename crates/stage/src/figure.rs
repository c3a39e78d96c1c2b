//! A person of 1.70 m, cut from board like a figure in an architect's model.

use slotwright_core::outline::{Corner, Outline, Point};
use slotwright_core::quantity::Length;
use slotwright_solid::mesh::Mesh;
use slotwright_solid::plate;

/// Corners of the right half from the feet up: to the right of the middle, up, bulge to the next; in millimetres.
// From memory: common proportions, seven and a half heads, shoulders two heads wide.
const HALF: [(f64, f64, f64); 11] = [
    (10.0, 0.0, 0.0),
    (95.0, 0.0, 0.0),
    (100.0, 30.0, 0.0),
    (70.0, 60.0, 0.0),
    (120.0, 800.0, 0.0),
    (150.0, 760.0, 0.6),
    (200.0, 780.0, 0.0),
    (215.0, 1330.0, 0.35),
    (150.0, 1420.0, 0.0),
    (55.0, 1450.0, 0.0),
    (45.0, 1490.0, 0.0),
];

pub(crate) fn mesh() -> Mesh {
    let corner = |u: f64, v: f64, bulge| Corner { at: Point::new(Length::mm(u), Length::mm(v)), bulge };
    let right = HALF.iter().map(|(u, v, bulge)| corner(*u, *v, *bulge));
    // Round the head from the right side of the neck to the left one.
    let head = [corner(45.0, 1490.0, 0.0), corner(95.0, 1590.0, 1.0), corner(-95.0, 1590.0, 0.0)];
    let mut left = Vec::new();
    for (at, (u, v, _)) in HALF.iter().enumerate().rev() {
        let bulge = at.checked_sub(1).and_then(|before| HALF.get(before)).map_or(0.0, |(_, _, bulge)| *bulge);
        left.push(corner(-*u, *v, bulge));
    }
    let outline = Outline::through(right.take(HALF.len() - 1).chain(head).chain(left));
    plate::extruded(&[outline], 18.0, 1.0)
}
