//! When the unit can be there: working days, the stages' capacity, and what is booked already.

use alloc::collections::BTreeMap;

use serde::Serialize;

use crate::bill::Bill;
use crate::carriage::carriage;
use crate::day::Day;
use crate::members::{Place, ReadError};
use crate::range::{Calendar, Finish, Key, Range, Stage};

/// Work that is booked already: minutes by stage. See [`Backlog::strange`] for stages that the range does not have.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Backlog {
    /// Booked minutes of each stage, by its key.
    #[serde(default)]
    pub minutes: BTreeMap<Key, u32>,
}

impl Backlog {
    /// The first stage that a range does not have: what is booked there holds up nothing.
    pub fn strange(&self, range: &Range) -> Option<&Key> {
        self.minutes.keys().find(|key| !range.stages.iter().any(|stage| stage.key == **key))
    }

    /// Reads a backlog: `{"minutes": {"cut": 600}}`.
    ///
    /// # Errors
    ///
    /// The first unknown or mistyped member with its JSON pointer.
    pub fn read(at: Place) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let mut backlog = Self::default();
        if let Some(minutes) = members.maybe("minutes") {
            let mut stages = minutes.members()?;
            while let Some((name, at)) = stages.next() {
                let key: Key = at.key_of(&name)?;
                let booked = u32::try_from(at.whole_between(0, i64::from(u32::MAX))?).unwrap_or(u32::MAX);
                backlog.minutes.insert(key, booked);
            }
        }
        members.done()?;
        Ok(backlog)
    }
}

/// A stage of the order with its days.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StageDays {
    /// The stage.
    pub stage: Key,
    /// The first day on which it works on the unit.
    pub starts: Day,
    /// The last.
    pub ends: Day,
    /// The day on which the unit can go on, after drying or curing.
    pub free: Day,
    /// Working days that the unit waits before it because the stage is booked.
    pub waits: u32,
    /// Working days that it takes, waiting and drying included.
    pub days: u32,
}

/// When the unit can be there.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Promise {
    /// The stages in order.
    pub stages: Vec<StageDays>,
    /// The day on which it leaves.
    pub leaves: Day,
    /// The carrier.
    pub carrier: Key,
    /// The latest day on which it arrives.
    pub arrives: Day,
    /// The stage that takes the most working days.
    pub decided_by: Key,
}

/// Longest time looked ahead, in calendar days: ten years. A calendar without working days ends here,
/// and so does work that takes longer.
const HORIZON: u32 = 3660;

impl Calendar {
    /// Whether the workshop works on that day.
    pub fn is_open(&self, day: Day) -> bool {
        self.weekdays.contains(&day.weekday())
            && !self.closed.contains(&day)
            && !self.shutdowns.iter().any(|shut| shut.from <= day && day <= shut.to)
    }

    /// The first working day after `day`; `None` if there is none within ten years, or before the
    /// last day that can be written.
    pub fn next_open(&self, day: Day) -> Option<Day> {
        let mut last = day;
        for _ in 0..HORIZON {
            let next = last.next();
            if next == last {
                return None;
            }
            if self.is_open(next) {
                return Some(next);
            }
            last = next;
        }
        None
    }

    /// The working day that is `count` working days after `day`; the day itself for 0. `None` beyond
    /// ten years.
    pub fn after(&self, day: Day, count: u32) -> Option<Day> {
        let mut open = day;
        for _ in 0..count {
            open = self.next_open(open)?;
            if u32::try_from(day.days_until(open)).is_ok_and(|days| days > HORIZON) {
                return None;
            }
        }
        Some(open)
    }
}

/// Promises a date. Each stage first works off what is booked, then this unit, and begins the
/// working day after the stage before has let it go. `None` if the calendar ends before.
pub fn promise(range: &Range, bill: &Bill, finish: &Finish, today: Day, backlog: &Backlog) -> Option<Promise> {
    let minutes = bill.minutes(&range.rates, finish);
    let calendar = &range.calendar;
    let mut free = today;
    let mut stages: Vec<StageDays> = Vec::with_capacity(range.stages.len());
    for stage in &range.stages {
        let booked = backlog.minutes.get(&stage.key).copied().unwrap_or(0);
        // The stage is free on the working day after its last booked one.
        let idle = calendar.after(today, days(f64::from(booked), stage)?)?;
        let (mut starts, mut waits) = (calendar.next_open(free)?, 0);
        while starts <= idle {
            starts = calendar.next_open(starts)?;
            waits += 1;
        }
        let work = days(minutes.of(stage.work), stage)?.max(1);
        let ends = calendar.after(starts, work - 1)?;
        free = calendar.after(ends, stage.wait_days.into())?;
        let days = waits + work + u32::from(stage.wait_days);
        stages.push(StageDays { stage: stage.key.clone(), starts, ends, free, waits, days });
    }
    let carrier = carriage(range, bill)?.carrier;
    let arrives = calendar.after(free, carrier.days.into())?;
    // Of stages that take as long, the first: it holds up the others.
    let most = stages.iter().map(|stage| stage.days).max()?;
    let decided_by = stages.iter().find(|stage| stage.days == most)?.stage.clone();
    Some(Promise { stages, leaves: free, carrier: carrier.key.clone(), arrives, decided_by })
}

/// Whole working days of a stage for so many minutes; `None` beyond the horizon.
fn days(minutes: f64, stage: &Stage) -> Option<u32> {
    let days = libm::ceil(minutes / f64::from(stage.minutes_per_day));
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and within the horizon")]
    (days <= f64::from(HORIZON)).then_some(days as u32)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Area, Length, Mass};
    use crate::range::Shutdown;
    use crate::testing::demo;

    fn calendar(closed: &[&str]) -> Calendar {
        Calendar {
            weekdays: vec![1, 2, 3, 4, 5],
            closed: closed.iter().map(|day| day.parse().unwrap()).collect(),
            shutdowns: Vec::new(),
        }
    }

    // Worked by hand on the calendar, weekdays only, 25 and 26 December and 1 January closed.
    #[test]
    fn working_days_step_over_what_is_closed() {
        let holidays = calendar(&["2025-12-25", "2025-12-26", "2026-01-01"]);
        for (calendar, from, count, to) in [
            (&holidays, "2025-12-19", 10, "2026-01-07"),
            (&calendar(&[]), "2025-12-19", 10, "2026-01-02"),
            (&calendar(&[]), "2024-02-28", 2, "2024-03-01"),
        ] {
            let found = calendar.after(from.parse().unwrap(), count).map(|day| day.to_string());
            assert_eq!(found.as_deref(), Some(to));
        }
    }

    /// By hand, on the demo range's calendar and capacities.
    #[test]
    fn stages_follow_each_other_and_work_off_what_is_booked() {
        let range = demo();
        let finish = &range.finishes[0];
        // 5 m² of blanks, 40 m of cuts: under a day in every stage.
        let bill = Bill {
            blanks: [(range.boards[0].key.clone(), Area::mm2(5e6))].into(),
            cut: Length::mm(40_000.0),
            faces: Area::mm2(10e6),
            edges: Length::mm(40_000.0),
            parts: 12,
            heaviest: Mass::kg(9.0),
            mass: Mass::kg(48.0),
            footprint: (Length::mm(1640.0), Length::mm(460.0)),
            stack: Length::mm(216.0),
        };
        let days = |booked: &[(&str, u32)]| {
            let minutes = booked.iter().map(|(key, minutes)| (key.parse().unwrap(), *minutes)).collect();
            let today = "2026-11-25".parse().unwrap();
            let promise = promise(&range, &bill, finish, today, &Backlog { minutes }).unwrap();
            let free: Vec<String> = promise.stages.iter().map(|days| days.free.to_string()).collect();
            (free.join(" "), promise.arrives.to_string(), promise.decided_by.to_string())
        };
        // Wednesday. Sheets on Thursday and a day to dry, cut on Monday, edges on Tuesday and three
        // days to cure, packed on Monday, four days on the road: Friday.
        let usual = ("2026-11-27 2026-11-30 2026-12-04 2026-12-07".into(), "2026-12-11".into(), "edges".into());
        assert_eq!(days(&[]), usual);
        // 600 minutes of cutting are two days, done on Friday: nothing is held up.
        assert_eq!(days(&[("cut", 600)]), usual);
        // 1501 minutes are six days, done on Thursday: cut on Friday, and all after it four days later.
        let held_up = ("2026-11-27 2026-12-04 2026-12-10 2026-12-11".into(), "2026-12-17".into(), "cut".into());
        assert_eq!(days(&[("cut", 1501)]), held_up);
        // Over the winter shutdown nothing moves.
        let (_, arrives, _) = days(&[("edges", 220 * 20)]);
        assert_eq!(arrives, "2027-01-14");
    }

    /// Near the last day that can be written there is no promise, and an end.
    #[test]
    fn the_last_days_promise_nothing() {
        let range = demo();
        let bill = Bill { mass: Mass::kg(40.0), parts: 10, ..Bill::default() };
        let booked = [("cut".parse().unwrap(), 1501)].into();
        for (today, minutes) in [("9999-12-31", BTreeMap::new()), ("9999-12-28", booked)] {
            let today: Day = today.parse().unwrap();
            assert_eq!(promise(&range, &bill, &range.finishes[0], today, &Backlog { minutes }), None);
            assert_eq!(range.calendar.after(Day::LAST, 1), None);
        }
    }

    #[test]
    fn a_calendar_closed_for_ever_ends() {
        let mut never = calendar(&[]);
        never.shutdowns = vec![Shutdown { from: "2000-01-01".parse().unwrap(), to: Day::LAST }];
        assert_eq!(never.next_open("2026-01-01".parse().unwrap()), None);
    }
}
