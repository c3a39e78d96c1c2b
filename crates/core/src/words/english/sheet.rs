//! The printed sheet in English.

use super::count::counted;
use crate::words::sheet::Message;
use crate::words::{day, length, size};

pub(in crate::words) fn message(of: Message) -> String {
    let text = match of {
        Message::DrawnOn(today) => return format!("Drawn on {}", day(today, today)),
        Message::Sizes { width, height, depth } => {
            return format!("{} wide, {} high, {} deep", length(width), size(height), size(depth));
        }
        Message::Scale(times) => return format!("Scale 1 : {times}"),
        Message::Bar => "100 mm, if it is printed at 100 %",
        Message::Bay(number) => return format!("Bay {number}"),
        Message::ByIfOrdered(arrives, today) => return format!("{}, if ordered today", day(arrives, today)),
        Message::MoreHints(count) => {
            return format!("{} on the page.", counted(&count.to_string(), "more hint", "more hints"));
        }
        Message::Electrics => {
            "Leave air round what grows warm and plugs within reach; fixed wiring is for an electrician."
        }
        Message::Code => "The unit goes on from here: see the code with a phone, or open",
        Message::NoCode => "The unit goes on from here: open",
    };
    text.into()
}
