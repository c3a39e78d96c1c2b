//! Changes as things to do, in two forms that are written out both.

use super::LOCALE;
use super::count::number_of;
use super::name::{fill_within, offset};
use crate::choice::change::Change;
use crate::choice::{Bowed, Fill, Hung};
use crate::units::quantity::Dim;
use crate::words::names::Names;

/// Standing alone, or at the beginning of a sentence.
pub(in crate::words) fn alone(change: &Change, names: Names<'_>) -> String {
    match change {
        Change::Model(key) => format!("Begin afresh with {}", names.model(key)),
        Change::WidthMm(width) => format!("Make it {} wide", LOCALE.length(*width)),
        Change::HeightMm(height) => format!("Make it {} high", LOCALE.length(*height)),
        Change::DepthMm(depth) => format!("Make it {} deep", LOCALE.length(*depth)),
        Change::BayCount(count) => format!("Make it {}", number_of(*count, "bay", "bays")),
        Change::Share { bay, share } => format!("Give bay {bay} a share of {share}"),
        Change::Fill { bay, fill: Fill::Open } => format!("Leave bay {bay} open"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Left) } => format!("Hang a door in bay {bay}, on the left"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Right) } => format!("Hang a door in bay {bay}, on the right"),
        Change::Fill { bay, fill: shelves @ Fill::Shelves(_) } => format!("Put {} in bay {bay}", fill_within(*shelves)),
        Change::Hole { bay, hole: None } => format!("Cut no cable hole in bay {bay}"),
        Change::Hole { bay, hole: Some(hole) } => {
            format!("Cut a {} in bay {bay}, {}", names.hole(&hole.kind), offset(hole.offset_mm))
        }
        Change::Device { bay, device: None } => format!("Put no device in bay {bay}"),
        Change::Device { bay, device: Some(key) } => format!("Put the {} in bay {bay}", names.device(key)),
        Change::Back(key) => format!("Make the back of {}", names.board(key)),
        Change::Finish(key) => format!("Finish it in {}", names.finish(key)),
        Change::CornerRadiusMm(radius) if *radius == Dim::mm(0) => "Leave the corners square".into(),
        Change::CornerRadiusMm(radius) => format!("Round the corners to {}", LOCALE.length(*radius)),
        Change::PlinthMm(Some(height)) => format!("Put it on a plinth of {}", LOCALE.length(*height)),
        Change::PlinthMm(None) => "Leave the plinth out".into(),
        Change::BowMm(bow) if *bow == Dim::mm(0) => "Leave the ends square".into(),
        Change::BowMm(bow) => format!("Bow the ends by {}", LOCALE.length(*bow)),
        Change::Bowed(Bowed::Both) => "Bow both ends".into(),
        Change::Bowed(Bowed::Left) => "Bow the left end alone".into(),
        Change::Bowed(Bowed::Right) => "Bow the right end alone".into(),
        Change::WallMm(Some(wall)) => format!("Suit a wall of {}", LOCALE.length(*wall)),
        Change::WallMm(None) => "Let the wall go".into(),
        Change::CeilingMm(Some(ceiling)) => format!("Suit a ceiling of {}", LOCALE.length(*ceiling)),
        Change::CeilingMm(None) => "Let the ceiling go".into(),
        Change::ScreenTenthInch(Some(tenths)) => format!("Put a screen of {} inches on it", inches(*tenths)),
        Change::ScreenTenthInch(None) => "Let the screen go".into(),
        Change::Plug(Some(key)) => format!("Pass the {}", names.plug(key)),
        Change::Plug(None) => "Name no plug".into(),
    }
}

/// Within a sentence.
pub(in crate::words) fn within(change: &Change, names: Names<'_>) -> String {
    match change {
        Change::Model(key) => format!("begin afresh with {}", names.model(key)),
        Change::WidthMm(width) => format!("make it {} wide", LOCALE.length(*width)),
        Change::HeightMm(height) => format!("make it {} high", LOCALE.length(*height)),
        Change::DepthMm(depth) => format!("make it {} deep", LOCALE.length(*depth)),
        Change::BayCount(count) => format!("make it {}", number_of(*count, "bay", "bays")),
        Change::Share { bay, share } => format!("give bay {bay} a share of {share}"),
        Change::Fill { bay, fill: Fill::Open } => format!("leave bay {bay} open"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Left) } => format!("hang a door in bay {bay}, on the left"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Right) } => format!("hang a door in bay {bay}, on the right"),
        Change::Fill { bay, fill: shelves @ Fill::Shelves(_) } => format!("put {} in bay {bay}", fill_within(*shelves)),
        Change::Hole { bay, hole: None } => format!("cut no cable hole in bay {bay}"),
        Change::Hole { bay, hole: Some(hole) } => {
            format!("cut a {} in bay {bay}, {}", names.hole(&hole.kind), offset(hole.offset_mm))
        }
        Change::Device { bay, device: None } => format!("put no device in bay {bay}"),
        Change::Device { bay, device: Some(key) } => format!("put the {} in bay {bay}", names.device(key)),
        Change::Back(key) => format!("make the back of {}", names.board(key)),
        Change::Finish(key) => format!("finish it in {}", names.finish(key)),
        Change::CornerRadiusMm(radius) if *radius == Dim::mm(0) => "leave the corners square".into(),
        Change::CornerRadiusMm(radius) => format!("round the corners to {}", LOCALE.length(*radius)),
        Change::PlinthMm(Some(height)) => format!("put it on a plinth of {}", LOCALE.length(*height)),
        Change::PlinthMm(None) => "leave the plinth out".into(),
        Change::BowMm(bow) if *bow == Dim::mm(0) => "leave the ends square".into(),
        Change::BowMm(bow) => format!("bow the ends by {}", LOCALE.length(*bow)),
        Change::Bowed(Bowed::Both) => "bow both ends".into(),
        Change::Bowed(Bowed::Left) => "bow the left end alone".into(),
        Change::Bowed(Bowed::Right) => "bow the right end alone".into(),
        Change::WallMm(Some(wall)) => format!("suit a wall of {}", LOCALE.length(*wall)),
        Change::WallMm(None) => "let the wall go".into(),
        Change::CeilingMm(Some(ceiling)) => format!("suit a ceiling of {}", LOCALE.length(*ceiling)),
        Change::CeilingMm(None) => "let the ceiling go".into(),
        Change::ScreenTenthInch(Some(tenths)) => format!("put a screen of {} inches on it", inches(*tenths)),
        Change::ScreenTenthInch(None) => "let the screen go".into(),
        Change::Plug(Some(key)) => format!("pass the {}", names.plug(key)),
        Change::Plug(None) => "name no plug".into(),
    }
}

fn inches(tenths: u16) -> String {
    LOCALE.decimal(f64::from(tenths) / 10.0, 1)
}
