//! Areas, lengths and centroids of a panel, straight from its features.

use core::f64::consts::{FRAC_PI_4, PI};

use crate::geometry::corner::Bend;
use crate::geometry::outline::Point;
use crate::units::quantity::{Area, Length};

use super::{Edge, Feature, Panel};

impl Panel {
    /// Area of one face as it is cut, all features counted.
    pub fn area(&self) -> Area {
        self.pieces().map(|(area, _)| area).sum()
    }

    /// Centroid of that face.
    pub fn centroid(&self) -> Point {
        balance(self.pieces()).1
    }

    /// The panel's volume over its thickness, and its centroid: what is rounded over by hand is left out.
    pub fn solid(&self) -> (Area, Point) {
        balance(self.pieces().chain(self.rounded_over()))
    }

    /// The rectangle, its features and its turns as signed areas with their centroids.
    fn pieces(&self) -> impl Iterator<Item = (Area, Point)> + '_ {
        let middle = Point::new(self.width / 2.0, self.height / 2.0);
        let features = self.features.iter().flat_map(|feature| {
            let turns = self.bends(*feature).into_iter().map(Bend::added_area);
            core::iter::once(self.piece(*feature)).chain(turns)
        });
        let corners = Edge::ALL.map(|edge| self.edge_start(edge).added_area());
        core::iter::once((self.width * self.height, middle)).chain(corners).chain(features)
    }

    fn piece(&self, feature: Feature) -> (Area, Point) {
        match feature {
            Feature::Tab { edge, from, to, depth, .. } => {
                ((to - from) * depth, self.beside(edge, (from + to) / 2.0, depth / 2.0))
            }
            Feature::Pivot { edge, at, diameter, depth } => (diameter * depth, self.beside(edge, at, depth / 2.0)),
            Feature::Hook(hook) => balance(self.hook_pieces(hook)),
            Feature::Detent(detent) => balance(self.detent_pieces(detent)),
            Feature::Notch { edge, from, to, depth } => {
                ((from - to) * depth, self.beside(edge, (from + to) / 2.0, depth / -2.0))
            }
            Feature::Slot { from, to } => {
                let centre = Point::new((from.u + to.u) / 2.0, (from.v + to.v) / 2.0);
                ((from.u - to.u) * (to.v - from.v), centre)
            }
            Feature::Bore { centre, diameter } => (diameter * diameter * -FRAC_PI_4, centre),
            Feature::Hole { centre, length, height } => {
                ((height - length) * height + height * height * -FRAC_PI_4, centre)
            }
            Feature::TurnedSlot(slot) => slot.piece(self),
            Feature::Bow(bow) => bow.arc(self).cap(),
        }
    }

    /// What the hand takes off, as areas through the whole thickness: a pivot's square becomes round,
    /// its fillets go; the upright edges lose a square less a quarter disc on each of four corners.
    fn rounded_over(&self) -> impl Iterator<Item = (Area, Point)> + '_ {
        let pivots = self.features.iter().filter_map(|feature| match *feature {
            Feature::Pivot { edge, at, diameter, depth } => {
                let round = diameter * diameter * FRAC_PI_4 / self.thickness;
                Some(((round - diameter) * depth, self.beside(edge, at, depth / 2.0)))
            }
            _ => None,
        });
        let fillets = self.features.iter().filter(|feature| matches!(feature, Feature::Pivot { .. }));
        let fillets = fillets.flat_map(|feature| {
            self.bends(*feature).into_iter().map(|bend| {
                let (area, at) = bend.added_area();
                (area * -1.0, at)
            })
        });
        let edges = self.rounding * self.rounding * (4.0 - PI) / self.thickness * self.height * -1.0;
        let middle = Point::new(self.width / 2.0, self.height / 2.0);
        pivots.chain(fillets).chain(core::iter::once((edges, middle)))
    }

    /// The point at `along` an edge and `out` from it.
    pub(crate) fn beside(&self, edge: Edge, along: Length, out: Length) -> Point {
        match edge {
            Edge::Bottom => Point::new(along, -out),
            Edge::Right => Point::new(self.width + out, along),
            Edge::Top => Point::new(along, self.height + out),
            Edge::Left => Point::new(-out, along),
        }
    }

    /// Size of the smallest rectangle that holds the panel with its tabs: along u, along v.
    pub fn blank(&self) -> (Length, Length) {
        let [out_u, out_v] = self.stands_out();
        (self.width + out_u.into_iter().sum(), self.height + out_v.into_iter().sum())
    }

    /// The lower left corner of that rectangle.
    pub fn blank_corner(&self) -> Point {
        let [[low_u, _], [low_v, _]] = self.stands_out();
        Point::new(-low_u, -low_v)
    }

    /// How far tabs, pivots and bows stand out of the rectangle: along u and v, at its lower and at its upper side.
    fn stands_out(&self) -> [[Length; 2]; 2] {
        let (mut out_u, mut out_v) = ([Length::ZERO; 2], [Length::ZERO; 2]);
        for feature in &self.features {
            let (edge, depth) = match *feature {
                Feature::Tab { edge, depth, .. } | Feature::Pivot { edge, depth, .. } => (edge, depth),
                Feature::Hook(hook) => (Edge::Right, hook.out()),
                Feature::Detent(detent) => (Edge::Left, detent.out()),
                Feature::Bow(bow) => (bow.edge, bow.rise),
                Feature::Notch { .. }
                | Feature::Slot { .. }
                | Feature::Bore { .. }
                | Feature::Hole { .. }
                | Feature::TurnedSlot(_) => continue,
            };
            let [low_u, high_u] = &mut out_u;
            let [low_v, high_v] = &mut out_v;
            let side = match edge {
                Edge::Left => low_u,
                Edge::Right => high_u,
                Edge::Bottom => low_v,
                Edge::Top => high_v,
            };
            *side = side.max(depth);
        }
        [out_u, out_v]
    }

    /// Length of the outer outline.
    pub fn outer_length(&self) -> Length {
        let corners: Length = Edge::ALL.map(|edge| self.edge_start(edge).added_length()).into_iter().sum();
        let sides = self.features.iter().map(|feature| match *feature {
            Feature::Tab { depth, .. } | Feature::Pivot { depth, .. } => depth * 2.0 + self.turned(*feature),
            Feature::Notch { edge, from, to, depth } => {
                let walls = if self.ends(edge, from, to) == [false; 2] { 2.0 } else { 0.0 };
                depth * walls + self.turned(*feature)
            }
            Feature::Hook(hook) => (hook.out() + hook.rise) * 2.0 + self.turned(*feature),
            Feature::Detent(detent) => self.detent_length(detent),
            Feature::Bow(bow) => bow.added_length(self),
            Feature::Slot { .. } | Feature::Bore { .. } | Feature::Hole { .. } | Feature::TurnedSlot(_) => Length::ZERO,
        });
        (self.width + self.height) * 2.0 + corners + sides.sum()
    }

    /// How many holes it has.
    pub fn count_of_holes(&self) -> u32 {
        let holes = self.features.iter().filter(|feature| feature.edge().is_none());
        holes.map(|_| 1).sum()
    }

    /// Length of all holes.
    pub fn inner_length(&self) -> Length {
        let holes = self.features.iter().map(|feature| match *feature {
            Feature::Tab { .. }
            | Feature::Pivot { .. }
            | Feature::Hook(_)
            | Feature::Detent(_)
            | Feature::Notch { .. }
            | Feature::Bow(_) => Length::ZERO,
            Feature::TurnedSlot(slot) => slot.around(self),
            Feature::Slot { from, to } => (to.u - from.u + to.v - from.v) * 2.0 + self.turned(*feature),
            Feature::Bore { diameter, .. } => diameter * PI,
            Feature::Hole { length, height, .. } => around(length, height),
        });
        holes.sum()
    }

    /// The rims of its holes for cables and fingers on one face, each with its length: a hand eases them. Slots and the holes of
    /// pivots fit, and stay sharp.
    pub fn rims(&self) -> impl Iterator<Item = Length> + '_ {
        self.features.iter().filter_map(|feature| match *feature {
            Feature::Hole { length, height, .. } => Some(around(length, height)),
            Feature::Tab { .. }
            | Feature::Pivot { .. }
            | Feature::Hook(_)
            | Feature::Detent(_)
            | Feature::Notch { .. }
            | Feature::Slot { .. }
            | Feature::Bore { .. }
            | Feature::TurnedSlot(_)
            | Feature::Bow(_) => None,
        })
    }

    /// Length of the edges that a hand finishes: the outer outline, and the walls of holes for cables and fingers.
    pub fn finished_length(&self) -> Length {
        self.outer_length() + self.rims().sum()
    }

    /// What a feature's turns add to the length.
    fn turned(&self, feature: Feature) -> Length {
        self.bends(feature).into_iter().map(Bend::added_length).sum()
    }
}

/// Length round a lying hole with half-round ends.
fn around(length: Length, height: Length) -> Length {
    (length - height) * 2.0 + height * PI
}

/// Sum and common centroid of signed areas.
fn balance(pieces: impl Iterator<Item = (Area, Point)>) -> (Area, Point) {
    let (mut area, mut moment_u, mut moment_v) = (0.0, 0.0, 0.0);
    for (piece, centre) in pieces {
        area += piece.in_mm2();
        moment_u += piece.in_mm2() * centre.u.in_mm();
        moment_v += piece.in_mm2() * centre.v.in_mm();
    }
    (Area::mm2(area), Point::new(Length::mm(moment_u / area), Length::mm(moment_v / area)))
}
