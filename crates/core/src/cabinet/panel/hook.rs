//! How a hook at a panel's right edge is cut.

use crate::geometry::corner::{Bend, Heading, Turn};
use crate::geometry::outline::Point;
use crate::range::relief_radius;
use crate::units::quantity::{Area, Length};

use super::{Edge, Hook, Panel};

impl Panel {
    /// The corners of a hook in the outline's order. What hangs on it covers the edge beside its root, so reliefs lie there and
    /// leave the neck whole; under the nose one lies in the neck, where that bears least.
    pub(super) fn hook_bends(&self, hook: Hook) -> [Bend; 6] {
        let Hook { from, to, neck, rise, .. } = hook;
        let radius = relief_radius(self.cutter);
        let relief = |room: Length, turn: Turn| if room >= radius * 2.0 { turn } else { Turn::Sharp };
        let bend = |along, out, leaves, turn| Bend { at: self.beside(Edge::Right, along, out), leaves, turn };
        [
            bend(from, Length::ZERO, Heading::Right, relief(from, Turn::Behind(radius))),
            bend(from, hook.out(), Heading::Up, Turn::Sharp),
            bend(to + rise, hook.out(), Heading::Left, Turn::Sharp),
            bend(to + rise, neck, Heading::Down, Turn::Sharp),
            bend(to, neck, Heading::Left, relief(neck, Turn::Ahead(radius))),
            bend(to, Length::ZERO, Heading::Up, relief(self.height - to, Turn::Ahead(radius))),
        ]
    }

    /// The rectangles of a hook, each as an area with its centroid.
    pub(super) fn hook_pieces(&self, hook: Hook) -> impl Iterator<Item = (Area, Point)> {
        hook.rectangles().into_iter().map(|((from, to), (near, far))| {
            ((to - from) * (far - near), self.beside(Edge::Right, (from + to) / 2.0, (near + far) / 2.0))
        })
    }
}
