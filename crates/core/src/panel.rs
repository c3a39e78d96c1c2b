//! A panel: one flat part, a rectangle with the features that its joints and holes give it.

use core::fmt;

use crate::outline::{Corner, Outline, Point, QUARTER};
use crate::quantity::{Area, Length};
use crate::space::Placement;

/// Which part of the unit a panel is; numbers count from 1 at the left and at the bottom.
///
/// The order is the reading order of cut lists: from the ground up, from left to right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PanelId {
    /// The lower base plate.
    BaseLower,
    /// The upper base plate.
    BaseUpper,
    /// An end or a divider.
    Upright(u8),
    /// The back.
    Back,
    /// A shelf.
    Shelf {
        /// Its bay.
        bay: u8,
        /// Its row, from the bottom.
        row: u8,
    },
    /// The strip before an upright.
    Stile(u8),
    /// The door leaf of a bay.
    Leaf(u8),
    /// The top.
    Top,
}

impl fmt::Display for PanelId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::BaseLower => f.write_str("base-lower"),
            Self::BaseUpper => f.write_str("base-upper"),
            Self::Upright(number) => write!(f, "upright-{number}"),
            Self::Back => f.write_str("back"),
            Self::Shelf { bay, row } => write!(f, "shelf-{bay}-{row}"),
            Self::Stile(number) => write!(f, "stile-{number}"),
            Self::Leaf(bay) => write!(f, "leaf-{bay}"),
            Self::Top => f.write_str("top"),
        }
    }
}

impl serde::Serialize for PanelId {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// A part's material: the range's board for the body or the chosen one for the back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stock {
    /// The model's body board.
    Body,
    /// The chosen back board.
    Back,
}

/// Direction of the face grain on a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GrainAxis {
    /// Along u.
    AlongU,
    /// Along v.
    AlongV,
}

/// An edge of the panel's rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Edge {
    /// v = 0.
    Bottom,
    /// u = width.
    Right,
    /// v = height.
    Top,
    /// u = 0.
    Left,
}

/// Something that departs from the rectangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Feature {
    /// Stands out from an edge by `depth`, between two places along it.
    Tab {
        /// The edge.
        edge: Edge,
        /// Where it begins along the edge.
        from: Length,
        /// Where it ends.
        to: Length,
        /// How far it stands out.
        depth: Length,
    },
    /// Cuts into an edge by `depth`, between two places along it.
    Notch {
        /// The edge.
        edge: Edge,
        /// Where it begins along the edge.
        from: Length,
        /// Where it ends.
        to: Length,
        /// How deep it cuts.
        depth: Length,
    },
    /// A square-cornered hole.
    Slot {
        /// Lower left corner.
        from: Point,
        /// Upper right corner.
        to: Point,
    },
    /// A round hole.
    Round {
        /// Its centre.
        centre: Point,
        /// Its diameter.
        diameter: Length,
    },
    /// A lying hole with half-round ends.
    Slotted {
        /// Its centre.
        centre: Point,
        /// Length over the ends.
        length: Length,
        /// Height.
        height: Length,
    },
}

impl Feature {
    /// Whether both cut the same shape, within a millionth of a millimetre: positions that are
    /// equal on paper may differ in their last bits.
    pub(crate) fn is_like(self, other: Self) -> bool {
        let same = |a: Length, b: Length| (a - b).abs() < Length::mm(1e-6);
        let same_point = |a: Point, b: Point| same(a.u, b.u) && same(a.v, b.v);
        match (self, other) {
            (
                Self::Tab { edge: a, from, to, depth },
                Self::Tab { edge: b, from: other_from, to: other_to, depth: other_depth },
            )
            | (
                Self::Notch { edge: a, from, to, depth },
                Self::Notch { edge: b, from: other_from, to: other_to, depth: other_depth },
            ) => a == b && same(from, other_from) && same(to, other_to) && same(depth, other_depth),
            (Self::Slot { from, to }, Self::Slot { from: other_from, to: other_to }) => {
                same_point(from, other_from) && same_point(to, other_to)
            }
            (Self::Round { centre, diameter }, Self::Round { centre: other_centre, diameter: other_diameter }) => {
                same_point(centre, other_centre) && same(diameter, other_diameter)
            }
            (a, b) => a == b,
        }
    }
}

/// One flat part.
#[derive(Clone, Debug, PartialEq)]
pub struct Panel {
    /// Which part it is.
    pub id: PanelId,
    /// What it is cut from.
    pub stock: Stock,
    /// Width of its rectangle, without tabs.
    pub width: Length,
    /// Height of its rectangle, without tabs.
    pub height: Length,
    /// Thickness with its film.
    pub thickness: Length,
    /// Direction of its face grain.
    pub grain: GrainAxis,
    /// Radius of its four corners.
    pub corner_radius: Length,
    /// Tabs, notches and holes, in the order in which joints name them.
    pub features: Vec<Feature>,
    /// Where it stands in the case.
    pub case_from_panel: Placement,
}

/// Removed by rounding one corner: (1 − π/4) r².
fn corner_loss(radius: Length) -> Area {
    radius * radius * (1.0 - core::f64::consts::FRAC_PI_4)
}

impl Panel {
    /// Area of one face, all features counted.
    pub fn area(&self) -> Area {
        self.pieces().map(|(area, _)| area).sum()
    }

    /// Centroid of the face.
    pub fn centroid(&self) -> Point {
        let (mut area, mut moment_u, mut moment_v) = (0.0, 0.0, 0.0);
        for (piece, centre) in self.pieces() {
            area += piece.in_mm2();
            moment_u += piece.in_mm2() * centre.u.in_mm();
            moment_v += piece.in_mm2() * centre.v.in_mm();
        }
        Point::new(Length::mm(moment_u / area), Length::mm(moment_v / area))
    }

    /// The rectangle and its features as signed areas with their centroids.
    fn pieces(&self) -> impl Iterator<Item = (Area, Point)> + '_ {
        let middle = Point::new(self.width / 2.0, self.height / 2.0);
        let body = self.width * self.height + corner_loss(self.corner_radius) * -4.0;
        core::iter::once((body, middle)).chain(self.features.iter().map(|feature| self.piece(*feature)))
    }

    fn piece(&self, feature: Feature) -> (Area, Point) {
        let pi_quarters = core::f64::consts::FRAC_PI_4;
        match feature {
            Feature::Tab { edge, from, to, depth } => {
                ((to - from) * depth, self.beside(edge, (from + to) / 2.0, depth / 2.0))
            }
            Feature::Notch { edge, from, to, depth } => {
                ((from - to) * depth, self.beside(edge, (from + to) / 2.0, depth / -2.0))
            }
            Feature::Slot { from, to } => {
                let centre = Point::new((from.u + to.u) / 2.0, (from.v + to.v) / 2.0);
                ((from.u - to.u) * (to.v - from.v), centre)
            }
            Feature::Round { centre, diameter } => (diameter * diameter * -pi_quarters, centre),
            Feature::Slotted { centre, length, height } => {
                ((height - length) * height + height * height * -pi_quarters, centre)
            }
        }
    }

    /// The point at `along` an edge and `out` from it.
    fn beside(&self, edge: Edge, along: Length, out: Length) -> Point {
        match edge {
            Edge::Bottom => Point::new(along, -out),
            Edge::Right => Point::new(self.width + out, along),
            Edge::Top => Point::new(along, self.height + out),
            Edge::Left => Point::new(-out, along),
        }
    }

    /// Size of the smallest rectangle that holds the panel with its tabs: along u, along v.
    pub fn blank(&self) -> (Length, Length) {
        let (mut out_u, mut out_v) = ([Length::ZERO; 2], [Length::ZERO; 2]);
        for feature in &self.features {
            if let Feature::Tab { edge, depth, .. } = *feature {
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
        }
        (self.width + out_u.into_iter().sum(), self.height + out_v.into_iter().sum())
    }

    /// Length of the outer outline.
    pub fn outer_length(&self) -> Length {
        let rounding = self.corner_radius * (2.0 * core::f64::consts::PI - 8.0);
        let sides: Length = self
            .features
            .iter()
            .map(|feature| match *feature {
                Feature::Tab { depth, .. } | Feature::Notch { depth, .. } => depth * 2.0,
                Feature::Slot { .. } | Feature::Round { .. } | Feature::Slotted { .. } => Length::ZERO,
            })
            .sum();
        (self.width + self.height) * 2.0 + rounding + sides
    }

    /// Length of all holes.
    pub fn inner_length(&self) -> Length {
        let pi = core::f64::consts::PI;
        self.features
            .iter()
            .map(|feature| match *feature {
                Feature::Tab { .. } | Feature::Notch { .. } => Length::ZERO,
                Feature::Slot { from, to } => (to.u - from.u + to.v - from.v) * 2.0,
                Feature::Round { diameter, .. } => diameter * pi,
                Feature::Slotted { length, height, .. } => (length - height) * 2.0 + height * pi,
            })
            .sum()
    }

    /// The outer outline, counter-clockwise.
    pub fn outline(&self) -> Outline {
        let mut corners = Vec::new();
        for edge in [Edge::Bottom, Edge::Right, Edge::Top, Edge::Left] {
            self.walk(edge, &mut corners);
        }
        Outline::through(corners)
    }

    /// The outlines of the holes, clockwise.
    pub fn holes(&self) -> impl Iterator<Item = Outline> + '_ {
        self.features.iter().filter_map(|feature| match *feature {
            Feature::Tab { .. } | Feature::Notch { .. } => None,
            Feature::Slot { from, to } => Some(Outline::rectangle(from, to).reversed()),
            Feature::Round { centre, diameter } => Some(Outline::circle(centre, diameter).reversed()),
            Feature::Slotted { centre, length, height } => Some(Outline::stadium(centre, length, height).reversed()),
        })
    }

    /// Adds the corners of one edge, from its start in walking direction.
    fn walk(&self, edge: Edge, corners: &mut Vec<Corner>) {
        let length = match edge {
            Edge::Bottom | Edge::Top => self.width,
            Edge::Right | Edge::Left => self.height,
        };
        let forwards = matches!(edge, Edge::Bottom | Edge::Right);
        let mut steps: Vec<(Length, Length, Length)> = Vec::new();
        for feature in &self.features {
            let (from, to, out) = match *feature {
                Feature::Tab { edge: on, from, to, depth } if on == edge => (from, to, depth),
                Feature::Notch { edge: on, from, to, depth } if on == edge => (from, to, -depth),
                _ => continue,
            };
            steps.insert(steps.partition_point(|step| step.0 < from), (from, to, out));
        }
        let mut line = |along: Length, out: Length, bulge: f64| {
            corners.push(Corner { at: self.beside(edge, along, out), bulge });
        };
        let radius = self.corner_radius;
        if forwards {
            line(radius, Length::ZERO, 0.0);
            for (from, to, out) in steps {
                line(from, Length::ZERO, 0.0);
                line(from, out, 0.0);
                line(to, out, 0.0);
                line(to, Length::ZERO, 0.0);
            }
            line(length - radius, Length::ZERO, if radius > Length::ZERO { QUARTER } else { 0.0 });
        } else {
            line(length - radius, Length::ZERO, 0.0);
            for (from, to, out) in steps.into_iter().rev() {
                line(to, Length::ZERO, 0.0);
                line(to, out, 0.0);
                line(from, out, 0.0);
                line(from, Length::ZERO, 0.0);
            }
            line(radius, Length::ZERO, if radius > Length::ZERO { QUARTER } else { 0.0 });
        }
    }
}
