//! Ways out of a finding: single changes that were tried.

use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::choice::{Bay, Bowed, Choice, Fill, Hole, Hung, SHARE_MOST};
use crate::range::{DimRange, Model, Range};
use crate::rules::finding::{Finding, Limit, Severity, Unit};
use crate::rules::{Judged, Kind, Remedies, Rule, judge, judge_stops};
use crate::solver::kept::{Given, Visit, broken, own};
use crate::solver::{Size, fills, holes};
use crate::units::quantity::Dim;
use crate::units::short;

/// Most ways out that a finding names.
pub const MOST: usize = 2;
/// Most changes that are tried for all findings that stop: some milliseconds.
const TRIES: usize = 160;
/// Most changes that are tried for one that warns or advises: such a try weighs and packs the unit.
const FEW: usize = 24;

/// Gives every finding up to two remedies, each of another kind.
///
/// A change is one if after it the finding is gone, no other has come that matters as much or more, and nothing is
/// broken that the customer gave. Of what does not suit a place, the place is let go last.
pub(crate) fn add(range: &Range, choice: &Choice, visit: Option<&Visit>, findings: &mut [Finding]) {
    let before = broken(range, choice, visit);
    let known = findings.to_vec();
    let mut tries = TRIES;
    for finding in findings {
        let stops = finding.severity == Severity::Stops;
        let attempts = match finding.rule.remedies(finding.severity) {
            Some(Remedies::ByQuestion) => candidates(range, choice, finding),
            Some(Remedies::Kinds(kinds)) => advised(range, choice, finding.about, kinds),
            None => Vec::new(),
        };
        let mut few = FEW;
        let left = if stops { &mut tries } else { &mut few };
        let mut tried = |change: &Change| {
            let may = *left > 0;
            *left = left.saturating_sub(1);
            may && mends(range, choice, finding, &known, change) && {
                // What was given is not broken by a way out; another width suits the wall, whatever the present one does.
                let kept = if matches!(change, Change::WidthMm(_)) { !before | own(Size::Width) } else { !before };
                broken(range, &choice.with(change, range), visit) & kept == 0
            }
        };
        let found = attempts.into_iter().filter_map(|attempts| match attempts {
            Attempts::Each(attempts) => attempts.into_iter().find(&mut tried),
            Attempts::Along(attempts) => {
                first_along(&attempts, &mut |change| is_gone(range, choice, finding, change), &mut tried)
            }
        });
        let remedies = found.take(MOST).collect();
        finding.remedies = remedies;
    }
}

/// What is found after a change, as far as that may matter as much as a finding.
fn judged<'a>(range: &'a Range, choice: &Choice, finding: &Finding, change: &Change) -> Judged<'a> {
    let changed = choice.with(change, range);
    if finding.severity == Severity::Stops { judge_stops(range, &changed) } else { judge(range, &changed) }
}

fn mends(range: &Range, choice: &Choice, finding: &Finding, known: &[Finding], change: &Change) -> bool {
    let after = judged(range, choice, finding, change);
    let grave = |found: &&Finding| found.severity <= finding.severity;
    after.layout.is_some()
        && after
            .findings
            .iter()
            .filter(grave)
            .all(|found| !found.is_like(finding) && known.iter().filter(grave).any(|known| known.is_like(found)))
}

/// Changes of one kind.
enum Attempts {
    /// Tried one after the other.
    Each(Vec<Change>),
    /// Along a line of sizes, where a finding that has gone is taken to stay away.
    Along(Vec<Change>),
}

fn is_gone(range: &Range, choice: &Choice, finding: &Finding, change: &Change) -> bool {
    let after = judged(range, choice, finding, change);
    after.layout.is_some() && !after.findings.iter().any(|found| found.is_like(finding))
}

/// The nearest of the sizes that mends: where the finding goes is found by halving, from there on they are tried.
fn first_along(
    attempts: &[Change],
    gone: &mut impl FnMut(&Change) -> bool,
    mends: &mut impl FnMut(&Change) -> bool,
) -> Option<Change> {
    let (mut from, mut to) = (0, attempts.len());
    while from < to {
        let middle = usize::midpoint(from, to);
        if gone(attempts.get(middle)?) {
            to = middle;
        } else {
            from = middle + 1;
        }
    }
    attempts.get(from..)?.iter().find(|change| mends(change)).cloned()
}

/// Changes of some kinds that are worth trying for what warns or advises.
fn advised(range: &Range, choice: &Choice, about: Question, kinds: &[Kind]) -> Vec<Attempts> {
    let Some(model) = range.model(&choice.model) else { return Vec::new() };
    let size = |limits: DimRange, now: Dim, change: fn(Dim) -> Change| {
        let larger = limits.values().filter(|value| *value > now);
        [smaller(limits, now).map(change).collect(), larger.map(change).collect()].map(Attempts::Along).into()
    };
    // Sizes, then without what they would have to suit.
    let let_go = |given: Given| given.undone().map(|change| Attempts::Each(vec![change])).into_iter().collect();
    let each = |changes| vec![Attempts::Each(changes)];
    let bay = about.bay().unwrap_or(0);
    let of_kind = |kind: &Kind| match kind {
        Kind::Width => size(model.width_mm, choice.width_mm, Change::WidthMm),
        Kind::Height => size(model.height_mm, choice.height_mm, Change::HeightMm),
        Kind::BayCount => each(counts(model, choice)),
        Kind::Fill => each(fills_to_try(model, choice, bay)),
        Kind::Hole => each(holes_to_try(range, choice, bay)),
        Kind::Narrower => each(smaller(model.width_mm, choice.width_mm).map(Change::WidthMm).collect()),
        Kind::Lower => each(smaller(model.height_mm, choice.height_mm).map(Change::HeightMm).collect()),
        Kind::Back => each(model.backs.iter().cloned().map(Change::Back).collect()),
        Kind::WallGone => let_go(Given::Wall),
        Kind::ScreenGone => let_go(Given::Screen),
        Kind::Finish => each(finishes(model)),
        Kind::HungApart => {
            let hung = |bay, hung| Attempts::Each(vec![Change::Fill { bay, fill: Fill::Leaf(hung) }]);
            vec![hung(bay, Hung::Right), hung(bay.saturating_sub(1), Hung::Left)]
        }
    };
    kinds.iter().flat_map(of_kind).collect()
}

/// The smaller values of a size, the largest first.
fn smaller(limits: DimRange, now: Dim) -> impl Iterator<Item = Dim> {
    let all = limits.values().filter(|value| *value < now).collect::<Vec<_>>();
    all.into_iter().rev()
}

fn finishes(model: &Model) -> Vec<Change> {
    model.finishes.iter().cloned().map(Change::Finish).collect()
}

/// Changes worth trying for what stops, kind by kind, the least intrusive kind first.
fn candidates(range: &Range, choice: &Choice, finding: &Finding) -> Vec<Attempts> {
    let kinds = kinds(range, choice, finding.about).into_iter().map(Attempts::Each);
    leaf_heights(range, choice, finding).into_iter().chain(kinds).collect()
}

/// What makes a door as high as its width wants it, so that it stays one: another plinth where there is one, another height.
fn leaf_heights(range: &Range, choice: &Choice, finding: &Finding) -> Vec<Attempts> {
    let Some(model) = range.model(&choice.model) else { return Vec::new() };
    if finding.rule != Rule::LeafShape || finding.found.unit != Unit::Ratio {
        return Vec::new();
    }
    let higher = finding.limit == Limit::AtMost;
    let sizes = |limits: DimRange, now: Dim, larger: bool| -> Vec<Dim> {
        if larger { limits.values().filter(|value| *value > now).collect() } else { smaller(limits, now).collect() }
    };
    let plinths = model.plinth_mm.zip(choice.plinth_mm).map(|(limits, now)| {
        let without = higher.then_some(None);
        sizes(limits, now, !higher).into_iter().map(Some).chain(without).map(Change::PlinthMm).collect()
    });
    let heights = sizes(model.height_mm, choice.height_mm, higher).into_iter().map(Change::HeightMm).collect();
    plinths.into_iter().chain([heights]).map(Attempts::Along).collect()
}

fn kinds(range: &Range, choice: &Choice, about: Question) -> Vec<Vec<Change>> {
    let Some(model) = range.model(&choice.model) else {
        return vec![range.models.iter().map(|model| Change::Model(model.key.clone())).collect()];
    };
    let width = || by_distance(model.width_mm, choice.width_mm, Change::WidthMm);
    let height = || by_distance(model.height_mm, choice.height_mm, Change::HeightMm);
    let depth = || by_distance(model.depth_mm, choice.depth_mm, Change::DepthMm);
    let plinth = || lower_plinths(model, choice);
    let bow = || by_distance(model.bows(), choice.bow_mm, Change::BowMm);
    let afresh = || vec![Change::Model(model.key.clone())];
    match about {
        Question::Width => vec![width(), counts(model, choice), afresh()],
        Question::Height => vec![height(), plinth(), afresh()],
        Question::Depth => vec![depth(), afresh()],
        Question::Bays => vec![counts(model, choice), width(), afresh()],
        Question::Bay(bay) => {
            vec![
                fills_to_try(model, choice, bay),
                counts(model, choice),
                shares(bay),
                width(),
                height(),
                plinth(),
                bow(),
                afresh(),
            ]
        }
        Question::Shares => vec![all_shares(choice), width()],
        Question::Hole(bay) => vec![holes_to_try(range, choice, bay), vec![Change::Hole { bay, hole: None }], height()],
        Question::Device(bay) => vec![
            width(),
            shares(bay),
            fills_to_try(model, choice, bay),
            depth(),
            height(),
            vec![Change::Device { bay, device: None }],
        ],
        Question::Back => vec![model.backs.iter().cloned().map(Change::Back).collect()],
        Question::Finish => vec![finishes(model)],
        Question::Corners => vec![model.corner_radii_mm.iter().copied().map(Change::CornerRadiusMm).collect()],
        Question::Plinth => vec![plinth(), depth(), width(), vec![Change::PlinthMm(None)]],
        Question::Bow => vec![bow(), height(), afresh()],
        Question::Bowed => vec![Bowed::ALL.map(|(_, bowed)| Change::Bowed(bowed)).into(), bow()],
        Question::Model => vec![afresh()],
        Question::Place => vec![vec![Change::Plug(None)]],
    }
}

/// Another plinth, the nearest to the present one first, then none.
fn lower_plinths(model: &Model, choice: &Choice) -> Vec<Change> {
    let Some(now) = choice.plinth_mm else { return Vec::new() };
    let heights = model.plinth_mm.map(|limits| by_distance(limits, now, |height| Change::PlinthMm(Some(height))));
    heights.into_iter().flatten().chain([Change::PlinthMm(None)]).collect()
}

/// All values of a size, the nearest to the present one first.
fn by_distance(limits: DimRange, now: Dim, change: impl Fn(Dim) -> Change) -> Vec<Change> {
    nearest_first(limits.values(), |value| (i64::from(value.in_tenths()) - i64::from(now.in_tenths())).abs())
        .into_iter()
        .map(change)
        .collect()
}

/// A few things by how far they are.
fn nearest_first<T>(things: impl Iterator<Item = T>, far: impl Fn(&T) -> i64) -> Vec<T> {
    let mut sorted: Vec<T> = Vec::new();
    for thing in things {
        let distance = far(&thing);
        sorted.insert(sorted.partition_point(|known| far(known) <= distance), thing);
    }
    sorted
}

fn counts(model: &Model, choice: &Choice) -> Vec<Change> {
    let now = i64::try_from(choice.bays.len()).unwrap_or(i64::MAX);
    let counts = (model.bays.least..=model.bays.most).filter(|count| i64::from(*count) != now);
    nearest_first(counts, |count| (i64::from(*count) - now).abs()).into_iter().map(Change::BayCount).collect()
}

/// The first bay whose share is none becomes like the others.
fn all_shares(choice: &Choice) -> Vec<Change> {
    (1..=u8::MAX).zip(&choice.bays).flat_map(|(bay, _)| shares(bay)).collect()
}

fn shares(bay: u8) -> Vec<Change> {
    (1..=SHARE_MOST).map(|share| Change::Share { bay, share }).collect()
}

/// Fewer shelves first, then none, then more; no leaf.
fn fills_to_try(model: &Model, choice: &Choice, bay: u8) -> Vec<Change> {
    let now = match bay_of(choice, bay).map(|bay| bay.fill) {
        Some(Fill::Shelves(count)) => count,
        _ => 0,
    };
    let rank = |fill: &Fill| match fill {
        Fill::Shelves(count) if *count < now => Some((0, now - count)),
        Fill::Open => Some((1, 0)),
        Fill::Shelves(count) if *count > now => Some((2, *count)),
        Fill::Shelves(_) | Fill::Leaf(_) => None,
    };
    let mut all: Vec<_> = fills(model).filter_map(|fill| Some((rank(&fill)?, fill))).collect();
    short::sort(&mut all, |(rank, _)| *rank);
    all.into_iter().map(|(_, fill)| Change::Fill { bay, fill }).collect()
}

/// The same hole in the middle of its bay, then the other kinds there.
fn holes_to_try(range: &Range, choice: &Choice, bay: u8) -> Vec<Change> {
    let own = bay_of(choice, bay).and_then(|bay| bay.hole.as_ref());
    let centred = own.map(|hole| Hole { offset_mm: Dim::mm(0), ..hole.clone() });
    let all = centred.into_iter().chain(holes(range, None).flatten());
    all.map(|hole| Change::Hole { bay, hole: Some(hole) }).collect()
}

fn bay_of(choice: &Choice, number: u8) -> Option<&Bay> {
    choice.bays.get(usize::from(number).checked_sub(1)?)
}
