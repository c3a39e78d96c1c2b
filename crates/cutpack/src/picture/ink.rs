//! Lines on paper: what coincides is drawn once, what goes on straight is one line, stray bits are gone.

use std::collections::BTreeMap;

/// Lines closer than this (mm of paper) print as one: less than half a thin line's width.
const PRINTS_AS_ONE: f64 = 0.1;
/// Lines whose directions differ by less (radians) are parallel: a fiftieth of a millimetre over a sheet.
const PARALLEL: f64 = 1e-4;
/// What is left of a line by a joint's clearance is shorter than this (mm of paper): a blot, not a line.
const STRAY: f64 = 0.25;

/// A place on paper: millimetres to the right and down.
pub(super) type Dot = [f64; 2];

/// A straight stroke.
pub(super) type Stroke = [Dot; 2];

/// A place in hundredths of a millimetre: what a file says.
pub(super) type Grid = [i64; 2];

#[expect(clippy::cast_possible_truncation, reason = "hundredths of a millimetre of paper")]
pub(super) fn grid(dot: Dot) -> Grid {
    dot.map(|mm| libm::round(mm * 100.0) as i64)
}

/// The same strokes as few lines, each through all its corners.
pub(super) fn lines(strokes: Vec<Stroke>) -> Vec<Vec<Grid>> {
    not_shorter(chains(&merged(strokes)), STRAY)
}

/// The same without lines that are shorter than so much (mm).
pub(super) fn not_shorter(lines: Vec<Vec<Grid>>, least: f64) -> Vec<Vec<Grid>> {
    lines.into_iter().filter(|line| length(line) >= least * 100.0).map(straightened).collect()
}

/// A stroke in the direction that it has in common with its parallels.
#[derive(Clone, Copy, Debug)]
struct Ruled {
    stroke: Stroke,
    /// Direction, from −π/2 to π/2.
    angle: f64,
    /// Distance of its line from the origin.
    off: f64,
    /// Where it begins and ends along its line.
    span: [f64; 2],
}

/// Joins what lies on one line and touches.
fn merged(strokes: Vec<Stroke>) -> Vec<Stroke> {
    let mut ruled: Vec<Ruled> = strokes.into_iter().filter_map(rule).collect();
    ruled.sort_by(|a, b| a.angle.total_cmp(&b.angle));
    let mut joined = Vec::with_capacity(ruled.len());
    for parallel in ruled.chunk_by_mut(|a, b| b.angle - a.angle < PARALLEL) {
        let Some(first) = parallel.first() else { continue };
        let along = [libm::cos(first.angle), libm::sin(first.angle)];
        for one in parallel.iter_mut() {
            *one = measured(one.stroke, one.angle, along);
        }
        parallel.sort_by(|a, b| a.off.total_cmp(&b.off));
        let mut rest = &mut *parallel;
        while let Some(first) = rest.first() {
            let limit = first.off + PRINTS_AS_ONE;
            let (same, others) = rest.split_at_mut(rest.iter().take_while(|one| one.off < limit).count().max(1));
            same.sort_by(|a, b| a.span[0].total_cmp(&b.span[0]).then(a.span[1].total_cmp(&b.span[1])));
            run_together(&mut joined, same, along);
            rest = others;
        }
    }
    joined
}

/// A stroke from left to right, upright ones downwards; none if it has no length.
fn rule([from, to]: Stroke) -> Option<Ruled> {
    let way = [to[0] - from[0], to[1] - from[1]];
    // Upright lines must not be told apart by their last bits.
    let turned = if way[0].abs() < 1e-9 { way[1] < 0.0 } else { way[0] < 0.0 };
    let (stroke, way) = if turned { ([to, from], way.map(|mm| -mm)) } else { ([from, to], way) };
    let across = if way[0] < 1e-9 { 0.0 } else { way[0] };
    (libm::hypot(way[0], way[1]) > 1e-6).then(|| measured(stroke, libm::atan2(way[1], across), [1.0, 0.0]))
}

fn measured(stroke: Stroke, angle: f64, along: [f64; 2]) -> Ruled {
    let on = |dot: Dot| dot[0] * along[0] + dot[1] * along[1];
    let off = |dot: Dot| dot[1] * along[0] - dot[0] * along[1];
    let [from, to] = stroke;
    Ruled { stroke, angle, off: off(from).midpoint(off(to)), span: [on(from), on(to)] }
}

/// Strokes on one line, in order: those that touch become one, along the longest of them.
fn run_together(joined: &mut Vec<Stroke>, ordered: &[Ruled], along: [f64; 2]) {
    let mut rest = ordered;
    while let Some(first) = rest.first() {
        let (mut end, mut count, mut longest) = (first.span[1], 0, first);
        for next in rest {
            if next.span[0] > end + PRINTS_AS_ONE {
                break;
            }
            end = end.max(next.span[1]);
            count += 1;
            if next.span[1] - next.span[0] > longest.span[1] - longest.span[0] {
                longest = next;
            }
        }
        joined.push(if count < 2 { first.stroke } else { stretched(longest, [first.span[0], end], along) });
        rest = rest.get(count.max(1)..).unwrap_or_default();
    }
}

/// A stroke made longer; an end that it has already stays to the last bit.
fn stretched(stroke: &Ruled, [from, to]: [f64; 2], along: [f64; 2]) -> Stroke {
    let [start, end] = stroke.stroke;
    let moved = |dot: Dot, by: f64| [dot[0] + along[0] * by, dot[1] + along[1] * by];
    [
        if from < stroke.span[0] { moved(start, from - stroke.span[0]) } else { start },
        if to > stroke.span[1] { moved(end, to - stroke.span[1]) } else { end },
    ]
}

/// Strokes end to end, as long as two and no more meet.
fn chains(strokes: &[Stroke]) -> Vec<Vec<Grid>> {
    let mut meet: BTreeMap<Grid, Vec<Grid>> = BTreeMap::new();
    let mut put = |from: Grid, to: Grid| {
        let ends = meet.entry(from).or_default();
        if !ends.contains(&to) {
            ends.push(to);
        }
    };
    for [from, to] in strokes.iter().map(|stroke| stroke.map(grid)) {
        if from != to {
            put(from, to);
            put(to, from);
        }
    }
    // First from where lines end or branch, then what is left: closed rounds.
    let ends = meet.iter().filter(|(_, ends)| ends.len() != 2).map(|(at, _)| *at);
    let starts: Vec<Grid> = ends.chain(meet.keys().copied()).collect();
    let mut chains = Vec::new();
    for start in starts {
        while let Some(next) = meet.get(&start).and_then(|ends| ends.first()).copied() {
            chains.push(chain(&mut meet, start, next));
        }
    }
    chains
}

/// Follows a line from its start and takes it out.
fn chain(meet: &mut BTreeMap<Grid, Vec<Grid>>, start: Grid, next: Grid) -> Vec<Grid> {
    let (mut chain, mut from, mut to) = (vec![start], start, next);
    loop {
        chain.push(to);
        let branches = meet.get(&to).is_none_or(|ends| ends.len() != 2);
        for (at, other) in [(from, to), (to, from)] {
            if let Some(ends) = meet.get_mut(&at) {
                ends.retain(|end| *end != other);
            }
        }
        match meet.get(&to).and_then(|ends| ends.first()) {
            Some(further) if !branches && to != start => (from, to) = (to, *further),
            _ => return chain,
        }
    }
}

/// Length in hundredths of a millimetre.
fn length(chain: &[Grid]) -> f64 {
    chain.windows(2).map(|pair| if let [a, b] = pair { apart(*a, *b) } else { 0.0 }).sum()
}

#[expect(clippy::cast_precision_loss, reason = "a sheet has few hundredths of a millimetre")]
fn apart(a: Grid, b: Grid) -> f64 {
    libm::hypot((b[0] - a[0]) as f64, (b[1] - a[1]) as f64)
}

/// Without the corners at which it goes straight on.
pub(super) fn straightened(chain: Vec<Grid>) -> Vec<Grid> {
    let mut kept: Vec<Grid> = Vec::with_capacity(chain.len());
    for next in chain {
        while let [.., before, at] = kept[..] {
            let turn = (at[0] - before[0]) * (next[1] - at[1]) - (at[1] - before[1]) * (next[0] - at[0]);
            let on = (at[0] - before[0]) * (next[0] - at[0]) + (at[1] - before[1]) * (next[1] - at[1]);
            if turn != 0 || on <= 0 {
                break;
            }
            kept.pop();
        }
        kept.push(next);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(strokes: &[Stroke], expected: &[&[Grid]]) {
        assert_eq!(lines(strokes.to_vec()), expected, "{strokes:?}");
    }

    #[test]
    fn what_coincides_or_goes_on_is_one_line() {
        check(&[[[0.0, 0.0], [10.0, 0.0]], [[4.0, 0.02], [6.0, 0.02]]], &[&[[0, 0], [1000, 0]]]);
        check(&[[[6.0, 3.0], [3.0, 1.5]], [[0.0, 0.0], [3.0, 1.5]]], &[&[[0, 0], [600, 300]]]);
        check(&[[[0.0, 9.0], [0.0, 5.0]], [[1e-12, 1.0], [0.0, 5.0]]], &[&[[0, 100], [0, 900]]]);
        let apart = [[[0.0, 0.0], [10.0, 0.0]], [[0.0, 0.2], [10.0, 0.2]]];
        check(&apart, &[&[[0, 0], [1000, 0]], &[[0, 20], [1000, 20]]]);
        let gap = [[[0.0, 0.0], [4.0, 0.0]], [[5.0, 0.0], [10.0, 0.0]]];
        check(&gap, &[&[[0, 0], [400, 0]], &[[500, 0], [1000, 0]]]);
    }

    #[test]
    fn corners_are_run_through_and_bits_left_out() {
        let corner = [[[0.0, 0.0], [10.0, 0.0]], [[10.0, 5.0], [10.0, 0.0]], [[30.0, 0.0], [30.1, 0.1]]];
        check(&corner, &[&[[0, 0], [1000, 0], [1000, 500]]]);
        let round = [[[0.0, 0.0], [4.0, 0.0]], [[4.0, 0.0], [4.0, 4.0]], [[4.0, 4.0], [0.0, 0.0]]];
        check(&round, &[&[[0, 0], [400, 0], [400, 400], [0, 0]]]);
    }
}
