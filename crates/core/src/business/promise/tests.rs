//! Days worked by hand.

use super::*;
use crate::business::bill::Bill;
use crate::business::material::Material;
use crate::business::nesting::Grained;
use crate::cabinet::panel::Stock;
use crate::range::{Finish, Shutdown};
use crate::testing::demo;
use crate::units::quantity::{Area, Length, Mass};

fn calendar(closed: &[&str]) -> Calendar {
    Calendar {
        day_minutes: 480,
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
        (&calendar(&[]), "2024-02-25", 0, "2024-02-25"),
    ] {
        let found = calendar.after(from.parse().unwrap(), count).map(|day| day.to_string());
        assert_eq!(found.as_deref(), Some(to));
    }
}

/// Two sheets, 40 m of cuts: under a day in every stage.
fn job<'a>(range: &'a Range, finish: &'a Finish) -> Job<'a> {
    let part = crate::business::bill::FlatPart {
        id: crate::cabinet::panel::PanelId::Top,
        stock: Stock::Body,
        blank: Grained { along: Length::mm(1640.0), across: Length::mm(460.0) },
        mass: Mass::kg(9.0),
        face: Area::mm2(0.8e6),
        long: Length::mm(1640.0),
        wide: Length::mm(460.0),
        thick: Length::mm(18.0),
    };
    let board = range.boards[0].key.clone();
    let sheets = Material { board, sheets: 2.0, counted: Area::mm2(5e6 / 0.78), cost: 20_000.0, least_used: None };
    let bill = Bill {
        cut: Length::mm(40_000.0),
        faces: Area::mm2(10e6),
        edges: Length::mm(40_000.0),
        parts: 12,
        flat: vec![part],
        ..Bill::default()
    };
    Job { range, finish, bill, materials: vec![sheets] }
}

/// Days on which the stages let it go, the day of arrival, and the stage that decides.
fn days(range: &Range, finish: &str, today: &str, booked: &[(&str, u32)]) -> (String, String, String) {
    let minutes = booked.iter().map(|(key, minutes)| (key.parse().unwrap(), *minutes)).collect();
    let finish = range.finish(&finish.parse().unwrap()).unwrap();
    let promise = promise(&job(range, finish), today.parse().unwrap(), &Backlog { minutes }).unwrap();
    let free: Vec<String> = promise.stages.iter().map(|days| days.free.to_string()).collect();
    (free.join(" "), promise.arrives.to_string(), promise.decided_by.to_string())
}

fn worked(free: &str, arrives: &str, decided_by: &str) -> (String, String, String) {
    (free.into(), arrives.into(), decided_by.into())
}

/// By hand, on the demo range's calendar and capacities; 25 November 2026 is a Wednesday.
#[test]
fn stages_follow_each_other_and_work_off_what_is_booked() {
    let range = demo();
    let days = |booked: &[(&str, u32)]| days(&range, "clear", "2026-11-25", booked);
    // Sheets on Thursday and a day to dry, cut on Monday, edges on Tuesday and three days to cure, packed on Monday,
    // four days on the road: Friday.
    let usual = worked("2026-11-27 2026-11-30 2026-12-04 2026-12-07", "2026-12-11", "edges");
    assert_eq!(days(&[]), usual);
    // 600 minutes of cutting are two days, done on Friday: nothing is held up.
    assert_eq!(days(&[("cut", 600)]), usual);
    // 1501 minutes are six days, done on Thursday: cut on Friday, and all after it four days later.
    let held_up = worked("2026-11-27 2026-12-04 2026-12-10 2026-12-11", "2026-12-17", "cut");
    assert_eq!(days(&[("cut", 1501)]), held_up);
    // Over the winter shutdown nothing moves.
    let (_, arrives, _) = days(&[("edges", 220 * 20)]);
    assert_eq!(arrives, "2027-01-14");
}

/// One person coats, finishes and packs: 840 minutes of packing that are booked are two days of theirs, on which no sheet
/// is coated either. Coated on Monday, and all after it two days later; packed when three days of packing are done.
#[test]
fn a_crew_is_shared_by_its_stages() {
    let mut range = demo();
    let booked = [("pack", 840)];
    let shared = worked("2026-12-01 2026-12-02 2026-12-08 2026-12-09", "2026-12-15", "coat-sheets");
    assert_eq!(days(&range, "clear", "2026-11-25", &booked), shared);
    range.stages.iter_mut().for_each(|stage| stage.crew = None);
    let alone = worked("2026-11-27 2026-11-30 2026-12-04 2026-12-07", "2026-12-11", "edges");
    assert_eq!(days(&range, "clear", "2026-11-25", &booked), alone);
    // 75.7 minutes of sheets are four days for who has 20 a day.
    let mut slow = demo();
    slow.crews.iter_mut().for_each(|crew| crew.minutes_per_day = 20);
    let (free, ..) = days(&slow, "clear", "2026-11-25", &[]);
    assert!(free.starts_with("2026-12-02 "), "four days from Thursday, and one to dry: {free}");
}

/// Three coats on both faces dry 3 × 60 and 2 × 180 minutes before the last is on: with the work that is more than a
/// day of 480 minutes, so the sheets take Thursday and Friday. Two coats dry 300 minutes and take one day.
#[test]
fn coats_dry_one_after_the_other() {
    let range = demo();
    let chalk = range.finish(&"chalk".parse().unwrap()).unwrap();
    assert_eq!([0, 1, 2, 3].map(|coats| chalk.drying_minutes(coats)), [0, 60, 300, 540]);
    let later = worked("2026-11-30 2026-12-01 2026-12-07 2026-12-08", "2026-12-14", "edges");
    assert_eq!(days(&range, "chalk", "2026-11-25", &[]), later);
}

/// The carrier has its own days: packed on 23 December, the workshop shut until 3 January, the van on the road on 28, 29
/// and 30 December and on 4 January.
#[test]
fn carriers_travel_on_their_own_days() {
    let mut range = demo();
    let (free, arrives, _) = days(&range, "clear", "2026-12-11", &[]);
    assert_eq!((free.rsplit(' ').next(), arrives.as_str()), (Some("2026-12-23"), "2027-01-04"));
    // Who collects on Fridays alone takes it on Friday the 11th, and the next four Fridays that are not days off.
    let van = range.carriers.last_mut().unwrap();
    van.weekdays = vec![5];
    let (_, arrives, _) = days(&range, "clear", "2026-11-25", &[]);
    assert_eq!(arrives, "2027-01-22", "18 December, 8, 15 and 22 January");
    // Who collects on Saturdays alone never meets the workshop.
    range.carriers.last_mut().unwrap().weekdays = vec![6];
    let (finish, today) = (&range.finishes[0], "2026-11-25".parse().unwrap());
    let never = promise(&job(&range, finish), today, &Backlog::default());
    assert_eq!(never, Err(NoDay::NeverCollected));
}

/// Near the last day that can be written there is no promise, and an end. On 20 December there are nine working days for
/// the workshop's eight, and one for the four on the road.
#[test]
fn the_last_days_promise_nothing() {
    let range = demo();
    let booked = [("cut".parse().unwrap(), 1501)].into();
    for (today, minutes, needed, there) in
        [("9999-12-31", BTreeMap::new(), 8, 0), ("9999-12-28", booked, 12, 3), ("9999-12-20", BTreeMap::new(), 12, 9)]
    {
        let today: Day = today.parse().unwrap();
        let found = promise(&job(&range, &range.finishes[0]), today, &Backlog { minutes });
        assert_eq!(found, Err(NoDay::TooFew { needed, there }), "{today}");
        assert_eq!(range.calendar.after(Day::LAST, 1), None);
    }
}

#[test]
fn a_calendar_closed_for_ever_ends() {
    let mut never = calendar(&[]);
    never.shutdowns = vec![Shutdown { from: "2000-01-01".parse().unwrap(), to: Day::LAST }];
    assert_eq!(never.next_open("2026-01-01".parse().unwrap()), None);
}
