//! The adviser in English.

use super::given::past;
use crate::solver::goals::Goal;
use crate::words::adviser::{Asked, Message};
use crate::words::{day, kept, kilograms, money, take_with};

/// What a goal is called at the beginning of a sentence.
fn goal(Asked { goal, currency, today }: Asked<'_>) -> String {
    match goal {
        Goal::Valid => "The nearest that can be made".into(),
        Goal::Widest => "As wide as can be".into(),
        Goal::Screen => "As wide as the screen".into(),
        Goal::Price(most) => format!("At most {}", money(most, currency)),
        Goal::Cheapest => "The cheapest found".into(),
        Goal::Part(most) => format!("Parts up to {}\u{a0}kg", kilograms(most)),
        Goal::By(last) => format!("There by {}", day(last, today)),
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::SayScreen => "Say first which screen stands on it.".into(),
        Message::ScreenOverWall => "The screen is wider than the free wall.".into(),
        Message::TakeWith(changes, range) => take_with(changes, range),
        Message::PastDay { by, today, first } => past(first.map(|first| day(first, today)), &day(by, today)),
        Message::NoWay { asked: Asked { goal: Goal::Cheapest, .. }, .. } => {
            "No unit that can be made was found.".into()
        }
        Message::NoWay { asked, kept: false, .. } => {
            format!("{}: no way to it was found.", goal(asked))
        }
        Message::NoWay { asked, held: [], .. } => {
            format!("{}: no way to it was found with what you keep.", goal(asked))
        }
        Message::NoWay { asked, held, .. } => {
            format!("{}: no way to it was found while you keep {}.", goal(asked), kept(held))
        }
        Message::Cheapest(price, mass, Some(day)) => {
            format!("The cheapest found: {price}, {mass}, with you by {day}.")
        }
        Message::Cheapest(price, mass, None) => {
            format!("The cheapest found: {price}, {mass}; no day can be promised.")
        }
        Message::Met { asked: Asked { goal: Goal::Cheapest, .. } } => "No cheaper one was found.".into(),
        Message::Met { asked } => format!("{}: it is so already.", goal(asked)),
        Message::ComesTo { asked, price, mass, day: Some(day) } => {
            format!("{}: {price}, {mass}, with you by {day}.", goal(asked))
        }
        Message::ComesTo { asked, price, mass, day: None } => {
            format!("{}: {price}, {mass}; no day can be promised.", goal(asked))
        }
    }
}
