//! The screen on the top: its feet, and where the eyes are.

use super::{Rule, RuleCard, Subject, place};
use crate::finding::{Figure, Finding, Limit, Severity};
use crate::panel::PanelId;
use crate::quantity::{Length, Mass};
use crate::question::Question;
use crate::statics::sag::{Beam, own_load, sag, sag_of_point};

/// Its feet.
pub const SCREEN_FEET: RuleCard = RuleCard {
    code: "screen-feet",
    what: "Under a screen's two feet the top sags over the years by less than its span divided by the range's figure.",
    why: "Feet press on two points, often in the middle of a bay.",
    source: "Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 and table 9-1, on a strip as wide as a foot is deep; the weight stays, so creep is that of EN 1995-1-1:2004+A1, table 3.2; mass and feet are typical ones of the range file, the screen's own data decide",
};

/// Eyes.
pub const VIEWING_HEIGHT: RuleCard = RuleCard {
    code: "viewing-height",
    what: "The middle of the screen is about as high as seated eyes, within 15° up or down from where its width is seen at 30°.",
    why: "Looking up or down for hours makes the neck ache.",
    source: "seated eyes 1 140 to 1 230 mm over the floor (Pheasant, Bodyspace, medians added), up to 100 mm lower on a soft seat; 1.63 diagonals away is SMPTE EG-18; 15° is from memory",
};

/// The screen stands so far over the top.
pub const STAND: Length = Length::mm(60.0);
// Source: Pheasant, Bodyspace: seat and sitting eye height, medians of women and men; a soft seat takes off up to 100 mm.
const EYES: (Length, Length) = (Length::mm(1040.0), Length::mm(1230.0));
// Source: SMPTE EG-18: 30° of width at 1.6264 diagonals.
const AWAY: f64 = 1.6264;
/// tan 15°.
const STEEP: f64 = 0.267_949;

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let Some(tenths) = unit.choice.place.screen_tenth_inch else { return };
    let diagonal = place::diagonal(tenths);
    let (wide, high) = place::screen(diagonal);
    feet(out, unit, (wide, high));
    let (middle, reach) = (unit.layout.height + STAND + high / 2.0, diagonal * (AWAY * STEEP));
    let (low, top) = (EYES.0 - reach, EYES.1 + reach);
    let (limit, allowed) = if middle > top { (Limit::AtMost, top) } else { (Limit::AtLeast, low) };
    if middle > top || middle < low {
        let (found, allowed) = (Figure::length(middle), Figure::length(allowed));
        let finding = Finding::stops(Rule::ViewingHeight, Question::Place, found, limit, allowed);
        out.push(finding.but(Severity::Advises));
    }
}

fn feet(out: &mut Vec<Finding>, unit: Subject<'_>, (wide, high): (Length, Length)) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (screen, strength, board) = (&picked.range.screen, &picked.range.strength, picked.body);
    let mass = Mass::kg(screen.kg_per_m2.in_kg_per_m2() * (wide * high).in_m2());
    let half = wide * (f64::from(screen.feet_apart_per_mille) / 2000.0);
    let creep = 1.0 + strength.creep_factor;
    let (strip, beam) = (screen.foot_mm.min(layout.depth), Beam::along(board));
    let bends = layout.bays.iter().filter_map(|span| {
        let feet = [layout.width / 2.0 - half, layout.width / 2.0 + half];
        let near = feet.map(|foot| (foot - span.left).min(span.right - foot));
        let bent: Length = near
            .into_iter()
            .filter(|near| *near > Length::ZERO)
            .map(|near| sag_of_point(span.clear(), near, mass.weight() * (creep / 2.0), strip, beam))
            .sum();
        let own = sag(span.clear(), own_load(board) * creep, beam);
        (bent > Length::ZERO).then_some((bent + own, span.clear() / strength.sag_span_over))
    });
    if let Some((found, most)) = bends.filter(|(bent, most)| bent > most).max_by(|a, b| a.0.total_cmp(&b.0)) {
        let (found, most) = (Figure::length(found), Figure::length(most));
        let finding = Finding::stops(Rule::ScreenFeet, Question::Place, found, Limit::AtMost, most);
        out.push(finding.of([PanelId::Top]).but(Severity::Warns));
    }
}
