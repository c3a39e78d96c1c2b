//! What is cut through beside the bridges of a sheet.
//!
//! Neighbours are a cutter and the allowance apart, so the cutter on its way round one of them reaches over into the way round the
//! other. A bridge is as wide as the cutter, so every way stops before every bridge, whosesoever it is: where a neighbour's
//! bridge is, both parts hold on to each other.

use slotwright_core::geometry::outline::{Corner, Point, Segment};
use slotwright_core::units::quantity::Length;

use super::{Cut, whole};
use crate::pack::sheet::{Placed, Rectangle};

/// Where the cutter's centre takes something of a bridge: a rectangle by the edge on which the bridge lies, a radius longer
/// and wider than the bridge on all sides. At its corners that is a little more than the cutter needs.
#[derive(Clone, Copy, Debug)]
struct Forbidden {
    from: Point,
    /// Direction of the edge; the waste lies to the left of it.
    along: [f64; 2],
    /// Least and most along the edge and across it, in millimetres.
    bounds: [[f64; 2]; 2],
}

/// Adds to each cut that has bridges what is cut through between them.
pub(super) fn add(cuts: &mut [Cut], placed: &[Placed<'_>], radius: Length) {
    let all: Vec<Forbidden> =
        cuts.iter().flat_map(|cut| &cut.bridges).filter_map(|bridge| Forbidden::of(*bridge, radius)).collect();
    for cut in cuts.iter_mut().filter(|cut| !cut.bridges.is_empty()) {
        let Some(placed) = placed.get(cut.part) else { continue };
        let (blank, far) = (placed.rectangle(), radius * 5.0);
        let near: Vec<Forbidden> = all.iter().copied().filter(|forbidden| forbidden.is_near(&blank, far)).collect();
        cut.between = ways(cut.outline.segments(), &near, radius);
    }
}

impl Forbidden {
    fn of([from, to]: [Point; 2], radius: Length) -> Option<Self> {
        let (long, radius) = (Segment { from, to, bulge: 0.0 }.length().in_mm(), radius.in_mm());
        let along = [to.u - from.u, to.v - from.v].map(|way| way.in_mm() / long);
        (long > 0.0).then_some(Self { from, along, bounds: [[-radius, long + radius], [-radius, radius * 3.0]] })
    }

    /// Whether its bridge begins near a rectangle, or so far beyond as it is long.
    fn is_near(&self, blank: &Rectangle, far: Length) -> bool {
        let [[_, long], _] = self.bounds;
        let far = far + Length::mm(long);
        let within = |at: Length, low: Length, high: Length| at >= low - far && at <= high + far;
        within(self.from.u, blank.from.u, blank.to.u) && within(self.from.v, blank.from.v, blank.to.v)
    }

    /// A place along its edge and across it.
    fn local(&self, at: Point) -> [f64; 2] {
        let [u, v] = [at.u - self.from.u, at.v - self.from.v].map(Length::in_mm);
        let [along_u, along_v] = self.along;
        [u * along_u + v * along_v, v * along_u - u * along_v]
    }

    /// The shares of the straight way through two places that lie in it.
    fn on_line(&self, from: Point, to: Point) -> Option<[f64; 2]> {
        let (from, to) = (self.local(from), self.local(to));
        let (mut first, mut last) = (f64::NEG_INFINITY, f64::INFINITY);
        for ((from, to), [low, high]) in from.into_iter().zip(to).zip(self.bounds) {
            let way = to - from;
            if way.abs() < TOUCHING_MM {
                if from <= low + TOUCHING_MM || from >= high - TOUCHING_MM {
                    return None;
                }
            } else {
                let (one, other) = ((low - from) / way, (high - from) / way);
                (first, last) = (first.max(one.min(other)), last.min(one.max(other)));
            }
        }
        (first < last).then_some([first, last])
    }

    /// Whether a place lies in it, or so near.
    fn has(&self, at: Point, near: f64) -> bool {
        self.local(at).into_iter().zip(self.bounds).all(|(at, [low, high])| at > low - near && at < high + near)
    }
}

/// What is nearer than that only touches.
const TOUCHING_MM: f64 = 1e-9;

/// The ways along an outline on which the cutter's centre, a radius to the left of it, is nowhere forbidden.
fn ways(segments: impl Iterator<Item = Segment>, forbidden: &[Forbidden], radius: Length) -> Vec<Vec<Corner>> {
    let mut ways: Vec<Vec<Corner>> = Vec::new();
    // The last way goes on into the next segment; at the seam, the first way begins where the outline does.
    let (mut goes_on, mut from_seam, mut is_first) = (false, false, true);
    for segment in segments {
        let clear = clear(gaps(segment, forbidden, radius));
        if is_first {
            from_seam = clear.first().is_some_and(|[from, _]| *from <= 0.0);
            is_first = false;
        }
        let mut open = goes_on;
        goes_on = false;
        for [from, to] in clear {
            let part = segment.part(from, to);
            let ends = [Corner { at: part.from, bulge: part.bulge }, Corner { at: part.to, bulge: 0.0 }];
            match ways.last_mut().filter(|_| open && from <= 0.0) {
                Some(way) => {
                    way.pop();
                    way.extend(ends);
                }
                None => ways.push(ends.to_vec()),
            }
            (open, goes_on) = (false, to >= 1.0);
        }
    }
    if goes_on && from_seam && ways.len() > 1 {
        let first = ways.remove(0);
        if let Some(last) = ways.last_mut() {
            last.pop();
            last.extend(first);
        }
    }
    ways
}

/// What is left of a segment between gaps, from share to share.
fn clear(mut gaps: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    gaps.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut clear = Vec::new();
    let mut at = 0.0;
    for [from, to] in gaps {
        if from > at {
            clear.push([at, from]);
        }
        at = to.max(at);
    }
    if at < 1.0 {
        clear.push([at, 1.0]);
    }
    clear
}

/// Where on a segment the cutter would take something of a bridge, from share to share.
fn gaps(segment: Segment, forbidden: &[Forbidden], radius: Length) -> Vec<[f64; 2]> {
    let beside = |at: Point, (u, v): (f64, f64)| Point::new(at.u - radius * v, at.v + radius * u);
    if segment.bulge == 0.0 {
        // Round a corner the centre stays within a radius of the ends of both lines. Where it meets a bridge there, it stops as
        // far before the corner.
        let (direction, turn) = (segment.direction(), radius / segment.length());
        let (from, to) = (beside(segment.from, direction), beside(segment.to, direction));
        let on = |forbidden: &Forbidden| {
            let [first, last] = forbidden.on_line(from, to)?;
            let meets = last > -turn && first < 1.0 + turn;
            meets.then(|| [first.min(1.0 - turn).max(0.0), last.max(turn).min(1.0)])
        };
        return forbidden.iter().filter_map(on).collect();
    }
    // In steps along which the centre moves by no more than a quarter of the radius. Most arcs are reliefs, far from any bridge: the
    // centre stays so near to the middle of their chord.
    let step = radius / 4.0;
    let reach = segment.length() / 2.0 + radius + step;
    let near: Vec<Forbidden> =
        forbidden.iter().copied().filter(|forbidden| forbidden.has(segment.at(0.5), reach.in_mm())).collect();
    if near.is_empty() {
        return Vec::new();
    }
    let angle = 4.0 * libm::atan(segment.bulge.abs());
    let steps = whole(libm::ceil(angle * ((segment.radius() + radius) / step))).max(1);
    let is_forbidden = |share: f64| {
        let rest = segment.part(share, 1.0);
        let centre = beside(rest.from, rest.direction());
        near.iter().any(|forbidden| forbidden.has(centre, step.in_mm()))
    };
    let shares = (0..steps).map(|number| [number, number + 1].map(|number| f64::from(number) / f64::from(steps)));
    shares.filter(|[from, _]| is_forbidden(*from)).collect()
}
