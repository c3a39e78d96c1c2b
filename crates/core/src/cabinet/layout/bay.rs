//! A bay: from upright to upright, from stile to stile, and what is left where a leaf hangs.

use smallvec::SmallVec;

use crate::cabinet::swing;
use crate::choice::Hung;
use crate::range::Build;
use crate::units::quantity::Length;

/// Undersides of the shelves of a bay.
pub type Shelves = SmallVec<[Length; 6]>;

/// The clear space of one bay.
#[derive(Clone, Debug, PartialEq)]
pub struct BaySpan {
    /// Right face of the upright at its left.
    pub left: Length,
    /// Left face of the upright at its right.
    pub right: Length,
    /// Left end of the opening between stiles.
    pub opening_left: Length,
    /// Right end of the opening between stiles.
    pub opening_right: Length,
    /// Left end of what is free to go in: of the opening or, where a leaf hangs, between that leaf, open at a right angle, and
    /// its stop.
    pub access_left: Length,
    /// Right end of what is free to go in.
    pub access_right: Length,
    /// Left face of the stop of its leaf, if it has one.
    pub stop: Option<Length>,
    /// Undersides of its shelves, from the bottom.
    pub shelves: Shelves,
}

impl BaySpan {
    /// A bay without a leaf, between uprights and between stiles.
    pub(super) fn between(clear: (Length, Length), opening: (Length, Length), shelves: Shelves) -> Self {
        let ((left, right), (opening_left, opening_right)) = (clear, opening);
        let (access_left, access_right) = opening;
        Self { left, right, opening_left, opening_right, access_left, access_right, stop: None, shelves }
    }

    /// The same with a leaf hung at that side, and its stop at the other one.
    pub(super) fn with_leaf(self, build: &Build, body: Length, hung: Hung) -> Self {
        let open = swing::open(build, body);
        match hung {
            Hung::Left => {
                let stop = self.right - swing::stop(build, body, self.right - self.opening_right);
                Self { access_left: self.opening_left + open, access_right: stop, stop: Some(stop), ..self }
            }
            Hung::Right => {
                let far = self.left + swing::stop(build, body, self.opening_left - self.left);
                Self { access_left: far, access_right: self.opening_right - open, stop: Some(far - body), ..self }
            }
        }
    }

    /// Clear width.
    pub fn clear(&self) -> Length {
        self.right - self.left
    }

    /// Width of what is free to go in.
    pub fn access(&self) -> Length {
        self.access_right - self.access_left
    }

    /// Middle of the clear width.
    pub fn middle(&self) -> Length {
        (self.left + self.right) / 2.0
    }

    /// Left side of something so wide that stands in the bay: in the middle or, where one side of its access lies further in, beside
    /// that.
    pub fn standing(&self, wide: Length) -> Length {
        (self.middle() - wide / 2.0).min(self.access_right - wide).max(self.access_left)
    }
}
