//! The keys of a range on which a rule depends, with their present values.

use serde_json::Value;
use slotwright_core::range::Range;
use slotwright_core::rules::Rule;
use slotwright_core::words;
use slotwright_core::words::tool::{Label, Message};

/// Each key with its value, as the range file names it; or one line that there is none.
pub(super) fn of(rule: Rule, range: &Range) -> Vec<String> {
    let whole = serde_json::to_value(range).unwrap_or_default();
    let mut lines = Vec::new();
    for path in keys(rule) {
        let before = lines.len();
        let parts: Vec<&str> = path.split('.').collect();
        find(&whole, &parts, "", &mut lines);
        if lines.len() == before {
            lines.push(Message::NotSet(path).text());
        }
    }
    if lines.is_empty() {
        lines.push(Label::NoKey.text().into());
    }
    lines
}

/// Follows a path; `*` is every table of a list, by its key.
fn find(value: &Value, path: &[&str], name: &str, lines: &mut Vec<String>) {
    let Some((first, rest)) = path.split_first() else {
        lines.push(format!("{name} = {}", shown(value)));
        return;
    };
    if *first == "*" {
        for (at, table) in (1..).zip(value.as_array().into_iter().flatten()) {
            let key = table.get("key").and_then(Value::as_str).map_or_else(|| at.to_string(), String::from);
            find(table, rest, &format!("{name}.{key}"), lines);
        }
    } else if let Some(inner) = value.get(first) {
        let dot = if name.is_empty() { "" } else { "." };
        find(inner, rest, &format!("{name}{dot}{first}"), lines);
    }
}

fn shown(value: &Value) -> String {
    match value {
        Value::Number(number) => number.as_f64().map(|number| words::decimal(number, 3)).unwrap_or_default(),
        Value::Object(members) => {
            members.iter().map(|(name, value)| format!("{name} {}", shown(value))).collect::<Vec<_>>().join(", ")
        }
        Value::Array(all) => all.iter().map(shown).collect::<Vec<_>>().join(", "),
        Value::String(text) => text.clone(),
        other => other.to_string(),
    }
}

/// What a knock and what it breaks come from.
const KNOCK: &[&str] = &[
    "strength.knock_n",
    "strength.knock_strength",
    "strength.detent_openings",
    "build.hook_neck_mm",
    "build.hook_nose_mm",
    "build.hook_rise_mm",
    "build.tab_mm",
    "build.shelf_slot_per_mille",
    "build.ligament_mm",
    "build.detent_rise_mm",
    "build.detent_travel_mm",
    "build.detent_tongue_mm",
    "build.detent_root_mm",
    "bow.tab_mm",
    "board.*.bearing_n_per_mm2",
    "board.*.planar_shear_n_per_mm2",
];

/// Those by which slender parts are judged.
const SLENDER: &[&str] = &[
    "strength.push_n",
    "strength.push_span_over",
    "model.*.stile_mm",
    "bow.stave_mm",
    "build.stop_depth_mm",
    "board.*.shear_modulus_n_per_mm2",
    "board.*.planar_shear_modulus_n_per_mm2",
];

/// Where the range says what a rule allows.
fn keys(rule: Rule) -> &'static [&'static str] {
    match rule {
        Rule::Known => &["model.*.backs", "model.*.finishes"],
        Rule::SizeLimit | Rule::SizeStep => {
            &["model.*.width_mm", "model.*.height_mm", "model.*.depth_mm", "model.*.plinth_mm"]
        }
        Rule::FitOutCount => &["model.*.bays", "model.*.shelves_most", "model.*.leaves_most"],
        Rule::BayRoom => &["strength.bay_least_mm"],
        Rule::RowRoom => &["strength.row_least_mm"],
        Rule::DepthRoom => &["build.tab_mm", "build.tab_inset_mm", "build.ligament_mm", "build.stop_depth_mm"],
        Rule::HookRoom => &["build.hook_neck_mm", "build.hook_rise_mm", "build.hook_play_mm", "build.ligament_mm"],
        Rule::SheetFit => &["board.*.sheet.*.length_mm", "board.*.sheet.*.width_mm", "build.sheet_trim_mm"],
        Rule::ShelfSag | Rule::BaseSag => &[
            "strength.sag_span_over",
            "strength.creep_factor",
            "strength.lasting_share",
            "model.*.shelf_load_kg_per_m2",
            "board.*.planar_shear_modulus_n_per_mm2",
        ],
        Rule::TopSag => &[
            "strength.sag_span_over",
            "strength.creep_factor",
            "strength.lasting_share",
            "model.*.top_load_kg_per_m2",
            "board.*.planar_shear_modulus_n_per_mm2",
        ],
        Rule::ShelfSlot | Rule::HoleEdge | Rule::HoleShelf => &["build.ligament_mm"],
        Rule::LeafShape => &["strength.leaf_least_mm", "strength.leaf_widest", "strength.leaf_narrowest"],
        Rule::LeafMass => &["strength.leaf_most_kg"],
        Rule::HolePlug => &["hole.*.shape", "plug.*.width_mm", "plug.*.height_mm"],
        Rule::HoleStile => &["model.*.stile_mm", "build.stop_overlap_mm"],
        Rule::DeviceWidth => &["device.*.width_mm", "device.*.air_beside_mm", "build.stop_overlap_mm"],
        Rule::DeviceHeight => &["device.*.height_mm", "device.*.air_over_mm"],
        Rule::DeviceDepth => &["device.*.depth_mm", "device.*.plug_behind_mm"],
        Rule::JointFit => &[
            "fit.tight_most_per_mille",
            "fit.outside_most_per_mille",
            "build.clearance_mm",
            "build.clearance_loose_mm",
            "build.clearance_least_mm",
            "build.clearance_most_mm",
            "fit.within_batch_mm",
        ],
        Rule::ShelfEar | Rule::LeafPivot => &[
            "board.*.bearing_n_per_mm2",
            "board.*.planar_shear_n_per_mm2",
            "strength.lasting_strength",
            "strength.material_factor",
        ],
        Rule::UprightBuckling => &["strength.buckling_factor", "build.hook_apart_mm"],
        Rule::BowRoom => &["bow.inset_mm", "bow.stave_mm", "bow.gap_mm", "build.front_inset_mm", "model.*.bow_mm"],
        Rule::Knock => KNOCK,
        Rule::Slender => SLENDER,
        Rule::PartMass => &["handling.two_people_kg", "handling.one_person_kg"],
        Rule::TipOver => &["strength.tip_factor", "strength.carpet_mm"],
        Rule::PartLength => &["handling.one_person_longest_mm"],
        Rule::Package => {
            &["carrier.*.package_most_kg", "carrier.*.people", "carrier.*.longest_mm", "carrier.*.length_and_girth_mm"]
        }
        Rule::LeafGap => &["build.leaf_gap_mm"],
        Rule::LeafGrip => &["build.finger_hole_mm"],
        Rule::CableBend => &["build.chase_mm", "plug.*.bend_mm"],
        Rule::SheetUse => &["board.*.sheet.*.price_minor", "offcut.worth_per_mille", "cutting.allowance_mm"],
        Rule::FinishEdges => &["finish.*.coats_before", "finish.*.coats_after"],
        Rule::FinishSun => &["finish.*.colour"],
        Rule::ScreenFeet => &[
            "strength.sag_span_over",
            "strength.creep_factor",
            "screen.kg_per_m2",
            "screen.feet_apart_per_mille",
            "screen.foot_mm",
        ],
        Rule::WallTether => &["strength.tether_push_n"],
        Rule::PartMoisture => &[
            "moisture.least_percent",
            "moisture.made_percent",
            "moisture.most_percent",
            "moisture.thicker_percent",
            "moisture.longer_percent",
            "moisture.lacks_most_mm",
        ],
        Rule::AtOnce => &["build.joints_at_once_most"],
        Rule::Headroom => &["build.headroom_mm"],
        Rule::OrderDay => &["orders_until"],
        Rule::BayShare
        | Rule::LeafSwing
        | Rule::DeviceShut
        | Rule::DeviceCable
        | Rule::ScreenWidth
        | Rule::WallWidth
        | Rule::CeilingHeight
        | Rule::ViewingHeight
        | Rule::Interlock
        | Rule::PromiseDay
        | Rule::NoParts => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::inputs;

    /// A key that is no more, or that never was, would say nothing.
    #[test]
    fn every_key_that_a_rule_names_is_in_the_range() {
        let range = inputs::range(None).unwrap();
        for rule in Rule::ALL {
            let unset: Vec<String> =
                of(*rule, &range).into_iter().filter(|line| line.ends_with(" is not set")).collect();
            let may: &[String] = if *rule == Rule::OrderDay { &["orders_until is not set".into()] } else { &[] };
            assert_eq!(unset, may, "{}", rule.code());
        }
    }
}
