//! What is read, as tables.

use core::fmt::Debug;

use super::{Expected, LARGEST, Refused, measured};
use crate::units::money::Money;
use crate::units::quantity::{Dim, Mass};
use crate::words;
use crate::words::entry::{diagonal, mass, minutes, money, size};

/// Each text with what it reads as; nothing if it is refused.
fn check<T: PartialEq + Debug>(read: impl Fn(&str) -> Option<T>, cases: &[(&str, Option<T>)]) {
    for (text, expected) in cases {
        assert_eq!(read(text), *expected, "{text}");
    }
}

#[test]
fn sizes_are_read_as_people_write_them() {
    let tenths = |text: &str| size(text).ok().map(Dim::in_tenths);
    check(
        tenths,
        &[
            ("1640", Some(16_400)),
            (" 1\u{202f}640 mm ", Some(16_400)),
            ("1\u{a0}640", Some(16_400)),
            ("1\u{2009}640", Some(16_400)),
            ("1 640", Some(16_400)),
            ("1,640", Some(16_400)),
            ("1.640 mm", Some(16_400)),
            ("1.640,5", Some(16_405)),
            ("1,640.5mm", Some(16_405)),
            ("1640.5", Some(16_405)),
            ("1640,50", Some(16_405)),
            ("1430½", Some(14_305)),
            ("1 430 1/2", Some(14_305)),
            ("164cm", Some(16_400)),
            ("164,5 CM", Some(16_450)),
            ("1,64 m", Some(16_400)),
            ("1.640 m", Some(16_400)),
            ("1 m 64 cm", Some(16_400)),
            ("1.64 metres", Some(16_400)),
            // Without a unit: metres, never a millimetre and a half.
            ("1.64", Some(16_400)),
            ("1,6", Some(16_000)),
            ("0,5", Some(5_000)),
            ("0.640", Some(6_400)),
            ("1.64 mm", Some(16)),
            ("2", None),
            ("1½", None),
            ("64 in", Some(16_256)),
            ("64.125 in.", Some(16_288)),
            ("64 1/2\"", Some(16_383)),
            ("64-1/2 inches", Some(16_383)),
            ("64½\u{2033}", Some(16_383)),
            ("64½\u{201d}", Some(16_383)),
            ("1/2 in", Some(127)),
            ("64\u{2044}2 in", Some(8_128)),
            ("5 ft", Some(15_240)),
            ("4' 6\"", Some(13_716)),
            ("4\u{2032} 6\u{2033}", Some(13_716)),
            ("4\u{2019}6\u{201d}", Some(13_716)),
            ("5'4\"", Some(16_256)),
            ("5'4", Some(16_256)),
            ("5'4½''", Some(16_383)),
            ("5 ft 4 in", Some(16_256)),
            ("5 feet, 4 inches", Some(16_256)),
            ("", None),
            ("0", None),
            ("0 m", None),
            ("mm", None),
            ("wide", None),
            ("12 stone", None),
            ("1/0 in", None),
            ("-5", None),
            ("1640-", None),
            ("--5", None),
            ("1e400", None),
            ("9999999", None),
            ("1,64,0", None),
            ("12 34", None),
            ("1 64", None),
            ("1,640,5", None),
            ("1.640.5", None),
            ("6\" 4'", None),
            ("1 m 64", None),
            ("64 mm 5 mm", None),
            ("1640 mm,,", None),
            ("1640\u{e9}", None),
            ("½½ in", None),
        ],
    );
}

#[test]
fn diagonals_are_inches() {
    check(
        |text| diagonal(text).ok(),
        &[
            ("55", Some(550)),
            ("65,5", Some(655)),
            ("65½", Some(655)),
            ("65.500", Some(655)),
            ("55\"", Some(550)),
            ("55 inch", Some(550)),
            ("139,7 cm", Some(550)),
            ("1,397 m", Some(550)),
            ("4' 7\"", Some(550)),
            ("0", None),
            ("1,400", None),
            ("tall", None),
            ("", None),
        ],
    );
}

#[test]
fn money_is_read_as_people_write_it() {
    check(
        |text| money(text, "EUR").ok().map(Money::in_minor),
        &[
            ("1400", Some(140_000)),
            ("1,400", Some(140_000)),
            ("1.400", Some(140_000)),
            ("1 400", Some(140_000)),
            ("1\u{202f}400.00", Some(140_000)),
            ("1'400", Some(140_000)),
            ("1\u{2019}400.50", Some(140_050)),
            ("1.400,50", Some(140_050)),
            ("1,400.50", Some(140_050)),
            ("1.400.000", Some(140_000_000)),
            ("1.40", Some(140)),
            ("14,50", Some(1_450)),
            ("1400,5", Some(140_050)),
            ("1430½", Some(143_050)),
            ("€1400", Some(140_000)),
            ("€\u{202f}1\u{202f}400.00", Some(140_000)),
            ("1400 €", Some(140_000)),
            ("1400 EUR", Some(140_000)),
            ("eur 1400", Some(140_000)),
            ("1400 euro", Some(140_000)),
            ("1400 Euros", Some(140_000)),
            ("1400,-", Some(140_000)),
            ("1.400,\u{2013} €", Some(140_000)),
            ("0", Some(0)),
            ("", None),
            ("€", None),
            ("much", None),
            ("$1400", None),
            ("1400 GBP", None),
            ("-5", None),
            ("1.4005", None),
            ("1,40,00", None),
            ("99999999", None),
            ("1e5", None),
        ],
    );
    for (text, currency) in [("£1,400", "GBP"), ("1 400 gbp", "GBP"), ("$1,400", "USD"), ("SEK 1 400", "SEK")] {
        assert_eq!(money(text, currency), Ok(Money::minor(140_000)), "{text}");
    }
}

#[test]
fn masses_are_read_as_people_write_them() {
    check(
        |text| mass(text).ok().map(Mass::to_gram),
        &[
            ("12", Some(12_000)),
            ("12 kg", Some(12_000)),
            ("12,5kg", Some(12_500)),
            ("12.500 kg", Some(12_500)),
            ("12½ Kilo", Some(12_500)),
            ("800 g", Some(800)),
            ("1,400 g", Some(1_400)),
            // NIST SP 811, appendix B.8: 26 × 453.592 37 g.
            ("26 lbs.", Some(11_793)),
            ("", None),
            ("kg", None),
            ("heavy", None),
            ("-3 kg", None),
            ("12 st", None),
            ("1e400", None),
        ],
    );
}

#[test]
fn times_are_read_as_people_write_them() {
    check(
        |text| minutes(text).ok(),
        &[
            ("600", Some(600)),
            ("0", Some(0)),
            ("1 200", Some(1200)),
            ("1\u{202f}200 min", Some(1200)),
            ("1,200", Some(1200)),
            ("1.200 minutes", Some(1200)),
            ("1'200", Some(1200)),
            ("10 h", Some(600)),
            ("10H", Some(600)),
            ("10 hrs.", Some(600)),
            ("1.5 h", Some(90)),
            ("1,5 hours", Some(90)),
            ("1.500 h", Some(90)),
            ("1½ h", Some(90)),
            ("10 h 30 min", Some(630)),
            ("10h30", Some(630)),
            ("10 h, 30 m", Some(630)),
            ("90.4", Some(90)),
            ("", None),
            ("h", None),
            ("much", None),
            ("-5", None),
            ("10:30", None),
            ("2 d", None),
            ("30 min 10 h", None),
            ("1 h 2 h", None),
            ("12 34", None),
            ("10000001", None),
            ("1e9 h", None),
        ],
    );
}

/// What can be read and is out of bounds is not called unreadable, and what cannot be read not out of bounds.
#[test]
fn what_is_out_of_bounds_is_told_apart_from_what_cannot_be_read() {
    use Refused::{Beyond, Unread};
    for (refused, told) in [
        (size("0 mm").err(), Some(Beyond)),
        (size("0").err(), Some(Beyond)),
        (size("0.0").err(), Some(Beyond)),
        (size("0' 0\"").err(), Some(Beyond)),
        (size("0.04 mm").err(), Some(Beyond)),
        (size("0.1 mm").err(), None),
        (size("100 m").err(), None),
        (size("100 000.1").err(), Some(Beyond)),
        (size("9999999").err(), Some(Beyond)),
        (size("2").err(), Some(Unread)),
        (size("1e400").err(), Some(Unread)),
        (size("").err(), Some(Unread)),
        (size("0 stone").err(), Some(Unread)),
        (diagonal("500").err(), Some(Beyond)),
        (diagonal("0").err(), Some(Beyond)),
        (diagonal("4.9").err(), Some(Beyond)),
        (diagonal("5").err(), None),
        (diagonal("200").err(), None),
        (diagonal("200.1").err(), Some(Beyond)),
        (diagonal("tall").err(), Some(Unread)),
        (money("99999999", "EUR").err(), Some(Beyond)),
        (money("10000000", "EUR").err(), None),
        (money("1.4005", "EUR").err(), Some(Unread)),
        (mass("10 000 001 kg").err(), Some(Beyond)),
        (mass("heavy").err(), Some(Unread)),
        (minutes("200 000 h").err(), Some(Beyond)),
        (minutes("10 000 000").err(), None),
    ] {
        assert_eq!(refused, told);
    }
    for (expected, bounds) in [
        (Expected::Size, "A size is more than 0\u{a0}mm and at most 100\u{202f}000\u{a0}mm."),
        (Expected::Diagonal, "A screen is 5 to 200 inches large."),
        (Expected::Money, "A price is at most 10\u{202f}000\u{202f}000."),
        (Expected::Mass, "A weight is at most 10\u{202f}000\u{202f}000\u{a0}kg."),
    ] {
        assert_eq!(words::refused(expected, Beyond), bounds);
    }
}

#[test]
fn what_is_measured_has_its_decimals() {
    let micrometres = |text: &str| measured(text).map(|mm| libm::round(mm.in_mm() * 1000.0));
    check(
        micrometres,
        &[("17.61", Some(17_610.0)), ("17,612 mm", Some(17_612.0)), ("6,35", Some(6350.0)), ("thin", None)],
    );
}

/// What is shown can be typed again: every size, mass and amount that `words` writes.
#[test]
fn what_is_written_is_read_back() {
    for tenths in (1..12_000).chain((12_000..1_000_000).step_by(17)).chain([1_000_000]) {
        let dim = Dim::tenths(tenths);
        assert_eq!(size(&words::length(dim)), Ok(dim));
        // Without a unit only what somebody may mean.
        if tenths >= 100 {
            assert_eq!(size(&words::size(dim)), Ok(dim));
        }
    }
    for minor in (0..300_000).step_by(7).chain([99_999_999, 100_000_000]) {
        let amount = Money::minor(minor);
        assert_eq!(money(&words::amount(amount), "EUR"), Ok(amount));
        for currency in ["EUR", "GBP", "USD", "SEK"] {
            assert_eq!(money(&words::money(amount, currency), currency), Ok(amount));
        }
    }
    for hectogram in 0..20_000 {
        let kg = Mass::kg(f64::from(hectogram) / 10.0);
        assert_eq!(mass(&words::mass(kg)), Ok(kg));
    }
    for read in (0..3000).chain([99_999, 10_000_000]) {
        assert_eq!(minutes(&words::decimal(f64::from(read), 0)), Ok(read));
        assert_eq!(minutes(&words::paper::Message::Hours(read / 60, read % 60).text()), Ok(read));
    }
    for tenths in 50..=2000 {
        assert_eq!(diagonal(&words::decimal(f64::from(tenths) / 10.0, 1)), Ok(tenths));
    }
}

/// Whatever is typed is read or refused.
#[test]
fn nothing_that_is_typed_breaks_it() {
    let letters = ["", "1", "0", "640", ".", ",", " ", "'", "\"", "/", "-", "½", "mm", "m", "€", "\u{202f}", "é"];
    for first in letters {
        for second in letters {
            for third in letters {
                for fourth in letters {
                    let text = [first, second, third, fourth].concat();
                    let read = size(&text).ok().map(Dim::in_tenths);
                    assert!(read.is_none_or(|tenths| tenths >= 0), "{text}");
                    // No unit was named: then nothing small is meant.
                    let bare = !text.contains(['m', '"', '\'']);
                    assert!(!bare || read.is_none_or(|tenths| tenths == 0 || tenths >= 100), "{text}: {read:?}");
                    assert!(money(&text, "EUR").ok().is_none_or(|amount| amount >= Money::ZERO), "{text}");
                    assert!(mass(&text).ok().is_none_or(|mass| mass >= Mass::ZERO), "{text}");
                    let _ = diagonal(&text);
                    assert!(
                        minutes(&text).is_ok_and(|minutes| f64::from(minutes) <= LARGEST) || minutes(&text).is_err()
                    );
                }
            }
        }
    }
}
