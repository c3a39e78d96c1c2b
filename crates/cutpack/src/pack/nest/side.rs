//! The sides of a part as another part meets them that comes straight towards it: how far its true outline stays back from
//! its blank, from place to place.
//!
//! Whole hundredths of a millimetre, always rounded towards the neighbour, and arcs taken as rectangles that hold them: what
//! keeps clear of a side keeps clear of the part.

use slotwright_core::business::nesting::{holding, within};
use slotwright_core::geometry::outline::{Outline, Point, Segment};
use slotwright_core::units::quantity::Length;

/// A rectangle: from and to along the grain, then across it.
pub(super) type Bounds = [[i64; 2]; 2];

/// A part by its grain, as another one meets it that comes along it, or across it.
#[derive(Clone, Debug)]
pub(super) struct Facing {
    /// Size of its blank in the direction in which the other one comes.
    pub(super) reach: i64,
    /// And along the sides that meet.
    pub(super) length: i64,
    /// The side that lies high, each stretch longer by the spacing at both ends: whoever passes such an end keeps it.
    pub(super) high: Side,
    /// The side that lies low.
    pub(super) low: Side,
}

/// A side from end to end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Side(Vec<Step>);

/// A stretch of a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Step {
    /// Where it begins along the side, from the low corner of the blank.
    from: i64,
    /// Where it ends.
    to: i64,
    /// How far the part stays back from its blank there.
    back: i64,
}

/// Less than this is not told apart: a millimetre.
const COARSE: i64 = 100;

/// Rectangles that hold the segments of an outline.
pub(super) fn bounds(outline: &Outline) -> Vec<Bounds> {
    outline.segments().map(around).collect()
}

fn around(segment: Segment) -> Bounds {
    let Segment { from, to, bulge } = segment;
    // The top of an arc over its chord. An arc of half a circle at most lies between its ends there; one of more reaches
    // beyond them, by less than its radius.
    let (out_u, out_v) = ((to.v - from.v) * (bulge / 2.0), (from.u - to.u) * (bulge / 2.0));
    let more = if bulge.abs() > 1.0 { segment.radius() } else { Length::ZERO };
    let moved = |at: Point| Point::new(at.u + out_u, at.v + out_v);
    let (mut low, mut high) = (from, from);
    for at in [to, moved(from), moved(to)] {
        low = Point::new(low.u.min(at.u), low.v.min(at.v));
        high = Point::new(high.u.max(at.u), high.v.max(at.v));
    }
    [[within(low.u - more), holding(high.u + more)], [within(low.v - more), holding(high.v + more)]]
}

impl Facing {
    /// A part of that size, along the grain and across it: as what comes along the grain meets it, and across.
    pub(super) fn of(bounds: &[Bounds], [along, across]: [i64; 2], spacing: i64) -> [Self; 2] {
        let new = |reach, length, bounds: &[Bounds]| {
            let high =
                |[[_, far], [from, to]]: &Bounds| Step { from: from - spacing, to: to + spacing, back: reach - far };
            let low = |[[near, _], [from, to]]: &Bounds| Step { from: *from, to: *to, back: *near };
            let side = |step: &dyn Fn(&Bounds) -> Step| Side::of(&bounds.iter().map(step).collect::<Vec<_>>());
            Self { reach, length, high: side(&high), low: side(&low) }
        };
        let exchanged: Vec<Bounds> = bounds.iter().map(|[along, across]| [*across, *along]).collect();
        [new(along, across, bounds), new(across, along, &exchanged)]
    }
}

impl Side {
    /// What of stretches that lie one behind another stands out.
    fn of(stretches: &[Step]) -> Self {
        let mut ends: Vec<i64> = stretches.iter().flat_map(|step| [step.from, step.to]).collect();
        ends.sort_unstable();
        ends.dedup();
        let mut steps: Vec<Step> = Vec::new();
        for ends in ends.windows(2) {
            let [from, to] = *ends else { continue };
            let here = stretches.iter().filter(|step| step.from <= from && step.to >= to);
            let Some(back) = here.map(|step| step.back).min() else { continue };
            match steps.last_mut().filter(|last| (last.back - back).abs() < COARSE) {
                Some(last) => *last = Step { from: last.from, to, back: last.back.min(back) },
                None => steps.push(Step { from, to, back }),
            }
        }
        Self(steps)
    }

    /// How much nearer than blanks a low side comes to this high one, moved so far along it, if that is more than `above`;
    /// none if it passes by.
    pub(super) fn saved(&self, low: &Self, offset: i64, above: i64) -> Option<i64> {
        let mut least: Option<i64> = None;
        for step in &self.0 {
            for other in &low.0 {
                if step.from < other.to + offset && other.from + offset < step.to {
                    let back = step.back + other.back;
                    if back <= above {
                        return None;
                    }
                    least = Some(least.map_or(back, |least| least.min(back)));
                }
            }
        }
        least
    }
}

#[cfg(test)]
mod tests;
