//! From one model to another: what fits comes along.

use crate::choice::{Bay, Choice, Fill, Place};
use crate::range::{DimRange, Model, Range};
use crate::rules::can_be_made;
use crate::units::quantity::Dim;

/// One thing that may come along: it changes the choice that a model begins with.
type Piece = fn(&mut Choice, &Choice, &Model);

/// What comes along, what matters most first: the place and the looks are the person's, sizes and bays rather the
/// model's.
const PIECES: [Piece; 14] = [
    |own, from, _| {
        let (plug, ceiling_mm) = (own.place.plug.take(), own.place.ceiling_mm.take());
        own.place = Place { ceiling_mm, plug, ..from.place.clone() };
    },
    take_ceiling,
    take_plug,
    |own, from, model| keep(&mut own.finish, &from.finish, &model.finishes),
    |own, from, model| own.width_mm = fitting(model.width_mm, from.width_mm),
    |own, from, model| own.height_mm = fitting(model.height_mm, from.height_mm),
    |own, from, model| own.depth_mm = fitting(model.depth_mm, from.depth_mm),
    |own, from, model| take_bays(&mut own.bays, &from.bays, model),
    |own, from, model| keep(&mut own.back, &from.back, &model.backs),
    |own, from, model| keep(&mut own.corner_radius_mm, &from.corner_radius_mm, &model.corner_radii_mm),
    |own, from, model| {
        own.plinth_mm = from.plinth_mm.zip(model.plinth_mm).map(|(height, limits)| fitting(limits, height));
    },
    |own, from, model| {
        let offers = model.bows().holds(from.bow_mm);
        (own.bow_mm, own.bowed) = if offers { (from.bow_mm, from.bowed) } else { (model.bows().start, from.bowed) };
    },
    // The model may begin too high for it, or with holes that it does not pass, and not what came along.
    take_ceiling,
    take_plug,
];

/// The choice of another model that keeps what fits of this one. All of that at once if it can be made; else piece by
/// piece, as far as each can be. `None` if the model names no choice to begin with.
pub fn carried(range: &Range, from: &Choice, model: &Model) -> Option<Choice> {
    let start = Choice::starting(model)?;
    let mut all = start.clone();
    for piece in PIECES {
        piece(&mut all, from, model);
    }
    if can_be_made(range, &all) {
        return Some(all);
    }
    let mut own = start;
    for piece in PIECES {
        let mut more = own.clone();
        piece(&mut more, from, model);
        if can_be_made(range, &more) {
            own = more;
        }
    }
    Some(own)
}

fn take_ceiling(own: &mut Choice, from: &Choice, _: &Model) {
    own.place.ceiling_mm = from.place.ceiling_mm;
}

fn take_plug(own: &mut Choice, from: &Choice, _: &Model) {
    own.place.plug.clone_from(&from.place.plug);
}

/// Takes an answer along that the model offers too.
fn keep<T: Clone + PartialEq>(own: &mut T, from: &T, offered: &[T]) {
    if offered.contains(from) {
        own.clone_from(from);
    }
}

/// A size that is within the limits, on a step; else the one to begin with: at a limit it would suit neither model.
fn fitting(limits: DimRange, size: Dim) -> Dim {
    if limits.least <= size && size <= limits.most { limits.nearest(size) } else { limits.start }
}

/// All bays as they are, if the model may have them.
fn take_bays(own: &mut Vec<Bay>, from: &[Bay], model: &Model) {
    let count = usize::from(model.bays.least)..=usize::from(model.bays.most);
    let leaves = from.iter().filter(|bay| matches!(bay.fill, Fill::Leaf(_))).count();
    let shelves = |bay: &Bay| match bay.fill {
        Fill::Shelves(rows) => rows <= model.shelves_most,
        Fill::Open | Fill::Leaf(_) => true,
    };
    if count.contains(&from.len()) && leaves <= usize::from(model.leaves_most) && from.iter().all(shelves) {
        *own = from.to_vec();
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::choice::changed::{Changed, changed};
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;

    proptest! {
        /// From valid choices and absurd ones to every model: what comes of it can be made if the model's start can.
        #[test]
        fn what_is_carried_over_can_be_made(seed in any::<u64>()) {
            let range = demo();
            for from in choices(&range, seed, Wanted::Any).take(3) {
                for model in &range.models {
                    let after = carried(&range, &from, model).unwrap();
                    prop_assert_eq!(&after.model, &model.key);
                    if can_be_made(&range, &Choice::starting(model).unwrap()) {
                        prop_assert!(can_be_made(&range, &after), "{after:?}");
                    }
                }
            }
        }

        /// Each answer is as before or as the model begins: where these are equal, it stays.
        #[test]
        fn what_is_equal_stays_equal(seed in any::<u64>()) {
            let range = demo();
            for from in choices(&range, seed, Wanted::Valid).take(3) {
                for model in &range.models {
                    let (start, after) = (Choice::starting(model).unwrap(), carried(&range, &from, model).unwrap());
                    prop_assert!(after.finish == from.finish || after.finish == start.finish);
                    prop_assert!(after.width_mm == from.width_mm || after.width_mm == start.width_mm);
                    prop_assert!(after.bays == from.bays || after.bays == start.bays);
                    prop_assert!(after.back == from.back || after.back == start.back);
                    let Place { plug, ceiling_mm, .. } = after.place.clone();
                    prop_assert_eq!(&after.place, &Place { ceiling_mm, plug, ..from.place.clone() });
                    let ceiling = after.place.ceiling_mm;
                    prop_assert!(ceiling == from.place.ceiling_mm || ceiling.is_none());
                    prop_assert!(after.place.plug == from.place.plug || after.place.plug.is_none());
                }
                let own = range.model(&from.model).unwrap();
                prop_assert_eq!(carried(&range, &from, own).unwrap(), from);
            }
        }
    }

    #[test]
    fn a_unit_that_fits_comes_along_whole() {
        let range = demo();
        let sedge = Choice::first_of(&range).unwrap();
        let [_, teasel, bulrush] = &range.models[..] else { panic!("three models") };
        let after = carried(&range, &sedge, teasel).unwrap();
        let named: Vec<_> = changed(&sedge, &after).into_iter().map(|Changed { to, .. }| to.question()).collect();
        // 520 mm is no height of a sideboard.
        assert_eq!(named, [None, Some(crate::choice::question::Question::Height)]);
        assert_eq!(after.height_mm, teasel.height_mm.start);
        let tall = carried(&range, &sedge, bulrush).unwrap();
        assert_eq!((tall.finish.clone(), tall.height_mm), (sedge.finish, bulrush.height_mm.start));
    }
}
