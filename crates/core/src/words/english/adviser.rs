//! The adviser in English.

use crate::solver::goals::Goal;
use crate::words::adviser::Message;
use crate::words::{day, kept, kilograms, money, together};

/// What a goal is called at the beginning of a sentence.
fn goal(of: Goal, currency: &str) -> String {
    match of {
        Goal::Valid => "The nearest that can be made".into(),
        Goal::Widest => "As wide as can be".into(),
        Goal::Screen => "As wide as the screen".into(),
        Goal::Price(most) => format!("At most {}", money(most, currency)),
        Goal::Part(most) => format!("Parts up to {} kg", kilograms(most)),
        Goal::By(last) => format!("There by {}", day(last)),
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::SayScreen => "Say first which screen stands on it.".into(),
        Message::ScreenOverWall => "The screen is wider than the free wall.".into(),
        Message::TakeWith(changes, range) => format!("Take it and {}", together(changes, range)),
        Message::NoWay { goal: of, currency, kept: false, .. } => {
            format!("{}: no way to it was found.", goal(of, currency))
        }
        Message::NoWay { goal: of, currency, held: [], .. } => {
            format!("{}: no way to it was found with what you keep.", goal(of, currency))
        }
        Message::NoWay { goal: of, currency, held, .. } => {
            format!("{}: no way to it was found while you keep {}.", goal(of, currency), kept(held))
        }
        Message::Met { goal: of, currency } => format!("{}: it is so already.", goal(of, currency)),
        Message::ComesTo { goal: of, currency, price, mass, day: Some(day) } => {
            format!("{}: {price}, {mass}, with you by {day}.", goal(of, currency))
        }
        Message::ComesTo { goal: of, currency, price, mass, day: None } => {
            format!("{}: {price}, {mass}; no day can be promised.", goal(of, currency))
        }
    }
}
