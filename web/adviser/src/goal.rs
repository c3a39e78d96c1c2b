//! Goals, told with what they come to.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::order::derive::derive_unproven;
use slotwright_core::range::Range;
use slotwright_core::rules::place;
use slotwright_core::solver::goals::{Goal, in_the_way, toward};
use slotwright_core::solver::kept::{Kept, Visit};
use slotwright_core::words;
use slotwright_core::words::adviser::{Asked, Message};
use slotwright_protocol::adviser::{About, Answer, LetGo, Outcome, Way};

fn is_wider_than_wall(choice: &Choice) -> bool {
    let (screen, wall) = (choice.place.screen_tenth_inch, choice.place.wall_mm);
    screen.zip(wall).is_some_and(|(tenths, wall)| place::screen(place::diagonal(tenths)).0 > wall.length())
}

/// What a goal comes to, and how to get there.
pub(crate) fn answer(range: &Range, about: &About, goal: Goal) -> Option<Answer> {
    let About { choice, pins, today, .. } = about;
    let (today, backlog) = (*today, Backlog::default());
    let only = |sentence: String| Some(Answer::Goal(sentence, None));
    if goal == Goal::Screen && choice.place.screen_tenth_inch.is_none() {
        return only(Message::SayScreen.text());
    }
    if goal == Goal::Screen && is_wider_than_wall(choice) {
        return only(Message::ScreenOverWall.text());
    }
    if let Goal::By(by) = goal
        && by < today
    {
        let promise = derive_unproven(range, choice, today, &backlog).built.and_then(|built| built.promise);
        return only(Message::PastDay { by, today, first: promise.map(|promise| promise.arrives) }.text());
    }
    let asked = Asked { goal, currency: &range.currency, today };
    let (visit, dated) = (super::visit(about), (today, &backlog));
    let kept_by = Kept { pins, visit: visit.as_ref() };
    let Some(changes) = toward(range, choice, goal, kept_by, dated) else {
        let held = in_the_way(range, choice, goal, kept_by, dated);
        // The goal's own figure is given too: it keeps nothing from itself.
        let others = |visit: &Visit| match goal {
            Goal::Price(_) | Goal::Cheapest => visit.by.is_some(),
            Goal::By(_) => visit.budget.is_some(),
            Goal::Valid | Goal::Widest | Goal::Screen | Goal::Part(_) => visit.by.is_some() || visit.budget.is_some(),
        };
        let kept = !pins.is_empty() || visit.as_ref().is_some_and(others);
        let no_way = Message::NoWay { asked, kept, held: &held }.text();
        return match goal {
            Goal::Price(_) => Some(cheapest(range, about, kept_by, no_way)),
            _ => only(no_way),
        };
    };
    if changes.is_empty() && goal == Goal::Valid {
        // What stops it then is no matter of the choice.
        return only(String::new());
    }
    if changes.is_empty() {
        return only(Message::Met { asked }.text());
    }
    let (way, [price, mass], day) = way(range, about, &changes)?;
    let sentence = Message::ComesTo { asked, price: &price, mass: &mass, day: day.as_deref() };
    Some(Answer::Goal(sentence.text(), Some(way)))
}

/// Changes as a way, with price, mass and day of what comes of them.
fn way(range: &Range, about: &About, changes: &[Change]) -> Option<(Way, [String; 2], Option<String>)> {
    let after = changes.iter().fold(about.choice.clone(), |choice, change| choice.with(change, range));
    let built = derive_unproven(range, &after, about.today, &Backlog::default()).built?;
    let day = built.promise.map(|promise| words::day(promise.arrives, about.today));
    let figures = [words::money(built.price.total_minor, &built.price.currency), words::mass(built.whole.mass)];
    let outcome = Outcome { choice: after, let_go: LetGo::default() };
    Some((Way { label: words::to_do(changes, range), outcome }, figures, day))
}

/// No way to a price was found: the cheapest that was, with the same kept.
fn cheapest(range: &Range, about: &About, kept: Kept<'_>, no_way: String) -> Answer {
    let backlog = Backlog::default();
    let changes = toward(range, &about.choice, Goal::Cheapest, kept, (about.today, &backlog)).unwrap_or_default();
    if let Some((way, [price, mass], day)) = way(range, about, &changes).filter(|_| !changes.is_empty()) {
        let found = Message::Cheapest(&price, &mass, day.as_deref()).text();
        return Answer::Goal([no_way, found].join(" "), Some(way));
    }
    let asked = Asked { goal: Goal::Cheapest, currency: &range.currency, today: about.today };
    Answer::Goal([no_way, Message::Met { asked }.text()].join(" "), None)
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::question::Question as Pin;
    use slotwright_core::units::day::Day;
    use slotwright_core::units::money::Money;
    use slotwright_core::units::quantity::{Dim, Mass};

    use super::*;
    use crate::tests::{about, range};

    fn ask(range: &Range, choice: &Choice, goal: Goal) -> (String, Option<Way>) {
        match answer(range, &about(choice), goal) {
            Some(Answer::Goal(sentence, way)) => (sentence, way),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_goal_is_told_with_what_it_comes_to() {
        let range = range();
        let choice = Choice::first_of(&range).unwrap();
        let (sentence, way) = ask(&range, &choice, Goal::Widest);
        let way = way.unwrap();
        assert!(
            sentence.starts_with("As wide as can be: €") && way.label.starts_with("Make it "),
            "{sentence} {way:?}"
        );
        assert_eq!(way.outcome.choice.width_mm, range.models[0].width_mm.most);
        assert!(ask(&range, &choice, Goal::Price(Money::minor(95_050))).1.is_some());
        let (today, backlog): (Day, _) = ("2026-11-25".parse().unwrap(), Backlog::default());
        let built = derive_unproven(&range, &choice, today, &backlog).built.unwrap();
        let arrives = words::day(built.promise.unwrap().arrives, today);
        let past = format!("Tue 24 November is in the past; it comes on {arrives} at the earliest.");
        for (goal, said) in [
            (Goal::By(today), "There by Wed 25 November: no way to it was found."),
            (Goal::By("2026-11-24".parse().unwrap()), &*past),
            (Goal::Screen, "Say first which screen stands on it."),
            (Goal::Part(Mass::kg(90.0)), "Parts up to 90\u{a0}kg: it is so already."),
            // 199 lb 4 oz and a hair.
            (Goal::Part(Mass::kg(90.385)), "Parts up to 90.385\u{a0}kg: it is so already."),
            (Goal::Price(Money::minor(900_000)), "At most €\u{202f}9\u{202f}000.00: it is so already."),
        ] {
            assert_eq!(ask(&range, &choice, goal), (said.into(), None));
        }
        let narrow = [Change::WallMm(Some(Dim::mm(1500))), Change::ScreenTenthInch(Some(850))];
        let narrow = narrow.iter().fold(choice.clone(), |choice, change| choice.with(change, &range));
        let kept = About { pins: vec![Pin::Finish, Pin::Width], ..about(&choice) };
        let held = answer(&range, &kept, Goal::Widest);
        let sentence = "As wide as can be: no way to it was found while you keep the width.";
        assert_eq!(held, Some(Answer::Goal(sentence.into(), None)));
        let over = "The screen is wider than the free wall.";
        assert_eq!(ask(&range, &narrow, Goal::Screen), (over.into(), None));
        let wide = choice.with(&Change::BayCount(1), &range);
        let (sentence, way) = ask(&range, &wide, Goal::Valid);
        assert!(sentence.starts_with("The nearest that can be made: €"), "{sentence}");
        let way = way.unwrap();
        assert!(!way.label.is_empty() && slotwright_core::rules::judge(&range, &way.outcome.choice).holds());
    }

    /// A price that nothing comes to is answered with the cheapest that was found, which keeps what is kept.
    #[test]
    fn a_price_out_of_reach_is_told_with_the_cheapest_found() {
        let range = range();
        let choice = Choice::first_of(&range).unwrap();
        let kept = About { pins: vec![Pin::Bays, Pin::Bay(1)], ..about(&choice) };
        let of = |about: &About, goal| match answer(&range, about, goal) {
            Some(Answer::Goal(sentence, way)) => (sentence, way),
            other => panic!("{other:?}"),
        };
        let (sentence, cheapest) = of(&kept, Goal::Cheapest);
        let cheapest = cheapest.unwrap();
        assert!(sentence.starts_with("The cheapest found: €"), "{sentence}");
        assert_eq!(cheapest.outcome.choice.bays.len(), choice.bays.len());
        assert_eq!(cheapest.outcome.choice.bays[0].fill, choice.bays[0].fill);
        let (no_way, way) = of(&kept, Goal::Price(Money::minor(100)));
        assert_eq!(no_way, format!("At most €\u{202f}1.00: no way to it was found with what you keep. {sentence}"));
        assert_eq!(way.as_ref(), Some(&cheapest));
        // From there nothing is cheaper, and that is what is said.
        let there = About { choice: cheapest.outcome.choice, ..kept };
        assert_eq!(of(&there, Goal::Cheapest), ("No cheaper one was found.".into(), None));
        let (no_way, way) = of(&there, Goal::Price(Money::minor(100)));
        assert!(no_way.ends_with("with what you keep. No cheaper one was found.") && way.is_none(), "{no_way}");
    }

    /// The carrier never comes on a working day: what the goal comes to is told all the same, without a day.
    #[test]
    fn a_goal_without_a_day_says_so() {
        let mut range = range();
        range.carriers.iter_mut().for_each(|carrier| carrier.weekdays = vec![6, 7]);
        let choice = Choice::first_of(&range).unwrap();
        let (sentence, _) = ask(&range, &choice, Goal::Widest);
        assert!(sentence.ends_with("\u{a0}kg; no day can be promised."), "{sentence}");
    }
}
