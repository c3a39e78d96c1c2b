//! The stage in English.

use crate::words::stage::{Height, Message, Side};

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::Seen(side, height) => {
            let side = match side {
                Side::Front => "the front",
                Side::FrontRight => "the front right",
                Side::Right => "the right",
                Side::RearRight => "the rear right",
                Side::Rear => "the rear",
                Side::RearLeft => "the rear left",
                Side::Left => "the left",
                Side::FrontLeft => "the front left",
            };
            match height {
                Height::Level => format!("Seen from {side}."),
                Height::Above => format!("Seen from {side}, from a little above."),
                Height::HighAbove => format!("Seen from {side}, from high above."),
            }
        }
        Message::SeenFromAbove => "Seen from straight above.".into(),
        Message::GoingTogether(step, of) => format!("Going together, step {step} of {of}."),
        Message::Apart => "Its parts are drawn apart.".into(),
        Message::DoorsOpen => "Its doors are open.".into(),
        Message::Person => "A person of 1.70 m stands beside it.".into(),
        Message::Step { number, of, what } => format!("{number} of {of}: {what}"),
    }
}
