//! How figures and lists are written in English.

use crate::words::format::{ListPattern, Style};

pub(in crate::words) const LIST: ListPattern = ListPattern { middle: ", ", end: " and " };

pub(in crate::words) const STYLE: Style = Style {
    thousands: '\u{202f}',
    point: '.',
    minus: "\u{2212}",
    months: [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ],
    weekdays: ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"],
    day: |weekday, date, month| format!("{weekday} {date} {month}"),
    year: |day, year| format!("{day} {year}"),
    money: |symbol, amount| format!("{symbol}\u{202f}{amount}"),
    percent: |share| format!("{share}\u{a0}%"),
    ratio: |times| format!("{times} to 1"),
    just_over: |figure| format!("just over {figure}"),
    just_under: |figure| format!("just under {figure}"),
};
