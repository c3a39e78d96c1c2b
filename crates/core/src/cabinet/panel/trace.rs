//! Outlines of a panel: what the cutter follows, reliefs included.

use core::f64::consts::SQRT_2;

use smallvec::SmallVec;

use crate::geometry::corner::{Bend, Heading, Turn};
use crate::geometry::outline::{Outline, Point};
use crate::range::relief_radius;
use crate::units::quantity::Length;
use crate::units::short;

use super::{Edge, Feature, Panel, Taper};

/// The corners of a feature: most have four.
pub(super) type Bends = SmallVec<[Bend; 6]>;

impl Panel {
    /// The outer outline, counter-clockwise.
    pub fn outline(&self) -> Outline {
        let mut bends = Vec::new();
        for edge in Edge::ALL {
            bends.push(self.edge_start(edge));
            let on_edge = self.features.iter().filter(|feature| feature.edge() == Some(edge));
            let mut features: Vec<Bends> = on_edge.map(|feature| self.bends(*feature)).collect();
            let along = |bends: &Bends| bends.first().map_or(Length::ZERO, |bend| edge.heading().along(bend.at));
            short::sort(&mut features, along);
            bends.extend(features.into_iter().flatten());
        }
        Outline::through(bends.into_iter().flat_map(Bend::corners))
    }

    /// The outlines of the holes, clockwise.
    pub fn holes(&self) -> impl Iterator<Item = Outline> + '_ {
        self.features.iter().filter_map(|feature| match *feature {
            Feature::Tab { .. }
            | Feature::Pivot { .. }
            | Feature::Hook(_)
            | Feature::Detent(_)
            | Feature::Notch { .. }
            | Feature::Bow(_) => None,
            Feature::TurnedSlot(slot) => Some(slot.outline(self)),
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
        let rounded = self.corner_radius > Length::ZERO && !self.ends_in_a_bow(edge);
        let turn = if rounded { Turn::Rounded(self.corner_radius) } else { Turn::Sharp };
        Bend { at: self.beside(edge, along, Length::ZERO), leaves: edge.heading(), turn }
    }

    /// Whether the edge or the one before it, which meet in a corner, goes out in a bow.
    fn ends_in_a_bow(&self, edge: Edge) -> bool {
        let before = Edge::ALL.into_iter().find(|before| before.heading() == edge.heading().turned_right());
        let is_near = |bow: Edge| bow == edge || Some(bow) == before;
        self.features.iter().any(|feature| matches!(feature, Feature::Bow(bow) if is_near(bow.edge)))
    }

    /// All corners of the panel's outlines that may turn: its own and those of its features.
    pub(crate) fn all_bends(&self) -> impl Iterator<Item = Bend> + '_ {
        let corners = Edge::ALL.map(|edge| self.edge_start(edge));
        corners.into_iter().chain(self.features.iter().flat_map(|feature| self.bends(*feature)))
    }

    /// The corners of a square feature in the outline's order; round holes have none that turn, and those of a turned slot are
    /// its own.
    pub(super) fn bends(&self, feature: Feature) -> Bends {
        let four = match feature {
            Feature::Hook(hook) => return self.hook_bends(hook).into(),
            Feature::Detent(detent) => return self.detent_bends(detent).collect(),
            Feature::TurnedSlot(_) => return Bends::new(),
            Feature::Bow(bow) => {
                let (arc, leaves) = (bow.arc(self), bow.edge.heading());
                let end = Bend { at: arc.to, leaves, turn: Turn::Sharp };
                return [Bend { at: arc.from, leaves, turn: Turn::Arc(arc.bulge) }, end].into_iter().collect();
            }
            Feature::Tab { edge, from, to, depth, taper } => {
                let flanks = depth - taper.along;
                let (first, last) =
                    self.roots(edge, (from, to), |room| flank(flanks, room, relief_radius(self.cutter)));
                self.standing_out(edge, (from, to, depth), (first, last), taper)
            }
            Feature::Pivot { edge, at, diameter, depth } => {
                let (from, to, radius) = (at - diameter / 2.0, at + diameter / 2.0, relief_radius(self.cutter));
                let fillet = |room: Length| {
                    let turn = if depth >= radius && room >= radius { Turn::Fillet(radius) } else { Turn::Sharp };
                    (turn, turn)
                };
                let (first, last) = self.roots(edge, (from, to), fillet);
                self.standing_out(edge, (from, to, depth), (first, last), Taper::default())
            }
            Feature::Notch { edge, from, to, depth } => {
                let (first, last) = self.floor(edge, (from, to, depth));
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
        };
        Bends::from_slice(&four)
    }

    fn standing_out(
        &self,
        edge: Edge,
        (from, to, depth): (Length, Length, Length),
        (first, last): (Turn, Turn),
        Taper { across, along: flank }: Taper,
    ) -> [Bend; 4] {
        let cut_off = |back, ahead| {
            if across > Length::ZERO && flank > Length::ZERO { Turn::CutOff { back, ahead } } else { Turn::Sharp }
        };
        let (start, end) = if edge.runs_forwards() { (from, to) } else { (to, from) };
        let (along, out) = (edge.heading(), edge.heading().turned_right());
        let bend = |at, depth, leaves, turn| Bend { at: self.beside(edge, at, depth), leaves, turn };
        [
            bend(start, Length::ZERO, out, first),
            bend(start, depth, along, cut_off(flank, across)),
            bend(end, depth, out.back(), cut_off(across, flank)),
            bend(end, Length::ZERO, along, last),
        ]
    }

    /// What is left of an edge before and after what goes from one place along it to another, the way the outline runs.
    fn beyond(&self, edge: Edge, (from, to): (Length, Length)) -> [Length; 2] {
        let length = match edge {
            Edge::Bottom | Edge::Top => self.width,
            Edge::Right | Edge::Left => self.height,
        };
        if edge.runs_forwards() { [from, length - to] } else { [length - to, from] }
    }

    /// Whether that is nothing.
    pub(super) fn ends(&self, edge: Edge, from: Length, to: Length) -> [bool; 2] {
        self.beyond(edge, (from, to)).map(|left| left <= Length::mm(1e-6))
    }

    /// How a tab's two roots are taken: sharp where the edge ends with the tab.
    fn roots(&self, edge: Edge, (from, to): (Length, Length), turns: impl Fn(Length) -> (Turn, Turn)) -> (Turn, Turn) {
        let ([before, after], [first, last]) = (self.beyond(edge, (from, to)), self.ends(edge, from, to));
        (if first { Turn::Sharp } else { turns(before).0 }, if last { Turn::Sharp } else { turns(after).1 })
    }

    /// How the two inside corners of a notch are taken. What takes off a corner of the panel has one, which nothing goes into.
    fn floor(&self, edge: Edge, (from, to, depth): (Length, Length, Length)) -> (Turn, Turn) {
        let radius = relief_radius(self.cutter);
        let fillet = if (to - from).min(depth) >= radius { Turn::Fillet(radius) } else { Turn::Sharp };
        match self.ends(edge, from, to) {
            [false, false] => between(to - from, depth, radius),
            [true, _] => (Turn::Sharp, fillet),
            [false, true] => (fillet, Turn::Sharp),
        }
    }

    /// A slot's reliefs lie in its end walls, where the shoulders of the part that goes in cover them.
    pub(super) fn slot(&self, from: Point, to: Point) -> [Bend; 4] {
        let (along_u, along_v, radius) = (to.u - from.u, to.v - from.v, relief_radius(self.cutter));
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
