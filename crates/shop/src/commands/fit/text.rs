//! How joints fit, for people: a table for each board, and what to do.

use slotwright_core::range::Range;
use slotwright_core::words;

use super::{BoardFit, FitDocument, Length};
use crate::table;

pub(super) fn lines(range: &Range, document: &FitDocument) -> Vec<String> {
    let (build, limits) = (&range.build, &range.fit);
    let mut lines = vec![format!(
        "{}: a slot is {} wider than what goes in; {} to {} are wanted.",
        range.name,
        mm(document.clearance_mm),
        mm(build.clearance_least_mm),
        mm(build.clearance_most_mm)
    )];
    if let Some(better) = document.better_mm {
        lines.push(format!("In the middle of that would be {}.", mm(better)));
    }
    for board in &document.boards {
        lines.push(String::new());
        lines.push(heading(range, board));
        let head = ["finish", "slot", "likely ±", "at worst ±", "too tight", "outside", "a top that sticks", ""];
        let mut rows = vec![head.map(String::from)];
        rows.extend(board.finishes.iter().map(|fit| {
            [
                fit.finish.to_string(),
                mm(fit.slot_mm),
                mm(fit.likely_mm),
                mm(fit.worst_mm),
                percent(fit.tight),
                percent(fit.outside),
                percent(fit.any_of_twelve_tight),
                if fit.stops { "not to be cut".into() } else { String::new() },
            ]
        }));
        lines.extend(table::lines("  ", &rows));
        if board.finishes.iter().any(|fit| fit.stops) {
            let most = percent(f64::from(limits.tight_most_per_mille) / 1000.0);
            lines.push(format!(
                "  More than {most} of the joints would not go in: take another batch or finish, or more clearance."
            ));
        }
    }
    lines.push(String::new());
    lines.push(
        "Too tight, outside: shares of joints at the worse end of 95 % of all batches. A top has twelve of them."
            .into(),
    );
    lines
}

fn heading(range: &Range, board: &BoardFit) -> String {
    let known = range.board(&board.board);
    let name = known.map_or("", |known| known.name.as_str());
    let thickness = mm(board.thickness_mm);
    let how = match board.deviation_mm {
        Some(deviation) => format!("{thickness} measured at eight points, deviation {}", mm(deviation)),
        None if known.is_some_and(|known| known.measured_mm.is_some()) => {
            format!("{thickness} measured, its mean alone")
        }
        None => format!("{thickness}, not measured"),
    };
    format!("{}, {name}: {how}", board.board)
}

fn mm(length: Length) -> String {
    format!("{} mm", words::decimal(length.in_mm(), 2))
}

/// A share in percent.
pub(crate) fn percent(share: f64) -> String {
    if share > 0.0 && share < 0.0005 {
        return "under 0.1 %".into();
    }
    format!("{} %", words::decimal(share * 100.0, 1))
}
