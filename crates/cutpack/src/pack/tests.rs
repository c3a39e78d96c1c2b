use slotwright_core::choice::Choice;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};

use super::testing::{DAY, demo, order, order_of, with_orders, with_pack};
use super::work::{Arrival, schedule};
use super::*;

#[test]
fn the_manifest_records_what_was_asked_and_names_files_by_what_they_are() {
    let offcut = StoredOffcut {
        name: "r1".into(),
        board: "birch-18".parse().unwrap(),
        finish: "chalk".parse().unwrap(),
        size: slotwright_core::business::nesting::Grained { along: Length::mm(900.0), across: Length::mm(400.0) },
        measured: Some(Length::mm(17.65)),
    };
    let small = SheetsInStock { board: "birch-18".parse().unwrap(), sheet: "small".parse().unwrap(), count: 30 };
    let mut backlog = Backlog::default();
    backlog.minutes.insert("cut".parse().unwrap(), 600);
    let settings = Settings {
        rack: vec![offcut],
        bounds: vec![small],
        today: Some("2026-12-01".parse().unwrap()),
        backlog,
        papers: Papers { format: crate::paper::Format::LETTER, labels: crate::paper::Labels::ROLL_62_BY_29 },
    };
    with_pack(&demo(), &settings, |pack| {
        let (files, _) = pack.files();
        let manifest: serde_json::Value = serde_json::from_slice(&files.last().unwrap().bytes).unwrap();
        for (pointer, wanted) in [
            ("/paper", serde_json::json!("letter")),
            ("/labels", "62x29".into()),
            ("/today", "2026-12-01".into()),
            ("/backlog/minutes/cut", 600.into()),
            ("/rack/0/name", "r1".into()),
            ("/rack/0/board_mm", 17.65.into()),
            ("/in_stock/0/count", 30.into()),
            ("/lots/0/allowance_mm", 2.into()),
            ("/lots/0/formats/0/is_offcut", false.into()),
        ] {
            let found = manifest.pointer(pointer).unwrap_or_else(|| panic!("{pointer}"));
            assert!(found == &wanted || found.as_f64() == wanted.as_f64() && wanted.is_number(), "{pointer}: {found}");
        }
        for lot in manifest["lots"].as_array().unwrap() {
            let figure = |name: &str| lot[name].as_i64().unwrap();
            assert!(figure("sheets_least") > 0 && figure("sheets_least") <= figure("sheets"));
            let by_format = lot["formats"].as_array().unwrap().iter().map(|one| one["sheets"].as_i64().unwrap());
            assert_eq!(by_format.sum::<i64>(), figure("sheets"));
            // Blanks hold their parts.
            assert!(figure("used_per_mille") > 0 && figure("used_per_mille") <= figure("yield_per_mille"));
        }
        let named = manifest["files"].as_array().unwrap();
        assert_eq!(named.len() + 1, files.len());
        let mut told: Vec<(String, String)> = Vec::new();
        for file in named {
            let text = |name: &str| file[name].as_str().unwrap_or_default().to_owned();
            assert!(!text("kind").is_empty(), "{file}");
            told.push((text("kind"), text("of")));
        }
        assert!(told.contains(&("job-card".into(), "1".into())) && told.contains(&("labels".into(), String::new())));
        let count = told.len();
        told.sort_unstable();
        told.dedup();
        assert_eq!(told.len(), count, "two files are the same thing");
    });
}

/// Every text of a label has room on every label.
#[test]
fn nothing_is_cut_on_any_label() {
    for (name, labels) in Papers::LABELS {
        let settings = Settings { papers: Papers { labels, ..Papers::default() }, ..Settings::default() };
        with_pack(&demo(), &settings, |pack| {
            let (files, remarks) = pack.files();
            assert_eq!(remarks, [], "{name}");
            assert!(files.iter().any(|file| file.kind == Some(Kind::Labels)));
        });
    }
}

#[test]
fn pictures_without_room_are_told_with_how_many_they_are() {
    let labels = crate::paper::Labels { height: Length::mm(17.0), ..crate::paper::Labels::ROLL_62_BY_29 };
    let settings = Settings { papers: Papers { labels, ..Papers::default() }, ..Settings::default() };
    with_pack(&demo(), &settings, |pack| {
        let (_, remarks) = pack.files();
        let missing = remarks.iter().find_map(|remark| match remark {
            Remark::Missing { path, count, first } => Some((path.as_str(), *count, first.as_str())),
            Remark::Lacking(..) | Remark::Cut(_) | Remark::Unwritten(_) => None,
        });
        let Some((path, count, first)) = missing else { panic!("{remarks:?}") };
        let labels: usize = pack.sheets().map(|(_, sheet, _)| sheet.placed.len() + sheet.kept.len()).sum();
        assert!(path == "labels.pdf" && count > 1 && count <= labels && !first.is_empty(), "{count} of {labels}");
    });
}

#[test]
fn late_is_told_from_a_stated_day_and_what_is_booked() {
    let range = demo();
    let texts = [order(&range, 0, 0), order(&range, 1, 1)];
    with_orders(&[range], &texts, |orders| {
        let planned = |settings: &Settings| {
            let pack = Nesting::begin(orders, settings, None).unwrap().pack();
            let schedule = schedule(&pack).unwrap();
            (schedule.from, schedule.is_booked, schedule.arrivals)
        };
        let of_itself = planned(&Settings::default());
        assert_eq!((of_itself.0, of_itself.1), (DAY.parse().unwrap(), false));
        // The one that was promised first is made first, as if alone.
        assert!(!of_itself.2[0].is_late());
        let later = Settings { today: Some("2027-03-01".parse().unwrap()), ..Settings::default() };
        let (from, _, arrivals) = planned(&later);
        assert_eq!(from, "2027-03-01".parse().unwrap());
        assert!(arrivals.iter().all(Arrival::is_late));
        let mut backlog = Backlog::default();
        backlog.minutes.insert("cut".parse().unwrap(), 60_000);
        // Stages of other ranges hold up nothing here.
        backlog.minutes.insert("other".parse().unwrap(), 60_000);
        let (_, is_booked, arrivals) = planned(&Settings { backlog, ..Settings::default() });
        assert!(is_booked && arrivals.iter().all(Arrival::is_late));
    });
}

/// A sheet that orders share is loaded once, for the order that was promised first.
#[test]
fn shared_sheets_count_for_the_first_order_that_needs_them() {
    let range = demo();
    let units: Vec<Choice> = choices(&range, 21, Wanted::Valid).take(6).collect();
    let finish = units[0].finish.clone();
    let texts: Vec<String> =
        units.into_iter().map(|choice| order_of(&range, &Choice { finish: finish.clone(), ..choice })).collect();
    with_orders(core::slice::from_ref(&range), &texts, |orders| {
        let settings = Settings::default();
        let pack = Nesting::begin(orders, &settings, None).unwrap().pack();
        let schedule = schedule(&pack).unwrap();
        let rates = &range.rates;
        let loaded = |minutes: f64| (minutes - rates.setup_minutes) / rates.sheet_minutes;
        let of_each: Vec<f64> = schedule.arrivals.iter().map(|arrival| loaded(arrival.minutes.load)).collect();
        let sheets = f64::from(u32::try_from(pack.sheets().count()).unwrap());
        assert!((of_each.iter().sum::<f64>() - sheets).abs() < 1e-9, "{of_each:?} of {sheets}");
        let needs = |order: u32| {
            let of_it =
                pack.sheets().filter(|(_, sheet, _)| sheet.placed.iter().any(|placed| placed.part.order == order));
            f64::from(u32::try_from(of_it.count()).unwrap())
        };
        let first = &schedule.arrivals[0];
        assert!((of_each[0] - needs(first.order)).abs() < 1e-9);
        assert!(schedule.arrivals.iter().zip(&of_each).any(|(arrival, own)| *own < needs(arrival.order) - 0.5));
    });
}

/// Two versions of a range are made by the same people.
#[test]
fn orders_of_all_ranges_wait_for_each_other() {
    let (range, mut other) = (demo(), demo());
    other.note.push('!');
    let arrivals = |ranges: &[Range], texts: &[String]| {
        with_orders(ranges, texts, |orders| {
            assert_eq!(orders.taken.len(), texts.len());
            let settings = Settings::default();
            let pack = Nesting::begin(orders, &settings, None).unwrap().pack();
            let schedule = schedule(&pack).unwrap();
            let names: Vec<bool> = schedule.loads.iter().map(|load| load.name(&schedule).is_some()).collect();
            assert_eq!(names, vec![ranges.len() > 1; ranges.len()]);
            schedule.arrivals
        })
    };
    let numbered = |range: &Range, at: usize| {
        // Of twelve units no two are alike: one that is given twice is set aside.
        order_of(range, &choices(range, 7, Wanted::Valid).nth(at).unwrap())
    };
    let alone: Vec<String> = (0..6).map(|at| numbered(&range, at * 2)).collect();
    let with_others: Vec<String> = (0..12).map(|at| numbered(if at % 2 == 0 { &range } else { &other }, at)).collect();
    let alone = arrivals(core::slice::from_ref(&range), &alone);
    let with_others = arrivals(&[range, other], &with_others);
    let own = with_others.iter().filter(|arrival| arrival.order % 2 == 1);
    let mut later = 0;
    for (alone, own) in alone.iter().zip(own) {
        let arrives = |arrival: &Arrival| arrival.planned.as_ref().map(|planned| planned.arrives).unwrap();
        assert_eq!((alone.order * 2 - 1, &alone.minutes), (own.order, &own.minutes));
        assert!(arrives(alone) <= arrives(own));
        later += u32::from(arrives(alone) < arrives(own));
    }
    assert!(later > 2, "{later} orders wait for those of the other range");
}

#[test]
fn nobody_lifts_alone_what_the_equation_calls_high() {
    let mut range = demo();
    // A workshop whose people carry anything alone.
    range.handling.one_person_kg = range.handling.two_people_kg;
    range.handling.one_person_longest_mm = Length::mm(9000.0);
    let texts: Vec<String> = (0..range.models.len()).map(|model| order(&range, model, 0)).collect();
    with_orders(&[range], &texts, |orders| {
        let packages = orders.taken.iter().filter_map(packages::packages).flat_map(|packed| packed.packages);
        let (high, others): (Vec<_>, Vec<_>) = packages.partition(|package| package.lift.index(package.mass) > 3.0);
        assert!(!high.is_empty() && !others.is_empty());
        assert!(high.iter().all(|package| package.people == 2));
        assert!(others.iter().all(|package| package.people == 1));
    });
}

#[test]
fn offcuts_of_another_batch_are_another_pack() {
    let range = demo();
    with_orders(core::slice::from_ref(&range), &[order(&range, 0, 0)], |orders| {
        let name = |measured: Option<f64>| {
            let offcut = StoredOffcut {
                name: "r1".into(),
                board: "birch-18".parse().unwrap(),
                finish: "clear".parse().unwrap(),
                size: slotwright_core::business::nesting::Grained {
                    along: Length::mm(2400.0),
                    across: Length::mm(1000.0),
                },
                measured: measured.map(Length::mm),
            };
            let settings = Settings { rack: vec![offcut], ..Settings::default() };
            Nesting::begin(orders, &settings, None).unwrap().pack().name
        };
        assert_eq!(name(Some(17.7)), name(Some(17.7)));
        assert_ne!(name(Some(17.7)), name(Some(17.6)));
        assert_ne!(name(Some(17.7)), name(None));
    });
}
