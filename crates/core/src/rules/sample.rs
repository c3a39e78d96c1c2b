//! Seeded choices, spread evenly over the models and their questions: the same on every machine.

use crate::choice::{Bay, Bowed, Choice, Fill, Hole, Hung, Place};
use crate::range::{DimRange, Key, Model, Range};
use crate::rules::can_be_made;
use crate::units::quantity::Dim;

/// A small generator of numbers from a seed.
// Source: SplitMix64; Steele, Lea and Flood, "Fast splittable pseudorandom number generators",
// OOPSLA 2014, figure 17.
#[derive(Clone, Copy, Debug)]
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below `count`; 0 if there is none.
    fn below(&mut self, count: u64) -> u64 {
        self.roll().checked_rem(count).unwrap_or(0)
    }

    fn small(&mut self, count: u8) -> u8 {
        u8::try_from(self.below(u64::from(count))).unwrap_or(0)
    }

    fn one_in(&mut self, count: u64) -> bool {
        self.below(count) == 0
    }

    fn of<'a, T>(&mut self, things: &'a [T]) -> Option<&'a T> {
        let at = self.below(u64::try_from(things.len()).unwrap_or(0));
        things.get(usize::try_from(at).unwrap_or(0))
    }
}

/// Which choices are wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Only those that nothing stops.
    Valid,
    /// Any, absurd ones too.
    Any,
}

/// Tries for one valid choice before the starting one of its model is taken.
const TRIES: u32 = 400;

/// An endless row of choices from a seed; the models take turns.
///
/// The same range, seed and wish give the same choices on every machine. Empty if the range has
/// no model.
pub fn choices(range: &Range, seed: u64, wanted: Wanted) -> impl Iterator<Item = Choice> + '_ {
    let mut dice = Dice(seed);
    range.models.iter().cycle().filter_map(move |model| match wanted {
        Wanted::Valid => (0..TRIES)
            .find_map(|_| {
                let choice = within(range, model, &mut dice)?;
                // What cannot be made with bowed ends may go with square ones.
                let square = Choice { bow_mm: Dim::mm(0), ..choice.clone() };
                [choice, square].into_iter().find(|choice| can_be_made(range, choice))
            })
            .or_else(|| Choice::starting(model)),
        Wanted::Any => {
            let mut choice = within(range, model, &mut dice)?;
            if dice.one_in(3) {
                spoil(&mut choice, &mut dice);
            }
            Some(choice)
        }
    })
}

/// A choice within the model's limits.
fn within(range: &Range, model: &Model, dice: &mut Dice) -> Option<Choice> {
    let count = model.bays.least + dice.small(model.bays.most.saturating_sub(model.bays.least).saturating_add(1));
    let equal = dice.one_in(2);
    // Ends are bowed or not by throws of their own.
    let mut bow = Dice(dice.0.rotate_left(32));
    let bays = (0..count).map(|_| Bay {
        share: if equal { 1 } else { 1 + dice.small(4) },
        fill: fill(model, dice),
        hole: if dice.one_in(2) { hole(range, dice) } else { None },
        device: if dice.one_in(6) { dice.of(&range.devices).map(|device| device.key.clone()) } else { None },
    });
    Some(Choice {
        model: model.key.clone(),
        bays: bays.collect(),
        width_mm: size(model.width_mm, dice),
        height_mm: size(model.height_mm, dice),
        depth_mm: size(model.depth_mm, dice),
        back: dice.of(&model.backs)?.clone(),
        finish: dice.of(&model.finishes)?.clone(),
        corner_radius_mm: *dice.of(&model.corner_radii_mm)?,
        plinth_mm: model.plinth_mm.filter(|_| dice.one_in(2)).map(|limits| size(limits, dice)),
        bow_mm: if bow.one_in(2) { Dim::mm(0) } else { size(model.bows(), &mut bow) },
        bowed: bow.of(&Bowed::ALL).map(|(_, bowed)| *bowed)?,
        place: place(range, dice),
    })
}

/// A size on a step; every fourth one at a limit.
fn size(limits: DimRange, dice: &mut Dice) -> Dim {
    if dice.one_in(4) {
        return if dice.one_in(2) { limits.least } else { limits.nearest(limits.most) };
    }
    let steps = limits.most.in_tenths().saturating_sub(limits.least.in_tenths()) / limits.step.in_tenths().max(1);
    let at = i32::try_from(dice.below(u64::try_from(steps).unwrap_or(0) + 1)).unwrap_or(0);
    Dim::tenths(limits.least.in_tenths() + at * limits.step.in_tenths())
}

fn fill(model: &Model, dice: &mut Dice) -> Fill {
    let leaves = model.leaves_most > 0;
    match dice.below(if leaves { 4 } else { 2 }) {
        1 if model.shelves_most > 0 => Fill::Shelves(1 + dice.small(model.shelves_most)),
        0 | 1 => Fill::Open,
        2 => Fill::Leaf(Hung::Left),
        _ => Fill::Leaf(Hung::Right),
    }
}

fn hole(range: &Range, dice: &mut Dice) -> Option<Hole> {
    let kind = dice.of(&range.holes)?.key.clone();
    let off = if dice.one_in(2) { 0 } else { i32::try_from(dice.below(41)).unwrap_or(0) * 5 - 100 };
    Some(Hole { kind, offset_mm: Dim::mm(off) })
}

fn place(range: &Range, dice: &mut Dice) -> Place {
    // Of every other room whose wall was measured the ceiling was as well: by the same throw.
    let room = dice.one_in(3).then(|| 10 * i32::from(dice.small(250)));
    Place {
        wall_mm: room.map(|far| Dim::mm(600 + far)),
        ceiling_mm: room.filter(|far| far % 20 == 0).map(|far| Dim::mm(400 + far)),
        screen_tenth_inch: dice.one_in(3).then(|| 240 + 10 * u16::from(dice.small(70))),
        plug: if dice.one_in(3) { dice.of(&range.plugs).map(|plug| plug.key.clone()) } else { None },
    }
}

/// Makes one answer absurd.
fn spoil(choice: &mut Choice, dice: &mut Dice) {
    let strange = || "nowhere".parse::<Key>();
    let far = [Dim::mm(-100_000), Dim::mm(-1), Dim::mm(0), Dim::tenths(1), Dim::mm(7), Dim::mm(9_999), Dim::LARGEST];
    let far = dice.of(&far).copied().unwrap_or_default();
    match dice.below(13) {
        0 => choice.width_mm = far,
        1 => choice.height_mm = far,
        2 => choice.depth_mm = far,
        3 => choice.corner_radius_mm = far,
        4 => choice.bays.clear(),
        5 => choice.bays = choice.bays.iter().cycle().take(200).cloned().collect(),
        6 => choice.bays.iter_mut().for_each(|bay| bay.share = 0),
        7 => choice.bays.iter_mut().for_each(|bay| bay.fill = Fill::Shelves(u8::MAX)),
        8 => choice.model = strange().unwrap_or_else(|_| choice.model.clone()),
        9 => choice.finish = strange().unwrap_or_else(|_| choice.finish.clone()),
        11 => choice.plinth_mm = Some(far),
        12 => choice.bow_mm = far,
        10 => choice.back = strange().unwrap_or_else(|_| choice.back.clone()),
        _ => {
            for bay in &mut choice.bays {
                bay.share = u8::MAX;
                bay.device = strange().ok();
                bay.hole = strange().ok().map(|kind| Hole { kind, offset_mm: far });
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use alloc::collections::BTreeSet;

    use super::*;
    use crate::testing::demo;

    // Source: reference output of SplitMix64 for seed 1234567, from the author's public-domain code.
    #[test]
    fn the_generator_is_the_published_one() {
        let mut dice = Dice(1_234_567);
        assert_eq!(dice.roll(), 6_457_827_717_110_365_317);
        assert_eq!(dice.roll(), 3_203_168_211_198_807_973);
    }

    #[test]
    fn valid_choices_are_valid_and_varied() {
        let range = demo();
        let sample: Vec<Choice> = choices(&range, 7, Wanted::Valid).take(300).collect();
        assert!(sample.iter().all(|choice| can_be_made(&range, choice)));
        let kinds = |of: &dyn Fn(&Choice) -> String| sample.iter().map(of).collect::<BTreeSet<_>>().len();
        assert_eq!(kinds(&|choice| choice.model.to_string()), 3);
        assert_eq!(kinds(&|choice| choice.finish.to_string()), 7);
        assert_eq!(kinds(&|choice| choice.back.to_string()), 2);
        assert!(kinds(&|choice| format!("{} {:?}", choice.bow_mm, choice.bowed)) > 20);
        assert_eq!(kinds(&|choice| choice.bays.len().to_string()), 6);
        assert!(kinds(&|choice| format!("{:?}", choice.plinth_mm)) > 8);
        assert!(kinds(&|choice| format!("{:?}", choice.bays.first().map(|bay| bay.fill))) >= 7);
        assert!(kinds(&|choice| format!("{:?}", choice.width_mm)) > 60);
        assert!(sample.iter().any(|choice| choice.bays.iter().filter(|bay| bay.hole.is_some()).count() > 1));
    }

    #[test]
    fn the_same_seed_gives_the_same_choices() {
        let range = demo();
        let take = |seed| choices(&range, seed, Wanted::Any).take(50).collect::<Vec<_>>();
        assert_eq!(take(1), take(1));
        assert_ne!(take(1), take(2));
    }
}
