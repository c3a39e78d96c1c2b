//! What differs between two choices, answer by answer.

use super::change::Change;
use super::{Bay, Choice};

/// One answer that differs: how it was given before, and how it is now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Changed {
    /// The change that would give it as before.
    pub from: Change,
    /// The change that gives it as now: of the same kind.
    pub to: Change,
}

/// All answers that differ, in the order of the questions. New bays are compared with the last one before, which they
/// are like as they come.
pub fn changed(from: &Choice, to: &Choice) -> Vec<Changed> {
    let mut all = Vec::new();
    let mut add = |from: Change, to: Change| {
        if from != to {
            all.push(Changed { from, to });
        }
    };
    let count = |choice: &Choice| Change::BayCount(u8::try_from(choice.bays.len()).unwrap_or(u8::MAX));
    add(Change::Model(from.model.clone()), Change::Model(to.model.clone()));
    add(Change::WallMm(from.place.wall_mm), Change::WallMm(to.place.wall_mm));
    add(Change::CeilingMm(from.place.ceiling_mm), Change::CeilingMm(to.place.ceiling_mm));
    add(Change::ScreenTenthInch(from.place.screen_tenth_inch), Change::ScreenTenthInch(to.place.screen_tenth_inch));
    add(Change::Plug(from.place.plug.clone()), Change::Plug(to.place.plug.clone()));
    add(Change::WidthMm(from.width_mm), Change::WidthMm(to.width_mm));
    add(Change::HeightMm(from.height_mm), Change::HeightMm(to.height_mm));
    add(Change::DepthMm(from.depth_mm), Change::DepthMm(to.depth_mm));
    add(count(from), count(to));
    let next = from.next_bay();
    for (bay, now) in (1..=u8::MAX).zip(&to.bays) {
        let before = from.bays.get(usize::from(bay) - 1).unwrap_or(&next);
        for answer in [fill, hole, device, share] {
            add(answer(bay, before), answer(bay, now));
        }
    }
    add(Change::Finish(from.finish.clone()), Change::Finish(to.finish.clone()));
    add(Change::Back(from.back.clone()), Change::Back(to.back.clone()));
    add(Change::CornerRadiusMm(from.corner_radius_mm), Change::CornerRadiusMm(to.corner_radius_mm));
    add(Change::PlinthMm(from.plinth_mm), Change::PlinthMm(to.plinth_mm));
    add(Change::BowMm(from.bow_mm), Change::BowMm(to.bow_mm));
    add(Change::Bowed(from.bowed), Change::Bowed(to.bowed));
    all
}

fn fill(bay: u8, of: &Bay) -> Change {
    Change::Fill { bay, fill: of.fill }
}

fn hole(bay: u8, of: &Bay) -> Change {
    Change::Hole { bay, hole: of.hole.clone() }
}

fn device(bay: u8, of: &Bay) -> Change {
    Change::Device { bay, device: of.device.clone() }
}

fn share(bay: u8, of: &Bay) -> Change {
    Change::Share { bay, share: of.share }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;

    proptest! {
        /// Whoever makes all changes that are named has the other choice; within a model nothing else differs.
        #[test]
        fn what_is_named_is_all_that_differs(seed in any::<u64>()) {
            let range = demo();
            let all: Vec<_> = choices(&range, seed, Wanted::Valid).take(2 * range.models.len()).collect();
            for (from, to) in all.iter().zip(&all[range.models.len()..]) {
                let named = changed(from, to);
                let made = named.iter().fold(from.clone(), |choice, Changed { to, .. }| choice.with(to, &range));
                prop_assert_eq!(&made, to);
                prop_assert_eq!(changed(to, to), []);
            }
        }
    }
}
