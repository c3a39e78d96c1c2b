//! Simple bodies whose pictures are known.

use slotwright_core::geometry::outline::{Corner as Bend, Outline, Point};
use slotwright_solid::plate::extruded;

use super::super::hidden::{Drawn, hide};
use super::*;

/// A square from a corner, counter-clockwise.
fn square(from: f64, side: f64) -> Outline {
    let corner = |u: f64, v: f64| Bend { at: Point::new(Length::mm(u), Length::mm(v)), bulge: 0.0 };
    let to = from + side;
    Outline::through([corner(from, from), corner(to, from), corner(to, to), corner(from, to)])
}

fn body(outlines: &[Outline], thickness: f64) -> Shape {
    let mesh = extruded(outlines, thickness, 0.1);
    Shape::of_mesh(&mesh, &mesh)
}

/// What is seen of a shape that stands among others.
fn seen(shape: &Shape, others: &[&Shape]) -> Vec<Drawn> {
    let mut lines: Vec<Drawn> = shape.lines.iter().map(|line| Drawn::whole(*line)).collect();
    others.iter().chain([&shape]).for_each(|other| hide(&mut lines, other));
    lines.retain(|drawn| drawn.length() > 0.01);
    lines
}

/// The line between two places in the case.
fn between(lines: &[Drawn], from: [f64; 3], to: [f64; 3]) -> Option<&Drawn> {
    let (from, to) = (Seen::of(from), Seen::of(to));
    let at = |place: Seen, other: Seen| place.apart(other) < 1e-9 && (place.near - other.near).abs() < 1e-9;
    lines.iter().find(|drawn| {
        let Line { from: start, to: end, .. } = drawn.line;
        at(start, from) && at(end, to) || at(start, to) && at(end, from)
    })
}

#[test]
fn a_cube_shows_nine_edges_and_six_of_them_are_its_rim() {
    let lines = seen(&body(&[square(0.0, 100.0)], 100.0), &[]);
    assert_eq!(lines.len(), 9);
    assert_eq!(lines.iter().filter(|drawn| drawn.line.rim).count(), 6);
    for drawn in &lines {
        assert_eq!(drawn.seen, [[0.0, 1.0]], "{drawn:?}");
    }
    // The corner that is furthest from the eye is behind.
    assert!(between(&lines, [100.0, 100.0, 0.0], [100.0, 100.0, 100.0]).is_none());
}

/// The upper plate lies over x and y from −60 to 40, z from 50 to 60. From the lower plate's upper left
/// edge (0, y, 10) the way to the eye, along (−1, −1, 1), is in it where y − s < 40 for an s from 40 to
/// 50: up to y = 90.
#[test]
fn a_plate_hides_a_known_stretch_of_another() {
    let lower = body(&[square(0.0, 100.0)], 10.0);
    let upper = lower.moved([-60.0, -60.0, 50.0]);
    let lines = seen(&lower, &[&upper]);
    let edge = between(&lines, [0.0, 0.0, 10.0], [0.0, 100.0, 10.0]).unwrap();
    let way = Seen::of([0.0, 10.0, 0.0]);
    assert!((edge.length() - Seen::default().apart(way)).abs() < 0.01, "{edge:?}");
    assert_eq!(edge.seen.len(), 1);
    // What touches hides nothing: the same plate on top of the lower one leaves its rim.
    let lines = seen(&lower, &[&lower.moved([0.0, 0.0, 10.0])]);
    assert_eq!(between(&lines, [0.0, 0.0, 10.0], [0.0, 100.0, 10.0]).unwrap().seen, [[0.0, 1.0]]);
}

/// The small plate lies behind both triangles of the large one's face: nothing shows between them.
#[test]
fn a_large_plate_hides_a_small_one_wholly() {
    let (large, small) = (body(&[square(0.0, 100.0)], 10.0), body(&[square(60.0, 10.0)], 5.0));
    let mut lines: Vec<Drawn> = small.lines.iter().map(|line| Drawn::whole(*line)).collect();
    hide(&mut lines, &large.moved([0.0, 0.0, 50.0]));
    assert!(lines.len() > 8 && lines.iter().all(|drawn| drawn.seen.is_empty()), "{lines:?}");
}

/// Through a square hole of 20 mm in a plate of 10 mm one sees, of the lower edges at its far sides, the
/// half that the plate's upper face leaves.
#[test]
fn a_hole_shows_its_inner_edges() {
    let plate = body(&[square(0.0, 100.0), square(40.0, 20.0).reversed()], 10.0);
    let lines = seen(&plate, &[]);
    for (from, to) in [([60.0, 40.0, 0.0], [60.0, 60.0, 0.0]), ([40.0, 60.0, 0.0], [60.0, 60.0, 0.0])] {
        let edge = between(&lines, from, to).unwrap();
        let whole = Seen::of(from).apart(Seen::of(to));
        assert!((edge.length() / whole - 0.5).abs() < 1e-3, "{edge:?}");
    }
    assert!(between(&lines, [40.0, 40.0, 0.0], [60.0, 40.0, 0.0]).is_none(), "its near edges are hidden");
    // Nine edges of the plate, four of the hole's upper face, one upright corner, two halves below.
    assert_eq!(lines.len(), 16);
}

/// A round post shows two circles' lines, the lower one half, and two straight sides: no lines of facets.
#[test]
fn arcs_show_no_facets() {
    let post = body(&[Outline::circle(Point::default(), Length::mm(40.0))], 100.0);
    let upright = post.lines.iter().filter(|line| (line.from.x - line.to.x).abs() < 1e-9);
    assert_eq!(upright.clone().filter(|line| line.length() > 50.0).count(), 2);
    for line in upright.filter(|line| line.length() > 50.0) {
        assert!((line.from.x.abs() - 20.0).abs() < 0.2, "{line:?}");
    }
}
