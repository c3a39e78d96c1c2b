//! What does not run along the axes of a panel: slots that are turned, and bows at its edges.

use crate::geometry::corner::Bend;
use crate::geometry::outline::{Outline, Point, Segment};
use crate::geometry::space::Aim;
use crate::units::quantity::{Area, Length};

use super::{Edge, Panel};

/// A square-cornered hole that is turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnedSlot {
    /// Its centre.
    pub centre: Point,
    /// Along `aim`.
    pub length: Length,
    /// Across it.
    pub width: Length,
    /// Which way its length goes on the panel, u to the right and v to the rear.
    pub aim: Aim,
}

/// An edge, or a stretch of it, that goes out in an arc.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeBow {
    /// The edge.
    pub edge: Edge,
    /// Where the arc begins along the edge.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// How far its middle stands out.
    pub rise: Length,
}

impl TurnedSlot {
    /// The point on the panel that lies so far along and across it from its centre.
    pub fn point(self, along: Length, across: Length) -> Point {
        let Self { centre, aim, .. } = self;
        Point::new(centre.u + along * aim.x - across * aim.y, centre.v + along * aim.y + across * aim.x)
    }

    /// Its corners as they would be with its centre at the origin and its length along u.
    fn bends(self, panel: &Panel) -> [Bend; 4] {
        let corner = Point::new(self.length / 2.0, self.width / 2.0);
        panel.slot(Point::new(-corner.u, -corner.v), corner)
    }

    /// Its outline with its reliefs, clockwise.
    pub(super) fn outline(self, panel: &Panel) -> Outline {
        let upright = Outline::through(self.bends(panel).into_iter().flat_map(Bend::corners));
        upright.moved(|at| self.point(at.u, at.v))
    }

    /// What it takes of the panel, reliefs counted, in the middle of it.
    pub(super) fn piece(self, panel: &Panel) -> (Area, Point) {
        let turns = self.bends(panel).map(|bend| bend.added_area().0);
        (self.length * self.width * -1.0 + turns.into_iter().sum(), self.centre)
    }

    /// Length of its outline.
    pub(super) fn around(self, panel: &Panel) -> Length {
        let turns = self.bends(panel).map(Bend::added_length);
        (self.length + self.width) * 2.0 + turns.into_iter().sum()
    }
}

impl EdgeBow {
    /// Its arc on a panel, the way the outline runs.
    pub fn arc(self, panel: &Panel) -> Segment {
        let (from, to) = if self.edge.runs_forwards() { (self.from, self.to) } else { (self.to, self.from) };
        let at = |along| panel.beside(self.edge, along, Length::ZERO);
        Segment { from: at(from), to: at(to), bulge: self.bulge() }
    }

    /// The bulge of its arc: the rise over half of the chord.
    pub(super) fn bulge(self) -> f64 {
        2.0 * (self.rise / (self.to - self.from))
    }

    /// What its arc is longer than its chord.
    pub(super) fn added_length(self, panel: &Panel) -> Length {
        self.arc(panel).length() - (self.to - self.from)
    }

    /// How far it stands out at a place along the edge.
    pub(crate) fn out_at(self, along: Length) -> Length {
        let (half, rise) = ((self.to - self.from) / 2.0, self.rise);
        let radius = (half * half / rise + rise) / 2.0;
        let beside = ((along - self.from) - half).in_mm();
        let (radius, squared) = (radius.in_mm(), radius.in_mm() * radius.in_mm() - beside * beside);
        Length::mm((libm::sqrt(squared.max(0.0)) - radius + rise.in_mm()).max(0.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Worked: over a chord of 420 a rise of 80 is an arc of radius (210² + 80²) / 160 = 315.625; 105 from its middle it
    // stands √(315.625² − 105²) − 235.625 = 62.02 out.
    #[test]
    fn a_bow_stands_out_along_its_circle() {
        let bow = EdgeBow { edge: Edge::Left, from: Length::ZERO, to: Length::mm(420.0), rise: Length::mm(80.0) };
        let out = |along| bow.out_at(Length::mm(along)).in_mm();
        assert!((out(210.0) - 80.0).abs() < 1e-9 && out(0.0).abs() < 1e-9 && out(420.0).abs() < 1e-9);
        assert!((out(105.0) - 62.0217).abs() < 1e-3 && (out(315.0) - out(105.0)).abs() < 1e-9, "{}", out(105.0));
    }
}
