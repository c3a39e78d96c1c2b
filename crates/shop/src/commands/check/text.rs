//! The report of `slotwright check` for people.

use slotwright_core::order::spec::Difference;
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::{Length, Mass};
use slotwright_core::words;
use slotwright_core::words::tool::{Label, Measured, Message};

use super::report::{BoardReport, FileReport, Measure, OrderReport, Outcome, RangeAtHand};
use crate::commands::fit::percent;
use crate::output::{self, Tone, tinted};
use crate::table;

pub(super) fn lines(file: &FileReport) -> Vec<String> {
    let terminal = output::is_terminal();
    let head = |tone, word: Label| format!("{}: {}", file.file, tinted(tone, word.text(), terminal));
    match &file.result {
        Outcome::Holds { order } => [vec![head(Tone::Good, Label::Holds)], unit(order)].concat(),
        Outcome::Differs { checked, order } => {
            let mut lines = vec![head(Tone::Bad, Label::DoesNotHold)];
            lines.extend(checked.stops.iter().map(|finding| format!("  {}", words::sentence(finding))));
            lines.extend(checked.differences.iter().map(|difference| {
                let derived = difference.derived.as_deref().unwrap_or(Label::Nothing.text());
                let (place, promised) = (&difference.pointer, &difference.promised);
                format!("  {}", Message::Differs { place, promised, derived }.text())
            }));
            lines.extend(unit(order));
            lines
        }
        Outcome::Unreadable { reason, hint } => vec![
            format!("{}: {reason}", head(Tone::Bad, Label::Unreadable)),
            format!("  {}: {hint}", tinted(Tone::Soft, Label::Hint.text(), terminal)),
        ],
    }
}

/// The order as it is cut.
fn unit(order: &OrderReport) -> Vec<String> {
    let mut rows = Vec::new();
    let mut row = |name: &str, what: String| rows.push([name.into(), what]);
    if let Some(first) = &order.same_as {
        row(Label::Again.text(), Message::SameOrder(first).text());
    }
    row(Label::Range.text(), range(&order.range));
    let name = |name: &Option<String>| name.clone().unwrap_or_else(|| Label::Unknown.text().into());
    let ordered = Message::Ordered {
        model: &name(&order.model),
        sizes: &order.size_mm.map(words::size).join(" × "),
        finish: &name(&order.finish),
        day: &order.ordered_on.to_string(),
    };
    row(Label::Unit.text(), ordered.text());
    for board in &order.boards {
        row(board.board.as_str(), cut(board));
    }
    let was = |pointer: &str| order.by_batch.iter().find(|difference| difference.pointer == pointer);
    let beside = |now: String, was: Option<&Difference>, shown: &dyn Fn(&str) -> Option<String>| {
        let before = was.and_then(|was| shown(&was.promised));
        before.map(|before| Message::WasPromised(&now, &before).text()).unwrap_or(now)
    };
    if let Some(mass) = order.mass_g {
        let shown = |grams: &str| grams.parse().ok().map(kilograms);
        row(Label::Mass.text(), beside(kilograms(mass), was("/promised/mass_g"), &shown));
    }
    if let Some(price) = order.price_minor {
        let money = |amount| words::money(amount, &order.currency);
        let shown = |minor: &str| minor.parse().ok().map(Money::minor).map(money);
        row(Label::Price.text(), beside(money(price), was("/promised/price_minor"), &shown));
    }
    if let Some(arrives) = order.arrives_on {
        let shown = |day: &str| Some(day.into());
        let by = Message::ArrivesBy(&arrives.to_string()).text();
        row(Label::Arrives.text(), beside(by, was("/promised/arrives_on"), &shown));
    }
    if was("/promised/parts_digest").is_some() {
        row(Label::Parts.text(), Label::CutToBatches.text().into());
    }
    for warning in &order.warnings {
        rows.push([Label::Mind.text().into(), words::sentence(warning)]);
    }
    table::lines("  ", &rows)
}

fn range(range: &RangeAtHand) -> String {
    let until = range.orders_until.map(|last| last.to_string());
    let message = Message::AtHand {
        name: &range.name,
        key: range.key.as_str(),
        digest: &range.digest.short(),
        until: until.as_deref(),
        file: &range.file,
    };
    message.text()
}

/// To a gram, so that what a batch changes is seen.
fn kilograms(grams: i64) -> String {
    #[expect(clippy::cast_precision_loss, reason = "grams of furniture")]
    let mass = Mass::kg(grams as f64 / 1000.0);
    Message::Kilograms(&words::decimal(mass.in_kg(), 3)).text()
}

/// A board, its thickness, its slots and its joints.
fn cut(board: &BoardReport) -> String {
    let mm = |length: Length| words::decimal(length.in_mm(), 2);
    let measured = match board.measured {
        Measure::Points => Measured::Points,
        Measure::Mean => Measured::Mean,
        Measure::Not => Measured::Not,
    };
    let message = Message::Cut {
        parts: &board.parts,
        measured,
        thickness: &mm(board.thickness_mm),
        coated: &mm(board.coated_mm),
        slot: &mm(board.fit.slot_mm),
        tight: &percent(board.fit.tight),
        outside: &percent(board.fit.outside),
        most: &percent(board.outside_most),
    };
    message.text()
}
