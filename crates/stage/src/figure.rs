//! A person of 1.70 m, cut from board like a figure in an architect's model.

use slotwright_core::geometry::outline::{Corner, Outline, Point};
use slotwright_core::units::quantity::Length;
use slotwright_solid::mesh::Mesh;
use slotwright_solid::plate;

/// Corners of the right half from the feet up: to the right of the middle, up, bulge to the next; in
/// millimetres. The last arc goes over the head to the left half.
// From memory: common proportions, seven and a half heads, shoulders two heads wide.
const HALF: [(f64, f64, f64); 12] = [
    (10.0, 0.0, 0.0),
    (95.0, 0.0, 0.0),
    (100.0, 30.0, 0.0),
    (70.0, 60.0, 0.0),
    (120.0, 800.0, 0.0),
    (150.0, 760.0, 0.6),
    (200.0, 780.0, 0.0),
    (226.0, 1340.0, 0.35),
    (155.0, 1425.0, 0.0),
    (55.0, 1450.0, 0.0),
    (42.0, 1490.0, 0.16),
    (78.0, 1622.0, 1.0),
];

pub(crate) fn mesh() -> Mesh {
    let corner = |u: f64, v: f64, bulge| Corner { at: Point::new(Length::mm(u), Length::mm(v)), bulge };
    let right = HALF.iter().map(|(u, v, bulge)| corner(*u, *v, *bulge));
    // The left half is passed the other way: an arc belongs to the corner at its other end.
    let arcs = HALF.iter().rev().skip(1).map(|(_, _, bulge)| *bulge).chain([0.0]);
    let left = HALF.iter().rev().zip(arcs).map(|((u, v, _), bulge)| corner(-*u, *v, bulge));
    plate::extruded(&[Outline::through(right.chain(left))], 18.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_person_is_as_tall_as_said_and_the_same_on_both_sides() {
        let spots: Vec<_> = mesh().vertices.iter().map(|vertex| vertex.at).collect();
        let most = |of: fn(&[f64; 3]) -> f64| spots.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
        assert!((most(|at| at[1]) - 1700.0).abs() < 1.0 && most(|at| -at[1]).abs() < 1e-9);
        assert!((most(|at| at[0]) - most(|at| -at[0])).abs() < 1.0);
    }
}
