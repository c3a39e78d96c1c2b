//! The report of `slotwright check` for people.

use slotwright_core::day::Day;
use slotwright_core::money::Money;
use slotwright_core::quantity::{Length, Mass};
use slotwright_core::range::Use;
use slotwright_core::spec::Difference;
use slotwright_core::words;

use super::report::{BoardReport, FileReport, Measure, OrderReport, Outcome, RangeAtHand};
use crate::commands::fit::percent;
use crate::output::{self, Tone, tinted};
use crate::table;

pub(super) fn lines(file: &FileReport) -> Vec<String> {
    let terminal = output::is_terminal();
    let head = |tone, word| format!("{}: {}", file.file, tinted(tone, word, terminal));
    match &file.result {
        Outcome::Holds { order } => [vec![head(Tone::Good, "holds")], unit(order)].concat(),
        Outcome::Differs { checked, order } => {
            let mut lines = vec![head(Tone::Bad, "does not hold")];
            lines.extend(checked.stops.iter().map(|finding| format!("  {}", words::sentence(finding))));
            lines.extend(checked.differences.iter().map(|difference| {
                let derived = difference.derived.as_deref().unwrap_or("nothing, it cannot be made");
                format!("  {}: promised {}, derived {derived}", difference.pointer, difference.promised)
            }));
            lines.extend(unit(order));
            lines
        }
        Outcome::Unreadable { reason, hint } => vec![
            format!("{}: {reason}", head(Tone::Bad, "unreadable")),
            format!("  {}: {hint}", tinted(Tone::Soft, "hint", terminal)),
        ],
    }
}

/// The order as it is cut.
fn unit(order: &OrderReport) -> Vec<String> {
    let mut rows = Vec::new();
    let mut row = |name: &str, what: String| rows.push([name.into(), what]);
    if let Some(first) = &order.same_as {
        row("again", format!("the same order as {first}: it is made once"));
    }
    row("range", range(&order.range));
    let name = |name: &Option<String>| name.clone().unwrap_or_else(|| "unknown".into());
    let sizes = order.size_mm.map(words::size).join(" × ");
    row(
        "unit",
        format!("{}, {sizes} mm, {}, ordered on {}", name(&order.model), name(&order.finish), order.ordered_on),
    );
    for board in &order.boards {
        row(board.board.as_str(), cut(board));
    }
    let was = |pointer: &str| order.by_batch.iter().find(|difference| difference.pointer == pointer);
    let promised = |was: Option<&Difference>, shown: &dyn Fn(&str) -> Option<String>| {
        let before = was.and_then(|was| shown(&was.promised)).map(|before| format!(", promised {before}"));
        before.unwrap_or_default()
    };
    if let Some(mass) = order.mass_g {
        let shown = |grams: &str| grams.parse().ok().map(kilograms);
        row("mass", format!("{}{}", kilograms(mass), promised(was("/promised/mass_g"), &shown)));
    }
    if let Some(price) = order.price_minor {
        let money = |amount| words::money(amount, &order.currency);
        let shown = |minor: &str| minor.parse().ok().map(Money::minor).map(money);
        row("price", format!("{}{}", money(price), promised(was("/promised/price_minor"), &shown)));
    }
    if let Some(arrives) = order.arrives_on {
        let shown = |day: &str| Some(day.into());
        row("arrives", format!("{}{}", by(arrives), promised(was("/promised/arrives_on"), &shown)));
    }
    if was("/promised/parts_digest").is_some() {
        row("parts", "cut to the measured batches, not to the thickness of the range".into());
    }
    table::lines("  ", &rows)
}

fn range(range: &RangeAtHand) -> String {
    let until =
        range.orders_until.map_or_else(|| "for orders of any day".into(), |last| format!("for orders until {last}"));
    format!("{} ({} {}), {until}, from {}", range.name, range.key, range.digest.short(), range.file)
}

fn by(day: Day) -> String {
    format!("by {day}")
}

/// To a gram, so that what a batch changes is seen.
fn kilograms(grams: i64) -> String {
    #[expect(clippy::cast_precision_loss, reason = "grams of furniture")]
    let mass = Mass::kg(grams as f64 / 1000.0);
    format!("{} kg", words::decimal(mass.in_kg(), 3))
}

/// A board, its thickness, its slots and its joints.
fn cut(board: &BoardReport) -> String {
    let parts = match board.parts.as_slice() {
        [Use::Body] => "body",
        [Use::Back] => "back",
        _ => "body and back",
    };
    let mm = |length: Length| words::decimal(length.in_mm(), 2);
    let known = match board.measured {
        Measure::Points => "measured at eight points",
        Measure::Mean => "measured, its mean alone",
        Measure::Not => "not measured",
    };
    format!(
        "{parts}: {} mm {known}, {} mm with its film, slots {} mm; {} of joints too tight, {} outside the wanted clearance",
        mm(board.thickness_mm),
        mm(board.coated_mm),
        mm(board.fit.slot_mm),
        percent(board.fit.tight),
        percent(board.fit.outside)
    )
}
