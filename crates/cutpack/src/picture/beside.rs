//! What goes in beside parts: rings on the back where tethers are screwed to its rear face, cards under doors.

use core::f64::consts::TAU;

use slotwright_core::cabinet::case::Case;
use slotwright_core::cabinet::joint::Joint;
use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::geometry::space::Block;
use slotwright_core::rules::tether::Tethers;

use super::shape::{Facet, Line, Shape};
use super::view::Seen;
use super::{Part, arrow};

/// The ring of a tether: about the foot of one.
// Chosen by eye.
const RADIUS: f64 = 25.0;
const SIDES: u8 = 12;
/// A strip of card as it is drawn: as wide, and so far before the door and under it.
const CARD: [f64; 3] = [30.0, 60.0, 10.0];

/// What is shown beside parts in the picture of a step.
#[derive(Clone, Debug, Default)]
pub(super) struct Beside {
    /// What a hand puts there in this step, or takes away.
    pub(super) goes_in: Vec<Shape>,
    /// What lies there from a step before: cards, from the step of their door until the top is on.
    pub(super) lie: Vec<Shape>,
}

impl Beside {
    /// What is beside a part that goes in, and beside those that stand.
    pub(super) fn of(case: &Case, tethers: Option<Tethers>, part: &Part<'_>, before: &[Part<'_>]) -> Self {
        let goes_in = match part.step.part {
            PanelId::Back => tethers.into_iter().flat_map(|tethers| rings(tethers, part)).collect(),
            PanelId::Leaf(_) => card(case, part).into_iter().collect(),
            PanelId::PlinthFront
            | PanelId::PlinthRear
            | PanelId::Bearer(_)
            | PanelId::BaseLower
            | PanelId::BaseUpper
            | PanelId::Upright(_)
            | PanelId::Shelf { .. }
            | PanelId::Stile(_)
            | PanelId::Stop(_)
            | PanelId::Stave { .. }
            | PanelId::Top => Vec::new(),
        };
        let cards = before.iter().filter_map(|part| card(case, part)).collect();
        // With the top all cards are drawn out.
        if part.step.part == PanelId::Top {
            Self { goes_in: cards, lie: goes_in }
        } else {
            Self { goes_in, lie: cards }
        }
    }
}

/// A ring near each end of the back: broken, since what is there is behind it.
fn rings(tethers: Tethers, Part { runs, placed, .. }: &Part<'_>) -> [Shape; 2] {
    let [dx, dy, dz] = arrow::back(runs);
    let [[left, face, _], [right, ..]] = placed.extent;
    let (from_end, up) = (tethers.from_end.in_mm(), tethers.up.in_mm());
    [left + from_end, right - from_end].map(|middle| {
        let at = |side: u8| {
            let angle = TAU * f64::from(side) / f64::from(SIDES);
            let [x, z] = [middle + RADIUS * libm::cos(angle), up + RADIUS * libm::sin(angle)];
            Seen::of([x + dx, face + dy, z + dz])
        };
        let sides = (0..SIDES).step_by(2);
        let lines = sides.map(|side| Line { from: at(side), to: at(side + 1), rim: true }).collect();
        Shape { lines, ..Shape::cover(Vec::new()) }
    })
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
