//! Parts that interlock: two whose true outlines, with the spacing between them, take less of a sheet than their blanks side
//! by side, as uprights whose hooks lie between each other. A nest places the rectangle of both.
//!
//! One comes straight towards the other, along the grain or across it, two of their ends level, each as it lies or upside
//! down: both faces stay up, and the grain runs as before. No hole of a part takes another one: those for cables, pivots and tabs are smaller than any
//! part.

use std::collections::BTreeMap;

use slotwright_core::business::nesting::{gaps, holding};
use slotwright_core::geometry::outline::Point;
use slotwright_core::geometry::quarters::Quarters;
use slotwright_core::range::Grain;
use slotwright_nest::problem::{Format, Gaps};

use super::side::{Bounds, Facing, bounds};
use crate::pack::lot::{Lot, Part};
use crate::pack::sheet::{Placed, turn};

/// What a nest places as one rectangle.
#[derive(Clone, Debug)]
pub(super) struct Laid {
    /// Size of the rectangle: along the grain, across it.
    pub(super) size: [i64; 2],
    /// Its parts.
    pub(super) members: Vec<Member>,
}

/// A part in a rectangle, as on a sheet whose grain runs along its length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Member {
    /// Its place among the lot's parts.
    pub(super) part: usize,
    /// How it is turned.
    pub(super) turn: Quarters,
    /// Low corner of its blank in the rectangle: along the grain, across it.
    pub(super) at: [i64; 2],
}

/// What a pair saves at least, in square hundredths of a millimetre: 100, 200 or 400 square centimetres. The more there are,
/// the less freely a nest lays them.
const LEAST_SAVED: [i64; 3] = [100 * 1_000_000, 200 * 1_000_000, 400 * 1_000_000];

/// An outline as it lies, and upside down.
type Outlines = [Vec<Bounds>; 2];

/// Parts with the same outline.
#[derive(Debug)]
struct Shape {
    /// As it lies, and upside down.
    turned: [Turned; 2],
    parts: Vec<usize>,
}

/// A shape as it lies.
#[derive(Debug)]
struct Turned {
    turn: Quarters,
    /// As what comes along the grain meets it, and what comes across.
    facing: [Facing; 2],
}

/// How two shapes lie together.
#[derive(Clone, Copy, Debug)]
struct Pair {
    shapes: [usize; 2],
    turns: [Quarters; 2],
    /// Low corners of their blanks.
    at: [[i64; 2]; 2],
    size: [i64; 2],
    /// Area that it takes less than both blanks with their spacing.
    saves: i64,
}

/// Each part of a lot by itself.
pub(super) fn alone(lot: &Lot<'_>) -> Vec<Laid> {
    lot.parts.iter().enumerate().map(|(at, part)| one(at, part)).collect()
}

fn size(part: &Part<'_>) -> [i64; 2] {
    let (along, across) = part.along_and_across();
    [along, across].map(holding)
}

fn one(at: usize, part: &Part<'_>) -> Laid {
    Laid { size: size(part), members: vec![Member { part: at, turn: turn(part, Grain::Length), at: [0, 0] }] }
}

/// The parts of a lot in pairs that fit one of these formats, those first that save most, and the others by themselves: with all
/// pairs that save enough, and with fewer, each with what its pairs save at least.
pub(super) fn paired(lot: &Lot<'_>, formats: &[Format]) -> Vec<(i64, Vec<Laid>)> {
    let gaps = gaps(lot.range);
    let shapes = shapes(lot, gaps.spacing);
    let mut pairs = pairs(&shapes, gaps, formats);
    pairs.sort_by_key(|pair| (-pair.saves, pair.shapes));
    let mut counts: Vec<(i64, usize)> = LEAST_SAVED
        .iter()
        .map(|least| (*least, pairs.iter().take_while(|pair| pair.saves > *least).count()))
        .filter(|(_, count)| *count > 0)
        .collect();
    counts.dedup_by_key(|(_, count)| *count);
    let laid = |(least, count)| (least, matched(lot, &shapes, pairs.get(..count).unwrap_or_default()));
    counts.into_iter().map(laid).collect()
}

/// The parts of a lot in these pairs, as many as there are of each before those of the next.
fn matched(lot: &Lot<'_>, shapes: &[Shape], pairs: &[Pair]) -> Vec<Laid> {
    let mut left: Vec<Vec<usize>> = shapes.iter().map(|shape| shape.parts.clone()).collect();
    let mut laid: Vec<Laid> = Vec::new();
    for pair in pairs {
        while let Some(parts) = take(&mut left, pair.shapes) {
            let member = |((part, turn), at)| Member { part, turn, at };
            let members = parts.into_iter().zip(pair.turns).zip(pair.at).map(member);
            laid.push(Laid { size: pair.size, members: members.collect() });
        }
    }
    laid.extend(left.into_iter().flatten().filter_map(|at| Some(one(at, lot.parts.get(at)?))));
    laid.sort_by_key(|laid| laid.members.iter().map(|member| member.part).min());
    laid
}

/// The first parts that are left of two shapes, which may be the same one.
fn take(left: &mut [Vec<usize>], [one, other]: [usize; 2]) -> Option<[usize; 2]> {
    let count = |at: usize| left.get(at).map_or(0, Vec::len);
    if count(one) < if one == other { 2 } else { 1 } || count(other) < 1 {
        return None;
    }
    let mut first = |at: usize| left.get_mut(at).map(|parts| parts.remove(0));
    Some([first(one)?, first(other)?])
}

/// The shapes of a lot, each with its parts in their order.
fn shapes(lot: &Lot<'_>, spacing: i64) -> Vec<Shape> {
    // The same outline turned otherwise is another shape: its grain runs across.
    let mut known: BTreeMap<(u16, [i64; 2], Outlines), usize> = BTreeMap::new();
    let mut shapes: Vec<Shape> = Vec::new();
    for (at, part) in lot.parts.iter().enumerate() {
        let size = size(part);
        let as_it_lies = turn(part, Grain::Length);
        let turns = [as_it_lies, as_it_lies.and(Quarters::Two)];
        let outlines = turns.map(|turn| bounds(&Placed { part: *part, turn, at: Point::default() }.outline()));
        let shape =
            *known.entry((as_it_lies.count(), size, outlines)).or_insert_with_key(|(.., [upright, upside_down])| {
                let [one, other] = turns;
                let turned = |turn, bounds: &[Bounds]| Turned { turn, facing: Facing::of(bounds, size, spacing) };
                shapes.push(Shape { turned: [turned(one, upright), turned(other, upside_down)], parts: Vec::new() });
                shapes.len() - 1
            });
        if let Some(shape) = shapes.get_mut(shape) {
            shape.parts.push(at);
        }
    }
    shapes
}

/// For any two shapes the way in which they save most, where that is enough and fits a sheet.
fn pairs(shapes: &[Shape], gaps: Gaps, formats: &[Format]) -> Vec<Pair> {
    let mut pairs = Vec::new();
    for (at, first) in shapes.iter().enumerate() {
        for (other, second) in shapes.iter().enumerate().skip(at) {
            if at == other && first.parts.len() < 2 {
                continue;
            }
            // The second one beyond the first, upside down as a whole, is the first one beyond the second.
            let mut best = None;
            together([(at, first), (other, second)], gaps, formats, &mut best);
            pairs.extend(best);
        }
    }
    pairs
}

/// The second shape beyond the first one, if that saves more.
fn together(shapes: [(usize, &Shape); 2], gaps: Gaps, formats: &[Format], best: &mut Option<Pair>) {
    let [(one, first), (other, second)] = shapes;
    for (first, second) in first.turned.iter().flat_map(|first| second.turned.iter().map(move |second| (first, second)))
    {
        for (is_across, (a, b)) in [false, true].into_iter().zip(first.facing.iter().zip(&second.facing)) {
            let [least, ..] = LEAST_SAVED;
            let least = best.map_or(least, |best| best.saves);
            let Some(Found { offset, saved, saves }) = nearest(a, b, gaps.spacing, least) else { continue };
            let beyond = a.reach + gaps.spacing - saved;
            let size = [beyond + b.reach, a.length.max(b.length)];
            let at = [[0, -offset.min(0)], [beyond, offset.max(0)]];
            let by_grain = |[along, across]: [i64; 2]| if is_across { [across, along] } else { [along, across] };
            let size = by_grain(size);
            if formats.iter().any(|format| fits(size, format, gaps.trim)) {
                let turns = [first.turn, second.turn];
                *best = Some(Pair { shapes: [one, other], turns, at: at.map(by_grain), size, saves });
            }
        }
    }
}

fn fits([along, across]: [i64; 2], format: &Format, trim: i64) -> bool {
    along <= format.width - 2 * trim && across <= format.height - 2 * trim && format.most != Some(0)
}

/// How one part comes nearest to another.
#[derive(Clone, Copy, Debug)]
struct Found {
    /// How far it is moved along the other.
    offset: i64,
    /// How much nearer it comes than its blank.
    saved: i64,
    /// The area that this saves.
    saves: i64,
}

/// How the second part comes so near to the first that more area is saved than `least`.
fn nearest(first: &Facing, second: &Facing, spacing: i64, least: i64) -> Option<Found> {
    // With its spacing a rectangle takes so much.
    let area = |reach: i64, length: i64| (reach + spacing) * (length + spacing);
    let apart = area(first.reach, first.length) + area(second.reach, second.length);
    let (reach, length) = (first.reach + second.reach + spacing, first.length.max(second.length));
    // What saves no more than `least` need not be looked at to its end.
    let above = reach + spacing - (apart - least).div_euclid(length + spacing) - 1;
    let at = |offset: i64| {
        let saved = first.high.saved(&second.low, offset, above)?.min(first.reach).min(second.reach);
        Some(Found { offset, saved, saves: apart - area(reach - saved, length) })
    };
    let level = [0, first.length - second.length].into_iter().filter_map(at);
    level.max_by_key(|found| found.saves).filter(|found| found.saves > least)
}

#[cfg(test)]
mod tests;
