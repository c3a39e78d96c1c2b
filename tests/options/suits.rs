//! What suits a place, worked out apart from the rules.

use slotwright_core::choice::Choice;
use slotwright_core::choice::question::Question;
use slotwright_core::solver::kept::Given;

/// What of the place is kept: where it holds already, and of a width that is asked for always.
#[derive(Clone, Copy, Debug)]
pub(super) struct Suits {
    wall: Option<f64>,
    screen: Option<f64>,
    seen: Option<f64>,
}

impl Suits {
    pub(super) fn of(choice: &Choice, asked: Option<Question>) -> Self {
        let diagonal = choice.place.screen_tenth_inch.map(|tenths| f64::from(tenths) * 2.54);
        let given = Self { wall: choice.place.wall_mm.map(f64::from), screen: diagonal, seen: diagonal };
        let wide = asked == Some(Question::Width);
        let holds = |one: Self| one.hold(choice);
        Self {
            wall: given.wall.filter(|_| wide || holds(Self { screen: None, seen: None, ..given })),
            screen: given.screen.filter(|_| wide || holds(Self { wall: None, seen: None, ..given })),
            seen: given
                .seen
                .filter(|_| asked != Some(Question::Height) && holds(Self { wall: None, screen: None, ..given })),
        }
    }

    /// Without some of it.
    pub(super) fn without(self, gone: &[Given]) -> Self {
        let screen = self.screen.filter(|_| !gone.contains(&Given::Screen));
        let seen = self.seen.filter(|_| !gone.contains(&Given::Screen));
        Self { wall: self.wall.filter(|_| !gone.contains(&Given::Wall)), screen, seen }
    }

    /// With some of it alone.
    pub(super) fn only(self, kept: &[Given]) -> Self {
        let gone: Vec<Given> = Given::ALL.into_iter().filter(|given| !kept.contains(given)).collect();
        self.without(&gone)
    }

    pub(super) fn hold(&self, choice: &Choice) -> bool {
        let (width, height) = (f64::from(choice.width_mm), f64::from(choice.height_mm));
        // A screen of 16 to 9, 60 mm over the top; eyes, and how far away they are: see the rule's source.
        let half = |diagonal: f64| diagonal * 4.5 / 337.0_f64.sqrt();
        let seen = self.seen.is_none_or(|diagonal| {
            let reach = diagonal * 1.6264 * 0.267_949;
            (1040.0 - reach..=1230.0 + reach).contains(&(height + 60.0 + half(diagonal)))
        });
        let wide = self.screen.is_none_or(|diagonal| diagonal * 16.0 / 337.0_f64.sqrt() <= width);
        self.wall.is_none_or(|wall| width <= wall) && wide && seen
    }
}
