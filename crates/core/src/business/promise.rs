//! When the unit can be there: working days, the stages' and their crews' capacity, and what is booked already.

use alloc::collections::BTreeMap;

use serde::Serialize;

use crate::business::carriage::carriage;
use crate::business::job::Job;
use crate::input::fault::ReadError;
use crate::input::members::Place;
use crate::range::{Calendar, Carrier, Crew, Key, Range, Stage, Work};
use crate::units::day::Day;

/// Work that is booked already: minutes by stage.
///
/// See [`Backlog::strange`] for stages that the range does not have.
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

/// Why no day can be promised; looked for up to ten years ahead and to the last day that can be written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoDay {
    /// The calendars end before the unit is there.
    TooFew {
        /// Days that are needed: the workshop's, and those on the road if it leaves at all.
        needed: u32,
        /// Days of these that there are.
        there: u32,
    },
    /// No day is left on which the workshop works and the carrier collects.
    NeverCollected,
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
        open_days(day, &|day| self.is_open(day)).next()
    }

    /// The working day that is `count` working days after `day`; the day itself for 0. `None` beyond
    /// ten years.
    pub fn after(&self, day: Day, count: u32) -> Option<Day> {
        after(day, count, &|day| self.is_open(day))
    }
}

impl Carrier {
    /// Whether it collects and delivers on that day.
    pub fn travels(&self, day: Day) -> bool {
        self.weekdays.contains(&day.weekday()) && !self.closed.contains(&day)
    }
}

/// The open days after `day`, up to ten years ahead and to the last day that can be written.
fn open_days(day: Day, is_open: &dyn Fn(Day) -> bool) -> impl Iterator<Item = Day> + '_ {
    let mut last = day;
    let all = (0..HORIZON).map_while(move |_| {
        let next = last.next();
        let is_new = next != last;
        last = next;
        is_new.then_some(next)
    });
    all.filter(|day| is_open(*day))
}

/// The open day that is `count` open days after `day`; the day itself for 0.
fn after(day: Day, count: u32, is_open: &dyn Fn(Day) -> bool) -> Option<Day> {
    let Some(before) = count.checked_sub(1) else { return Some(day) };
    open_days(day, is_open).nth(usize::try_from(before).ok()?)
}

/// How many open days there are after `day`.
fn count(day: Day, is_open: &dyn Fn(Day) -> bool) -> u32 {
    u32::try_from(open_days(day, is_open).count()).unwrap_or(u32::MAX)
}

/// A stage of the order in working days after the day of asking.
#[derive(Clone, Copy, Debug)]
struct Planned<'a> {
    stage: &'a Stage,
    starts: u32,
    ends: u32,
    free: u32,
    waits: u32,
    days: u32,
}

/// Each stage first works off what is booked in it, and its crew what is booked in all of theirs, then this unit; it
/// begins on the working day after the stage before has let it go.
fn plan<'a>(job: &Job<'a>, backlog: &Backlog) -> Vec<Planned<'a>> {
    let (range, finish, minutes) = (job.range, job.finish, job.minutes());
    let booked = |stage: &Stage| f64::from(backlog.minutes.get(&stage.key).copied().unwrap_or(0));
    let mut free = 0u32;
    let planned = range.stages.iter().map(|stage| {
        let crew = stage.crew.as_ref().and_then(|key| range.crew(key));
        let theirs = |crew: &Crew| {
            let stages = range.stages.iter().filter(|other| other.crew.as_ref() == Some(&crew.key));
            days(stages.map(booked).sum(), crew.minutes_per_day)
        };
        // They are free on the working day after their last booked one.
        let idle = days(booked(stage), stage.minutes_per_day).max(crew.map_or(0, theirs));
        let work = minutes.of(stage.work);
        let dries = match stage.work {
            Work::Sheets => finish.drying_minutes(finish.coats_before),
            Work::Edges => finish.drying_minutes(finish.coats_after),
            Work::Cut | Work::Pack => 0,
        };
        let takes = days(work, stage.minutes_per_day)
            .max(crew.map_or(0, |crew| days(work, crew.minutes_per_day)))
            .max(days(work + f64::from(dries), range.calendar.day_minutes))
            .max(1);
        let waits = idle.saturating_sub(free);
        let starts = free.max(idle).saturating_add(1);
        let ends = starts.saturating_add(takes - 1);
        free = ends.saturating_add(stage.wait_days.into());
        let days = waits.saturating_add(takes).saturating_add(stage.wait_days.into());
        Planned { stage, starts, ends, free, waits, days }
    });
    planned.collect()
}

/// Promises a date.
///
/// # Errors
///
/// The calendar, or the carrier's, ends before the unit is there; nobody ever collects it; or there is no stage or
/// carrier.
pub fn promise(job: &Job<'_>, today: Day, backlog: &Backlog) -> Result<Promise, NoDay> {
    let (range, plan) = (job.range, plan(job, backlog));
    let needed = plan.last().map_or(0, |last| last.free);
    let open = |day| range.calendar.is_open(day);
    let none = || NoDay::TooFew { needed, there: count(today, &open) };
    let day = |count| after(today, count, &open);
    let stages = plan.iter().map(|planned| {
        let Planned { stage, waits, days, .. } = *planned;
        let (starts, ends, free) = (day(planned.starts)?, day(planned.ends)?, day(planned.free)?);
        Some(StageDays { stage: stage.key.clone(), starts, ends, free, waits, days })
    });
    // Where the last stage has a day, the ones before it have theirs.
    let free = day(needed).ok_or_else(none)?;
    let stages = stages.collect::<Option<Vec<_>>>().ok_or_else(none)?;
    let carrier = carriage(range, &job.bill).ok_or(NoDay::NeverCollected)?.carrier;
    // It is handed over on a day on which both work.
    let collects = |day| range.calendar.is_open(day) && carrier.travels(day);
    let leaves = if carrier.travels(free) { Some(free) } else { open_days(free, &collects).next() };
    let leaves = leaves.ok_or(NoDay::NeverCollected)?;
    let travels = |day| carrier.travels(day);
    let road = u32::from(carrier.days);
    let arrives = after(leaves, road, &travels).ok_or_else(|| {
        // The workshop had all of its days.
        let with = |days: u32| needed.saturating_add(days);
        NoDay::TooFew { needed: with(road), there: with(count(leaves, &travels)) }
    })?;
    // Of stages that take as long, the first: it holds up the others.
    let most = stages.iter().map(|stage| stage.days).max();
    let decided_by = stages.iter().find(|stage| Some(stage.days) == most).ok_or_else(none)?.stage.clone();
    Ok(Promise { stages, leaves, carrier: carrier.key.clone(), arrives, decided_by })
}

/// Whole working days for so many minutes.
fn days(minutes: f64, per_day: u32) -> u32 {
    let days = libm::ceil(minutes / f64::from(per_day));
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
    let days = days as u32;
    days
}

#[cfg(test)]
mod tests;
