//! Numbers, lengths, masses, money, days and lists as people of a locale write them: the one place that does so.
//!
//! A figure and its unit are held together by U+00A0: no line ends between them. What files and drawings need for machines
//! (coordinates, keys, JSON) is not written here.

use super::english;
use super::locale::Locale;
use crate::rules::finding::{Figure, Finding, Limit, Unit};
use crate::units::day::Day;
use crate::units::money::{Money, symbol_of};
use crate::units::quantity::{Dim, Length, Mass};
use crate::units::rounding::round_half_away;

/// All in figures that differs from locale to locale.
pub(super) struct Style {
    /// Stands between thousands.
    pub(super) thousands: char,
    /// Stands before decimals.
    pub(super) point: char,
    pub(super) minus: &'static str,
    /// From January.
    pub(super) months: [&'static str; 12],
    /// From Monday.
    pub(super) weekdays: [&'static str; 7],
    /// Of weekday, date and month.
    pub(super) day: fn(&str, u8, &str) -> String,
    /// Of such a day and its year.
    pub(super) year: fn(&str, i32) -> String,
    /// Of symbol and amount.
    pub(super) money: fn(&str, &str) -> String,
    pub(super) percent: fn(&str) -> String,
    pub(super) ratio: fn(&str) -> String,
    pub(super) just_over: fn(&str) -> String,
    pub(super) just_under: fn(&str) -> String,
}

/// How things are listed in a sentence. Apart from [`Style`], which programs hold that list nothing.
// Source: list patterns as in Unicode LDML, part 2 (from memory): middle, end, and two, which is like the end here.
pub(super) struct ListPattern {
    /// Between two things that are not the last ones.
    pub(super) middle: &'static str,
    /// Before the last thing.
    pub(super) end: &'static str,
}

/// Most decimals of any figure.
const DECIMALS_MOST: u32 = 6;

impl Locale {
    const fn style(self) -> &'static Style {
        match self {
            Self::English => &english::format::STYLE,
        }
    }

    const fn list_pattern(self) -> ListPattern {
        match self {
            Self::English => english::format::LIST,
        }
    }

    /// Things in a sentence: `one, two and three`.
    pub fn list(self, things: impl IntoIterator<Item = String>) -> String {
        let ListPattern { middle, end } = self.list_pattern();
        let mut things: Vec<String> = things.into_iter().collect();
        match things.pop() {
            Some(last) if !things.is_empty() => [&things.join(middle), &last].map(String::as_str).join(end),
            last => last.unwrap_or_default(),
        }
    }

    /// A whole number with marks between its thousands and a real minus.
    pub fn number(self, value: i64) -> String {
        let digits = value.unsigned_abs().to_string();
        let mut text = String::from(if value < 0 { self.style().minus } else { "" });
        for (at, digit) in digits.chars().enumerate() {
            if at > 0 && (digits.len() - at).is_multiple_of(3) {
                text.push(self.style().thousands);
            }
            text.push(digit);
        }
        text
    }

    /// A number of so many parts of ten, a hundred and so on, with all its decimals.
    fn scaled(self, value: i64, decimals: u32) -> String {
        let scale = 10i64.pow(decimals);
        let (whole, rest) = (value / scale, (value % scale).unsigned_abs());
        let sign = if value < 0 && whole == 0 { self.style().minus } else { "" };
        let mut text = format!("{sign}{}", self.number(whole));
        if decimals > 0 {
            let rest = format!("{rest:0width$}", width = decimals as usize);
            text.push(self.style().point);
            text.push_str(&rest);
        }
        text
    }

    /// A number with at most that many decimals, the trailing zeros left out.
    pub fn decimal(self, value: f64, decimals: u32) -> String {
        let decimals = decimals.min(DECIMALS_MOST);
        let mut scaled = scaled(value, decimals);
        let mut shown = decimals;
        while shown > 0 && scaled % 10 == 0 {
            scaled /= 10;
            shown -= 1;
        }
        self.scaled(scaled, shown)
    }

    /// A number with that many decimals, the trailing zeros too: what stands in a column.
    pub fn fixed(self, value: f64, decimals: u32) -> String {
        let decimals = decimals.min(DECIMALS_MOST);
        self.scaled(scaled(value, decimals), decimals)
    }

    /// A picked size in millimetres, without its unit.
    pub fn size(self, dim: Dim) -> String {
        self.decimal(f64::from(dim), 1)
    }

    /// A picked size with its unit.
    pub fn length(self, dim: Dim) -> String {
        format!("{}\u{a0}mm", self.size(dim))
    }

    /// A computed length to a tenth of a millimetre, with its unit.
    pub fn distance(self, length: Length) -> String {
        format!("{}\u{a0}mm", self.decimal(length.in_mm(), 1))
    }

    /// A mass in kilograms, rounded to the gram, without its unit.
    pub fn kilograms(self, mass: Mass) -> String {
        self.decimal(mass.in_kg(), 3)
    }

    /// A mass in kilograms with at most one decimal, with its unit.
    pub fn mass(self, mass: Mass) -> String {
        format!("{}\u{a0}kg", self.decimal(mass.in_kg(), 1))
    }

    /// An amount with its hundredths, without its currency.
    pub fn amount(self, amount: Money) -> String {
        self.scaled(amount.in_minor(), 2)
    }

    /// An amount with its hundredths and its currency.
    pub fn money(self, amount: Money, currency: &str) -> String {
        (self.style().money)(symbol_of(currency), &self.amount(amount))
    }

    /// A day as people say it on another one: `Fri 18 December`, with its year if that is another one.
    pub fn day(self, day: Day, today: Day) -> String {
        if day.parts().0 == today.parts().0 { self.without_year(day) } else { self.dated(day) }
    }

    /// A day with its year: `Fri 18 December 2026`.
    pub fn dated(self, day: Day) -> String {
        (self.style().year)(&self.without_year(day), day.parts().0)
    }

    fn without_year(self, day: Day) -> String {
        let (_, month, date) = day.parts();
        let of = |names: &[&'static str], number: u8| {
            names.get(usize::from(number).saturating_sub(1)).copied().unwrap_or_default()
        };
        let (weekday, month) = (of(&self.style().weekdays, day.weekday()), of(&self.style().months, month));
        (self.style().day)(weekday, date, month)
    }

    /// A figure with its unit.
    pub fn figure(self, figure: Figure) -> String {
        self.finer(figure, 0)
    }

    /// The same with so many decimals more than usual.
    fn finer(self, figure: Figure, more: u32) -> String {
        let usual = match figure.unit {
            Unit::Mm if figure.value.abs() < 10.0 => 1,
            Unit::Mm | Unit::Count | Unit::N | Unit::Degree => 0,
            Unit::Kg | Unit::Percent | Unit::Nm => 1,
            Unit::Ratio | Unit::NPerMm2 => 2,
        };
        let text = self.decimal(figure.value, usual + more);
        match figure.unit {
            Unit::Mm => text + "\u{a0}mm",
            Unit::Kg => text + "\u{a0}kg",
            Unit::Count => text,
            Unit::Ratio => (self.style().ratio)(&text),
            Unit::Percent => (self.style().percent)(&text),
            Unit::N => text + "\u{a0}N",
            Unit::Nm => text + "\u{a0}N·m",
            Unit::NPerMm2 => text + "\u{a0}N/mm²",
            Unit::Degree => text + "°",
        }
    }

    /// What was found and what is allowed, with as many decimals as it takes for a found figure that is beyond its
    /// limit to read so: `3.82 mm` and `3.8 mm`.
    pub fn found_and_allowed(self, finding: &Finding) -> (String, String) {
        let pair = |more| (self.finer(finding.found, more), self.finer(finding.allowed, more));
        // Finer than a hundredth are only those that are equal otherwise: all of their decimals count.
        let is_fine = |figure: Figure| (figure.value * 100.0 - round_half_away(figure.value * 100.0)).abs() > 1e-6;
        let mores =
            if is_fine(finding.found) || is_fine(finding.allowed) { DECIMALS_MOST..=DECIMALS_MOST } else { 0..=2 };
        let differing = mores.map(pair).find(|(found, allowed)| found != allowed);
        differing.unwrap_or_else(|| {
            let (found, allowed) = pair(0);
            match finding.limit {
                Limit::AtMost => ((self.style().just_over)(&allowed), allowed),
                Limit::AtLeast => ((self.style().just_under)(&allowed), allowed),
                Limit::OneOf => (found, allowed),
            }
        })
    }
}

/// A number in steps of so many decimals.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "rounded; `as` saturates, and the scale is small"
)]
fn scaled(value: f64, decimals: u32) -> i64 {
    round_half_away(value * 10i64.pow(decimals) as f64) as i64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choice::question::Question;
    use crate::rules::Rule;

    const LOCALE: Locale = Locale::English;

    #[test]
    fn numbers_read_as_people_write_them() {
        for (value, decimals, text) in [
            (1640.0, 0, "1\u{202f}640"),
            (1_234_567.0, 0, "1\u{202f}234\u{202f}567"),
            (999.0, 0, "999"),
            (47.25, 1, "47.3"),
            (47.0, 1, "47"),
            (-0.25, 1, "\u{2212}0.3"),
            (-12.5, 2, "\u{2212}12.5"),
            (0.04, 1, "0"),
            (1640.05, 3, "1\u{202f}640.05"),
        ] {
            assert_eq!(LOCALE.decimal(value, decimals), text);
        }
    }

    #[test]
    fn figures_of_a_column_have_the_same_decimals() {
        for (value, decimals, text) in [
            (0.1, 2, "0.10"),
            (-0.01, 2, "\u{2212}0.01"),
            (-0.004, 2, "0.00"),
            (85.0, 1, "85.0"),
            (1640.0, 0, "1\u{202f}640"),
        ] {
            assert_eq!(LOCALE.fixed(value, decimals), text);
        }
    }

    #[test]
    fn money_shows_its_hundredths() {
        assert_eq!(LOCALE.money(Money::minor(128_405), "EUR"), "€\u{202f}1\u{202f}284.05");
        assert_eq!(LOCALE.money(Money::minor(-5), "SEK"), "SEK\u{202f}\u{2212}0.05");
        assert_eq!(LOCALE.money(Money::minor(-1_000), "GBP"), "£\u{202f}\u{2212}10.00");
    }

    // Source: ISO 8601 week date examples: 2026-12-31 is a Thursday, 2000-01-01 a Saturday.
    #[test]
    fn days_have_their_names() {
        for (day, today, said) in [
            ("2026-12-31", "2026-01-01", "Thu 31 December"),
            ("2000-01-01", "2000-12-31", "Sat 1 January"),
            ("2026-12-31", "2027-01-01", "Thu 31 December 2026"),
            ("2000-01-01", "1999-12-31", "Sat 1 January 2000"),
        ] {
            assert_eq!(LOCALE.day(day.parse().unwrap(), today.parse().unwrap()), said);
        }
        assert_eq!(LOCALE.dated("2026-12-31".parse().unwrap()), "Thu 31 December 2026");
    }

    #[test]
    fn found_and_allowed_never_read_the_same() {
        let length = |mm| Figure::length(Length::mm(mm));
        let kg = |kg| Figure::mass(Mass::kg(kg));
        for (found, limit, allowed, texts) in [
            (length(6.02), Limit::AtMost, length(3.8), ("6\u{a0}mm", "3.8\u{a0}mm")),
            (length(3.8049), Limit::AtMost, length(3.8), ("3.805\u{a0}mm", "3.8\u{a0}mm")),
            (length(229.6), Limit::AtLeast, length(230.0), ("229.6\u{a0}mm", "230\u{a0}mm")),
            (length(229.998), Limit::AtLeast, length(230.0), ("229.998\u{a0}mm", "230\u{a0}mm")),
            (length(9.96), Limit::AtLeast, length(10.0), ("9.96\u{a0}mm", "10\u{a0}mm")),
            (length(1640.0), Limit::AtMost, length(1639.6), ("1\u{202f}640\u{a0}mm", "1\u{202f}639.6\u{a0}mm")),
            (kg(42.0004), Limit::AtMost, kg(42.0), ("42.0004\u{a0}kg", "42\u{a0}kg")),
            (length(3.8 + 1e-9), Limit::AtMost, length(3.8), ("just over 3.8\u{a0}mm", "3.8\u{a0}mm")),
            (length(3.8 - 1e-9), Limit::AtLeast, length(3.8), ("just under 3.8\u{a0}mm", "3.8\u{a0}mm")),
        ] {
            let finding = Finding::stops(Rule::ShelfSag, Question::Width, found, limit, allowed);
            let (found, allowed) = LOCALE.found_and_allowed(&finding);
            assert_eq!((found.as_str(), allowed.as_str()), texts);
        }
    }
}
