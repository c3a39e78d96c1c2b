//! Where the unit will stand: the wall's length, the screen on the top.

use super::{Rule, Subject};
use crate::finding::{Figure, Finding, Limit, Severity};
use crate::quantity::Length;
use crate::question::Question;

/// Width and height of a 16:9 screen by its diagonal.
///
/// ```
/// use slotwright_core::quantity::Length;
/// let (width, height) = slotwright_core::rules::place::screen(Length::mm(55.0 * 25.4));
/// assert!((width.in_mm() - 1217.6).abs() < 0.05 && (height.in_mm() - 684.9).abs() < 0.05);
/// ```
// Source: geometry: width = diagonal × 16 / √(16² + 9²).
pub fn screen(diagonal: Length) -> (Length, Length) {
    let unit = diagonal / 337.0_f64.sqrt();
    (unit * 16.0, unit * 9.0)
}

/// A diagonal in tenths of an inch as a length.
pub fn diagonal(tenths: u16) -> Length {
    Length::mm(f64::from(tenths) * 2.54)
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let width = unit.layout.width;
    let mut find = |rule, found: Length, most: Length| {
        let (found, most) = (Figure::length(found), Figure::length(most));
        out.push(Finding::stops(rule, Question::Place, found, Limit::AtMost, most).but(Severity::Warns));
    };
    if let Some(tenths) = unit.choice.place.screen_tenth_inch {
        let (wide, _) = screen(diagonal(tenths));
        if wide > width {
            find(Rule::ScreenWidth, wide, width);
        }
    }
    if let Some(wall) = unit.choice.place.wall_mm
        && width > wall.length()
    {
        find(Rule::WallWidth, width, wall.length());
    }
}
