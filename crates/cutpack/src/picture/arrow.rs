//! The arrows along a part's moves, the lines that guide it, and how far back the part is drawn.

use slotwright_core::cabinet::assembly::{Direction, Leg, Step};
use slotwright_core::units::quantity::Length;

use super::hidden::{Drawn, hide};
use super::shape::{Facet, Line, Shape};
use super::view::{FORESHORTENED, Seen};

/// An arrow's measures on paper in millimetres.
const SHAFT: f64 = 1.6;
const HEAD: f64 = 4.4;
const HEAD_LONG: f64 = 4.2;
const SHORTEST: f64 = 6.0;
const LONGEST: f64 = 15.0;
/// White round the arrow, so that no line runs into it.
const ROUND: f64 = 0.8;
/// Part of the way that the arrow takes.
const OF_THE_WAY: f64 = 0.7;
/// Part of its own length along the way on which an arrow lies that lies on the part.
const OF_THE_PART: f64 = 0.75;
/// Where along the leading edges an arrow may stand, the best one first.
const STANDS: [f64; 7] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
/// So much ink (mm of paper) may an arrow cover for standing by a tenth nearer to the middle.
const FOR_THE_MIDDLE: f64 = 4.0;

/// An arrow in the picture.
#[derive(Clone, Debug)]
pub(super) struct Arrow {
    /// Its corners in order, the tip first.
    pub(super) corners: [Seen; 7],
    /// What it and the white round it cover, nearest to the eye of all.
    pub(super) cover: Shape,
}

/// A straight move as it is drawn.
#[derive(Clone, Copy, Debug)]
pub(super) struct Run {
    /// The way it goes.
    pub(super) moves: Direction,
    /// How far, in millimetres of the unit.
    pub(super) mm: f64,
}

/// The moves of a step as they are drawn: the first one from further off, all others as far as they go.
pub(super) fn runs(step: &Step, size: [f64; 3]) -> Vec<Run> {
    let legs = step.way.iter().enumerate();
    legs.map(|(at, leg)| Run { moves: leg.moves, mm: if at == 0 { drawn_back(leg, size) } else { leg.travel.in_mm() } })
        .collect()
}

/// From a part's place to where it is drawn.
pub(super) fn back(runs: &[Run]) -> [f64; 3] {
    runs.iter().fold([0.0; 3], |[x, y, z], run| {
        let [dx, dy, dz] = way(run.moves.opposite(), run.mm);
        [x + dx, y + dy, z + dz]
    })
}

/// How far back along its first move a part is drawn: clear of what stands where that is not far.
fn drawn_back(leg: &Leg, size: [f64; 3]) -> f64 {
    let [wide, deep, high] = size;
    let along = match leg.moves {
        Direction::Up | Direction::Down => high,
        Direction::Forwards | Direction::Back => deep,
        Direction::Left | Direction::Right => wide,
    };
    let along = along.max(0.0);
    // Chosen by eye: from a quarter of the size two plates are told apart at a glance; higher than half of it every
    // picture of the series gets smaller.
    let most = if matches!(leg.moves, Direction::Up | Direction::Down) { along * 0.6 } else { along };
    (leg.travel.in_mm() + along / 8.0).clamp(along / 4.0, most)
}

/// A move of that length, in the case.
pub(super) fn way(direction: Direction, mm: f64) -> [f64; 3] {
    let spot = direction.step(Length::mm(mm));
    [spot.x.in_mm(), spot.y.in_mm(), spot.z.in_mm()]
}

/// The arrows of a part that is drawn back by these moves: each begins where the one before it ends.
pub(super) fn arrows(part: &Shape, runs: &[Run], scale: f64, ink: &[Drawn]) -> Vec<Arrow> {
    let mut arrows: Vec<Arrow> = Vec::new();
    for run in runs {
        let next = match arrows.last() {
            None => arrow(part, run.moves, run.mm, scale, ink),
            Some(before) => {
                let [tip, ..] = before.corners;
                standing(tip, Seen::of(way(run.moves, 1.0)), run.mm * FORESHORTENED, scale)
            }
        };
        arrows.extend(next);
    }
    arrows
}

/// The arrow of a part that is drawn back by so much. One that goes down or up goes before the part,
/// where it covers least ink; one that goes sideways lies on the part, or before one that is too thin for it.
fn arrow(part: &Shape, moves: Direction, back: f64, scale: f64, ink: &[Drawn]) -> Option<Arrow> {
    let along = Seen::of(way(moves, 1.0));
    let [[left, front, bottom], [right, rear, top]] = part.extent;
    if !matches!(moves, Direction::Up | Direction::Down) {
        let middle = Seen::of([left.midpoint(right), front.midpoint(rear), top]);
        let own = if matches!(moves, Direction::Left | Direction::Right) { right - left } else { rear - front };
        // Its white stays within the part's rim.
        let run = own * FORESHORTENED * OF_THE_PART;
        if run * scale < SHORTEST && back > 0.0 {
            return standing(middle.plus(along, own / 2.0), along, back * FORESHORTENED, scale);
        }
        return standing(middle.plus(along, -own * OF_THE_PART / 2.0), along, run, scale);
    }
    // Of the edges that go first the eye sees the left one and the front one.
    let first = if moves == Direction::Up { top } else { bottom };
    let corner = Seen::of([left, front, first]);
    let edges = [[corner, Seen::of([left, rear, first])], [corner, Seen::of([right, front, first])]];
    let longest = edges.iter().map(|[from, to]| from.apart(*to)).fold(0.0, f64::max);
    let mut best: Option<(f64, Arrow)> = None;
    for [from, to] in edges.into_iter().filter(|[from, to]| from.apart(*to) > longest / 2.0) {
        for (rank, stand) in (0_u8..).zip(STANDS) {
            let start = from.towards(to, stand);
            let Some(arrow) = standing(start, along, back * FORESHORTENED, scale) else { continue };
            let worse = covered(&arrow.cover, ink) * scale + f64::from(rank.div_ceil(2)) * FOR_THE_MIDDLE;
            if best.as_ref().is_none_or(|(known, _)| worse < *known) {
                best = Some((worse, arrow));
            }
        }
    }
    best.map(|(_, arrow)| arrow)
}

/// The arrow in the middle of a run from a place of the picture.
fn standing(start: Seen, along: Seen, run: f64, scale: f64) -> Option<Arrow> {
    let long = (run * OF_THE_WAY).clamp(SHORTEST / scale, LONGEST / scale);
    // Unit vectors in the picture, along the move and to its left.
    let (ahead, left) =
        ((along.x / FORESHORTENED, along.y / FORESHORTENED), (-along.y / FORESHORTENED, along.x / FORESHORTENED));
    let tail = ((run - long) / 2.0).max(0.0);
    let at = |on: f64, off: f64| Seen {
        x: start.x + ahead.0 * on + left.0 * off,
        y: start.y + ahead.1 * on + left.1 * off,
        near: f64::MAX,
    };
    let outline = |round: f64| {
        let (shaft, head, neck) = (SHAFT / 2.0 + round, HEAD / 2.0 + round * 1.6, HEAD_LONG + round);
        let [shaft, head, neck, round] = [shaft / scale, head / scale, neck / scale, round / scale];
        let tip = tail + long;
        [
            at(tip + round * 2.0, 0.0),
            at(tip - neck, head),
            at(tip - neck, shaft),
            at(tail - round, shaft),
            at(tail - round, -shaft),
            at(tip - neck, -shaft),
            at(tip - neck, -head),
        ]
    };
    let [tip, left_barb, left_neck, left_tail, right_tail, right_neck, right_barb] = outline(ROUND);
    let triangles =
        [[tip, left_barb, right_barb], [left_neck, left_tail, right_tail], [left_neck, right_tail, right_neck]];
    let facets: Vec<Facet> = triangles.into_iter().filter_map(Facet::facing).collect();
    (facets.len() == triangles.len()).then(|| Arrow { corners: outline(0.0), cover: Shape::cover(facets) })
}

/// How much ink an arrow would cover, in millimetres of the unit.
fn covered(cover: &Shape, ink: &[Drawn]) -> f64 {
    let under = ink.iter().filter(|drawn| cover.bounds.may_hide(&drawn.line.bounds()));
    under
        .map(|drawn| {
            let mut left = [drawn.clone()];
            hide(&mut left, cover);
            drawn.length() - left.iter().map(Drawn::length).sum::<f64>()
        })
        .sum()
}

/// So far (mm) over the lowest of a part its foot is looked for: no tab is longer.
const FOOT: f64 = 45.0;

/// The foot of a part that goes down last, in its place, behind whatever stands before it; and the lines that guide its ends there.
pub(super) fn foot(part: &Shape, runs: &[Run]) -> Option<(Line, Vec<Line>)> {
    runs.last().filter(|run| run.moves == Direction::Down)?;
    let [[.., low], _] = part.extent;
    let corners = || part.lines.iter().flat_map(|line| [line.from, line.to]).filter(|at| at.height() < low + FOOT);
    let end = |side: f64| {
        // Of several ends one above the other the lowest one.
        let worth = |at: &Seen| at.x * side - at.height() * 1e-6;
        corners().max_by(|a, b| worth(a).total_cmp(&worth(b)))
    };
    let ways = [-1.0, 1.0].map(end).into_iter().flatten().map(|from| guide(from, runs)).collect::<Vec<_>>();
    let ends: Vec<Seen> = ways.iter().filter_map(|way| Some(way.last()?.to)).collect();
    let [from, to] = ends[..] else { return None };
    Some((Line { from, to, rim: true }, ways.concat()))
}

/// The way of a place of a part, move by move.
fn guide(from: Seen, runs: &[Run]) -> Vec<Line> {
    let lines = runs.iter().scan(from, |from, run| {
        let to = from.plus(Seen::of(way(run.moves, 1.0)), run.mm);
        Some(Line { from: core::mem::replace(from, to), to, rim: false })
    });
    lines.collect()
}

/// From the two places at which a part's picture is widest across its first move to where they go, move by move.
pub(super) fn guides(part: &Shape, runs: &[Run]) -> Vec<Line> {
    let Some(first) = runs.first() else { return Vec::new() };
    let along = Seen::of(way(first.moves, 1.0));
    let across = |at: &Seen| at.y * along.x - at.x * along.y;
    let ahead = |at: &Seen| at.x * along.x + at.y * along.y;
    let corners = || part.lines.iter().flat_map(|line| [line.from, line.to]);
    [1.0, -1.0]
        .into_iter()
        .filter_map(|side| {
            // Of several places equally far out the foremost one.
            let worth = |at: &Seen| across(at) * side + ahead(at) * 1e-6;
            corners().max_by(|a, b| worth(a).total_cmp(&worth(b)))
        })
        .flat_map(|from| guide(from, runs))
        .collect()
}
