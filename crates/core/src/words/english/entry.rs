//! The words for units that are read, and what fields say of what was typed.

use super::LOCALE;
use crate::input::entry::{DIAGONAL_TENTHS, Expected, LARGEST, LengthUnit, MassUnit, Refused, Spoken, TimeUnit};
use crate::units::quantity::Dim;

pub(in crate::words) const SPOKEN: Spoken = Spoken {
    lengths: &[
        ("metre", LengthUnit::Metre),
        ("metres", LengthUnit::Metre),
        ("meter", LengthUnit::Metre),
        ("meters", LengthUnit::Metre),
        ("in", LengthUnit::Inch),
        ("inch", LengthUnit::Inch),
        ("inches", LengthUnit::Inch),
        ("ft", LengthUnit::Foot),
        ("foot", LengthUnit::Foot),
        ("feet", LengthUnit::Foot),
    ],
    masses: &[
        ("kilo", MassUnit::Kilogram),
        ("kilos", MassUnit::Kilogram),
        ("lb", MassUnit::Pound),
        ("lbs", MassUnit::Pound),
    ],
    currencies: &[("euros", "EUR"), ("euro", "EUR")],
};

pub(in crate::words) const TIMES: &[(&str, TimeUnit)] = &[
    ("hour", TimeUnit::Hour),
    ("hours", TimeUnit::Hour),
    ("hr", TimeUnit::Hour),
    ("hrs", TimeUnit::Hour),
    ("m", TimeUnit::Minute),
    ("mins", TimeUnit::Minute),
    ("minute", TimeUnit::Minute),
    ("minutes", TimeUnit::Minute),
];

pub(in crate::words) fn refused(expected: Expected, refused: Refused) -> String {
    match (expected, refused) {
        (Expected::Size, Refused::Unread) => {
            "This is no size. Write it like 1\u{202f}400, 140 cm or 4\u{2032} 6\u{2033}.".into()
        }
        (Expected::Diagonal, Refused::Unread) => {
            "This is no size. Write it like 55, 140 cm or 4\u{2032} 7\u{2033}.".into()
        }
        (Expected::Money, Refused::Unread) => "This is no price. Write it like 1\u{202f}400 or 1\u{202f}400.50.".into(),
        (Expected::Mass, Refused::Unread) => "This is no weight. Write it like 12, 12.5\u{a0}kg or 26\u{a0}lb.".into(),
        (Expected::Size, Refused::Beyond) => {
            format!("A size is more than 0\u{a0}mm and at most {}.", LOCALE.length(Dim::LARGEST))
        }
        (Expected::Diagonal, Refused::Beyond) => {
            let [least, most] = DIAGONAL_TENTHS.map(|tenths| LOCALE.decimal(f64::from(tenths) / 10.0, 1));
            format!("A screen is {least} to {most} inches large.")
        }
        (Expected::Money, Refused::Beyond) => format!("A price is at most {}.", LOCALE.decimal(LARGEST, 0)),
        (Expected::Mass, Refused::Beyond) => format!("A weight is at most {}\u{a0}kg.", LOCALE.decimal(LARGEST, 0)),
    }
}

pub(in crate::words) fn between_sizes(typed: Dim, taken: Dim) -> String {
    format!("{} is between sizes; {} taken.", LOCALE.length(typed), LOCALE.length(taken))
}
