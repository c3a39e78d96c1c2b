//! For every answer to every question: can it be taken now, and if not, why.

use serde::Serialize;

mod scope;
mod solve;
mod ways;

use crate::change::Change;
use crate::choice::{Bay, Choice, Fill, Hole, Hung};
use crate::finding::{Finding, Question};
use crate::quantity::Dim;
use crate::range::{DimRange, Key, Model, Range};
use crate::rules::{Rule, judge_stops};
use scope::Scope;
use solve::{Found, NoGood};
use ways::{Asked, Ways};

/// Whether an answer can be taken.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// It can be taken now, and nothing else changes.
    Open,
    /// It can be taken together with other changes.
    Shifts {
        /// What stops it alone.
        reason: Finding,
        /// The smallest set of other changes that it needs, the least important ones of their number, in
        /// the order in which they are done.
        changes: Vec<Change>,
    },
    /// It cannot be had.
    Shut(Shut),
}

/// Why an answer cannot be had at all, or not with what is pinned.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Shut {
    /// What stops it as things are.
    pub reason: Finding,
    /// Rules that forbid it together, whatever else is answered.
    pub rules: Vec<Rule>,
    /// The pinned questions that have a part in it.
    pub pins: Vec<Question>,
    /// Whether every other answer was ruled out; if not, the search was given up.
    pub proven: bool,
}

impl State {
    /// Whether it can be taken and nothing else changes.
    pub fn is_open(&self) -> bool {
        matches!(self, Self::Open)
    }

    /// What stops it alone, if anything.
    pub fn reason(&self) -> Option<&Finding> {
        match self {
            Self::Open => None,
            Self::Shifts { reason, .. } | Self::Shut(Shut { reason, .. }) => Some(reason),
        }
    }
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Answer {
    /// The change that takes it.
    pub change: Change,
    /// Whether it is the present one.
    pub taken: bool,
    /// Whether its question is pinned to another answer.
    pub pinned: bool,
    /// Whether it can be taken.
    pub state: State,
}

/// How far an answer can be reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reach {
    /// See [`State::Open`].
    Open,
    /// See [`State::Shifts`].
    Shifts,
    /// See [`State::Shut`].
    Shut,
}

/// A run of neighbouring sizes that are all open, or all not for the same reason.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Run {
    /// First size.
    pub from: Dim,
    /// Last size.
    pub to: Dim,
    /// How far they can be reached.
    pub reach: Reach,
    /// What stops the first of them alone, if anything.
    pub reason: Option<Finding>,
}

/// The answers for one bay.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BayAnswers {
    /// What it holds.
    pub fills: Vec<Answer>,
    /// Its cable hole.
    pub holes: Vec<Answer>,
    /// The device in it.
    pub devices: Vec<Answer>,
}

/// All answers to all questions.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Options {
    /// Numbers of bays.
    pub bay_counts: Vec<Answer>,
    /// Bay by bay.
    pub bays: Vec<BayAnswers>,
    /// Boards of the back.
    pub backs: Vec<Answer>,
    /// Finishes.
    pub finishes: Vec<Answer>,
    /// Corner radii.
    pub corners: Vec<Answer>,
}

/// A choice whose answers are asked for.
struct Table<'a> {
    range: &'a Range,
    choice: &'a Choice,
    ways: Ways,
    pins: Scope,
}

impl<'a> Table<'a> {
    fn of(range: &'a Range, model: &Model, choice: &'a Choice, pins: &[Question]) -> Self {
        let pins = pins.iter().fold(FIXED, |all, pin| all.and(Scope::of(*pin)));
        Self { range, choice, ways: Ways::of(range, model, choice), pins }
    }

    /// The choice with an answer taken, as a puzzle, and the questions that may shift.
    fn asked<'b>(&'b self, choice: &'b Choice, asked: Scope) -> (Asked<'b>, Scope) {
        let fixed = self.pins.and(asked);
        let stays =
            |(bay, chosen): &(u8, &Bay)| chosen.device.is_some() || !Scope::of_bay(*bay).meeting(fixed).is_empty();
        let stay = (1..=u8::MAX).zip(&choice.bays).filter(stays);
        let last = stay.map(|(bay, _)| usize::from(bay)).max().unwrap_or(0);
        let puzzle = Asked { range: self.range, ways: &self.ways, choice, bays_least: last };
        (puzzle, SHIFTING.minus(fixed))
    }

    /// The state of a choice with an answer taken.
    fn state(&self, choice: &Choice, asked: Scope) -> State {
        let judged = judge_stops(self.range, choice);
        let Some(reason) = judged.findings.into_iter().next() else { return State::Open };
        let (puzzle, free) = self.asked(choice, asked);
        match solve::smallest(&puzzle, choice, free) {
            Found::Point((_, point)) => State::Shifts { reason, changes: ways::changes(choice, &point) },
            Found::Nothing(nothing) => State::Shut(self.shut(reason, &nothing, true)),
            Found::GivenUp => State::Shut(self.shut(reason, &NoGood::default(), false)),
        }
    }

    fn shut(&self, reason: Finding, nothing: &NoGood, proven: bool) -> Shut {
        let pins = nothing.scope.meeting(self.pins).minus(FIXED).questions().collect();
        let rules = Rule::ALL.iter().copied().filter(|rule| nothing.rules & rule.bit() != 0).collect();
        Shut { reason, rules, pins, proven }
    }

    fn answer(&self, change: Change) -> Answer {
        let changed = self.choice.with(&change, self.range);
        let taken = changed == *self.choice;
        let pinned = !taken && change.question().is_some_and(|asked| !self.pins.meeting(Scope::of(asked)).is_empty());
        let asked = change.question().map_or(Scope::NONE, Scope::of);
        Answer { taken, pinned, state: self.state(&changed, asked), change }
    }

    fn answers(&self, changes: impl IntoIterator<Item = Change>) -> Vec<Answer> {
        changes.into_iter().map(|change| self.answer(change)).collect()
    }

    /// The whole set of a size.
    fn runs(&self, size: Size, values: impl Iterator<Item = Dim>) -> Vec<Run> {
        let mut runs: Vec<Run> = Vec::new();
        let mut known = Known::default();
        for value in values {
            let changed = self.choice.with(&size.to(value), self.range);
            let reason = judge_stops(self.range, &changed).findings.into_iter().next();
            let reach = if reason.is_none() { Reach::Open } else { self.reach(&changed, size, value, &mut known) };
            let alike = |run: &Run| match (&run.reason, &reason) {
                (Some(one), Some(other)) => one.is_like(other),
                (one, other) => one.is_none() && other.is_none(),
            };
            match runs.last_mut() {
                Some(run) if run.reach == reach && alike(run) => run.to = value,
                _ => runs.push(Run { from: value, to: value, reach, reason }),
            }
        }
        runs
    }

    /// Whether a size that is not open can be had at all. What is known of its neighbours often tells.
    fn reach(&self, changed: &Choice, size: Size, value: Dim, known: &mut Known) -> Reach {
        if let Some((from, to)) = known.nothing
            && (from..=to).contains(&value.in_tenths())
        {
            return Reach::Shut;
        }
        let holds = |choice: &Choice| judge_stops(self.range, &choice.with(&size.to(value), self.range)).holds();
        if known.point.as_ref().is_some_and(holds) {
            return Reach::Shifts;
        }
        let asked = Scope::of(size.question());
        let (puzzle, free) = self.asked(changed, asked);
        match solve::smallest(&puzzle, changed, free) {
            Found::Point((_, point)) => {
                known.point = Some(point);
                Reach::Shifts
            }
            Found::Nothing(nothing) => {
                known.nothing = Some(nothing.spans.of(scope::place(size.question())));
                Reach::Shut
            }
            Found::GivenUp => Reach::Shut,
        }
    }
}

/// What is known of the neighbours of a size.
#[derive(Default)]
struct Known {
    /// A choice that holds.
    point: Option<Choice>,
    /// The sizes between which none does.
    nothing: Option<(i32, i32)>,
}

/// What is never shifted: another model is another unit, and the place is what the customer has.
const FIXED: Scope = Scope::of(Question::Model).and(Scope::of(Question::Place));

/// Everything that may be.
const SHIFTING: Scope = Scope::all().minus(FIXED);

/// The answers to all questions but the sizes; `None` if the range lacks the model. Pinned questions are
/// never shifted.
pub fn options(range: &Range, choice: &Choice, pins: &[Question]) -> Option<Options> {
    let model = range.model(&choice.model)?;
    let table = Table::of(range, model, choice, pins);
    let bays = (1..=u8::MAX).zip(&choice.bays).map(|(bay, chosen)| BayAnswers {
        fills: table.answers(fills(model).map(|fill| Change::Fill { bay, fill })),
        holes: table.answers(holes(range, chosen.hole.as_ref()).map(|hole| Change::Hole { bay, hole })),
        devices: table.answers(devices(range).map(|device| Change::Device { bay, device })),
    });
    Some(Options {
        bay_counts: table.answers((model.bays.least..=model.bays.most).map(Change::BayCount)),
        bays: bays.collect(),
        backs: table.answers(model.backs.iter().cloned().map(Change::Back)),
        finishes: table.answers(model.finishes.iter().cloned().map(Change::Finish)),
        corners: table.answers(model.corner_radii_mm.iter().copied().map(Change::CornerRadiusMm)),
    })
}

/// The state of one answer; `None` if the range lacks the model, or the change takes another one.
pub fn answer(range: &Range, choice: &Choice, change: Change, pins: &[Question]) -> Option<Answer> {
    let model = range.model(&choice.model)?;
    change.question()?;
    Some(Table::of(range, model, choice, pins).answer(change))
}

/// The nearest choice that can be made: the present one if it can, else with the fewest questions answered
/// anew. `None` if there is none, or the range lacks the model.
pub fn nearest(range: &Range, choice: &Choice, pins: &[Question]) -> Option<Vec<Change>> {
    let model = range.model(&choice.model)?;
    let table = Table::of(range, model, choice, pins);
    match table.state(choice, Scope::NONE) {
        State::Open => Some(Vec::new()),
        State::Shifts { changes, .. } => Some(changes),
        State::Shut(_) => None,
    }
}

/// The smallest set of rules and pinned questions that forbid an answer that is shut: none can be left out.
/// If the basics leave something, they are taken for granted, and the rules are those beyond them.
///
/// `None` for an answer that can be had.
pub fn why_shut(
    range: &Range,
    choice: &Choice,
    change: &Change,
    pins: &[Question],
) -> Option<(Vec<Rule>, Vec<Question>)> {
    let model = range.model(&choice.model)?;
    let asked = Scope::of(change.question()?);
    let changed = choice.with(change, range);
    let can = |rules: u64, pins: &[Question]| {
        let table = Table::of(range, model, choice, pins);
        let (puzzle, free) = table.asked(&changed, asked);
        !matches!(solve::Search::with_rules(&puzzle, rules).within(&changed, free), Found::Nothing(_))
    };
    if can(u64::MAX, pins) {
        return None;
    }
    let pins = solve::conflict(pins, &mut |pins| can(u64::MAX, pins));
    let sum = |rules: &[Rule]| rules.iter().fold(0, |all, rule| all | rule.bit());
    let (basics, others): (Vec<Rule>, Vec<Rule>) = Rule::ALL.iter().partition(|rule| rule.is_basic());
    let (always, of) = if can(sum(&basics), &pins) { (sum(&basics), others) } else { (0, basics) };
    let rules = solve::conflict(&of, &mut |rules| can(always | sum(rules), &pins));
    Some((rules, pins))
}

/// What a bay can hold in a model.
fn fills(model: &Model) -> impl Iterator<Item = Fill> {
    let leaf: &[Hung] = if model.leaves_most > 0 { &[Hung::Left, Hung::Right] } else { &[] };
    let shelves = (1..=model.shelves_most).map(Fill::Shelves);
    core::iter::once(Fill::Open).chain(shelves).chain(leaf.iter().copied().map(Fill::Leaf))
}

/// No hole, or one of each kind where the present one is.
fn holes<'a>(range: &'a Range, now: Option<&Hole>) -> impl Iterator<Item = Option<Hole>> + use<'a> {
    let offset_mm = now.map_or(Dim::mm(0), |hole| hole.offset_mm);
    let kinds = range.holes.iter().map(move |kind| Some(Hole { kind: kind.key.clone(), offset_mm }));
    core::iter::once(None).chain(kinds)
}

/// No device, or one of those that the range names.
fn devices(range: &Range) -> impl Iterator<Item = Option<Key>> + '_ {
    core::iter::once(None).chain(range.devices.iter().map(|device| Some(device.key.clone())))
}

/// A size of the unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// From left to right.
    Width,
    /// From bottom to top.
    Height,
    /// From front to back.
    Depth,
}

impl Size {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Width, Self::Height, Self::Depth];

    /// Which question asks for it.
    pub const fn question(self) -> Question {
        match self {
            Self::Width => Question::Width,
            Self::Height => Question::Height,
            Self::Depth => Question::Depth,
        }
    }

    /// The model's limits for it.
    pub const fn limits(self, model: &Model) -> DimRange {
        match self {
            Self::Width => model.width_mm,
            Self::Height => model.height_mm,
            Self::Depth => model.depth_mm,
        }
    }

    /// The present value.
    pub const fn of(self, choice: &Choice) -> Dim {
        match self {
            Self::Width => choice.width_mm,
            Self::Height => choice.height_mm,
            Self::Depth => choice.depth_mm,
        }
    }

    /// The change to a value.
    pub const fn to(self, value: Dim) -> Change {
        match self {
            Self::Width => Change::WidthMm(value),
            Self::Height => Change::HeightMm(value),
            Self::Depth => Change::DepthMm(value),
        }
    }
}

/// The whole set of a size, as runs from the model's least to its most. Pinned questions are never shifted.
///
/// Empty if the range lacks the model.
pub fn runs(range: &Range, choice: &Choice, size: Size, pins: &[Question]) -> Vec<Run> {
    let Some(model) = range.model(&choice.model) else {
        return Vec::new();
    };
    Table::of(range, model, choice, pins).runs(size, size.limits(model).values())
}
