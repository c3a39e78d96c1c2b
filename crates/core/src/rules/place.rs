//! Where the unit will stand: the wall's length, the screen on the top and the eyes before it.

use super::{Rule, Subject};
use crate::choice::Choice;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::units::quantity::{Dim, Length};

/// The screen stands so far over the top.
pub const STAND: Length = Length::mm(60.0);
// Source: Pheasant, Bodyspace: seat and sitting eye height, medians of women and men; a soft seat takes off up to 100 mm.
const EYES: (Length, Length) = (Length::mm(1040.0), Length::mm(1230.0));
// Source: SMPTE EG-18: 30° of width at 1.6264 diagonals.
const AWAY: f64 = 1.6264;
/// tan 15°.
// From memory: 15° up or down from where the screen is seen straight on.
const STEEP: f64 = 0.267_949;

/// Width and height of a 16:9 screen by its diagonal.
///
/// ```
/// use slotwright_core::units::quantity::Length;
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
    out.extend(breaches(unit.choice));
}

/// What a choice breaks of the place that was given for it: it can be made, but does not suit.
pub fn breaches(choice: &Choice) -> impl Iterator<Item = Finding> {
    let width = choice.width_mm.length();
    let find = |rule, found: Length, most: Length| {
        let (found, most) = (Figure::length(found), Figure::length(most));
        Finding::stops(rule, Question::Place, found, Limit::AtMost, most).but(Severity::Warns)
    };
    let wide = choice.place.screen_tenth_inch.map(|tenths| screen(diagonal(tenths)).0);
    let wide = wide.filter(|wide| *wide > width).map(|wide| find(Rule::ScreenWidth, wide, width));
    let wall = choice.place.wall_mm.map(Dim::length).filter(|wall| width > *wall);
    let wall = wall.map(|wall| find(Rule::WallWidth, width, wall));
    wide.into_iter().chain(wall).chain(viewing(choice))
}

/// Whether the middle of a screen would be too high or too low.
fn viewing(choice: &Choice) -> Option<Finding> {
    let diagonal = diagonal(choice.place.screen_tenth_inch?);
    let (_, high) = screen(diagonal);
    let (middle, reach) = (choice.height_mm.length() + STAND + high / 2.0, diagonal * (AWAY * STEEP));
    let (low, top) = (EYES.0 - reach, EYES.1 + reach);
    let (limit, allowed) = if middle > top { (Limit::AtMost, top) } else { (Limit::AtLeast, low) };
    let (found, figure) = (Figure::length(middle), Figure::length(allowed));
    let finding = Finding::stops(Rule::ViewingHeight, Question::Place, found, limit, figure).but(Severity::Warns);
    (middle > top || middle < low).then_some(finding)
}
