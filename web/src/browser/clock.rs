//! The present day where the person is.

use slotwright_core::units::day::Day;

/// The local date of the browser.
pub fn today() -> Day {
    let now = js_sys::Date::new_0();
    let text = format!("{:04}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date());
    text.parse().unwrap_or(Day::LAST)
}
