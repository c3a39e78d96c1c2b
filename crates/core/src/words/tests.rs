//! Changes, answers and entries in words.

use super::*;
use crate::choice::{Hole, Hung};
use crate::range::Key;

#[test]
fn examples_of_what_is_read_are_read() {
    let reads = |expected, read: &dyn Fn(&str) -> bool| {
        let said = refused(expected, Refused::Unread);
        let (_, examples) = said.trim_end_matches('.').split_once("Write it like ").unwrap();
        let examples: Vec<&str> = examples.split(", ").flat_map(|some| some.split(" or ")).collect();
        assert!(examples.len() > 1 && examples.iter().all(|example| read(example)), "{examples:?}");
    };
    reads(Expected::Size, &|text| entry::size(text).is_ok());
    reads(Expected::Diagonal, &|text| entry::diagonal(text).is_ok());
    reads(Expected::Money, &|text| entry::money(text, "EUR").is_ok());
    reads(Expected::Mass, &|text| entry::mass(text).is_ok());
}

/// Names are the range's: no letter of theirs is changed, wherever in a sentence they stand.
#[test]
fn names_of_the_range_keep_their_letters() {
    let mut range = crate::testing::demo();
    let plug: Key = "hdmi".parse().unwrap();
    for plug in &mut range.plugs {
        plug.name = "PlayStation plug".into();
    }
    for device in &mut range.devices {
        device.name = "Nordlicht Receiver".into();
    }
    for hole in &mut range.holes {
        hole.name = "Slot B".into();
    }
    let device = Some(range.devices.first().unwrap().key.clone());
    let hole = Hole { kind: range.holes.first().unwrap().key.clone(), offset_mm: Dim::mm(20) };
    for (taken, alone, within) in [
        (Change::Plug(Some(plug)), "Pass the PlayStation plug", "pass the PlayStation plug"),
        (
            Change::Device { bay: 2, device },
            "Put the Nordlicht Receiver in bay 2",
            "put the Nordlicht Receiver in bay 2",
        ),
        (
            Change::Hole { bay: 1, hole: Some(hole) },
            "Cut a Slot B in bay 1, 20\u{a0}mm right",
            "cut a Slot B in bay 1, 20\u{a0}mm right",
        ),
    ] {
        assert_eq!(change(&taken, &range), alone);
        assert_eq!(together(std::slice::from_ref(&taken), &range), within);
        assert_eq!(letting_go(Question::Width, &taken, &range), format!("Let the width go and {within}"));
    }
}

#[test]
fn changes_are_things_to_do() {
    let range = crate::testing::demo();
    let plug = Change::Plug(Some("hdmi".parse().unwrap()));
    let fill = Change::Fill { bay: 2, fill: Fill::Shelves(2) };
    let all = [Change::WidthMm(Dim::mm(1400)), fill, plug];
    assert_eq!(
        together(&all, &range),
        "make it 1\u{202f}400\u{a0}mm wide, put two shelves in bay 2 and pass the HDMI plug"
    );
    assert_eq!(
        (together(&all[..1], &range).as_str(), together(&[], &range)),
        ("make it 1\u{202f}400\u{a0}mm wide", String::new())
    );
}

/// The two forms of a change are written out both; they differ in their first letter alone.
#[test]
fn a_change_is_said_alone_as_it_is_within_a_sentence() {
    let range = crate::testing::demo();
    let key = |key: &str| -> Key { key.parse().unwrap() };
    let hole = Hole { kind: key("slot"), offset_mm: Dim::mm(-30) };
    let mut changes = vec![
        Change::Model(key("sedge")),
        Change::WidthMm(Dim::mm(1400)),
        Change::HeightMm(Dim::mm(1400)),
        Change::DepthMm(Dim::mm(400)),
        Change::Share { bay: 2, share: 3 },
        Change::Hole { bay: 1, hole: None },
        Change::Hole { bay: 1, hole: Some(hole) },
        Change::Device { bay: 1, device: None },
        Change::Device { bay: 1, device: Some(key("router")) },
        Change::Back(key("birch-12")),
        Change::Finish(key("clear")),
        Change::WallMm(None),
        Change::WallMm(Some(Dim::mm(2000))),
        Change::CeilingMm(None),
        Change::CeilingMm(Some(Dim::mm(2400))),
        Change::ScreenTenthInch(None),
        Change::ScreenTenthInch(Some(555)),
        Change::Plug(None),
        Change::Plug(Some(key("hdmi"))),
    ];
    changes.extend([1, 3].map(Change::BayCount));
    changes.extend([0, 30].map(|radius| Change::CornerRadiusMm(Dim::mm(radius))));
    changes.extend([None, Some(Dim::mm(80))].map(Change::PlinthMm));
    let fills = [Fill::Open, Fill::Shelves(2), Fill::Leaf(Hung::Left), Fill::Leaf(Hung::Right)];
    changes.extend(fills.map(|fill| Change::Fill { bay: 3, fill }));
    for taken in &changes {
        let (alone, within) = (change(taken, &range), together(std::slice::from_ref(taken), &range));
        let (capital, small) = (alone.chars().next().unwrap(), within.chars().next().unwrap());
        assert_eq!(capital.to_lowercase().to_string(), small.to_string());
        assert!(capital != small, "{alone}");
        assert_eq!(alone, within.replacen(small, &capital.to_string(), 1));
        assert_eq!(to_do(&[taken.clone(), Change::BayCount(1)], &range), format!("{alone} and make it one bay"));
    }
    assert_eq!(to_do(&[], &range), "");
}

#[test]
fn every_rule_has_a_card_and_a_code_of_its_own() {
    for rule in Rule::ALL.iter().copied() {
        let card = card(rule);
        assert_eq!(Rule::of_code(rule.code()), Some(rule));
        assert!(card.what.ends_with('.') && card.why.ends_with('.') && !card.source.is_empty(), "{rule:?}");
        // A customer has doors; leaves are what the workshop makes.
        assert!(!card.why.contains("leaf"), "{rule:?}: {}", card.why);
    }
}

/// Budgets and days are said with both figures; a day before the day of asking is past, whatever the unit's own is.
#[test]
fn a_budget_and_a_day_are_said_with_both_figures() {
    let day = |text: &str| -> Day { text.parse().unwrap() };
    let (today, late) = (day("2026-11-25"), Some(day("2027-01-04")));
    let by = |by: &str, arrives| Beyond::Day { arrives, by: day(by), today };
    let dear = Beyond::Budget { price_minor: Money::minor(120_400), most_minor: Money::minor(100_000) };
    for (of, said) in [
        (dear, "It costs \u{20ac}\u{202f}1\u{202f}204.00; you gave \u{20ac}\u{202f}1\u{202f}000.00."),
        (by("2026-12-23", late), "It comes on Mon 4 January 2027; you want it by Wed 23 December."),
        (by("2026-11-25", late), "It comes on Mon 4 January 2027; you want it by Wed 25 November."),
        (by("2026-12-23", None), "No day can be promised for it; you want it by Wed 23 December."),
        (by("2026-11-24", late), "Tue 24 November is in the past; it comes on Mon 4 January 2027 at the earliest."),
        (by("2025-01-01", None), "Wed 1 January 2025 is in the past, and no day can be promised for it."),
    ] {
        assert_eq!(beyond(of, "EUR"), said);
    }
    assert_eq!(Given::ALL.map(let_go), ["Let the day go", "Let the budget go", "Let the screen go", "Let the wall go"]);
}

#[test]
fn what_is_let_go_is_said_first() {
    let range = crate::testing::demo();
    let changes = [Change::DepthMm(Dim::mm(520)), Change::BayCount(2)];
    let said = |pins: &[Question], given: &[Given], changes: &[Change]| {
        let release = Release { pins: pins.into(), given: given.into(), changes: changes.into(), beyond: Vec::new() };
        super::release(&release, &range)
    };
    assert_eq!(said(&[Question::Width], &[], &[]), "Let the width go and take this");
    assert_eq!(
        said(&[Question::Depth], &[], &changes[..1]),
        "Let the depth go: take this and make it 520\u{a0}mm deep"
    );
    assert_eq!(
        said(&[Question::Depth, Question::Bay(2)], &[Given::Budget], &changes),
        "Let the depth, bay 2 and the budget go: take this, make it 520\u{a0}mm deep and make it two bays"
    );
    assert_eq!(take_with(&changes[..1], &range), "Take this and make it 520\u{a0}mm deep");
    assert_eq!(take_with(&changes, &range), "Take this, make it 520\u{a0}mm deep and make it two bays");
}
