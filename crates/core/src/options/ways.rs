//! A choice as a puzzle: what each question can be answered with, and what is wrong with a choice.

use alloc::collections::BTreeMap;

use super::no_good::{At, NoGood};
use super::scope::{Scope, place};
use super::solve::{Answers, Puzzle};
use super::{Size, fills};
use crate::change::Change;
use crate::choice::{BAYS_MOST, Bay, Choice, Fill, Hole, Hung};
use crate::finding::Question;
use crate::quantity::Dim;
use crate::range::{Key, Model, Range};
use crate::rules::judge_stops;
use crate::rules::reads::{self, Slack, Way};

/// Largest share of a bay that a shift gives it; nobody shares a width more unevenly.
const SHARE_MOST: u8 = 4;

/// What every question of a choice can be answered with, the nearest to its present answer first.
#[derive(Clone, Debug)]
pub(crate) struct Ways {
    sets: BTreeMap<u8, Vec<Change>>,
    lines: BTreeMap<u8, Vec<i32>>,
    slack: Slack,
}

/// A choice with one answer taken, as a puzzle.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Asked<'a> {
    pub(crate) range: &'a Range,
    pub(crate) ways: &'a Ways,
    /// The choice with the answer: new bays are like its last one.
    pub(crate) choice: &'a Choice,
    /// No fewer bays than that: what is asked for, pinned, or holds a device stays.
    pub(crate) bays_least: usize,
}

impl Ways {
    /// All answers to the questions of a choice.
    pub(crate) fn of(range: &Range, model: &Model, choice: &Choice) -> Self {
        let (mut sets, mut lines) = (BTreeMap::new(), BTreeMap::new());
        for size in Size::ALL {
            let now = size.of(choice).in_tenths();
            lines.insert(place(size.question()), nearest(size.limits(model).values().map(Dim::in_tenths), now));
        }
        let mut set = |question, changes: Vec<Change>| sets.insert(place(question), changes);
        let other =
            |changes: Vec<Change>| changes.into_iter().filter(|change| choice.with(change, range) != *choice).collect();
        set(Question::Corners, other(model.corner_radii_mm.iter().copied().map(Change::CornerRadiusMm).collect()));
        set(Question::Back, other(model.backs.iter().cloned().map(Change::Back).collect()));
        set(Question::Finish, other(model.finishes.iter().cloned().map(Change::Finish).collect()));
        let now = i32::try_from(choice.bays.len()).unwrap_or(i32::MAX);
        let counts = nearest((model.bays.least..=model.bays.most).map(i32::from), now);
        set(
            Question::Bays,
            counts.into_iter().filter_map(|count| u8::try_from(count).ok().map(Change::BayCount)).collect(),
        );
        // One bay becomes narrower or wider than the others.
        let shares = (1..=SHARE_MOST)
            .flat_map(|share| (1..=u8::try_from(BAYS_MOST).unwrap_or(0)).map(move |bay| Change::Share { bay, share }));
        set(Question::Shares, shares.collect());
        // A bay that is not there yet would be like the last one.
        let like = choice.bays.last();
        for bay in 1..=u8::try_from(BAYS_MOST).unwrap_or(0) {
            let here = choice.bays.get(usize::from(bay) - 1);
            let Some(chosen) = here.or(like) else { continue };
            // A new bay is like the last one, which may have another answer by then: this one is another way there.
            let like = here.is_none().then_some(chosen);
            let fills = like.map(|like| like.fill).into_iter().chain(fill_ways(model, chosen.fill));
            set(Question::Bay(bay), fills.map(|fill| Change::Fill { bay, fill }).collect());
            let holes = like.map(|like| like.hole.clone()).into_iter().chain(hole_ways(range, chosen));
            set(Question::Hole(bay), holes.map(|hole| Change::Hole { bay, hole }).collect());
            let device = chosen.device.is_some() || like.is_some();
            set(Question::Device(bay), device.then_some(Change::Device { bay, device: None }).into_iter().collect());
        }
        Self { sets, lines, slack: Slack::of(range, model, choice) }
    }
}

/// All places but the present one, the nearest first.
fn nearest(places: impl Iterator<Item = i32>, now: i32) -> Vec<i32> {
    let mut places: Vec<i32> = places.filter(|place| *place != now).collect();
    places.sort_by_key(|place| (i64::from(*place) - i64::from(now)).abs());
    places
}

/// Other fit-outs: the same kind first, then none, then the rest.
fn fill_ways(model: &Model, now: Fill) -> Vec<Fill> {
    let rank = |fill: &Fill| match (now, fill) {
        (Fill::Shelves(now), Fill::Shelves(count)) => (0, now.abs_diff(*count)),
        (Fill::Leaf(_), Fill::Leaf(_)) => (0, 0),
        (_, Fill::Open) => (1, 0),
        (_, Fill::Shelves(count)) => (2, *count),
        (_, Fill::Leaf(_)) => (3, 0),
    };
    let mut ways: Vec<Fill> = fills(model).filter(|fill| *fill != now).collect();
    ways.sort_by_key(rank);
    ways
}

/// Other holes: the same kind in the middle, the other kinds where it is and in the middle, then none.
fn hole_ways(range: &Range, bay: &Bay) -> Vec<Option<Hole>> {
    let middle = Dim::mm(0);
    let Some(now) = &bay.hole else {
        return range.holes.iter().map(|kind| Some(Hole { kind: kind.key.clone(), offset_mm: middle })).collect();
    };
    let places: &[Dim] = if now.offset_mm == middle { &[middle] } else { &[now.offset_mm, middle] };
    let own = (now.offset_mm != middle).then(|| Some(Hole { kind: now.kind.clone(), offset_mm: middle }));
    let others = range.holes.iter().filter(|kind| kind.key != now.kind);
    let others =
        others.flat_map(|kind| places.iter().map(|place| Some(Hole { kind: kind.key.clone(), offset_mm: *place })));
    own.into_iter().chain(others).chain([None]).collect()
}

impl Puzzle for Asked<'_> {
    type Point = Choice;

    fn at(&self, point: &Choice) -> At {
        let mut at = At::NOWHERE;
        // Bays beyond the most share a place; a choice with them cannot be made, whatever they hold.
        let mut set = |question, answer| at.set(place(question), answer);
        for size in Size::ALL {
            set(size.question(), size.of(point).in_tenths());
        }
        set(Question::Corners, point.corner_radius_mm.in_tenths());
        set(Question::Back, number(&self.range.boards, |board| &board.key, &point.back));
        set(Question::Finish, number(&self.range.finishes, |finish| &finish.key, &point.finish));
        set(Question::Bays, i32::try_from(point.bays.len()).unwrap_or(i32::MAX));
        // A share is changed to few others: any larger one is the present one.
        let share = |all: i32, bay: &Bay| all.wrapping_mul(16).wrapping_add(i32::from(bay.share.min(15)));
        set(Question::Shares, point.bays.iter().fold(0, share));
        for (bay, chosen) in (1..=u8::MAX).zip(&point.bays) {
            set(
                Question::Bay(bay),
                match chosen.fill {
                    Fill::Open => -3,
                    Fill::Shelves(count) => i32::from(count),
                    Fill::Leaf(Hung::Left) => -1,
                    Fill::Leaf(Hung::Right) => -2,
                },
            );
            if let Some(hole) = &chosen.hole {
                // A range has at most a few dozen kinds; places beyond 500 m are the same.
                let kind = number(&self.range.holes, |kind| &kind.key, &hole.kind) + 1;
                let place = hole.offset_mm.in_tenths().clamp(-(1 << 22), (1 << 22) - 1) + (1 << 22);
                set(Question::Hole(bay), kind.wrapping_shl(23) | place);
            }
            if let Some(device) = &chosen.device {
                set(Question::Device(bay), number(&self.range.devices, |device| &device.key, device));
            }
        }
        at
    }

    fn faults(&self, point: &Choice, at: &At) -> Vec<NoGood> {
        let judged = judge_stops(self.range, point);
        judged
            .findings
            .iter()
            .map(|finding| {
                let mut fault = NoGood::of(finding.rule.bit());
                reads::each(finding, point, self.ways.slack, |question, way| {
                    let question = place(question);
                    let now = at.of(question);
                    let (from, to) = match way {
                        Way::Up if LINES.has(question) => (i32::MIN, now),
                        Way::Down if LINES.has(question) => (now, i32::MAX),
                        _ => (now, now),
                    };
                    fault.narrow(question, from, to);
                });
                fault
            })
            .collect()
    }

    fn lines(&self) -> Scope {
        LINES
    }

    fn answers(&self, question: u8) -> Answers<'_> {
        match self.ways.lines.get(&question) {
            Some(places) => Answers::Line(places),
            None => Answers::Set(self.ways.sets.get(&question).map_or(0, Vec::len)),
        }
    }

    fn with(&self, point: &Choice, question: u8, answer: i32) -> Option<Choice> {
        let mut changed = point.clone();
        if self.ways.lines.contains_key(&question) {
            match super::scope::question(question) {
                Question::Width => changed.width_mm = Dim::tenths(answer),
                Question::Height => changed.height_mm = Dim::tenths(answer),
                Question::Depth => changed.depth_mm = Dim::tenths(answer),
                _ => return None,
            }
            return Some(changed);
        }
        let change = self.ways.sets.get(&question)?.get(usize::try_from(answer).ok()?)?;
        if let Change::BayCount(count) = *change {
            let count = usize::from(count);
            if count < self.bays_least {
                return None;
            }
            changed.bays.resize(count, self.choice.bays.last()?.clone());
            return Some(changed);
        }
        let after = changed.with(change, self.range);
        (after != changed).then_some(after)
    }
}

/// The questions whose answers are places on a line.
pub(crate) const LINES: Scope =
    Scope::of(Question::Width).and(Scope::of(Question::Height)).and(Scope::of(Question::Depth));

/// The number of what a key names; −1 for all that the range lacks.
fn number<T>(things: &[T], key: impl Fn(&T) -> &Key, named: &Key) -> i32 {
    let at = things.iter().position(|thing| key(thing) == named);
    at.and_then(|at| i32::try_from(at).ok()).unwrap_or(-1)
}

/// What has to be answered anew to come from one choice to another, in the order in which it is done.
pub(crate) fn changes(from: &Choice, to: &Choice) -> Vec<Change> {
    let mut changes = Vec::new();
    if from.bays.len() != to.bays.len() {
        changes.extend(u8::try_from(to.bays.len()).map(Change::BayCount));
    }
    let like = from.bays.last();
    for (bay, chosen) in (1..=u8::MAX).zip(&to.bays) {
        let Some(before) = from.bays.get(usize::from(bay) - 1).or(like) else { continue };
        if before.fill != chosen.fill {
            changes.push(Change::Fill { bay, fill: chosen.fill });
        }
        if before.share != chosen.share {
            changes.push(Change::Share { bay, share: chosen.share });
        }
        if before.hole != chosen.hole {
            changes.push(Change::Hole { bay, hole: chosen.hole.clone() });
        }
        if before.device != chosen.device {
            changes.push(Change::Device { bay, device: chosen.device.clone() });
        }
    }
    let mut size = |differs: bool, change: Change| changes.extend(differs.then_some(change));
    size(from.width_mm != to.width_mm, Change::WidthMm(to.width_mm));
    size(from.height_mm != to.height_mm, Change::HeightMm(to.height_mm));
    size(from.depth_mm != to.depth_mm, Change::DepthMm(to.depth_mm));
    size(from.back != to.back, Change::Back(to.back.clone()));
    size(from.finish != to.finish, Change::Finish(to.finish.clone()));
    size(from.corner_radius_mm != to.corner_radius_mm, Change::CornerRadiusMm(to.corner_radius_mm));
    changes
}

#[cfg(test)]
mod tests;
