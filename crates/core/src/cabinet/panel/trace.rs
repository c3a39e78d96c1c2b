//! Outlines of a panel: what the cutter follows, reliefs included.

use core::f64::consts::SQRT_2;

use crate::geometry::corner::{Bend, Heading, Turn};
use crate::geometry::outline::{Outline, Point};
use crate::units::quantity::Length;
use crate::units::short;

use super::{Edge, Feature, Panel};

impl Panel {
    /// The outer outline, counter-clockwise.
    pub fn outline(&self) -> Outline {
        let mut bends = Vec::new();
        for edge in Edge::ALL {
            bends.push(self.edge_start(edge));
            let on_edge = self.features.iter().filter(|feature| feature.edge() == Some(edge));
            let mut features: Vec<[Bend; 4]> = on_edge.map(|feature| self.bends(*feature)).collect();
            let along = |bends: &[Bend; 4]| edge.heading().along(bends[0].at);
            short::sort(&mut features, along);
            bends.extend(features.into_iter().flatten());
        }
        Outline::through(bends.into_iter().flat_map(Bend::corners))
    }

    /// The outlines of the holes, clockwise.
    pub fn holes(&self) -> impl Iterator<Item = Outline> + '_ {
        self.features.iter().filter_map(|feature| match *feature {
            Feature::Tab { .. } | Feature::Pivot { .. } | Feature::Notch { .. } => None,
            Feature::Slot { .. } => Some(Outline::through(self.bends(*feature).into_iter().flat_map(Bend::corners))),
            Feature::Bore { centre, diameter } => Some(Outline::circle(centre, diameter).reversed()),
            Feature::Hole { centre, length, height } => Some(Outline::stadium(centre, length, height).reversed()),
        })
    }

    /// The corner in which the outline turns into an edge.
    pub(super) fn edge_start(&self, edge: Edge) -> Bend {
        let along = match edge {
            Edge::Bottom | Edge::Right => Length::ZERO,
            Edge::Top => self.width,
            Edge::Left => self.height,
        };
        let turn = if self.corner_radius > Length::ZERO { Turn::Rounded(self.corner_radius) } else { Turn::Sharp };
        Bend { at: self.beside(edge, along, Length::ZERO), leaves: edge.heading(), turn }
    }

    /// All corners of the panel's outlines that may turn: its own and those of its features.
    pub(crate) fn all_bends(&self) -> impl Iterator<Item = Bend> + '_ {
        let corners = Edge::ALL.map(|edge| self.edge_start(edge));
        corners.into_iter().chain(self.features.iter().flat_map(|feature| self.bends(*feature)))
    }

    /// The four corners of a square feature in the outline's order; round holes have none that turn.
    pub(super) fn bends(&self, feature: Feature) -> [Bend; 4] {
        match feature {
            Feature::Tab { edge, from, to, depth } => {
                let (first, last) = self.roots(edge, (from, to), |room| flank(depth, room, self.cutter / 2.0));
                self.standing_out(edge, (from, to, depth), first, last)
            }
            Feature::Pivot { edge, at, diameter, depth } => {
                let (from, to, radius) = (at - diameter / 2.0, at + diameter / 2.0, self.cutter / 2.0);
                let fillet = |room: Length| {
                    let turn = if depth >= radius && room >= radius { Turn::Fillet(radius) } else { Turn::Sharp };
                    (turn, turn)
                };
                let (first, last) = self.roots(edge, (from, to), fillet);
                self.standing_out(edge, (from, to, depth), first, last)
            }
            Feature::Notch { edge, from, to, depth } => {
                let (first, last) = between(to - from, depth, self.cutter / 2.0);
                let (start, end) = if edge.runs_forwards() { (from, to) } else { (to, from) };
                let (along, out) = (edge.heading(), edge.heading().turned_right());
                let bend = |at, depth, leaves, turn| Bend { at: self.beside(edge, at, depth), leaves, turn };
                [
                    bend(start, Length::ZERO, out.back(), Turn::Sharp),
                    bend(start, -depth, along, first),
                    bend(end, -depth, out, last),
                    bend(end, Length::ZERO, along, Turn::Sharp),
                ]
            }
            Feature::Slot { from, to } => self.slot(from, to),
            Feature::Bore { centre, .. } | Feature::Hole { centre, .. } => {
                [Bend { at: centre, leaves: Heading::Up, turn: Turn::Sharp }; 4]
            }
        }
    }

    fn standing_out(&self, edge: Edge, tab: (Length, Length, Length), first: Turn, last: Turn) -> [Bend; 4] {
        let (from, to, depth) = tab;
        let (start, end) = if edge.runs_forwards() { (from, to) } else { (to, from) };
        let (along, out) = (edge.heading(), edge.heading().turned_right());
        let bend = |at, depth, leaves, turn| Bend { at: self.beside(edge, at, depth), leaves, turn };
        [
            bend(start, Length::ZERO, out, first),
            bend(start, depth, along, Turn::Sharp),
            bend(end, depth, out.back(), Turn::Sharp),
            bend(end, Length::ZERO, along, last),
        ]
    }

    /// How a tab's two roots are taken: sharp where the edge ends with the tab.
    fn roots(&self, edge: Edge, (from, to): (Length, Length), turns: impl Fn(Length) -> (Turn, Turn)) -> (Turn, Turn) {
        let length = match edge {
            Edge::Bottom | Edge::Top => self.width,
            Edge::Right | Edge::Left => self.height,
        };
        let (before, after) = if edge.runs_forwards() { (from, length - to) } else { (length - to, from) };
        let least = Length::mm(1e-6);
        let first = if before > least { turns(before).0 } else { Turn::Sharp };
        let last = if after > least { turns(after).1 } else { Turn::Sharp };
        (first, last)
    }

    /// A slot's reliefs lie in its end walls, where the shoulders of the part that goes in cover them.
    fn slot(&self, from: Point, to: Point) -> [Bend; 4] {
        let (along_u, along_v, radius) = (to.u - from.u, to.v - from.v, self.cutter / 2.0);
        let (lying, short, long) =
            if along_u >= along_v { (true, along_v, along_u) } else { (false, along_u, along_v) };
        let (first, last) = between(short, long / 2.0, radius);
        // Clockwise from the lower left: the end walls of a lying slot are its first and third.
        let (even, odd) = if lying { (first, last) } else { (last, first) };
        let bend = |u, v, leaves, turn| Bend { at: Point::new(u, v), leaves, turn };
        [
            bend(from.u, from.v, Heading::Up, even),
            bend(from.u, to.v, Heading::Right, odd),
            bend(to.u, to.v, Heading::Down, even),
            bend(to.u, from.v, Heading::Left, odd),
        ]
    }
}

/// Reliefs of the two inside corners of a wall of that length whose neighbours are `depth` long: in
/// the wall itself, else in its neighbours, else across.
fn between(wall: Length, depth: Length, radius: Length) -> (Turn, Turn) {
    if wall >= radius * 4.0 {
        (Turn::Ahead(radius), Turn::Behind(radius))
    } else if depth >= radius * 2.0 {
        (Turn::Behind(radius), Turn::Ahead(radius))
    } else if wall >= radius * (2.0 * SQRT_2) && depth >= radius * SQRT_2 {
        (Turn::Across(radius), Turn::Across(radius))
    } else {
        (Turn::Sharp, Turn::Sharp)
    }
}

/// Reliefs of a tab's roots: in its flanks, hidden in the slot; else across; else in the shoulder.
fn flank(depth: Length, shoulder: Length, radius: Length) -> (Turn, Turn) {
    if depth >= radius * 2.0 {
        (Turn::Ahead(radius), Turn::Behind(radius))
    } else if depth >= radius * SQRT_2 && shoulder >= radius * SQRT_2 {
        (Turn::Across(radius), Turn::Across(radius))
    } else if shoulder >= radius * 2.0 {
        (Turn::Behind(radius), Turn::Ahead(radius))
    } else {
        (Turn::Sharp, Turn::Sharp)
    }
}
