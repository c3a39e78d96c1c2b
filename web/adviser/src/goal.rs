//! Goals: read from what the page says, told with what they come to.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::input::wire;
use slotwright_core::order::derive::derive_unproven;
use slotwright_core::range::Range;
use slotwright_core::rules::place;
use slotwright_core::solver::goals::{Goal, in_the_way, toward};
use slotwright_core::solver::kept::{Kept, Visit};
use slotwright_core::units::day::Day;
use slotwright_core::words;
use slotwright_core::words::adviser::{Asked, Message};

/// The goal of a word and its figure, as [`wire`] has it; none if a figure is not there: a field that was emptied.
fn read(word: &str, figure: &str) -> Option<Goal> {
    match word {
        "widest" => Some(Goal::Widest),
        "screen" => Some(Goal::Screen),
        "price" => wire::money(figure).map(Goal::Price),
        "part" => wire::mass(figure).map(Goal::Part),
        "by" => figure.parse().ok().map(Goal::By),
        _ => Some(Goal::Valid),
    }
}

fn is_wider_than_wall(choice: &Choice) -> bool {
    let (screen, wall) = (choice.place.screen_tenth_inch, choice.place.wall_mm);
    screen.zip(wall).is_some_and(|(tenths, wall)| place::screen(place::diagonal(tenths)).0 > wall.length())
}

/// What a goal comes to, what to press, and what comes of that.
pub(crate) fn answer(
    range: &Range,
    compact: &str,
    (word, figure): (&str, &str),
    today: &str,
    pins: &[String],
) -> Option<[String; 3]> {
    let choice = Choice::of_compact(compact)?;
    let (today, backlog): (Day, _) = (today.parse().ok()?, Backlog::default());
    let only = |sentence: String| Some([sentence, String::new(), String::new()]);
    let goal = match read(word, figure) {
        None => return only(String::new()),
        Some(Goal::Screen) if choice.place.screen_tenth_inch.is_none() => {
            return only(Message::SayScreen.text());
        }
        Some(Goal::Screen) if is_wider_than_wall(&choice) => return only(Message::ScreenOverWall.text()),
        Some(goal) => goal,
    };
    if let Goal::By(by) = goal
        && by < today
    {
        let promise = derive_unproven(range, &choice, today, &backlog).built.and_then(|built| built.promise);
        return only(Message::PastDay { by, today, first: promise.map(|promise| promise.arrives) }.text());
    }
    let asked = Asked { goal, currency: &range.currency, today };
    let (pins, visit, dated) = (super::questions(pins), super::visit(pins), (today, &backlog));
    let kept = Kept { pins: &pins, visit: visit.as_ref() };
    let Some(changes) = toward(range, &choice, goal, kept, dated) else {
        let held = in_the_way(range, &choice, goal, kept, dated);
        // The goal's own figure is given too: it keeps nothing from itself.
        let others = |visit: &Visit| match goal {
            Goal::Price(_) => visit.by.is_some(),
            Goal::By(_) => visit.budget.is_some(),
            _ => visit.by.is_some() || visit.budget.is_some(),
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
    let after = changes.iter().fold(choice, |choice, change| choice.with(change, range));
    let derived = derive_unproven(range, &after, today, &backlog);
    let built = derived.built?;
    let day = built.promise.map(|promise| words::day(promise.arrives, today));
    let sentence = Message::ComesTo {
        asked,
        price: &words::money(built.price.total_minor, &built.price.currency),
        mass: &words::mass(built.whole.mass),
        day: day.as_deref(),
    };
    Some([sentence.text(), words::to_do(&changes, range), after.to_compact()])
}

#[cfg(test)]
mod tests {
    use super::*;
    use slotwright_core::choice::change::Change;
    use slotwright_core::units::quantity::Dim;

    const RANGE: &str = include_str!("../../ranges/fenland.toml");

    #[test]
    fn a_goal_is_told_with_what_it_comes_to() {
        let range = Range::parse(RANGE).unwrap();
        let choice = Choice::first_of(&range).unwrap();
        let ask = |choice: &Choice, word, figure| {
            answer(&range, &choice.to_compact(), (word, figure), "2026-11-25", &[]).unwrap()
        };
        let [sentence, way, compact] = ask(&choice, "widest", "");
        assert!(sentence.starts_with("As wide as can be: €") && way.starts_with("Make it "), "{sentence} {way}");
        assert_eq!(Choice::of_compact(&compact).unwrap().width_mm, range.models[0].width_mm.most);
        let price = ask(&choice, "price", "95050");
        assert!(!price[2].is_empty(), "{price:?}");
        let (today, backlog) = ("2026-11-25".parse().unwrap(), Backlog::default());
        let built = derive_unproven(&range, &choice, today, &backlog).built.unwrap();
        let arrives = words::day(built.promise.unwrap().arrives, today);
        let past = format!("Tue 24 November is in the past; it comes on {arrives} at the earliest.");
        for (word, figure, said) in [
            ("price", "", ""),
            ("price", "950.50", ""),
            ("by", "", ""),
            ("by", "2026-11-25", "There by Wed 25 November: no way to it was found."),
            ("by", "2026-11-24", &past),
            ("screen", "", "Say first which screen stands on it."),
            ("part", "90000", "Parts up to 90\u{a0}kg: it is so already."),
            // 199 lb 4 oz and a hair.
            ("part", "90385", "Parts up to 90.385\u{a0}kg: it is so already."),
            ("price", "900000", "At most €\u{202f}9\u{202f}000.00: it is so already."),
        ] {
            assert_eq!(ask(&choice, word, figure), [said, "", ""]);
        }
        let narrow = [Change::WallMm(Some(Dim::mm(1500))), Change::ScreenTenthInch(Some(850))];
        let narrow = narrow.iter().fold(choice.clone(), |choice, change| choice.with(change, &range));
        let kept = ["finish", "width"].map(String::from);
        let held = answer(&range, &choice.to_compact(), ("widest", ""), "2026-11-25", &kept).unwrap();
        assert_eq!(held[0], "As wide as can be: no way to it was found while you keep the width.");
        assert_eq!(ask(&narrow, "screen", ""), ["The screen is wider than the free wall.", "", ""]);
        let wide = choice.with(&Change::BayCount(1), &range);
        let [sentence, way, compact] = ask(&wide, "valid", "");
        assert!(sentence.starts_with("The nearest that can be made: €"), "{sentence}");
        assert!(
            !way.is_empty() && slotwright_core::rules::judge(&range, &Choice::of_compact(&compact).unwrap()).holds()
        );
    }

    /// The carrier never comes on a working day: what the goal comes to is told all the same, without a day.
    #[test]
    fn a_goal_without_a_day_says_so() {
        let mut range = Range::parse(RANGE).unwrap();
        range.carriers.iter_mut().for_each(|carrier| carrier.weekdays = vec![6, 7]);
        let compact = Choice::first_of(&range).unwrap().to_compact();
        let [sentence, ..] = answer(&range, &compact, ("widest", ""), "2026-11-25", &[]).unwrap();
        assert!(sentence.ends_with("\u{a0}kg; no day can be promised."), "{sentence}");
    }
}
