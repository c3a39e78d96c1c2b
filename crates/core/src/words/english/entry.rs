//! The words for units that are read, and what fields say that could not read what was typed.

use crate::input::entry::{Expected, LengthUnit, MassUnit, Spoken};

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

pub(in crate::words) const fn not_read(expected: Expected) -> &'static str {
    match expected {
        Expected::Size => "This is no size. Write it like 1\u{202f}400, 140 cm or 4\u{2032} 6\u{2033}.",
        Expected::Diagonal => "This is no size. Write it like 55, 140 cm or 4\u{2032} 7\u{2033}.",
        Expected::Money => "This is no price. Write it like 1\u{202f}400 or 1\u{202f}400.50.",
        Expected::Mass => "This is no weight. Write it like 12, 12.5 kg or 26 lb.",
    }
}
