//! Slender parts: a push in the middle of a stile, of a stave, of a leaf or its stop, or of a plinth's board bends it; one at the free
//! corner of a leaf twists it.
//!
//! Each is a strip on simple supports: tabs and pivots hold its ends, bearers those of a plinth's board. What stands behind a stile
//! stops a push from the front; from the rear, or by its own warp, nothing does. A stop is pushed from the side: a leaf pushes along
//! its depth.
//!
//! A leaf hangs on two pivots at one side and is kept shut at its head, by its detent. Nothing keeps its lower free corner: a push there,
//! or its own warp, twists it. Without a detent that push opens it.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject};
use crate::cabinet::blank::Blank;
use crate::cabinet::layout::Layout;
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::range::Detent;
use crate::rules::finding::{Figure, Finding, Limit, asked_by};
use crate::statics::sag::{Beam, sag_of_point};
use crate::statics::twist::corner;
use crate::units::quantity::Length;

/// The free end of a cantilever may move twice as far for its length as the middle of a beam on two supports.
// Source: EN 1995-1-1:2004+A1, table 7.2, from memory: l/300 to l/500 and l/150 to l/250.
const CANTILEVER: f64 = 2.0;

/// The part that bends most of what it may. The first of several alike: stiles are all as wide and as high.
// Source: the force in mid-span of beam tables, as for shelves; the force and the share of the span are the range's.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (strength, beam) = (&unit.picked.range.strength, Beam::along(unit.picked.body));
    let mut worst: Option<(PanelId, Question, Length, Length)> = None;
    let mut judged: Option<&Blank> = None;
    for blank in unit.blanks.iter().filter(|blank| is_slender(blank.id)) {
        if judged.is_some_and(|judged| blank.is_like(judged)) {
            continue;
        }
        judged = Some(blank);
        let bow = slender(blank, unit.layout).map(|(span, strip)| {
            let bow = sag_of_point(span, span / 2.0, strength.push_n, strip, beam);
            (blank.id, asked_by(blank.id), bow, span / strength.push_span_over)
        });
        let twist = twist(blank, unit).map(|(twist, most)| (blank.id, TWIST, twist, most));
        for next in bow.into_iter().chain(twist) {
            if worst.is_none_or(|worst| next.2 / next.3 > worst.2 / worst.3) {
                worst = Some(next);
            }
        }
    }
    if let Some((part, about, gives, most)) = worst.filter(|(_, _, gives, most)| gives > most) {
        let (found, most) = (Figure::length(gives), Figure::length(most));
        out.push(Finding::stops(Rule::Slender, about, found, Limit::AtMost, most).of([part]));
    }
}

/// Whether a part is one that a push bends.
const fn is_slender(part: PanelId) -> bool {
    match part {
        PanelId::Stile(_)
        | PanelId::Stop(_)
        | PanelId::Stave { .. }
        | PanelId::Leaf(_)
        | PanelId::PlinthFront
        | PanelId::PlinthRear => true,
        PanelId::Bearer(_)
        | PanelId::BaseLower
        | PanelId::BaseUpper
        | PanelId::Upright(_)
        | PanelId::Back
        | PanelId::Shelf { .. }
        | PanelId::Top => false,
    }
}

/// What a leaf that twists is about: it is too wide, however high it is.
const TWIST: Question = Question::Width;

/// How far the free corner of a leaf gives way, and how far it may: its height is a cantilever to that corner.
fn twist(blank: &Blank, unit: Subject<'_>) -> Option<(Length, Length)> {
    let (PanelId::Leaf(_), (width, height)) = (blank.id, blank.size) else { return None };
    let (range, board) = (unit.picked.range, unit.picked.body);
    Detent::of(&range.build, unit.layout.body)?;
    let (strength, wide) = (&range.strength, width - range.build.pivot_inset_mm);
    let gives = corner(strength.push_n, [wide, height], board.thickness(), board.shear_modulus_n_per_mm2);
    Some((gives, height * (CANTILEVER / strength.push_span_over)))
}

/// How far a slender part is free, along its face grain, and how wide it is there.
fn slender(blank: &Blank, layout: &Layout) -> Option<(Length, Length)> {
    let (width, height) = blank.size;
    match blank.id {
        PanelId::Stile(_) | PanelId::Stop(_) | PanelId::Stave { .. } | PanelId::Leaf(_) => Some((height, width)),
        PanelId::PlinthFront | PanelId::PlinthRear => {
            let bearers = layout.bearers().zip(layout.bearers().skip(1));
            let widest = bearers.map(|(left, right)| right - left - layout.body).reduce(Length::max)?;
            // What its laps leave is not counted on over the whole of it.
            Some((widest, height))
        }
        _ => None,
    }
}

/// What the part's length and width come from, and what it is there for.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.distance_tells_nothing();
    if finding.about != TWIST {
        on.answer(Question::Plinth);
    }
    for part in &finding.parts {
        match *part {
            PanelId::Leaf(bay) if finding.about == TWIST => {
                on.clear_width(context, Direction::Down, Length::ZERO);
                on.stiles(context, bay, Direction::Down, None);
            }
            PanelId::Stile(number) => {
                on.size(Question::Height, Direction::Down, Length::ZERO);
                on.answer(Question::Bays);
                on.answer(Question::Finish);
                for bay in [number.saturating_sub(1), number] {
                    if usize::from(bay) >= 1 && usize::from(bay) <= context.choice.bays.len() {
                        on.answer(Question::Bay(bay));
                    }
                }
            }
            PanelId::Stop(bay) => {
                on.size(Question::Height, Direction::Down, Length::ZERO);
                on.answer(Question::Bays);
                on.answer(Question::Finish);
                on.answer(Question::Bay(bay));
            }
            PanelId::Stave { .. } => {
                on.size(Question::Height, Direction::Down, Length::ZERO);
                on.answer(Question::Bow);
                on.answer(Question::Finish);
            }
            PanelId::Leaf(bay) => {
                on.size(Question::Height, Direction::Down, Length::ZERO);
                on.clear_width(context, Direction::Up, Length::ZERO);
                on.stiles(context, bay, Direction::Up, None);
            }
            _ => on.whole(context, Direction::Either),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabinet::blank::Blanks;
    use crate::choice::change::Change;
    use crate::choice::{Choice, Fill, Hung};
    use crate::order::derive::advise;
    use crate::range::Range;
    use crate::rules::{can_be_made, judge};
    use crate::testing::demo;
    use crate::units::quantity::{Dim, Force, Mass};

    fn told(range: &Range, choice: &Choice) -> Vec<(Question, PanelId)> {
        let found = judge(range, choice).findings;
        let slender = found.iter().filter(|finding| finding.rule == Rule::Slender);
        slender.map(|finding| (finding.about, finding.parts[0])).collect()
    }

    // Worked for each height: F L³ / (48 E b t³ / 12) by bending, and F L / (4 G 5/6 b t) by plies that slide.
    #[test]
    fn a_stile_bends_as_by_hand() {
        let mut range = demo();
        let tall = Choice::starting(range.model(&"bulrush".parse().unwrap()).unwrap()).unwrap();
        for mm in [1000, 1800, 2200] {
            let choice = tall.with(&Change::HeightMm(Dim::mm(mm)), &range);
            let layout = judge(&range, &choice).layout.unwrap();
            let (long, wide, thick) = (layout.clear_height().in_mm(), layout.stile.in_mm(), 17.7);
            let bent = 10.0 * long * long * long / (48.0 * 10_048.0 * wide * thick * thick * thick / 12.0);
            let slid = 10.0 * long * 6.0 / (4.0 * 5.0 * 170.0 * wide * thick);
            for (by, found) in [(0.999, false), (1.001, true)] {
                range.strength.push_span_over = long / (bent + slid) * by;
                let expected = if found { vec![(Question::Height, PanelId::Stile(1))] } else { Vec::new() };
                assert_eq!(told(&range, &choice), expected, "{mm}");
            }
            range.strength.push_span_over = demo().strength.push_span_over;
        }
    }

    /// A lower unit is a way out, and one without what stiles keep in.
    #[test]
    fn what_bends_too_far_has_ways_out() {
        let mut range = demo();
        range.strength.push_n = Force::newton(20.0);
        let choice = Choice::starting(range.model(&"bulrush".parse().unwrap()).unwrap()).unwrap();
        assert_eq!(told(&range, &choice).len(), 1);
        let found = advise(&range, &choice, None);
        let remedies = &found.iter().find(|finding| finding.rule == Rule::Slender).unwrap().remedies;
        assert!(
            matches!(remedies.first(), Some(Change::HeightMm(height)) if *height < choice.height_mm),
            "{remedies:?}"
        );
        let open = (1..=2).fold(choice, |choice, bay| choice.with(&Change::Fill { bay, fill: Fill::Open }, &range));
        assert_eq!(told(&range, &open), []);
    }

    /// Every model of the demo range has its greatest height, with all that it may hold.
    #[test]
    fn stiles_are_as_wide_as_their_height_asks() {
        let range = demo();
        for model in &range.models {
            let mut choice = Choice::starting(model).unwrap();
            choice.height_mm = model.height_mm.most;
            assert_eq!(told(&range, &choice), [], "{}", model.key);
            assert!(can_be_made(&range, &choice), "{}", model.key);
        }
    }

    // δ = 3 F W H / (G t³), W from the pivots to the free edge.
    #[test]
    fn a_leaf_twists_as_by_hand() {
        let mut range = demo();
        let low = Choice::first_of(&range).unwrap();
        for width in [900, 1300] {
            let leaf = Change::Fill { bay: 1, fill: Fill::Leaf(Hung::Left) };
            let choice = [Change::BayCount(1), leaf, Change::WidthMm(Dim::mm(width))]
                .iter()
                .fold(low.clone(), |choice, change| choice.with(change, &range));
            let judged = judge(&range, &choice);
            let blanks =
                judged.layout.as_ref().map(|layout| Blanks { picked: judged.picked.unwrap(), layout }.all(&choice));
            let leaf = blanks.unwrap().into_iter().find(|blank| blank.id == PanelId::Leaf(1)).unwrap();
            let (wide, high) = (leaf.size.0.in_mm() - 16.0, leaf.size.1.in_mm());
            let twisted = 3.0 * 10.0 * wide * high / (620.0 * 17.7 * 17.7 * 17.7);
            for (by, found) in [(0.999, false), (1.001, true)] {
                // Half of it at the free end of a cantilever.
                range.strength.push_span_over = 2.0 * high / twisted * by;
                let leaves = told(&range, &choice).contains(&(Question::Width, PanelId::Leaf(1)));
                assert_eq!(leaves, found, "{width} {by}");
            }
            // Without a detent a push opens it.
            range.build.detent_rise_mm = Length::ZERO;
            assert!(!told(&range, &choice).contains(&(Question::Width, PanelId::Leaf(1))), "{width}");
            range = demo();
        }
    }

    /// What twists too far has a narrower unit or more bays as ways out: none of them is a lower one.
    #[test]
    fn what_twists_too_far_has_ways_out() {
        let mut range = demo();
        range.strength.leaf_most_kg = Mass::kg(20.0);
        range.strength.push_n = Force::newton(14.0);
        let low = Choice::first_of(&range).unwrap();
        let leaf = Change::Fill { bay: 1, fill: Fill::Leaf(Hung::Left) };
        let changes = [Change::BayCount(1), leaf, Change::WidthMm(Dim::mm(900))];
        let choice = changes.iter().fold(low, |choice, change| choice.with(change, &range));
        assert_eq!(told(&range, &choice), [(Question::Width, PanelId::Leaf(1))]);
        let found = advise(&range, &choice, None);
        let remedies = &found.iter().find(|finding| finding.rule == Rule::Slender).unwrap().remedies;
        assert!(
            !remedies.is_empty() && !remedies.iter().any(|change| matches!(change, Change::HeightMm(_))),
            "{remedies:?}"
        );
    }

    /// A plinth whose bearers stand far apart bends as well.
    #[test]
    fn a_wide_plinth_is_judged() {
        let mut range = demo();
        range.strength.push_n = Force::newton(100.0);
        let choice = Choice::first_of(&range).unwrap().with(&Change::PlinthMm(Some(Dim::mm(60))), &range);
        let open = choice.bays.len();
        let open = (1..=u8::try_from(open).unwrap())
            .fold(choice, |choice, bay| choice.with(&Change::Fill { bay, fill: Fill::Open }, &range));
        let wide = open.with(&Change::WidthMm(Dim::mm(2400)), &range);
        assert_eq!(told(&range, &wide), [(Question::Plinth, PanelId::PlinthFront)]);
        let high = wide.with(&Change::PlinthMm(Some(Dim::mm(150))), &range);
        assert_eq!(told(&range, &high), []);
    }
}
