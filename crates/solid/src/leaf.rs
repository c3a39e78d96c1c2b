//! A leaf: a rounded section along its height, with round pivots at both ends.

use slotwright_core::cabinet::panel::{Edge, Feature, Panel};
use slotwright_core::geometry::outline::{Corner, Outline, Point, QUARTER};
use slotwright_core::units::quantity::Length;

use crate::mesh::{Mesh, Surface, through};
use crate::path::{Piece, pieces, triangles};

/// A pivot at an end: its place along the end, its diameter, how far it stands out.
type Pin = (Length, Length, Length);

pub(crate) fn mesh(panel: &Panel, tolerance: f64) -> Mesh {
    let section = pieces(&section(panel), tolerance);
    let holes: Vec<Vec<Piece>> = panel.holes().map(|hole| pieces(&hole, tolerance)).collect();
    let height = panel.height.in_mm();
    let mut mesh = Mesh::default();
    // The section lies across u and w; seen along v it runs clockwise, so walls are turned.
    for piece in &section {
        let [start, end] = piece.normals.map(|[u, w]| [u, 0.0, w]);
        let at = |[u, w]: [f64; 2], v: f64| [u, v, w];
        if is_flat(piece) {
            face(&mut mesh, piece, height, &holes);
            continue;
        }
        // Where an edge is rounded, the plies show.
        let corners = [at(piece.to, 0.0), at(piece.from, 0.0), at(piece.from, height), at(piece.to, height)];
        mesh.wall(Surface::Edge, corners, [end, start]);
    }
    mesh.shaft(holes.iter().flatten(), panel.thickness.in_mm());
    for (edge, v, out) in [(Edge::Bottom, 0.0, -1.0), (Edge::Top, height, 1.0)] {
        let pins: Vec<Pin> = panel
            .features
            .iter()
            .filter_map(|feature| match *feature {
                Feature::Pivot { edge: on, at, diameter, depth } if on == edge => Some((at, diameter, depth)),
                _ => None,
            })
            .collect();
        end(&mut mesh, panel, &section, &pins, (v, out), tolerance);
    }
    mesh
}

/// Whether a piece of the section is one of the two faces.
fn is_flat(piece: &Piece) -> bool {
    piece.normals.iter().all(|[_, w]| w.abs() > 1.0 - 1e-9)
}

/// The face along a piece of the section, less the holes through it.
fn face(mesh: &mut Mesh, piece: &Piece, height: f64, holes: &[Vec<Piece>]) {
    let ([from, w], [to, _], [[_, out], _]) = (piece.from, piece.to, piece.normals);
    let (left, right) = (from.min(to), from.max(to));
    let around = [[left, 0.0], [right, 0.0], [right, height], [left, height]];
    let sides = around.into_iter().zip(around.into_iter().cycle().skip(1));
    let around = sides.map(|(from, to)| Piece { from, to, normals: [[0.0; 2]; 2] }).collect();
    let loops: Vec<Vec<Piece>> = core::iter::once(around).chain(holes.iter().cloned()).collect();
    mesh.sheet(&loops, w, out);
}

/// The section at both ends, and the holes; along the height edges are rounded.
pub(crate) fn sharp_edges(panel: &Panel, tolerance: f64) -> Vec<Vec<[f64; 3]>> {
    let section = pieces(&section(panel), tolerance);
    let end = |v: f64| section.iter().map(|piece| [piece.from[0], v, piece.from[1]]).collect();
    [end(0.0), end(panel.height.in_mm())]
        .into_iter()
        .chain(through(panel.holes(), panel, Length::mm(tolerance)))
        .collect()
}

/// A rectangle of width and thickness with rounded corners, counter-clockwise in u and w.
fn section(panel: &Panel) -> Outline {
    let (width, thickness, radius) = (panel.width, panel.thickness, panel.rounding);
    let zero = Length::ZERO;
    let corner = |u, w, bulge| Corner { at: Point::new(u, w), bulge };
    let bulge = if radius > zero { QUARTER } else { 0.0 };
    Outline::through([
        corner(radius, zero, 0.0),
        corner(width - radius, zero, bulge),
        corner(width, radius, 0.0),
        corner(width, thickness - radius, bulge),
        corner(width - radius, thickness, 0.0),
        corner(radius, thickness, bulge),
        corner(zero, thickness - radius, 0.0),
        corner(zero, radius, bulge),
    ])
}

/// One end at height `v`, looking along `out`: the section round the pins, and the pins.
fn end(mesh: &mut Mesh, panel: &Panel, section: &[Piece], pins: &[Pin], (v, out): (f64, f64), tolerance: f64) {
    let circle = |(at, diameter, _): &Pin| Outline::circle(Point::new(*at, panel.thickness / 2.0), *diameter);
    let mut loops = vec![section.to_vec()];
    loops.extend(pins.iter().map(|pin| pieces(&circle(pin).reversed(), tolerance)));
    cap(mesh, &loops, v, out);
    for pin in pins {
        let around = pieces(&circle(pin), tolerance);
        let far = v + out * pin.2.in_mm();
        for Piece { from: [au, aw], to: [bu, bw], normals } in around.iter().copied() {
            let [start, end] = normals.map(|[u, w]| [u, 0.0, w]);
            let (low, high) = if out > 0.0 { (v, far) } else { (far, v) };
            let corners = [[bu, low, bw], [au, low, aw], [au, high, aw], [bu, high, bw]];
            mesh.wall(Surface::Edge, corners, [end, start]);
        }
        cap(mesh, &[around], far, out);
    }
}

/// A flat area at height `v` with its normal along `out`.
fn cap(mesh: &mut Mesh, loops: &[Vec<Piece>], v: f64, out: f64) {
    let first = u32::try_from(mesh.vertices.len()).unwrap_or(u32::MAX);
    for piece in loops.iter().flatten() {
        let [u, w] = piece.from;
        mesh.add([u, v, w], [0.0, out, 0.0]);
    }
    // Counter-clockwise in u and w is clockwise seen from above.
    mesh.edges.extend(triangles(loops).into_iter().map(|[a, b, c]| {
        let [a, b, c] = [first + a, first + b, first + c];
        if out > 0.0 { [a, c, b] } else { [a, b, c] }
    }));
}
