//! Goals, told with what they come to.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
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
    let kept = Kept { pins, visit: visit.as_ref() };
    let Some(changes) = toward(range, choice, goal, kept, dated) else {
        let held = in_the_way(range, choice, goal, kept, dated);
        // The goal's own figure is given too: it keeps nothing from itself.
        let others = |visit: &Visit| match goal {
            Goal::Price(_) => visit.by.is_some(),
            Goal::By(_) => visit.budget.is_some(),
            Goal::Valid | Goal::Widest | Goal::Screen | Goal::Part(_) => visit.by.is_some() || visit.budget.is_some(),
        };
        let kept = !pins.is_empty() || visit.as_ref().is_some_and(others);
        return only(Message::NoWay { asked, kept, held: &held }.text());
    };
    if changes.is_empty() && goal == Goal::Valid {
        // What stops it then is no matter of the choice.
        return only(String::new());
    }
    if changes.is_empty() {
        return only(Message::Met { asked }.text());
    }
    let after = changes.iter().fold(choice.clone(), |choice, change| choice.with(change, range));
    let derived = derive_unproven(range, &after, today, &backlog);
    let built = derived.built?;
    let day = built.promise.map(|promise| words::day(promise.arrives, today));
    let sentence = Message::ComesTo {
        asked,
        price: &words::money(built.price.total_minor, &built.price.currency),
        mass: &words::mass(built.whole.mass),
        day: day.as_deref(),
    };
    let outcome = Outcome { choice: after, let_go: LetGo::default() };
    Some(Answer::Goal(sentence.text(), Some(Way { label: words::to_do(&changes, range), outcome })))
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::change::Change;
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
