//! The sections on how units are built, what they bear, what work costs and when it is done.

use super::{Problems, Wrong, each, list, money, relations};
use crate::range::{Hold, MaterialBy, Range};

pub(super) fn check(out: &mut Problems, range: &Range) {
    build(out, range);
    strength(out, range);
    bow(out, range);
    cutting(out, range);
    rates(out, range);
    times(out, range);
}

fn build(out: &mut Problems, range: &Range) {
    let build = &range.build;
    each(
        out,
        "build",
        &[
            ("clearance_least_mm", build.clearance_least_mm.in_mm(), 0.0, 2.0),
            ("clearance_most_mm", build.clearance_most_mm.in_mm(), 0.0, 2.0),
            ("clearance_loose_mm", build.clearance_loose_mm.in_mm(), 0.0, 3.0),
            ("clearance_mm", build.clearance_mm.in_mm(), 0.0, 2.0),
            ("cutter_mm", build.cutter_mm.in_mm(), 1.0, 25.0),
            ("ease_mm", build.ease_mm.in_mm(), 0.0, 5.0),
            ("end_inset_mm", build.end_inset_mm.in_mm(), 3.0, 200.0),
            ("front_inset_mm", build.front_inset_mm.in_mm(), 0.0, 200.0),
            ("chase_mm", build.chase_mm.in_mm(), 0.0, 200.0),
            ("back_ear_mm", build.back_ear_mm.in_mm(), 3.0, 200.0),
            ("hook_apart_mm", build.hook_apart_mm.in_mm(), 100.0, 3000.0),
            ("hook_neck_mm", build.hook_neck_mm.in_mm(), 8.0, 200.0),
            ("hook_nose_mm", build.hook_nose_mm.in_mm(), 5.0, 100.0),
            ("hook_rise_mm", build.hook_rise_mm.in_mm(), 8.0, 100.0),
            ("hook_play_mm", build.hook_play_mm.in_mm(), 0.5, 5.0),
            ("headroom_mm", build.headroom_mm.in_mm(), 0.0, 1000.0),
            ("joints_at_once_most", build.joints_at_once_most.into(), 2.0, 200.0),
            ("foot_recess_mm", build.foot_recess_mm.in_mm(), 0.0, 200.0),
            ("plinth_toe_mm", build.plinth_toe_mm.in_mm(), 0.0, 200.0),
            ("plinth_rear_mm", build.plinth_rear_mm.in_mm(), 0.0, 200.0),
            ("tab_mm", build.tab_mm.in_mm(), 2.0, 300.0),
            ("tab_inset_mm", build.tab_inset_mm.in_mm(), 0.0, 300.0),
            ("tab_short_mm", build.tab_short_mm.in_mm(), 0.0, 5.0),
            ("tab_stagger_mm", build.tab_stagger_mm.in_mm(), 0.5, 10.0),
            ("taper_across_mm", build.taper_across_mm.in_mm(), 0.5, 1.5),
            ("taper_along_mm", build.taper_along_mm.in_mm(), 1.0, 20.0),
            ("tab_chamfer_mm", build.tab_chamfer_mm.in_mm(), 0.0, 5.0),
            ("pivot_inset_mm", build.pivot_inset_mm.in_mm(), 1.5, 100.0),
            ("pivot_clearance_mm", build.pivot_clearance_mm.in_mm(), 0.0, 5.0),
            ("leaf_gap_mm", build.leaf_gap_mm.in_mm(), 0.0, 20.0),
            ("leaf_rounding_mm", build.leaf_rounding_mm.in_mm(), 0.0, 50.0),
            ("stop_depth_mm", build.stop_depth_mm.in_mm(), 20.0, 300.0),
            ("stop_gap_mm", build.stop_gap_mm.in_mm(), 0.0, 5.0),
            ("stop_overlap_mm", build.stop_overlap_mm.in_mm(), 3.0, 60.0),
            ("detent_rise_mm", build.detent_rise_mm.in_mm(), 0.0, 5.0),
            ("detent_play_mm", build.detent_play_mm.in_mm(), 0.0, 5.0),
            ("detent_travel_mm", build.detent_travel_mm.in_mm(), 0.5, 10.0),
            ("detent_tongue_mm", build.detent_tongue_mm.in_mm(), 2.0, 30.0),
            ("detent_root_mm", build.detent_root_mm.in_mm(), 5.0, 280.0),
            ("ligament_mm", build.ligament_mm.in_mm(), 0.0, 200.0),
            ("sheet_trim_mm", build.sheet_trim_mm.in_mm(), 0.0, 100.0),
        ],
    );
    each(out, "build", &[("finger_hole_mm", build.finger_hole_mm.in_mm(), 0.0, 60.0)]);
    each(out, "build", &[("detent_slope_per_mille", build.detent_slope_per_mille.into(), 100.0, 2000.0)]);
    each(out, "build", &[("shelf_slot_per_mille", build.shelf_slot_per_mille.into(), 50.0, 900.0)]);
}

fn strength(out: &mut Problems, range: &Range) {
    let strength = &range.strength;
    each(
        out,
        "strength",
        &[
            ("sag_span_over", strength.sag_span_over, 50.0, 2000.0),
            ("creep_factor", strength.creep_factor, 0.0, 5.0),
            ("lasting_share", strength.lasting_share, 0.0, 1.0),
            ("leaf_narrowest", strength.leaf_narrowest, 0.0, 20.0),
            ("leaf_widest", strength.leaf_widest, 0.0, 20.0),
            ("leaf_least_mm", strength.leaf_least_mm.in_mm(), 0.0, 2000.0),
            ("leaf_most_kg", strength.leaf_most_kg.in_kg(), 0.1, 200.0),
            ("bay_least_mm", strength.bay_least_mm.in_mm(), 0.0, 2000.0),
            ("row_least_mm", strength.row_least_mm.in_mm(), 0.0, 2000.0),
            ("lasting_strength", strength.lasting_strength, 0.05, 1.0),
            ("material_factor", strength.material_factor, 1.0, 5.0),
            ("buckling_factor", strength.buckling_factor, 1.0, 100.0),
            ("tip_factor", strength.tip_factor, 1.0, 10.0),
            ("carpet_mm", strength.carpet_mm.in_mm(), 0.0, 100.0),
            ("tether_push_n", strength.tether_push_n.in_newton(), 0.0, 5000.0),
            ("knock_n", strength.knock_n.in_newton(), 0.0, 5000.0),
            ("push_n", strength.push_n.in_newton(), 0.0, 1000.0),
            ("push_span_over", strength.push_span_over, 20.0, 2000.0),
            ("knock_strength", strength.knock_strength, 0.05, 1.2),
            ("detent_openings", strength.detent_openings.into(), 1.0, 10_000_000.0),
        ],
    );
    each(
        out,
        "fit",
        &[
            ("cut_mm", range.fit.cut_mm.in_mm(), 0.0, 2.0),
            ("film_per_mille", range.fit.film_per_mille.into(), 0.0, 1000.0),
            ("tight_most_per_mille", range.fit.tight_most_per_mille.into(), 0.0, 1000.0),
            ("outside_most_per_mille", range.fit.outside_most_per_mille.into(), 0.0, 1000.0),
        ],
    );
    each(
        out,
        "screen",
        &[
            ("kg_per_m2", range.screen.kg_per_m2.in_kg_per_m2(), 0.0, 500.0),
            ("feet_apart_per_mille", range.screen.feet_apart_per_mille.into(), 0.0, 1000.0),
            ("foot_mm", range.screen.foot_mm.in_mm(), 10.0, 1000.0),
        ],
    );
    each(
        out,
        "handling",
        &[
            ("one_person_kg", range.handling.one_person_kg.in_kg(), 0.1, 200.0),
            ("one_person_longest_mm", range.handling.one_person_longest_mm.in_mm(), 100.0, 10_000.0),
            ("two_people_kg", range.handling.two_people_kg.in_kg(), 0.1, 400.0),
        ],
    );
}

fn bow(out: &mut Problems, range: &Range) {
    let row = &range.bow;
    each(
        out,
        "bow",
        &[
            ("inset_mm", row.inset_mm.in_mm(), 0.0, 250.0),
            ("stave_mm", row.stave_mm.in_mm(), 20.0, 200.0),
            ("gap_mm", row.gap_mm.in_mm(), 0.5, 200.0),
            ("tab_mm", row.tab_mm.in_mm(), 2.0, 200.0),
            ("behind_mm", row.behind_mm.in_mm(), 3.0, 200.0),
        ],
    );
}

fn cutting(out: &mut Problems, range: &Range) {
    let (cutting, offcuts) = (&range.cutting, &range.offcuts);
    each(
        out,
        "cutting",
        &[
            ("allowance_mm", cutting.allowance_mm.in_mm(), 0.0, 100.0),
            ("below_mm", cutting.below_mm.in_mm(), 0.0, 5.0),
            ("lead_in_mm", cutting.lead_in_mm.in_mm(), 0.0, 100.0),
            ("outline_minutes", cutting.outline_minutes, 0.0, 60.0),
        ],
    );
    let hold = match cutting.hold {
        Hold::Vacuum => Vec::new(),
        Hold::Skin { thickness_mm } => vec![("hold.skin.thickness_mm", thickness_mm.in_mm(), 0.05, 3.0)],
        Hold::Bridges { length_mm, thickness_mm, apart_mm } => vec![
            ("hold.bridges.length_mm", length_mm.in_mm(), 1.0, 50.0),
            ("hold.bridges.thickness_mm", thickness_mm.in_mm(), 0.5, 20.0),
            ("hold.bridges.apart_mm", apart_mm.in_mm(), 100.0, 6000.0),
        ],
    };
    each(out, "cutting", &hold);
    each(
        out,
        "offcut",
        &[
            ("least_along_mm", offcuts.least_along_mm.in_mm(), 50.0, 6000.0),
            ("least_across_mm", offcuts.least_across_mm.in_mm(), 50.0, 6000.0),
            ("worth_per_mille", offcuts.worth_per_mille.into(), 0.0, 1000.0),
        ],
    );
}

fn rates(out: &mut Problems, range: &Range) {
    let rates = &range.rates;
    if let MaterialBy::Yield { per_mille } = rates.material {
        each(out, "rates", &[("material.yield.per_mille", per_mille.into(), 100.0, 1000.0)]);
    }
    each(
        out,
        "rates",
        &[("feed_mm_per_min", rates.feed_mm_per_min, 10.0, 100_000.0), ("passes", rates.passes.into(), 1.0, 50.0)],
    );
    for (name, value) in [
        ("sheet_minutes", rates.sheet_minutes),
        ("sand_minutes_per_m2", rates.sand_minutes_per_m2),
        ("coat_minutes_per_m2", rates.coat_minutes_per_m2),
        ("edge_minutes_per_m", rates.edge_minutes_per_m),
        ("pack_minutes_per_part", rates.pack_minutes_per_part),
    ] {
        each(out, "rates", &[(name, value, 0.0, 600.0)]);
    }
    for (name, value) in [
        ("machine_hour_minor", rates.machine_hour_minor),
        ("spray_hour_minor", rates.spray_hour_minor),
        ("bench_hour_minor", rates.bench_hour_minor),
        ("pack_minor_per_m2", rates.pack_minor_per_m2),
    ] {
        money(out, "rates", name, value);
    }
    each(
        out,
        "rates",
        &[
            ("overhead_per_mille", rates.overhead_per_mille.into(), 0.0, 5000.0),
            ("margin_per_mille", rates.margin_per_mille.into(), 0.0, 900.0),
            ("tax_per_mille", rates.tax_per_mille.into(), 0.0, 1000.0),
        ],
    );
}

fn times(out: &mut Problems, range: &Range) {
    for stage in &range.stages {
        let (minutes, days) = (stage.minutes_per_day.into(), stage.wait_days.into());
        let figures = [("minutes_per_day", minutes, 1.0, 100_000.0), ("wait_days", days, 0.0, 365.0)];
        each(out, &format!("stage.{}", stage.key), &figures);
    }
    let calendar = &range.calendar;
    list(out, "calendar", "weekdays", calendar.weekdays.len(), 1, 7);
    for (number, day) in (1..).zip(&calendar.weekdays) {
        each(out, "calendar.weekdays", &[(&format!("{number}"), (*day).into(), 1.0, 7.0)]);
    }
    relations::distinct(out, "calendar", "weekdays", &mut calendar.weekdays.iter().map(ToString::to_string));
    list(out, "calendar", "closed", calendar.closed.len(), 0, 1000);
    relations::distinct(out, "calendar", "closed", &mut calendar.closed.iter().map(ToString::to_string));
    list(out, "calendar", "shutdowns", calendar.shutdowns.len(), 0, 200);
    for (number, shutdown) in (1..).zip(&calendar.shutdowns) {
        if !(0..=366).contains(&shutdown.from.days_until(shutdown.to)) {
            out.push((format!("calendar.shutdowns.{number}"), Wrong::Stretch));
        }
    }
    for carrier in &range.carriers {
        let prefix = format!("carrier.{}", carrier.key);
        each(
            out,
            &prefix,
            &[
                ("package_most_kg", carrier.package_most_kg.in_kg(), 1.0, 10_000.0),
                ("longest_mm", carrier.longest_mm.in_mm(), 100.0, 100_000.0),
                ("length_and_girth_mm", carrier.length_and_girth_mm.in_mm(), 100.0, 100_000.0),
                ("days", carrier.days.into(), 0.0, 365.0),
            ],
        );
        money(out, &prefix, "package_minor", carrier.package_minor);
    }
}
