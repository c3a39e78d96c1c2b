//! States where a budget or a day is kept, against a search of every choice: on thinned ranges, with the shares pinned,
//! so that all that is left can be priced and dated.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::order::derive::derive_unproven;
use slotwright_core::range::Range;
use slotwright_core::rules::judge;
use slotwright_core::solver::kept::{Given, Kept, Visit};
use slotwright_core::solver::states::{Reach, State, reaches, states};
use slotwright_core::solver::why::{Why, why_shut};
use slotwright_core::solver::{Answer, Size};
use slotwright_core::units::day::Day;
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::Dim;

use crate::brute::{every_sharing, importance, thinned, way};

/// A unit that can be made, with what it costs and when it arrives.
struct Unit {
    choice: Choice,
    price: Money,
    arrives: Day,
}

impl Unit {
    fn suits(&self, visit: &Visit) -> bool {
        visit.budget.is_none_or(|most| self.price <= most) && visit.by.is_none_or(|by| self.arrives <= by)
    }
}

fn today() -> Day {
    "2026-11-25".parse().unwrap()
}

fn visit(budget: Option<Money>, by: Option<Day>) -> Visit {
    Visit { budget, by, today: today(), backlog: Backlog::default() }
}

/// All units of a thinned range with bays of the same share.
fn units(range: &Range) -> Vec<Unit> {
    let made = every_sharing(range, 1..=1).into_iter().filter(|(_, broken)| *broken == 0);
    let priced = made.map(|(choice, _)| {
        let built = derive_unproven(range, &choice, today(), &Backlog::default()).built.unwrap();
        Unit { price: built.price.total_minor, arrives: built.promise.unwrap().arrives, choice }
    });
    priced.collect()
}

/// The best set of other changes, by a search of every unit.
fn best(
    units: &[Unit],
    (from, asked): (&Choice, Option<Question>),
    pins: &[Question],
    visit: &Visit,
) -> Option<Vec<Question>> {
    let suiting = units.iter().filter(|unit| unit.suits(visit));
    let ways = suiting.filter_map(|unit| way(from, &unit.choice, asked, pins));
    ways.min_by_key(|differing| (differing.len(), differing.iter().map(|one| importance(*one)).collect::<Vec<_>>()))
}

/// The questions that changes answer, the most important one first.
fn questions(changes: &[Change]) -> Vec<Question> {
    let mut own: Vec<Question> = changes.iter().filter_map(Change::question).collect();
    own.sort_by_key(|question| core::cmp::Reverse(importance(*question)));
    own
}

/// What was compared.
#[derive(Debug, Default)]
struct Seen {
    /// All answers, and all sizes.
    answers: usize,
    sizes: usize,
    /// Open answers that break what was given.
    open_beyond: usize,
    /// Shifts that are others than they were without it.
    other_shifts: usize,
    /// Answers that are shut with it alone.
    shut: usize,
    /// All reasons, and those of which nothing is known to be named in vain.
    reasons: usize,
    least: usize,
    /// What of these reasons was left out in turn, and what was let go.
    left_out: usize,
    releases: usize,
    /// Answers and sizes that were given up: `solver/states/tests.rs` holds that no effort was left for them.
    unfound: usize,
}

/// With what is named it cannot be had and, where that is known, nothing of that can be left out; without what is let go it can, with the
/// best changes that there are, and nothing of that can stay.
fn check_why(
    seen: &mut Seen,
    units: &[Unit],
    asked: (&Choice, Option<Question>),
    (pins, visit): (&[Question], &Visit),
    why: &Why,
) {
    let with = |pins: &[Question], given: &[Given]| {
        let budget = visit.budget.filter(|_| given.contains(&Given::Budget));
        let by = visit.by.filter(|_| given.contains(&Given::Day));
        best(units, asked, pins, &Visit { budget, by, ..visit.clone() })
    };
    assert_eq!(with(&why.pins, &why.given), None, "{why:?} {asked:?}");
    seen.reasons += 1;
    if !why.is_least {
        return;
    }
    seen.least += 1;
    for left_out in &why.given {
        let fewer: Vec<Given> = why.given.iter().copied().filter(|given| given != left_out).collect();
        // The units here have all shares alike.
        if why.pins.contains(&Question::Shares) {
            assert!(with(&why.pins, &fewer).is_some(), "{why:?} without {left_out:?} {asked:?}");
            seen.left_out += 1;
        }
    }
    for left_out in &why.pins {
        let fewer: Vec<Question> = why.pins.iter().copied().filter(|pin| pin != left_out).collect();
        if fewer.contains(&Question::Shares) {
            assert!(with(&fewer, &why.given).is_some(), "{why:?} without {left_out} {asked:?}");
            seen.left_out += 1;
        }
    }
    let Some(release) = &why.release else { return };
    let held = |pin: &Question| !release.pins.contains(pin);
    let kept: Vec<Question> = pins.iter().copied().filter(held).collect();
    let given = [visit.budget.map(|_| Given::Budget), visit.by.map(|_| Given::Day)].into_iter().flatten();
    let given: Vec<Given> = given.filter(|given| !release.given.contains(given)).collect();
    if !kept.contains(&Question::Shares) {
        return;
    }
    seen.releases += 1;
    assert_eq!(with(&kept, &given), Some(questions(&release.changes)), "{why:?} {asked:?}");
    for back in &release.given {
        assert_eq!(with(&kept, &[&given[..], &[*back]].concat()), None, "{why:?} with {back:?} {asked:?}");
    }
    for back in &release.pins {
        assert_eq!(with(&[&kept[..], &[*back]].concat(), &given), None, "{why:?} with {back} {asked:?}");
    }
}

/// Every answer of a unit.
fn check(seen: &mut Seen, range: &Range, units: &[Unit], choice: &Choice, (pins, visit): (&[Question], &Visit)) {
    let (kept, free) = (Kept { pins, visit: Some(visit) }, self::visit(None, None));
    for Answer { change, state, .. } in states(range, choice, kept).unwrap().all() {
        let from = choice.with(change, range);
        let asked = (&from, change.question());
        let (best, freely) = (best(units, asked, pins, visit), best(units, asked, pins, &free));
        let is_beyond = best != freely;
        seen.answers += 1;
        match state {
            State::Open => {
                assert_eq!(freely, Some(Vec::new()), "{change:?} {pins:?} {choice:?}");
                seen.open_beyond += usize::from(is_beyond);
            }
            _ if freely == Some(Vec::new()) => panic!("{change:?} goes alone, and is {state:?}: {choice:?}"),
            State::Shifts { changes, .. } => {
                assert_eq!(Some(questions(changes)), best, "{change:?} {pins:?} {visit:?} {choice:?}");
                let after = changes.iter().fold(from, |choice, change| choice.with(change, range));
                assert!(judge(range, &after).holds(), "{change:?} {changes:?} {choice:?}");
                assert_eq!(visit.breaks(range, &after), [], "{change:?} {changes:?} {choice:?}");
                seen.other_shifts += usize::from(is_beyond);
            }
            State::Unfound { .. } => seen.unfound += 1,
            State::Shut { .. } => {
                assert_eq!(best, None, "{change:?} {pins:?} {visit:?} {choice:?}");
                if !is_beyond {
                    continue;
                }
                seen.shut += 1;
                let why = why_shut(range, choice, change, kept).unwrap();
                assert!(!why.given.is_empty(), "{why:?}");
                check_why(seen, units, asked, (pins, visit), &why);
            }
        }
    }
    for size in Size::ALL {
        for run in reaches(range, choice, size, kept) {
            let values = size.limits(range.models.first().unwrap()).values();
            for value in values.filter(|value| (run.from..=run.to).contains(value)) {
                let change = size.to(value);
                let from = choice.with(&change, range);
                let asked = (&from, change.question());
                let (best, freely) = (best(units, asked, pins, visit), best(units, asked, pins, &free));
                let reach = match (freely.as_deref(), &best) {
                    (Some([]), _) => Reach::Open,
                    (_, Some(_)) => Reach::Shifts,
                    (_, None) => Reach::Shut,
                };
                if run.state.reach == Reach::Unfound {
                    seen.unfound += 1;
                } else {
                    assert_eq!(run.state.reach, reach, "{change:?} {pins:?} {visit:?} {choice:?}");
                }
                seen.sizes += 1;
            }
        }
    }
}

/// Shares that are pinned, and what else is in turn.
const PINS: [&[Question]; 4] = [
    &[Question::Shares],
    &[Question::Shares, Question::Width, Question::Height, Question::Plinth],
    &[Question::Shares, Question::Bays, Question::Depth, Question::Bay(1), Question::Plinth],
    &[Question::Shares, Question::Hole(1), Question::Hole(2), Question::Width, Question::Plinth],
];

/// Compares every so many units of a range, with something given that they keep exactly.
fn compare(seen: &mut Seen, range: &Range, given: fn(&Unit) -> Visit, every: usize) {
    let mut units = units(range);
    units.sort_by_key(|unit| unit.price);
    assert!(units.len() > 400, "{}", units.len());
    for (at, unit) in units.iter().step_by(every).enumerate() {
        let visit = given(unit);
        assert!(unit.suits(&visit) && visit.breaks(range, &unit.choice).is_empty());
        let pins = PINS[at % PINS.len()].iter().copied().filter(|pin| unit.choice.has(*pin));
        check(seen, range, &units, &unit.choice, (&pins.collect::<Vec<_>>(), &visit));
    }
}

fn budget(unit: &Unit) -> Visit {
    visit(Some(unit.price), None)
}

fn day(unit: &Unit) -> Visit {
    visit(None, Some(unit.arrives))
}

fn both(unit: &Unit) -> Visit {
    visit(Some(Money::minor(unit.price.in_minor() * 11 / 10)), Some(unit.arrives))
}

/// A workshop with so little time a day that units differ in their days.
fn slow(mut range: Range) -> Range {
    range.stages.iter_mut().for_each(|stage| stage.minutes_per_day = 16);
    range.crews.iter_mut().for_each(|crew| crew.minutes_per_day = 16);
    range
}

/// More sizes than can be priced and dated for all answers of a choice.
fn fine(mut range: Range) -> Range {
    let model = range.models.first_mut().unwrap();
    model.width_mm.step = Dim::tenths(model.width_mm.step.in_tenths() / 5);
    model.height_mm.step = Dim::tenths(model.height_mm.step.in_tenths() / 3);
    range
}

#[test]
fn states_with_a_budget_are_exact() {
    let mut seen = Seen::default();
    for (model, every) in [("sedge", 7), ("teasel", 14), ("bulrush", 7)] {
        compare(&mut seen, &thinned(model), budget, every);
    }
    assert!(seen.open_beyond > 200 && seen.other_shifts > 50 && seen.shut > 30, "{seen:?}");
    assert!(seen.reasons == seen.shut && seen.least > 25 && seen.left_out > 10 && seen.releases > 10, "{seen:?}");
    assert!(seen.unfound * 100 < seen.answers, "{seen:?}");
}

#[test]
fn states_with_a_day_are_exact() {
    let mut seen = Seen::default();
    for (model, every) in [("sedge", 6), ("teasel", 11), ("bulrush", 5)] {
        compare(&mut seen, &slow(thinned(model)), day, every);
    }
    assert!(seen.open_beyond > 150 && seen.other_shifts > 50 && seen.shut > 20, "{seen:?}");
    assert!(seen.reasons == seen.shut && seen.least > 15 && seen.left_out > 5 && seen.releases > 5, "{seen:?}");
    assert!(seen.unfound * 100 < seen.answers, "{seen:?}");
}

/// Where there is more than is priced and dated, what is found out is right all the same, and the rest is unfound.
#[test]
fn what_is_found_with_a_budget_and_a_day_is_right() {
    let mut seen = Seen::default();
    compare(&mut seen, &fine(slow(thinned("sedge"))), both, 120);
    assert!(seen.open_beyond > 10 && seen.other_shifts > 5 && seen.shut > 2, "{seen:?}");
    assert!(seen.unfound > 0 && seen.unfound * 20 < seen.answers + seen.sizes, "{seen:?}");
}
