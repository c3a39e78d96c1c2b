//! The present day where the person is.

use core::ops::RangeInclusive;

use slotwright_core::units::day::Day;

/// Years in which somebody may look at this page: it was made in the first of them.
const YEARS: RangeInclusive<i32> = 2026..=2099;

/// The local date of the browser.
pub fn today() -> Day {
    let now = js_sys::Date::new_0();
    let text = format!("{:04}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date());
    text.parse().unwrap_or(Day::LAST)
}

/// Whether a day makes no sense, so that the clock it comes from is wrong.
pub fn is_off(day: Day) -> bool {
    !YEARS.contains(&day.parts().0)
}
