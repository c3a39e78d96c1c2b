//! What is seen of a part: the facets that face the eye, and the lines that may be drawn.

use std::collections::BTreeMap;

use slotwright_core::cabinet::panel::{Feature, Panel};
use slotwright_core::units::quantity::Length;
use slotwright_solid::mesh::{Mesh, Vertex};

use super::view::{Bounds, Seen};

/// No chord of an arc is further from it than this: a hundredth of a millimetre on paper at 1:10.
const TOLERANCE: Length = Length::mm(0.1);
/// A cutter that reaches into no corner, so that none gets a relief: at the size of these pictures a
/// relief is a blot, and the joints hide it anyway.
const NO_CUTTER: Length = Length::mm(1e6);
/// A facet with less area in the picture (mm²) is seen from its edge.
const EDGE_ON: f64 = 1e-9;
/// Normals whose cosine is above this belong to one smooth surface.
const SMOOTH: f64 = 1.0 - 1e-6;

/// A triangle that faces the eye; counter-clockwise in the picture.
#[derive(Clone, Copy, Debug)]
pub(super) struct Facet {
    pub(super) corners: [Seen; 3],
    pub(super) bounds: Bounds,
}

/// A straight line that is drawn where nothing hides it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    pub(super) from: Seen,
    pub(super) to: Seen,
    /// Whether the part's outer outline turns away from the eye here: its rim, drawn heavier.
    pub(super) rim: bool,
}

/// A part as it is seen.
#[derive(Clone, Debug)]
pub(super) struct Shape {
    pub(super) facets: Vec<Facet>,
    pub(super) lines: Vec<Line>,
    pub(super) bounds: Bounds,
    /// The corners of its box in the case: the lowest figures and the highest.
    pub(super) extent: [[f64; 3]; 2],
}

impl Facet {
    /// A triangle, if it faces the eye.
    pub(super) fn facing(corners: [Seen; 3]) -> Option<Self> {
        let [a, b, c] = corners;
        let area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        (area > EDGE_ON).then(|| Self { corners, bounds: Bounds::of(corners) })
    }

    fn moved(self, way: Seen) -> Self {
        Self { corners: self.corners.map(|corner| corner.plus(way, 1.0)), bounds: self.bounds.moved(way) }
    }
}

impl Line {
    pub(super) fn bounds(&self) -> Bounds {
        Bounds::of([self.from, self.to])
    }

    /// The place at a part of its way.
    pub(super) fn at(&self, part: f64) -> Seen {
        self.from.towards(self.to, part)
    }

    /// Its length in the picture, in millimetres of the unit.
    pub(super) fn length(&self) -> f64 {
        self.from.apart(self.to)
    }
}

impl Shape {
    /// A panel in its place.
    pub(super) fn of(panel: &Panel) -> Self {
        let sharp = Panel { cutter: NO_CUTTER, ..panel.clone() };
        let mut whole = sharp.clone();
        whole.features.retain(|feature| !pierces(*feature));
        let mesh = |panel: &Panel| Mesh::of(panel, TOLERANCE).in_case(panel.case_from_panel);
        Self::of_mesh(&mesh(&sharp), &mesh(&whole))
    }

    /// A closed mesh in the case. The rim is that of another one, which has no holes.
    pub(super) fn of_mesh(mesh: &Mesh, whole: &Mesh) -> Self {
        let (facets, edges) = faced(mesh);
        let (_, rims) = faced(whole);
        let rim = |between: &(Corner, Corner)| rims.get(between).is_some_and(|line| line.rim);
        let lines = edges.iter().map(|(between, line)| Line { rim: line.rim && rim(between), ..*line }).collect();
        let bounds = facets.iter().fold(Bounds::NONE, |bounds, facet| bounds.with(facet.bounds));
        let fold = |start: f64, pick: fn(f64, f64) -> f64| {
            let places = mesh.vertices.iter().map(|vertex| vertex.at);
            places.fold([start; 3], |[x, y, z], [a, b, c]| [pick(x, a), pick(y, b), pick(z, c)])
        };
        Self { facets, lines, bounds, extent: [fold(f64::INFINITY, f64::min), fold(f64::NEG_INFINITY, f64::max)] }
    }

    /// A flat thing before all others, without lines.
    pub(super) fn cover(facets: Vec<Facet>) -> Self {
        let bounds = facets.iter().fold(Bounds::NONE, |bounds, facet| bounds.with(facet.bounds));
        Self { facets, lines: Vec::new(), bounds, extent: [[0.0; 3]; 2] }
    }

    /// The same, moved: `by` in the case.
    pub(super) fn moved(&self, by: [f64; 3]) -> Self {
        let way = Seen::of(by);
        let [dx, dy, dz] = by;
        let line = |line: &Line| Line { from: line.from.plus(way, 1.0), to: line.to.plus(way, 1.0), rim: line.rim };
        Self {
            facets: self.facets.iter().map(|facet| facet.moved(way)).collect(),
            lines: self.lines.iter().map(line).collect(),
            bounds: self.bounds.moved(way),
            extent: self.extent.map(|[x, y, z]| [x + dx, y + dy, z + dz]),
        }
    }
}

/// Whether a feature goes through the panel away from its edges.
const fn pierces(feature: Feature) -> bool {
    match feature {
        Feature::Slot { .. } | Feature::TurnedSlot(_) | Feature::Bore { .. } | Feature::Hole { .. } => true,
        Feature::Tab { .. }
        | Feature::Hook(_)
        | Feature::Detent(_)
        | Feature::Notch { .. }
        | Feature::Pivot { .. }
        | Feature::Bow(_) => false,
    }
}

/// The facets of a mesh that face the eye, and the edges to draw by where they run.
fn faced(mesh: &Mesh) -> (Vec<Facet>, BTreeMap<(Corner, Corner), Line>) {
    let (facets, sides) = sides(mesh);
    // Each edge once: its two sides run opposite ways.
    let once = sides.iter().filter(|((from, to), _)| from < to);
    let edges = once.filter_map(|((from, to), side)| Some(((*from, *to), side.line(sides.get(&(*to, *from))?)?)));
    (facets, edges.collect())
}

/// The facets of a mesh that face the eye, and the sides of all its triangles.
fn sides(mesh: &Mesh) -> (Vec<Facet>, BTreeMap<(Corner, Corner), Side<'_>>) {
    let corners = |[a, b, c]: [u32; 3]| {
        let vertex = |at: u32| mesh.vertices.get(usize::try_from(at).ok()?);
        Some([vertex(a)?, vertex(b)?, vertex(c)?])
    };
    let (mut facets, mut sides) = (Vec::new(), BTreeMap::new());
    for [a, b, c] in mesh.triangles().filter_map(corners) {
        let facet = Facet::facing([a, b, c].map(|vertex| Seen::of(vertex.at)));
        for (from, to) in [(a, b), (b, c), (c, a)] {
            sides.insert((corner(from), corner(to)), Side { from, to, front: facet.is_some() });
        }
        facets.extend(facet);
    }
    (facets, sides)
}

/// A place by which two triangles know that they meet.
type Corner = [i64; 3];

/// To a ten-thousandth of a millimetre. The grid lies askew to the decimal figures that sizes are made
/// of, so that one and the same corner, computed in two ways, does not fall on both sides of a border.
#[expect(clippy::cast_possible_truncation, reason = "a ten-thousandth of a millimetre as a whole number")]
fn corner(vertex: &Vertex) -> Corner {
    vertex.at.map(|mm| libm::floor(mm * 1e4 + 0.377) as i64)
}

/// A triangle's side of an edge.
#[derive(Clone, Copy, Debug)]
struct Side<'a> {
    from: &'a Vertex,
    to: &'a Vertex,
    front: bool,
}

impl Side<'_> {
    /// The line to draw: an edge between two surfaces of which one is seen, or where a smooth surface
    /// turns away.
    fn line(&self, other: &Side<'_>) -> Option<Line> {
        let alike = |a: &Vertex, b: &Vertex| a.normal.iter().zip(b.normal).map(|(a, b)| a * b).sum::<f64>() > SMOOTH;
        let smooth = alike(self.from, other.to) && alike(self.to, other.from);
        let rim = self.front != other.front;
        let drawn = if smooth { rim } else { self.front || other.front };
        drawn.then(|| Line { from: Seen::of(self.from.at), to: Seen::of(self.to.at), rim })
    }
}

#[cfg(test)]
mod tests;
