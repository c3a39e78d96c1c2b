//! What a finding depends on: which questions, which way the sizes would have to go, and how far. While those keep
//! their answers, or stay on the wrong side, the unit cannot be made. Each rule names its own, beside its check.

use smallvec::SmallVec;

use crate::cabinet::layout::{Layout, SHELVES_MOST};
use crate::cabinet::leaf;
use crate::cabinet::panel::PanelId;
use crate::cabinet::swing;
use crate::choice::question::Question;
use crate::choice::{Bay, Bowed, Choice, Fill};
use crate::range::{Board, Build, Model, Range};
use crate::rules::finding::{Finding, Limit, Unit};
use crate::units::quantity::{Dim, Length};

/// What rounding takes of the difference of two figures at most.
pub(super) const ROUNDING: f64 = 0.01;

/// One millimetre more or less of a size changes the figure by one.
pub(super) const ONE: Length = Length::mm(1.0);

/// Which way a size would have to go for a finding to leave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Direction {
    /// It is too small; of the shares: the bay's part in them.
    Up,
    /// It is too large.
    Down,
    /// Nobody knows: a step this way or that.
    Either,
}

impl Direction {
    /// The way to what is allowed.
    pub(super) const fn to(limit: Limit) -> Self {
        match limit {
            Limit::AtLeast => Self::Up,
            Limit::AtMost => Self::Down,
            Limit::OneOf => Self::Either,
        }
    }
}

/// How far answers that matter little can move a length: a finding that is further off does not depend on them.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Influence {
    /// All finishes of the model, in the films of as many boards as stand side by side or on each other.
    pub(super) film: Length,
    /// The boards of its back.
    pub(super) back: Length,
    /// Stiles at both sides of an opening, and what a leaf and its stop take of it.
    pub(super) stiles: Length,
    /// Any plinth, or none.
    pub(super) plinth: Length,
}

impl Influence {
    /// What a model's answers can do, and those of a choice that the model may not have.
    pub(crate) fn of(range: &Range, model: &Model, choice: &Choice) -> Self {
        let spread = |lengths: &mut dyn Iterator<Item = Length>| {
            let (low, high) = lengths.fold((None, Length::ZERO), |(low, high): (Option<Length>, _), length| {
                (Some(low.map_or(length, |low| low.min(length))), high.max(length))
            });
            low.map_or(Length::ZERO, |low| high - low)
        };
        let finishes = model.finishes.iter().chain([&choice.finish]).filter_map(|key| range.finish(key));
        let films = || finishes.clone().map(|finish| finish.dry_film() * 2.0);
        let thickest = films().fold(Length::ZERO, Length::max);
        let backs = model.backs.iter().chain([&choice.back]).filter_map(|key| range.board(key));
        let backs = &mut backs.map(Board::thickness);
        // Up to seven uprights, two plates and the top, and a shelf in each row; figures are rounded to a hundredth.
        let film = spread(&mut films()) * (f64::from(SHELVES_MOST) + 10.0) + Length::mm(0.02);
        let plinths = model.plinth_mm.map(|limits| limits.most).into_iter().chain(choice.plinth_mm);
        let plinth = plinths.map(|height| height.length().abs()).fold(Length::ZERO, Length::max) + film;
        let leaf = range.board(&model.body).map_or(Length::ZERO, |board| {
            let (build, body) = (&range.build, board.thickness() + thickest);
            swing::open(build, body) + swing::stop(build, body, model.stile_mm)
        });
        Self { film, back: spread(backs) + film, stiles: model.stile_mm * 2.0 + leaf + film, plinth }
    }
}

/// What a finding was found in.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Context<'a> {
    pub(crate) choice: &'a Choice,
    /// Where everything stands, if it can stand.
    pub(crate) layout: Option<&'a Layout>,
    pub(crate) build: &'a Build,
    pub(crate) influence: Influence,
}

impl<'a> Context<'a> {
    fn bay(self, number: u8) -> Option<&'a Bay> {
        self.choice.bays.get(usize::from(number).wrapping_sub(1))
    }

    /// By how many millimetres the unit's width has to change for the clear width of a finding's bay to change by one.
    pub(super) fn widths_a_bay(self, finding: &Finding) -> f64 {
        let Some(bay) = finding.about.bay().and_then(|number| self.bay(number)) else { return 0.0 };
        // The clear width is divided by shares: see `Layout::of`.
        let shares: f64 = self.choice.bays.iter().map(|bay| f64::from(bay.share)).sum();
        if bay.share == 0 { 0.0 } else { shares / f64::from(bay.share) }
    }

    /// The rows of a finding's bay, among which the clear height is divided: see `Layout::of`.
    pub(super) fn rows(self, finding: &Finding) -> f64 {
        match finding.about.bay().and_then(|number| self.bay(number)).map(|bay| bay.fill) {
            Some(Fill::Shelves(count)) => f64::from(count.min(SHELVES_MOST)) + 1.0,
            Some(Fill::Open | Fill::Leaf(_)) | None => 1.0,
        }
    }

    /// The height of every leaf.
    pub(super) fn leaf_height(self) -> Length {
        self.layout.map_or(Length::ZERO, |layout| layout.clear_height() - self.build.leaf_gap_mm * 2.0)
    }

    /// The way to less mass: smaller, unless a part may become lighter as it grows.
    pub(super) fn to_less_mass(self, finding: &Finding) -> Direction {
        let lightens = finding.parts.iter().any(|part| self.may_lighten(*part));
        if lightens { Direction::Either } else { Direction::Down }
    }

    /// Whether a part may become lighter as it grows: a leaf that has no room for its finger hole yet.
    fn may_lighten(self, part: PanelId) -> bool {
        let (PanelId::Leaf(bay), Some(layout)) = (part, self.layout) else { return false };
        let at = usize::from(bay).wrapping_sub(1);
        let Some((chosen, span)) = self.choice.bays.get(at).zip(layout.bays.get(at)) else { return false };
        let Fill::Leaf(hung) = chosen.fill else { return false };
        let hole = leaf::of(span, layout, self.build, hung).finger_hole(self.build, layout.body, hung);
        hole.is_none() && self.build.finger_hole_mm > Length::ZERO
    }
}

/// One question that a finding depends on.
#[derive(Clone, Copy, Debug)]
struct Dependency {
    question: Question,
    direction: Direction,
    /// By how much a size has to change at least for the figure to change by one; zero if nobody knows.
    size_for_one: Length,
    /// The most that other answers can do to the figure, if that is a length; nothing if nobody knows.
    most: Option<Length>,
}

/// The questions that a finding depends on, as its rule names them.
#[derive(Debug, Default)]
pub(crate) struct Dependencies {
    list: SmallVec<[Dependency; 26]>,
    /// By how many millimetres a length has to change for the finding to leave, where its figure is none of that length.
    distance: Option<f64>,
    distance_is_void: bool,
}

impl Dependencies {
    /// Any other answer may make the finding leave.
    pub(super) fn answer(&mut self, question: Question) {
        self.size(question, Direction::Either, Length::ZERO);
    }

    /// Other answers can move the figure by so much at most.
    fn answer_within(&mut self, question: Question, most: Option<Length>) {
        self.list.push(Dependency { question, direction: Direction::Either, size_for_one: Length::ZERO, most });
    }

    /// A size, or the shares, would have to go that way; by how much at least for the figure to change by one.
    pub(super) fn size(&mut self, question: Question, direction: Direction, size_for_one: Length) {
        self.list.push(Dependency { question, direction, size_for_one, most: None });
    }

    /// The finish, whose film takes a little of every length.
    pub(super) fn film(&mut self, context: Context<'_>) {
        self.answer_within(Question::Finish, Some(context.influence.film));
    }

    /// The plinth, which takes its height from the rest.
    pub(super) fn plinth(&mut self, context: Context<'_>) {
        self.answer_within(Question::Plinth, Some(context.influence.plinth));
    }

    /// How far the figure is off tells nothing about how far an answer has to go.
    pub(super) const fn distance_tells_nothing(&mut self) {
        self.distance_is_void = true;
    }

    /// By how much at least the length that sizes change has to change itself, where the figure is another one.
    pub(super) const fn distance(&mut self, length: Length) {
        self.distance = Some(length.in_mm());
    }

    /// What the clear width of a bay comes from.
    pub(super) fn clear_width(&mut self, context: Context<'_>, direction: Direction, size_for_one: Length) {
        self.size(Question::Width, direction, size_for_one);
        self.ends(context, direction);
        self.answer(Question::Bays);
        self.film(context);
        self.size(Question::Shares, direction, Length::ZERO);
    }

    /// What of the width the ends take, where that would have to go that way: the more they are bowed, the less they leave, both
    /// of them less than one.
    pub(super) fn ends(&mut self, context: Context<'_>, direction: Direction) {
        let bows = match direction {
            Direction::Up => Direction::Down,
            Direction::Down => Direction::Up,
            Direction::Either => Direction::Either,
        };
        let is_square = context.choice.bow_mm == Dim::mm(0);
        if !is_square || direction != Direction::Up {
            self.size(Question::Bow, bows, Length::ZERO);
        }
        let both = context.choice.bowed == Bowed::Both;
        let no_better = direction == Direction::Up && !both || direction == Direction::Down && both;
        if !is_square && !no_better {
            self.answer(Question::Bowed);
        }
    }

    /// Whose fit-out the stiles at the sides of a bay come from, and the most that they can do to the figure.
    pub(super) fn stiles(&mut self, context: Context<'_>, here: u8, direction: Direction, most: Option<Length>) {
        let fill = |bay: u8| context.bay(bay).map(|chosen| chosen.fill);
        let has_stiles = |bay: &u8| fill(*bay).is_some_and(|fill| fill != Fill::Open);
        // Where a stile is wider than the upright behind it, one more makes no opening wider.
        let narrows = direction == Direction::Up && context.layout.is_some_and(|layout| layout.stile >= layout.body);
        let around = here.saturating_sub(1)..=here.saturating_add(1);
        if has_stiles(&here) {
            // It has them at both sides, whatever its neighbours hold.
            self.answer_within(Question::Bay(here), most);
        } else {
            let matters = |bay: &u8| fill(*bay).is_some() && (!narrows || has_stiles(bay));
            around.filter(matters).for_each(|bay| self.answer_within(Question::Bay(bay), most));
        }
    }

    /// What the height of the rows of a finding's bay comes from, or of one without shelves.
    pub(super) fn row_height(
        &mut self,
        context: Context<'_>,
        finding: &Finding,
        direction: Direction,
        size_for_one: Length,
    ) {
        self.row_height_of_kept(context, finding, direction, size_for_one);
        if finding.about.bay().is_some() {
            self.answer(Question::Bays);
        }
    }

    /// The same for a finding that also names the device of its bay: where that bay goes, so does the device, which says enough.
    pub(super) fn row_height_of_kept(
        &mut self,
        context: Context<'_>,
        finding: &Finding,
        direction: Direction,
        size_for_one: Length,
    ) {
        self.size(Question::Height, direction, size_for_one);
        // Without a plinth nothing is taken from the rows.
        if context.choice.plinth_mm.is_some() || direction != Direction::Up {
            self.plinth(context);
        }
        if let Some(bay) = finding.about.bay() {
            self.answer(Question::Bay(bay));
        }
    }

    /// What the clear depth comes from.
    pub(super) fn clear_depth(&mut self, context: Context<'_>, direction: Direction, size_for_one: Length) {
        self.size(Question::Depth, direction, size_for_one);
        self.answer_within(Question::Back, Some(context.influence.back));
        self.film(context);
    }

    /// All that the parts come from.
    pub(super) fn whole(&mut self, context: Context<'_>, direction: Direction) {
        for size in [Question::Width, Question::Height, Question::Depth] {
            self.size(size, direction, Length::ZERO);
        }
        let looks = [Question::Back, Question::Finish, Question::Corners, Question::Plinth];
        let ends = [Question::Bow, Question::Bowed];
        for asked in looks.into_iter().chain(ends).chain([Question::Bays, Question::Shares]) {
            self.answer(asked);
        }
        for (bay, _) in (1..=u8::MAX).zip(&context.choice.bays) {
            self.answer(Question::Bay(bay));
            self.answer(Question::Hole(bay));
        }
    }

    /// The same of what comes from all parts together: nobody knows which way.
    pub(super) fn all_parts(&mut self, _: &Finding, context: Context<'_>) {
        self.whole(context, Direction::Either);
    }

    /// All questions: of what stops no order while answers are tried, nobody asks more.
    pub(super) fn everything(&mut self, _: &Finding, context: Context<'_>) {
        self.whole(context, Direction::Either);
        for (bay, _) in (1..=u8::MAX).zip(&context.choice.bays) {
            self.answer(Question::Device(bay));
        }
        self.answer(Question::Place);
        self.answer(Question::Model);
    }

    /// Tells each question, with the way where its answers lie on a line, and how far the finding stays on that way.
    pub(super) fn each(&self, finding: &Finding, mut tell: impl FnMut(Question, Direction, Dim)) {
        let unit = finding.found.unit;
        let is_known = matches!(unit, Unit::Mm | Unit::Ratio) && !self.distance_is_void;
        // Both figures are rounded to a hundredth.
        let off = || ((finding.found.value - finding.allowed.value).abs() - ROUNDING).max(0.0);
        let distance = self.distance.or_else(|| is_known.then(off));
        let mut spare = distance.unwrap_or(0.0);
        let is_size = |question| matches!(question, Question::Width | Question::Height | Question::Depth);
        for asked in self.list.iter().filter(|asked| !is_size(asked.question)) {
            let most = asked.most.filter(|_| unit == Unit::Mm).zip(distance);
            match most.map(|(most, distance)| distance - most.in_mm()) {
                Some(left) if left > 0.0 => spare = spare.min(left),
                Some(_) | None => tell(asked.question, asked.direction, Dim::mm(0)),
            }
        }
        for size in self.list.iter().filter(|asked| is_size(asked.question)) {
            tell(size.question, size.direction, Dim::within(size.size_for_one * spare));
        }
    }
}
