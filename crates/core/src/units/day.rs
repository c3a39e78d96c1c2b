//! Civil days, written as `YYYY-MM-DD` (ISO 8601-1:2019, 5.2.2).

use core::fmt;
use core::str::FromStr;

use serde::Serialize;
use time::{Date, Month};

/// A day of the calendar, 0001-01-01 to 9999-12-31, without time or zone.
///
/// ```
/// use slotwright_core::units::day::Day;
/// let leap: Day = "2024-02-28".parse().unwrap();
/// assert_eq!(leap.next().next().to_string(), "2024-03-01");
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(with = "String", extend("format" = "date", "pattern" = r"^\d{4}-\d{2}-\d{2}$")))]
#[serde(into = "String")]
pub struct Day(Date);

/// A text that names no day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotADay(pub String);

impl Day {
    /// The last day that can be written.
    pub const LAST: Self = match Date::from_calendar_date(9999, Month::December, 31) {
        Ok(date) => Self(date),
        Err(_) => Self(Date::MAX),
    };

    /// The day so many days after 1970-01-01; the last day of all if it is later.
    pub fn of_unix(days: u32) -> Self {
        // Julian day of 1970-01-01: 2 440 588.
        let julian = i32::try_from(days).ok().and_then(|days| days.checked_add(2_440_588));
        let date = julian.and_then(|julian| Date::from_julian_day(julian).ok());
        date.map_or(Self::LAST, |date| Self(date).min(Self::LAST))
    }

    /// The following day; the last day of all stays.
    #[must_use]
    pub fn next(self) -> Self {
        match self.0.next_day() {
            Some(day) if self < Self::LAST => Self(day),
            _ => Self::LAST,
        }
    }

    /// The day of the week, Monday 1 to Sunday 7.
    pub fn weekday(self) -> u8 {
        self.0.weekday().number_from_monday()
    }

    /// Year, month 1 to 12, day 1 to 31.
    pub fn parts(self) -> (i32, u8, u8) {
        (self.0.year(), u8::from(self.0.month()), self.0.day())
    }

    /// Days from `self` to `later`; negative if it is earlier.
    pub fn days_until(self, later: Self) -> i32 {
        later.0.to_julian_day() - self.0.to_julian_day()
    }
}

impl FromStr for Day {
    type Err = NotADay;

    fn from_str(text: &str) -> Result<Self, NotADay> {
        parse(text).ok_or_else(|| NotADay(text.chars().take(40).collect()))
    }
}

fn parse(text: &str) -> Option<Day> {
    let shape = text.len() == 10
        && text.bytes().enumerate().all(|(at, byte)| match at {
            4 | 7 => byte == b'-',
            _ => byte.is_ascii_digit(),
        });
    if !shape {
        return None;
    }
    let year: i32 = text.get(0..4)?.parse().ok()?;
    let month: u8 = text.get(5..7)?.parse().ok()?;
    let day: u8 = text.get(8..10)?.parse().ok()?;
    if year == 0 {
        return None;
    }
    Date::from_calendar_date(year, Month::try_from(month).ok()?, day).ok().map(Day)
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.parts();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

impl fmt::Debug for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl From<Day> for String {
    fn from(day: Day) -> Self {
        day.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_real_days_are_days() {
        for bad in
            ["", "2025-02-29", "2025-13-01", "2025-1-01", "+025-01-01", "0000-01-01", "2025-01-0é", "２０２５-01-01"]
        {
            assert!(bad.parse::<Day>().is_err(), "{bad}");
        }
        assert_eq!("2024-02-29".parse::<Day>().map(|day| day.to_string()), Ok("2024-02-29".into()));
    }

    // Source: ISO 8601 week date examples: 2026-12-31 is 2026-W53-4, 2000-01-01 is 1999-W52-6.
    #[test]
    fn weekdays_follow_iso_8601() {
        for (day, weekday) in [("2026-12-31", 4), ("2000-01-01", 6), ("2008-12-29", 1), ("2010-01-03", 7)] {
            assert_eq!(day.parse::<Day>().map(Day::weekday), Ok(weekday), "{day}");
        }
    }

    #[test]
    fn unix_days_count_from_1970() {
        assert_eq!(Day::of_unix(0).to_string(), "1970-01-01");
        assert_eq!(Day::of_unix(20_782).to_string(), "2026-11-25");
        assert_eq!(Day::of_unix(u32::MAX), Day::LAST);
    }

    #[test]
    fn the_last_day_stays() {
        assert_eq!(Day::LAST.next(), Day::LAST);
    }
}
