//! A leaf: a rounded section along its height, with round pivots at both ends; one of its upper corners may be cut off.

use slotwright_core::cabinet::panel::{Edge, Feature, Panel};
use slotwright_core::geometry::outline::{Corner, Outline, Point, QUARTER};
use slotwright_core::units::quantity::Length;

use crate::mesh::{Mesh, Surface, through};
use crate::path::{Piece, pieces, triangles};

/// A pivot at an end: its place along the end, its diameter, how far it stands out.
type Pin = (Length, Length, Length);

/// A corner that is cut off at the upper edge.
struct Cut {
    /// The section over it, beside the corner, and that of its floor.
    beside: Vec<Piece>,
    floor: Vec<Piece>,
    /// How high up the floor is.
    height: f64,
    /// Whether it is the right corner.
    right: bool,
    /// The way from the floor up to the upper edge, or down from there: the way the outline runs.
    wall: Vec<Piece>,
}

impl Cut {
    fn of(panel: &Panel, tolerance: f64) -> Option<Self> {
        let (from, to, depth) = panel.features.iter().find_map(|feature| match *feature {
            Feature::Notch { edge: Edge::Top, from, to, depth } => Some((from, to, depth)),
            _ => None,
        })?;
        let (height, right) = (panel.height - depth, to >= panel.width);
        let outline = pieces(&cut_alone(panel).outline(), tolerance);
        let (end, floor) = (if right { from } else { to }, height.in_mm());
        // All of it lies over the floor and within the corner, its ends too.
        let (low, high) = if right { (from, panel.width) } else { (Length::ZERO, to) };
        let within = |[u, v]: [f64; 2]| v >= floor - SAME && u > low.in_mm() - SAME && u < high.in_mm() + SAME;
        let is_level = |piece: &Piece| (piece.from[1] - piece.to[1]).abs() < SAME;
        let wall = outline.into_iter().filter(|piece| within(piece.from) && within(piece.to) && !is_level(piece));
        let wall: Vec<Piece> = wall.collect();
        let foot = if right { wall.first()?.from } else { wall.last()?.to };
        let foot = Length::mm(foot[0]);
        let spans = |left, to, rounded| pieces(&section(panel, (left, to), rounded), tolerance);
        let (beside, floor) = if right {
            (spans(Length::ZERO, end, [true, false]), spans(foot, panel.width, [false, true]))
        } else {
            (spans(end, panel.width, [false, true]), spans(Length::ZERO, foot, [true, false]))
        };
        Some(Self { beside, floor, height: height.in_mm(), right, wall })
    }
}

/// Places nearer to each other than this are one.
const SAME: f64 = 1e-9;

/// The panel with nothing but what is cut off its corner.
fn cut_alone(panel: &Panel) -> Panel {
    let is_cut = |feature: &&Feature| matches!(feature, Feature::Notch { .. });
    Panel { features: panel.features.iter().filter(is_cut).copied().collect(), ..panel.clone() }
}

pub(crate) fn mesh(panel: &Panel, tolerance: f64) -> Mesh {
    let (whole, cut) = (whole(panel, tolerance), Cut::of(panel, tolerance));
    let holes: Vec<Vec<Piece>> = panel.holes().map(|hole| pieces(&hole, tolerance)).collect();
    let (height, thickness) = (panel.height.in_mm(), panel.thickness.in_mm());
    let mut mesh = Mesh::default();
    // The section lies across u and w; seen along v it runs clockwise, so walls are turned.
    for piece in &whole {
        let [start, end] = piece.normals.map(|[u, w]| [u, 0.0, w]);
        let at = |[u, w]: [f64; 2], v: f64| [u, v, w];
        if is_flat(piece) {
            face(&mut mesh, piece, height, cut.as_ref(), &holes);
            continue;
        }
        let is_right = piece.from[0] > panel.width.in_mm() / 2.0;
        let high = cut.as_ref().filter(|cut| cut.right == is_right).map_or(height, |cut| cut.height);
        // Where an edge is rounded, the plies show.
        let corners = [at(piece.to, 0.0), at(piece.from, 0.0), at(piece.from, high), at(piece.to, high)];
        mesh.wall(Surface::Edge, corners, [end, start]);
    }
    mesh.shaft(holes.iter().flatten(), thickness);
    let over = cut.as_ref().map_or(&whole, |cut| &cut.beside);
    for (edge, section, v, out) in [(Edge::Bottom, &whole, 0.0, -1.0), (Edge::Top, over, height, 1.0)] {
        let pins: Vec<Pin> = panel
            .features
            .iter()
            .filter_map(|feature| match *feature {
                Feature::Pivot { edge: on, at, diameter, depth } if on == edge => Some((at, diameter, depth)),
                _ => None,
            })
            .collect();
        end(&mut mesh, panel, section, &pins, (v, out), tolerance);
    }
    if let Some(cut) = cut {
        mesh.shaft(cut.wall.iter(), thickness);
        cap(&mut mesh, &[cut.floor], cut.height, 1.0);
    }
    mesh
}

/// Whether a piece of the section is one of the two faces.
fn is_flat(piece: &Piece) -> bool {
    piece.normals.iter().all(|[_, w]| w.abs() > 1.0 - 1e-9)
}

/// The face along a piece of the section, less a corner of it and the holes through it.
fn face(mesh: &mut Mesh, piece: &Piece, height: f64, cut: Option<&Cut>, holes: &[Vec<Piece>]) {
    let ([from, w], [to, _], [[_, out], _]) = (piece.from, piece.to, piece.normals);
    let (left, right) = (from.min(to), from.max(to));
    let mut around = vec![[left, 0.0], [right, 0.0]];
    let wall = |cut: &Cut| {
        let first = cut.wall.first().map(|piece| piece.from);
        first.into_iter().chain(cut.wall.iter().map(|piece| piece.to)).collect::<Vec<[f64; 2]>>()
    };
    match cut {
        None => around.extend([[right, height], [left, height]]),
        Some(cut) if cut.right => {
            around.push([right, cut.height]);
            around.extend(wall(cut));
            around.push([left, height]);
        }
        Some(cut) => {
            around.push([right, height]);
            around.extend(wall(cut));
            around.push([left, cut.height]);
        }
    }
    let sides = around.iter().copied().zip(around.iter().copied().cycle().skip(1));
    let around = sides.map(|(from, to)| Piece { from, to, normals: [[0.0; 2]; 2] }).collect();
    let loops: Vec<Vec<Piece>> = core::iter::once(around).chain(holes.iter().cloned()).collect();
    mesh.sheet(&loops, w, out);
}

/// The sections at both ends and at the floor of a cut corner, the wall over that, and the holes; along the height edges are rounded.
pub(crate) fn sharp_edges(panel: &Panel, tolerance: f64) -> Vec<Vec<[f64; 3]>> {
    let (whole, cut, height) = (whole(panel, tolerance), Cut::of(panel, tolerance), panel.height.in_mm());
    let end = |section: &[Piece], v: f64| section.iter().map(|piece| [piece.from[0], v, piece.from[1]]).collect();
    let over = cut.as_ref().map_or(&whole, |cut| &cut.beside);
    let mut lines: Vec<Vec<[f64; 3]>> = vec![end(&whole, 0.0), end(over, height)];
    if let Some(cut) = &cut {
        let thickness = panel.thickness.in_mm();
        let first = cut.wall.first().map(|piece| piece.from);
        let up: Vec<[f64; 2]> = first.into_iter().chain(cut.wall.iter().map(|piece| piece.to)).collect();
        let there = up.iter().map(|[u, v]| [*u, *v, 0.0]);
        lines.push(end(&cut.floor, cut.height));
        lines.push(there.chain(up.iter().rev().map(|[u, v]| [*u, *v, thickness])).collect());
    }
    lines.into_iter().chain(through(panel.holes(), panel, Length::mm(tolerance))).collect()
}

/// The section of the whole width.
fn whole(panel: &Panel, tolerance: f64) -> Vec<Piece> {
    pieces(&section(panel, (Length::ZERO, panel.width), [true; 2]), tolerance)
}

/// A rectangle from one place along the width to another and of the thickness, counter-clockwise in u and w; its corners are
/// rounded at the left end, at the right one, or at both.
fn section(panel: &Panel, (left, right): (Length, Length), [at_left, at_right]: [bool; 2]) -> Outline {
    let (thickness, zero) = (panel.thickness, Length::ZERO);
    let rounding = |is_rounded: bool| {
        let radius = if is_rounded { panel.rounding } else { zero };
        (radius, if radius > zero { QUARTER } else { 0.0 })
    };
    let ((near, first), (far, last)) = (rounding(at_left), rounding(at_right));
    let corner = |u, w, bulge| Corner { at: Point::new(u, w), bulge };
    Outline::through([
        corner(left + near, zero, 0.0),
        corner(right - far, zero, last),
        corner(right, far, 0.0),
        corner(right, thickness - far, last),
        corner(right - far, thickness, 0.0),
        corner(left + near, thickness, first),
        corner(left, thickness - near, 0.0),
        corner(left, near, first),
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
