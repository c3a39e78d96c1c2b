//! What goes in beside parts: rings on the back where tethers are screwed to its rear face, cards under doors.

use core::f64::consts::TAU;

use slotwright_core::cabinet::case::Case;
use slotwright_core::cabinet::joint::{Joint, JointKind};
use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::geometry::space::Block;

use super::shape::{Facet, Line, Shape};
use super::view::Seen;
use super::{Part, arrow};

/// So far beside the middle of an end upright the ring of a tether is drawn, and how large: about the foot of one, clear of the hook.
// Chosen by eye.
const BESIDE: f64 = 45.0;
const RADIUS: f64 = 25.0;
const SIDES: u8 = 24;
/// A strip of card as it is drawn: as wide, and so far before the door and under it.
const CARD: [f64; 3] = [30.0, 60.0, 10.0];

/// What is shown with a part that goes in, after those that stand.
pub(super) fn shapes(case: &Case, tethered: bool, part: &Part<'_>, before: &[Part<'_>]) -> Vec<Shape> {
    match part.step.part {
        PanelId::Back if tethered => tethers(case, arrow::back(&part.runs)),
        PanelId::Leaf(_) => card(case, part).into_iter().collect(),
        PanelId::Top => before.iter().filter_map(|part| card(case, part)).collect(),
        _ => Vec::new(),
    }
}

/// A ring at each end of the back, beside the uppermost hook there.
fn tethers(case: &Case, [dx, dy, dz]: [f64; 3]) -> Vec<Shape> {
    let hooks = || case.joints.iter().filter(|joint| joint.kind == JointKind::Hook);
    let middle = |Joint { shared: Block { from, to }, .. }: &Joint| {
        [from.x + to.x, from.z + to.z].map(|sum| (sum / 2.0).in_mm())
    };
    let highest = hooks().map(middle).fold(f64::NEG_INFINITY, |highest, [_, z]| highest.max(z));
    let face = hooks().map(|hook| hook.shared.from.y.in_mm()).fold(f64::INFINITY, f64::min);
    let across = || hooks().map(middle).map(|[x, _]| x);
    let (left, right) = (across().fold(f64::INFINITY, f64::min), across().fold(f64::NEG_INFINITY, f64::max));
    let ring = |middle: f64| {
        let at = move |side: u8| {
            let angle = TAU * f64::from(side) / f64::from(SIDES);
            let [x, z] = [middle + RADIUS * libm::cos(angle), highest + RADIUS * libm::sin(angle)];
            Seen::of([x + dx, face + dy, z + dz])
        };
        let lines = (0..SIDES).map(|side| Line { from: at(side), to: at(side + 1), rim: true });
        Shape { lines: lines.collect(), ..Shape::cover(Vec::new()) }
    };
    if left < right { vec![ring(left + BESIDE), ring(right - BESIDE)] } else { Vec::new() }
}

/// The strip of card under the free lower corner of a leaf; none if it has no gap there.
fn card(case: &Case, Part { step, placed, .. }: &Part<'_>) -> Option<Shape> {
    step.card.filter(|_| matches!(step.part, PanelId::Leaf(_)))?;
    let foot = |joint: &&Joint| joint.id.goes_in == step.part && joint.id.takes == PanelId::BaseUpper;
    let Block { from, to } = case.joints.iter().find(foot)?.shared;
    let [[left, front, _], [right, ..]] = placed.extent;
    let [wide, before, under] = CARD;
    let is_left_free = ((from.x + to.x) / 2.0).in_mm() > left.midpoint(right);
    let [near, far] = if is_left_free { [left, left + wide] } else { [right - wide, right] };
    let corners = [[near, front - before], [far, front - before], [far, front + under], [near, front + under]];
    let [a, b, c, d] = corners.map(|[x, y]| Seen::of([x, y, to.z.in_mm()]));
    let lines = [(a, b), (b, c), (c, d), (d, a)].map(|(from, to)| Line { from, to, rim: true });
    let facets = [[a, b, c], [a, c, d]].into_iter().filter_map(Facet::facing).collect();
    Some(Shape { lines: lines.to_vec(), ..Shape::cover(facets) })
}
