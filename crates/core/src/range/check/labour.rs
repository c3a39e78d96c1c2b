//! How parts vary, what a unit takes by hand, who does it and when, and how packages are carried.

use super::{Problems, Wrong, each, keys, list, relations};
use crate::range::{Handling, Range};

pub(super) fn check(out: &mut Problems, range: &Range) {
    vary(out, range);
    rates(out, range);
    drying(out, range);
    crews(out, range);
    carriers(out, range);
}

/// Spread of a batch, and what moisture does to it.
fn vary(out: &mut Problems, range: &Range) {
    each(
        out,
        "fit",
        &[
            ("within_batch_mm", range.fit.within_batch_mm.in_mm(), 0.0, 2.0),
            ("slot_coat_per_mille", range.fit.slot_coat_per_mille.into(), 0.0, 1000.0),
        ],
    );
    let moisture = &range.moisture;
    each(
        out,
        "moisture",
        &[
            ("least_percent", moisture.least_percent, 0.0, 30.0),
            ("made_percent", moisture.made_percent, 0.0, 30.0),
            ("most_percent", moisture.most_percent, 0.0, 30.0),
            ("thicker_percent", moisture.thicker_percent, 0.0, 2.0),
            ("longer_percent", moisture.longer_percent, 0.0, 1.0),
            ("lacks_most_mm", moisture.lacks_most_mm.in_mm(), 0.0, 20.0),
        ],
    );
}

fn rates(out: &mut Problems, range: &Range) {
    let rates = &range.rates;
    for (name, value) in [
        ("setup_minutes", rates.setup_minutes),
        ("spray_setup_minutes", rates.spray_setup_minutes),
        ("turn_minutes_per_sheet", rates.turn_minutes_per_sheet),
        ("between_coats_minutes_per_m2", rates.between_coats_minutes_per_m2),
        ("chamfer_minutes_per_m", rates.chamfer_minutes_per_m),
        ("rounding_minutes_per_m", rates.rounding_minutes_per_m),
        ("pivot_minutes", rates.pivot_minutes),
        ("dry_fit_minutes_per_joint", rates.dry_fit_minutes_per_joint),
        ("mask_minutes_per_part", rates.mask_minutes_per_part),
        ("label_minutes_per_part", rates.label_minutes_per_part),
    ] {
        each(out, "rates", &[(name, value, 0.0, 600.0)]);
    }
    each(
        out,
        "rates",
        &[
            ("pack_kg_per_m2", rates.pack_kg_per_m2.in_kg_per_m2(), 0.0, 20.0),
            ("pack_kg_per_package", rates.pack_kg_per_package.in_kg(), 0.0, 20.0),
        ],
    );
}

/// A week at most between two coats.
fn drying(out: &mut Problems, range: &Range) {
    for finish in &range.finishes {
        let (turn, recoat) = (finish.turn_after_minutes.into(), finish.recoat_after_minutes.into());
        let figures = [("turn_after_minutes", turn, 0.0, 10_080.0), ("recoat_after_minutes", recoat, 0.0, 10_080.0)];
        each(out, &format!("finish.{}", finish.key), &figures);
    }
}

fn crews(out: &mut Problems, range: &Range) {
    keys(out, "", "crew", &mut range.crews.iter().map(|crew| &crew.key), 0);
    for crew in &range.crews {
        let minutes = crew.minutes_per_day.into();
        each(out, &format!("crew.{}", crew.key), &[("minutes_per_day", minutes, 1.0, 100_000.0)]);
    }
    for stage in &range.stages {
        if let Some(key) = stage.crew.as_ref().filter(|key| range.crew(key).is_none()) {
            out.push((format!("stage.{}.crew", stage.key), Wrong::Unknown { what: "crew", key: key.clone() }));
        }
    }
    each(out, "calendar", &[("day_minutes", range.calendar.day_minutes.into(), 60.0, 1440.0)]);
}

fn carriers(out: &mut Problems, range: &Range) {
    for carrier in &range.carriers {
        let prefix = format!("carrier.{}", carrier.key);
        each(out, &prefix, &[("people", carrier.people.into(), 1.0, Handling::PEOPLE_MOST.into())]);
        list(out, &prefix, "weekdays", carrier.weekdays.len(), 1, 7);
        for (number, day) in (1..).zip(&carrier.weekdays) {
            each(out, &prefix, &[(&format!("weekdays.{number}"), (*day).into(), 1.0, 7.0)]);
        }
        relations::distinct(out, &prefix, "weekdays", &mut carrier.weekdays.iter().map(ToString::to_string));
        list(out, &prefix, "closed", carrier.closed.len(), 0, 1000);
        relations::distinct(out, &prefix, "closed", &mut carrier.closed.iter().map(ToString::to_string));
    }
}

#[cfg(test)]
mod tests {
    use crate::range::Range;
    use crate::testing::DEMO;

    #[test]
    fn figures_of_people_moisture_and_days_are_bounded() {
        for (from, to, path) in [
            ("people = 2", "people = 4", "carrier.van.people"),
            ("weekdays = [1, 2, 3, 4, 5, 6]", "weekdays = []", "carrier.parcel.weekdays"),
            ("weekdays = [1, 2, 3, 4, 5, 6]", "weekdays = [8]", "carrier.parcel.weekdays.1"),
            // Who never comes on a working day: named once, and not where one of both is wrong by itself.
            ("weekdays = [1, 2, 3, 4, 5, 6]", "weekdays = [6, 7]", "carrier.parcel.weekdays"),
            ("weekdays = [1, 2, 3, 4, 5]      #", "weekdays = [0]      #", "calendar.weekdays.1"),
            ("crew = \"bench\"", "crew = \"nobody\"", "stage.coat-sheets.crew"),
            ("minutes_per_day = 420", "minutes_per_day = 0", "crew.bench.minutes_per_day"),
            ("day_minutes = 480", "day_minutes = 30", "calendar.day_minutes"),
            ("made_percent = 9", "made_percent = 13", "moisture.made_percent"),
            ("within_batch_mm = 0.3", "within_batch_mm = 3", "fit.within_batch_mm"),
            ("recoat_after_minutes = 180", "recoat_after_minutes = 99999", "finish.clear.recoat_after_minutes"),
            ("pivot_minutes = 4", "pivot_minutes = -4", "rates.pivot_minutes"),
            ("pack_kg_per_m2 = 0.4", "pack_kg_per_m2 = 40", "rates.pack_kg_per_m2"),
        ] {
            assert!(DEMO.contains(from), "{from}");
            let problems = Range::parse(&DEMO.replacen(from, to, 1)).unwrap_err().0;
            let paths: Vec<&str> = problems.iter().map(|problem| problem.path.as_str()).collect();
            assert_eq!(paths, [path], "{to}");
        }
    }
}
