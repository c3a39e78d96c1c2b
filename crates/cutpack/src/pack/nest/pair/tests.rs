use slotwright_core::business::nesting;
use slotwright_core::cabinet::panel::{Feature, PanelId};
use slotwright_core::choice::Choice;
use slotwright_core::geometry::outline::{Outline, Segment};
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::units::quantity::Length;

use super::*;
use crate::pack::lot::lots;
use crate::pack::nest::{InStock, LotNest};
use crate::pack::testing::{demo, order_of, with_orders};

fn each_lot(mut check: impl FnMut(&Lot<'_>, &[Format])) {
    let range = demo();
    let finish = range.finishes[0].key.clone();
    let units = choices(&range, 18, Wanted::Valid).map(|choice| Choice { finish: finish.clone(), ..choice });
    let texts: Vec<String> = units.take(9).map(|choice| order_of(&range, &choice)).collect();
    with_orders(&[range], &texts, |orders| {
        for lot in lots(&orders.taken) {
            let problem = nesting::problem(lot.range, lot.board, core::iter::empty());
            check(&lot, &problem.formats);
        }
    });
}

/// An arc goes no farther beyond its chords than that, in millimetres.
const SAGITTA: f64 = 0.004;

/// Straight ways along an outline, arcs in as many as the sagitta asks for.
fn chords(outline: &Outline) -> Vec<[[f64; 2]; 2]> {
    let mut chords = Vec::new();
    for segment in outline.segments() {
        let Segment { from, to, bulge } = segment;
        let [from, to] = [from, to].map(|at| [at.u.in_mm(), at.v.in_mm()]);
        let angle = 4.0 * libm::atan(bulge);
        let count = if bulge == 0.0 {
            1
        } else {
            let step = 2.0 * libm::acos((1.0 - SAGITTA / segment.radius().in_mm()).max(0.0));
            (1..10_000).find(|count| f64::from(*count) * step >= angle.abs()).unwrap()
        };
        let at = |step: i32| {
            if step == 0 || step == count {
                return if step == 0 { from } else { to };
            }
            // Half the angle at which a point of an arc sees the chord tells where it lies between the ends.
            let part = angle * f64::from(step) / f64::from(count);
            let share = libm::sin(part / 2.0) / libm::sin(angle / 2.0);
            let turn = (part - angle) / 2.0;
            let (du, dv) = ((to[0] - from[0]) * share, (to[1] - from[1]) * share);
            [
                from[0] + du * libm::cos(turn) - dv * libm::sin(turn),
                from[1] + du * libm::sin(turn) + dv * libm::cos(turn),
            ]
        };
        chords.extend((0..count).map(|step| [at(step), at(step + 1)]));
    }
    chords
}

fn from_chord([from, to]: [[f64; 2]; 2], at: [f64; 2]) -> f64 {
    let (du, dv) = (to[0] - from[0], to[1] - from[1]);
    let along = ((at[0] - from[0]) * du + (at[1] - from[1]) * dv) / (du * du + dv * dv);
    let along = along.clamp(0.0, 1.0);
    libm::hypot(from[0] + du * along - at[0], from[1] + dv * along - at[1])
}

/// The least distance of two outlines that do not meet.
fn apart(one: &Outline, other: &Outline) -> f64 {
    let (one, other) = (chords(one), chords(other));
    let ends = |chord: [[f64; 2]; 2], at: [[f64; 2]; 2]| from_chord(chord, at[0]).min(from_chord(chord, at[1]));
    let pairs = one.iter().flat_map(|one| other.iter().map(move |other| (*one, *other)));
    pairs.map(|(one, other)| ends(one, other).min(ends(other, one))).fold(f64::MAX, f64::min)
}

#[test]
fn pairs_keep_their_spacing_within_their_rectangle() {
    let (mut uprights, mut count) = (0, 0);
    each_lot(|lot, formats| {
        let spacing = lot.range.spacing().in_mm();
        for (_, laid) in paired(lot, formats) {
            let mut parts: Vec<usize> = laid.iter().flat_map(|laid| laid.members.iter().map(|at| at.part)).collect();
            parts.sort_unstable();
            assert_eq!(parts, (0..lot.parts.len()).collect::<Vec<_>>());
            for Laid { size, members } in &laid {
                let [high_u, high_v] = size.map(|side| nesting::length(side).in_mm());
                let placed = members.iter().map(|member| {
                    let [u, v] = member.at.map(nesting::length);
                    Placed { part: lot.parts[member.part], turn: member.turn, at: Point::new(u, v) }
                });
                let outlines: Vec<Outline> = placed.map(|placed| placed.outline()).collect();
                for corner in outlines.iter().flat_map(Outline::corners) {
                    let (u, v) = (corner.at.u.in_mm(), corner.at.v.in_mm());
                    assert!(u > -1e-6 && v > -1e-6 && u < high_u + 1e-6 && v < high_v + 1e-6, "{u} {v} in {size:?}");
                }
                let [one, other] = &outlines[..] else { continue };
                let found = apart(one, other);
                // As near as may be, but for what is not told apart of sides and for rounding. What chords say is too much by two
                // sagittas at most: spacing is held to a hundredth of a millimetre.
                assert!(found > spacing - 1e-6 && found < spacing + 1.05, "{found} {members:?}");
                count += 1;
                uprights +=
                    u32::from(members.iter().all(|at| matches!(lot.parts[at.part].panel.id, PanelId::Upright(_))));
            }
        }
    });
    assert!(uprights > 4 && count > uprights, "{uprights} {count}");
}

#[test]
fn a_pair_takes_less_than_both_blanks() {
    each_lot(|lot, formats| {
        let spacing = gaps(lot.range).spacing;
        let area = |[along, across]: [i64; 2]| (along + spacing) * (across + spacing);
        let blanks: Vec<i64> = lot.parts.iter().map(|part| area(size(part))).collect();
        for (least, laid) in paired(lot, formats) {
            for Laid { size, members } in laid.iter().filter(|laid| laid.members.len() > 1) {
                let apart: i64 = members.iter().map(|member| blanks[member.part]).sum();
                assert!(area(*size) < apart - least, "{members:?}");
            }
        }
    });
}

#[test]
fn a_nest_with_pairs_is_taken_where_it_costs_less() {
    let mut better = 0;
    each_lot(|lot, _| {
        let Ok(mut nest) = LotNest::of(lot, &mut InStock::default()) else { return };
        nest.step(2000);
        let first = nest.first.search.net();
        let second = nest.second.as_ref().map(|nest| nest.search.net());
        assert_eq!(nest.figures().net(), second.unwrap_or(first).min(first));
        better += u32::from(second.is_some_and(|second| second < first));
    });
    assert!(better > 0);
}

/// What a nest leaves out of account.
#[test]
fn no_hole_takes_a_part() {
    let short_and_long = |(one, other): (Length, Length)| (one.min(other), one.max(other));
    each_lot(|lot, _| {
        let parts: Vec<_> = lot.parts.iter().map(|part| short_and_long(part.panel.blank())).collect();
        for feature in lot.parts.iter().flat_map(|part| &part.panel.features) {
            let hole = match *feature {
                Feature::Slot { from, to } => (to.u - from.u, to.v - from.v),
                Feature::TurnedSlot(slot) => (slot.length, slot.width),
                Feature::Bore { diameter, .. } => (diameter, diameter),
                Feature::Hole { length, height, .. } => (length, height),
                Feature::Tab { .. }
                | Feature::Pivot { .. }
                | Feature::Hook(_)
                | Feature::Detent(_)
                | Feature::Notch { .. }
                | Feature::Bow(_) => continue,
            };
            let (narrow, long) = short_and_long(hole);
            let takes = |(short, far): &(Length, Length)| *short <= narrow && *far <= long;
            assert!(!parts.iter().any(takes), "{feature:?}");
        }
    });
}
