//! How joints fit, for people: a table for each board, and what to do.

use slotwright_core::range::Range;
use slotwright_core::words;
use slotwright_core::words::tool::{Label, Measured, Message};

use super::{BoardFit, FitDocument, Length};
use crate::table;

/// Columns of the table.
const HEAD: [Label; 9] = [
    Label::Finish,
    Label::Slot,
    Label::Likely,
    Label::Worst,
    Label::TooTight,
    Label::Outside,
    Label::TopSticks,
    Label::Dry,
    Label::Damp,
];

pub(super) fn lines(range: &Range, document: &FitDocument) -> Vec<String> {
    let (build, limits) = (&range.build, &range.fit);
    let clearance = Message::Clearance {
        range: &range.name,
        clearance: &mm(document.clearance_mm),
        least: &mm(build.clearance_least_mm),
        most: &mm(build.clearance_most_mm),
    };
    let mut lines = vec![clearance.text()];
    if let Some(better) = document.better_mm {
        lines.push(Message::BetterClearance(&mm(better)).text());
    }
    for board in &document.boards {
        lines.push(String::new());
        lines.push(heading(range, board));
        let [finish, slot, likely, worst, tight, outside, sticks, dry, damp] =
            HEAD.map(|label| label.text().to_string());
        let mut rows = vec![[finish, slot, likely, worst, tight, outside, sticks, dry, damp, String::new()]];
        rows.extend(board.finishes.iter().map(|fit| {
            [
                fit.finish.to_string(),
                column_mm(fit.slot_mm),
                column_mm(fit.likely_mm),
                column_mm(fit.worst_mm),
                column_percent(fit.tight),
                column_percent(fit.outside),
                column_percent(fit.any_of_twelve_tight),
                column_mm(fit.dry_mm),
                column_mm(fit.damp_mm),
                if fit.stops { Label::NotToBeCut.text().into() } else { String::new() },
            ]
        }));
        lines.extend(table::with_figures("  ", &rows, 1..HEAD.len()));
        if board.finishes.iter().any(|fit| fit.stops) {
            let most = percent(f64::from(limits.tight_most_per_mille) / 1000.0);
            lines.push(format!("  {}", Message::TooManyTight(&most).text()));
        }
    }
    lines.push(String::new());
    lines.push(Label::Shares.text().into());
    let [made, dry, damp] =
        [document.made_percent, document.dry_percent, document.damp_percent].map(|percent| words::decimal(percent, 2));
    lines.push(Message::DryAndDamp { made: &made, dry: &dry, damp: &damp }.text());
    lines
}

fn heading(range: &Range, board: &BoardFit) -> String {
    let known = range.board(&board.board);
    let measured = match board.deviation_mm {
        Some(_) => Measured::Points,
        None if known.is_some_and(|known| known.measured_mm.is_some()) => Measured::Mean,
        None => Measured::Not,
    };
    let message = Message::Board {
        key: board.board.as_str(),
        name: known.map_or("", |known| known.name.as_str()),
        thickness: &mm(board.thickness_mm),
        measured,
        deviation: &board.deviation_mm.map(mm).unwrap_or_default(),
    };
    message.text()
}

fn mm(length: Length) -> String {
    Message::Millimetres(&words::decimal(length.in_mm(), 2)).text()
}

/// A length as it stands in a column.
fn column_mm(length: Length) -> String {
    Message::Millimetres(&words::fixed(length.in_mm(), 2)).text()
}

/// A share in percent.
pub(crate) fn percent(share: f64) -> String {
    share_of(share, words::decimal)
}

/// A share as it stands in a column.
fn column_percent(share: f64) -> String {
    share_of(share, words::fixed)
}

fn share_of(share: f64, written: fn(f64, u32) -> String) -> String {
    if share > 0.0 && share < 0.0005 {
        return Message::ShareUnder(&written(0.1, 1)).text();
    }
    Message::Percent(&written(share * 100.0, 1)).text()
}
