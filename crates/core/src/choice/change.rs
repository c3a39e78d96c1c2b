//! A change of a choice: what a person does to it, and what a remedy proposes.

use serde::Serialize;

use crate::choice::question::Question;
use crate::choice::{Bay, Bowed, Choice, Fill, Hole};
use crate::range::{Key, Range};
use crate::units::quantity::Dim;

/// One answer given anew.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Change {
    /// Take another model, as it begins.
    Model(Key),
    /// Overall width.
    WidthMm(Dim),
    /// Overall height.
    HeightMm(Dim),
    /// Overall depth.
    DepthMm(Dim),
    /// That many bays; new ones are like the last without its device, of which there is one.
    BayCount(u8),
    /// Weight of a bay's width.
    Share {
        /// Counted from 1.
        bay: u8,
        /// The weight.
        share: u8,
    },
    /// What a bay holds.
    Fill {
        /// Counted from 1.
        bay: u8,
        /// What.
        fill: Fill,
    },
    /// The cable hole of a bay.
    Hole {
        /// Counted from 1.
        bay: u8,
        /// The hole, or none.
        hole: Option<Hole>,
    },
    /// The device in a bay.
    Device {
        /// Counted from 1.
        bay: u8,
        /// The device, or none.
        device: Option<Key>,
    },
    /// Board of the back.
    Back(Key),
    /// The finish.
    Finish(Key),
    /// Corner radius of top and base.
    CornerRadiusMm(Dim),
    /// Height of the plinth, or none.
    PlinthMm(Option<Dim>),
    /// How far bowed ends rise; 0 for square ends.
    BowMm(Dim),
    /// Which ends are bowed.
    Bowed(Bowed),
    /// Length of the free wall.
    WallMm(Option<Dim>),
    /// Height of the ceiling.
    CeilingMm(Option<Dim>),
    /// Diagonal of the screen on top.
    ScreenTenthInch(Option<u16>),
    /// The plug that has to pass.
    Plug(Option<Key>),
}

impl Change {
    /// The question that it answers; none for another model, which answers all of them.
    pub const fn question(&self) -> Option<Question> {
        Some(match self {
            Self::Model(_) => return None,
            Self::WidthMm(_) => Question::Width,
            Self::HeightMm(_) => Question::Height,
            Self::DepthMm(_) => Question::Depth,
            Self::BayCount(_) => Question::Bays,
            Self::Share { .. } => Question::Shares,
            Self::Fill { bay, .. } => Question::Bay(*bay),
            Self::Hole { bay, .. } => Question::Hole(*bay),
            Self::Device { bay, .. } => Question::Device(*bay),
            Self::Back(_) => Question::Back,
            Self::Finish(_) => Question::Finish,
            Self::CornerRadiusMm(_) => Question::Corners,
            Self::PlinthMm(_) => Question::Plinth,
            Self::BowMm(_) => Question::Bow,
            Self::Bowed(_) => Question::Bowed,
            Self::WallMm(_) | Self::CeilingMm(_) | Self::ScreenTenthInch(_) | Self::Plug(_) => Question::Place,
        })
    }
}

impl Choice {
    /// The choice after a change; what names nothing (a bay or model that is not there) changes nothing.
    #[must_use]
    pub fn with(&self, change: &Change, range: &Range) -> Self {
        let mut choice = self.clone();
        match change {
            Change::Model(key) => return choice.of_model(key, range),
            Change::WidthMm(width) => choice.width_mm = *width,
            Change::HeightMm(height) => choice.height_mm = *height,
            Change::DepthMm(depth) => choice.depth_mm = *depth,
            Change::BayCount(count) => choice.set_bay_count(*count),
            Change::Share { bay, share } => choice.set_bay(*bay, |bay| bay.share = *share),
            Change::Fill { bay, fill } => choice.set_bay(*bay, |bay| bay.fill = *fill),
            Change::Hole { bay, hole } => choice.set_bay(*bay, |bay| bay.hole.clone_from(hole)),
            Change::Device { bay, device } => choice.set_bay(*bay, |bay| bay.device.clone_from(device)),
            Change::Back(key) => choice.back = key.clone(),
            Change::Finish(key) => choice.finish = key.clone(),
            Change::CornerRadiusMm(radius) => choice.corner_radius_mm = *radius,
            Change::PlinthMm(plinth) => choice.plinth_mm = *plinth,
            Change::BowMm(bow) => choice.bow_mm = *bow,
            Change::Bowed(bowed) => choice.bowed = *bowed,
            Change::WallMm(wall) => choice.place.wall_mm = *wall,
            Change::CeilingMm(ceiling) => choice.place.ceiling_mm = *ceiling,
            Change::ScreenTenthInch(diagonal) => choice.place.screen_tenth_inch = *diagonal,
            Change::Plug(plug) => choice.place.plug.clone_from(plug),
        }
        choice
    }

    /// Another model begins afresh; finish and place stay where the model knows the finish.
    fn of_model(self, key: &Key, range: &Range) -> Self {
        let Some(model) = range.model(key) else {
            return self;
        };
        let Some(mut begun) = Self::starting(model) else {
            return self;
        };
        if model.finishes.contains(&self.finish) {
            begun.finish = self.finish;
        }
        begun.place = self.place;
        begun
    }

    fn set_bay(&mut self, number: u8, set: impl FnOnce(&mut Bay)) {
        let at = usize::from(number).checked_sub(1);
        if let Some(bay) = at.and_then(|at| self.bays.get_mut(at)) {
            set(bay);
        }
    }

    fn set_bay_count(&mut self, count: u8) {
        let next = self.next_bay();
        self.bays.resize(usize::from(count), next);
    }

    /// The bay that would come next.
    pub(crate) fn next_bay(&self) -> Bay {
        let last = self.bays.last().cloned();
        Bay { device: None, ..last.unwrap_or(Bay { share: 1, fill: Fill::Open, hole: None, device: None }) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::demo;

    #[test]
    fn a_new_bay_is_like_the_last_one_without_its_device() {
        let range = demo();
        let device = Change::Device { bay: 3, device: Some("router".parse().unwrap()) };
        let three = Choice::first_of(&range).unwrap().with(&device, &range);
        let five = three.with(&Change::BayCount(5), &range);
        assert_eq!(five.bays[..3], three.bays[..]);
        for new in &five.bays[3..] {
            assert_eq!(*new, Bay { device: None, ..three.bays[2].clone() });
        }
        assert_eq!(five.with(&Change::BayCount(3), &range), three);
    }
}
