//! Whether a unit stands: moments about the front edge of its foot.
//!
//! The foot's front edge is the line about which furniture against a wall tips. What stands behind it holds the
//! unit, what stands before it tips it; a floor that falls to the front turns both.
//!
//! Nothing but weight keeps what stands in the base there, so a unit may also begin to tip over its base: see [`Rising`].

use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::PanelId;
use crate::cabinet::plinth::{Foot, Plinth};
use crate::range::Build;
use crate::units::quantity::{Force, Length, Mass};

pub mod push;

/// A mass and where its centre is: behind the foot's front edge and over the floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Burden {
    /// The mass.
    pub mass: Mass,
    /// Behind the foot's front edge; before it if negative.
    pub behind: Length,
    /// Over the floor.
    pub up: Length,
}

/// What holds a unit down and what tips it, in newton metres about the foot's front edge.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moments {
    /// Holds it.
    pub holds: f64,
    /// Tips it.
    pub tips: f64,
}

impl Moments {
    /// Of masses on a floor that falls to the front by `slope`, its rise over its length.
    ///
    /// ```
    /// use slotwright_core::units::quantity::{Length, Mass};
    /// use slotwright_core::statics::stability::{Burden, Moments};
    /// let at = |kg, behind| Burden { mass: Mass::kg(kg), behind: Length::mm(behind), up: Length::ZERO };
    /// let found = Moments::of([at(10.0, 200.0), at(4.0, -225.0)], 0.0);
    /// assert!((found.left() - 9.806_65 * (10.0 * 0.2 - 4.0 * 0.225)).abs() < 1e-9);
    /// ```
    // Source: statics: M = Σ m g (x cos θ − z sin θ).
    pub fn of(burdens: impl IntoIterator<Item = Burden>, slope: f64) -> Self {
        let level = 1.0 / (1.0 + slope * slope).sqrt();
        burdens.into_iter().fold(Self::default(), |moments, Burden { mass, behind, up }| {
            moments.with(mass.weight(), (behind - up * slope) * level)
        })
    }

    /// With a force downwards so far behind the edge; or with a push to the front so far over the floor, which
    /// counts as one before it.
    #[must_use]
    pub fn with(self, force: Force, arm: Length) -> Self {
        let moment = force.in_newton() * arm.in_m();
        Self { holds: self.holds + moment.max(0.0), tips: self.tips - moment.min(0.0) }
    }

    /// What is left until it tips; negative if it does.
    pub fn left(self) -> f64 {
        self.holds - self.tips
    }
}

/// The rise over the length of a floor on which masses are about to tip: x / z of their centre.
pub fn steepest(burdens: &[Burden]) -> f64 {
    let (mut along, mut up) = (0.0, 0.0);
    for burden in burdens {
        along += burden.mass.in_kg() * burden.behind.in_mm();
        up += burden.mass.in_kg() * burden.up.in_mm();
    }
    along / up
}

/// What rises as one body where a unit begins to tip.
///
/// Uprights stand in the base by straight tabs, upright and with play, and the back comes down into it: neither is kept from rising. So
/// under a push at its top the case rises about the outer edges of its uprights and leaves base and plinth standing, where
/// that takes less than the whole unit over its foot. It rocks until its tabs bind, with 0.15 mm of play over 35 mm about 4 mm for each
/// metre of height, and only then takes the base along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rising {
    /// The whole unit, over its foot.
    Unit,
    /// What uprights carry: the back on their hooks, shelves in their slots, the top on their heads. Stiles, stops and staves stand
    /// in the base by themselves, and give way with the top that is over them. So do leaves, but their weight pulls at their
    /// pivots: it counts about these.
    Case,
}

impl Rising {
    /// Both.
    pub(crate) const ALL: [Self; 2] = [Self::Unit, Self::Case];

    /// The lines about which it rises.
    pub(crate) fn foot(self, build: &Build, layout: &Layout) -> Foot {
        match self {
            Self::Unit => layout.foot(build),
            Self::Case => {
                let [left, right] = layout.ends;
                let (front, rear) = (layout.upright_front, layout.upright_rear);
                Foot { front, rear, left, right: layout.width - right }
            }
        }
    }

    /// How high these are over the floor.
    pub(crate) fn under(self, layout: &Layout) -> Length {
        match self {
            Self::Unit => Length::ZERO,
            Self::Case => layout.floor,
        }
    }

    /// Whether a part's weight holds it, or tips it.
    pub(crate) fn has(self, id: PanelId) -> bool {
        match id {
            PanelId::Upright(_) | PanelId::Back | PanelId::Shelf { .. } | PanelId::Leaf(_) | PanelId::Top => true,
            PanelId::PlinthFront
            | PanelId::PlinthRear
            | PanelId::Bearer(_)
            | PanelId::BaseLower
            | PanelId::BaseUpper
            | PanelId::Stile(_)
            | PanelId::Stop(_)
            | PanelId::Stave { .. } => self == Self::Unit,
        }
    }
}

/// The foot's front edge, behind that of the top.
pub(crate) fn edge(build: &Build, layout: &Layout) -> Length {
    layout.foot(build).front
}

/// How the floor falls where a carpet lifts the rear of the foot.
pub(crate) fn carpet(picked: Picked<'_>, layout: &Layout) -> f64 {
    let Foot { front, rear, .. } = layout.foot(&picked.range.build);
    picked.range.strength.carpet_mm / (rear - front)
}

/// Which leaves stand open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaves {
    /// None of them.
    Shut,
    /// All of them.
    Open,
    /// Those of these bays, the first bay the lowest bit.
    Of(u8),
}

impl Leaves {
    fn is_open(self, bay: u8) -> bool {
        match self {
            Self::Shut => false,
            Self::Open => true,
            Self::Of(bays) => bay.checked_sub(1).is_some_and(|at| bays >> at & 1 == 1),
        }
    }
}

/// Where the middle of a part is, behind the front edge of the top and over the floor, its leaf open at a right angle or shut.
pub(crate) fn middle(
    picked: Picked<'_>,
    layout: &Layout,
    id: PanelId,
    width: Length,
    leaves: Leaves,
) -> (Length, Length) {
    let half_up = (layout.floor + layout.ceiling) / 2.0;
    let shut = layout.face + layout.body / 2.0;
    match id {
        PanelId::PlinthFront | PanelId::PlinthRear | PanelId::Bearer(_) => {
            let middle = |plinth: Plinth| {
                let [front, rear] = plinth.long(layout.body).map(|front| front + layout.body / 2.0);
                match id {
                    PanelId::PlinthFront => front,
                    PanelId::PlinthRear => rear,
                    _ => (plinth.front + plinth.rear) / 2.0,
                }
            };
            (layout.plinth.map_or(Length::ZERO, middle), layout.base / 2.0)
        }
        PanelId::BaseLower => {
            ((layout.depth + picked.range.build.foot_recess_mm) / 2.0, layout.base + layout.body / 2.0)
        }
        PanelId::BaseUpper => (layout.depth / 2.0, layout.seam() + layout.body / 2.0),
        PanelId::Top => (layout.depth / 2.0, layout.ceiling + layout.body / 2.0),
        PanelId::Upright(_) => ((layout.upright_front + layout.upright_rear) / 2.0, half_up),
        PanelId::Back => (layout.back_front + layout.back / 2.0, half_up),
        // The leaf's middle goes round its pivot, which stands in its inset.
        PanelId::Leaf(bay) if leaves.is_open(bay) => (shut - width / 2.0 + picked.range.build.pivot_inset_mm, half_up),
        PanelId::Stile(_) | PanelId::Leaf(_) => (shut, half_up),
        PanelId::Stop(_) => ((layout.stop_front + layout.stop_rear) / 2.0, half_up),
        PanelId::Stave { end, number } => {
            let stave = layout.bow(end).and_then(|bow| {
                let angle = bow.angles().nth(usize::from(number).checked_sub(1)?)?;
                Some(bow.chord / 2.0 + (bow.staves - layout.body / 2.0) * libm::sin(angle))
            });
            (stave.unwrap_or(layout.depth / 2.0), half_up)
        }
        PanelId::Shelf { bay, row } => {
            let span = usize::from(bay).checked_sub(1).and_then(|at| layout.bays.get(at));
            let shelf = span.and_then(|span| span.shelves.get(usize::from(row).checked_sub(1)?));
            let under = shelf.copied().unwrap_or(layout.floor);
            ((layout.upright_front + layout.back_front) / 2.0, under + layout.body / 2.0)
        }
    }
}

/// The parts of a unit as burdens: each of its mass in the middle of its rectangle.
pub fn burdens(
    picked: Picked<'_>,
    layout: &Layout,
    leaves: Leaves,
    parts: impl IntoIterator<Item = (PanelId, Length, Mass)>,
) -> impl Iterator<Item = Burden> {
    let edge = edge(&picked.range.build, layout);
    parts.into_iter().map(move |(id, width, mass)| {
        let (behind, up) = middle(picked, layout, id, width, leaves);
        Burden { mass, behind: behind - edge, up }
    })
}

#[cfg(test)]
mod tests;
