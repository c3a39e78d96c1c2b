//! The hooks on which the back hangs: at the rear edge of every upright a neck through the back, and a nose at its end
//! that rises behind it.
//!
//! A slot of the back is as high as a neck and the rise of its nose, with play over and under it. The back comes
//! forward over the noses and drops: then the upper ends of its slots lie on the necks, it stands on the base, and the
//! noses keep it from going back.

use crate::range::Build;
use crate::units::quantity::Length;

/// The hooks of an upright, evenly placed from bottom to top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hooks {
    /// How many there are.
    pub count: u8,
    /// From one to the next.
    pub pitch: Length,
    /// Height of a neck.
    pub neck: Length,
    /// Length of a nose, behind the back.
    pub nose: Length,
    /// How far a nose rises over its neck.
    pub rise: Length,
    /// Free height over and under a nose while the back goes over it.
    pub play: Length,
}

impl Hooks {
    /// Those of an upright of that height between base and top: as few as are no further apart than the range says, two
    /// at least.
    ///
    /// ```
    /// # use slotwright_core::cabinet::hook::Hooks;
    /// # use slotwright_core::range::Range;
    /// # use slotwright_core::units::quantity::Length;
    /// # let range = Range::parse(include_str!("../../../../web/ranges/fenland.toml")).unwrap();
    /// let count = |mm| Hooks::of(&range.build, Length::mm(mm)).count;
    /// assert_eq!([300.0, 1000.0, 1000.1, 1747.0].map(count), [2, 2, 3, 4]);
    /// ```
    pub fn of(build: &Build, height: Length) -> Self {
        let count = (2..u8::MAX).find(|count| height / f64::from(*count) <= build.hook_apart_mm).unwrap_or(u8::MAX);
        Self {
            count,
            pitch: height / f64::from(count),
            neck: build.hook_neck_mm,
            nose: build.hook_nose_mm,
            rise: build.hook_rise_mm,
            play: build.hook_play_mm,
        }
    }

    /// Height of a slot of the back.
    pub fn slot(self) -> Length {
        self.neck + self.rise + self.play * 2.0
    }

    /// How far the back drops once it is over the noses.
    pub fn drop(self) -> Length {
        self.rise + self.play
    }

    /// Upper sides of the necks over the base, from the bottom. The slots stand in the middle of equal shares of the height.
    pub fn necks(self) -> impl Iterator<Item = Length> {
        (0..self.count).map(move |below| self.pitch * (f64::from(below) + 0.5) + self.slot() / 2.0)
    }

    /// Whether none reaches into the next one or over the upright.
    pub(crate) fn has_room(self) -> bool {
        self.pitch >= self.slot() + self.rise * 2.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::demo;

    // Worked: 600 mm, two hooks, 300 mm apart; slots of 24 + 20 + 2 × 2 = 48 mm in the middle of each half, from 126 to
    // 174 and from 426 to 474 mm: the necks are their uppermost 24 mm, the noses rise to 194 and 494 mm.
    #[test]
    fn slots_stand_in_the_middle_of_equal_shares() {
        let hooks = Hooks::of(&demo().build, Length::mm(600.0));
        let all: Vec<f64> = hooks.necks().map(Length::in_mm).collect();
        assert_eq!((hooks.count, hooks.slot(), hooks.drop()), (2, Length::mm(48.0), Length::mm(22.0)));
        assert_eq!(all, [174.0, 474.0]);
    }

    #[test]
    fn hooks_have_room_or_say_that_they_have_none() {
        let build = demo().build;
        let fits = |mm| Hooks::of(&build, Length::mm(mm)).has_room();
        assert!(fits(176.0) && !fits(175.9) && !fits(0.0) && !fits(-5000.0));
        // 20 mm of wood and a relief of 3.1 mm over a slot of 48 mm, and as much below it.
        assert!((build.hook_least() - Length::mm(94.2)).abs() < Length::mm(1e-9));
    }
}
