//! Which questions each finding depends on, which way the sizes would have to go, and how far: while those keep
//! their answers, or stay on the wrong side, the unit cannot be made.

use smallvec::SmallVec;

use super::Rule;
use crate::choice::{Choice, Fill};
use crate::finding::{Figure, Finding, Limit, Question, Unit};
use crate::layout::{LEAST_ROOM, Layout, SHELVES_MOST};
use crate::leaf;
use crate::panel::PanelId;
use crate::quantity::{Dim, Length};
use crate::range::{Board, Build, Model, Range};

/// Which way a size would have to go for a finding to leave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    /// It is too small; of the shares: the bay's part in them.
    Up,
    /// It is too large.
    Down,
    /// Nobody knows: a step this way or that.
    Either,
}

/// How far answers that matter little can move a length: a finding that is further off does not depend on them.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Slack {
    /// All finishes of the model, in the films of as many boards as stand side by side or on each other.
    film: Length,
    /// The boards of its back.
    back: Length,
    /// Stiles at both sides of an opening.
    stiles: Length,
}

impl Slack {
    /// What a model's answers can do, and those of a choice that the model may not have.
    pub(crate) fn of(range: &Range, model: &Model, choice: &Choice) -> Self {
        let spread = |lengths: &mut dyn Iterator<Item = Length>| {
            let (low, high) = lengths.fold((None, Length::ZERO), |(low, high): (Option<Length>, _), length| {
                (Some(low.map_or(length, |low| low.min(length))), high.max(length))
            });
            low.map_or(Length::ZERO, |low| high - low)
        };
        let finishes = model.finishes.iter().chain([&choice.finish]).filter_map(|key| range.finish(key));
        let films = &mut finishes.map(|finish| finish.dry_film() * 2.0);
        let backs = model.backs.iter().chain([&choice.back]).filter_map(|key| range.board(key));
        let backs = &mut backs.map(Board::thickness);
        // Up to seven uprights, two plates and the top, and a shelf in each row; figures are rounded to a hundredth.
        let film = spread(films) * (f64::from(SHELVES_MOST) + 10.0) + Length::mm(0.02);
        Self { film, back: spread(backs) + film, stiles: range.build.stile_mm * 2.0 + film }
    }
}

/// What a finding was found in.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Within<'a> {
    pub(crate) choice: &'a Choice,
    /// Where everything stands, if it can stand.
    pub(crate) layout: Option<&'a Layout>,
    pub(crate) build: &'a Build,
    pub(crate) slack: Slack,
}

impl Within<'_> {
    /// The height of every leaf.
    fn leaf_height(self) -> Length {
        self.layout.map_or(Length::ZERO, |layout| layout.clear_height() - self.build.leaf_gap_mm * 2.0)
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

/// How far a length or a ratio is off at least; nothing for other figures.
fn off(finding: &Finding) -> Option<f64> {
    let bends = matches!(finding.rule, Rule::ShelfSag | Rule::TopSag | Rule::BaseSag);
    let known = matches!(finding.found.unit, Unit::Mm | Unit::Ratio) && !bends;
    // Both figures are rounded to a hundredth.
    known.then(|| ((finding.found.value - finding.allowed.value).abs() - 0.01).max(0.0))
}

/// By how much a size has to change at least for the figure of a finding to change by one; nothing if nobody knows.
fn steep(finding: &Finding, within: Within<'_>, size: Question) -> Length {
    const ONE: Length = Length::mm(1.0);
    let Some(number) = finding.about.bay() else {
        // A row without shelves, the depth, and a size itself.
        let own = size == finding.about;
        let own = own && matches!(finding.rule, Rule::RowRoom | Rule::DepthRoom | Rule::SizeLimit);
        return if own { ONE } else { Length::ZERO };
    };
    let Some(bay) = within.choice.bays.get(usize::from(number).wrapping_sub(1)) else { return Length::ZERO };
    // The clear width is divided by shares, the clear height among rows: see `Layout::of`.
    let shares: f64 = within.choice.bays.iter().map(|bay| f64::from(bay.share)).sum();
    let divided = if bay.share == 0 { 0.0 } else { shares / f64::from(bay.share) };
    let rows = if let Fill::Shelves(count) = bay.fill { f64::from(count.min(SHELVES_MOST)) + 1.0 } else { 1.0 };
    match (finding.rule, size) {
        (Rule::LeafShape, Question::Width) if finding.found.unit == Unit::Ratio => within.leaf_height() * divided,
        (Rule::BayRoom | Rule::DeviceWidth | Rule::LeafShape, Question::Width) => ONE * divided,
        // A hole keeps its distance from the middle.
        (Rule::HoleStile | Rule::HoleEdge, Question::Width) => ONE * divided * 2.0,
        (Rule::RowRoom | Rule::DeviceHeight, Question::Height) => ONE * rows,
        (Rule::DeviceDepth, Question::Depth) | (Rule::HoleEdge, Question::Height) => ONE,
        // Of `rows - 1` shelves the topmost moves most.
        (Rule::HoleShelf, Question::Height) if rows > 1.0 => ONE * (rows / (rows - 1.0)),
        _ => Length::ZERO,
    }
}

/// Hears each question that a finding depends on, with the way where its answers lie on a line, and how far
/// the finding stays on that way.
pub(crate) fn each(finding: &Finding, within: Within<'_>, mut hear: impl FnMut(Question, Way, Dim)) {
    use Question as Q;
    let (off, slack) = (off(finding), within.slack);
    let weighed = matches!(finding.rule, Rule::LeafMass | Rule::PartMass);
    let lightens = weighed && finding.parts.iter().any(|part| within.may_lighten(*part));
    let beside = |bay: u8| finding.about.bay().is_some_and(|here| here.abs_diff(bay) <= 1);
    // The most that answers can do to a length where they matter little.
    let little = |question| match question {
        // Of a part that is a little shorter, or of another board, another sheet may be long enough.
        Q::Finish | Q::Back if matches!(finding.rule, Rule::Known | Rule::SheetFit) => None,
        Q::Finish => Some(slack.film),
        Q::Back => Some(slack.back),
        // Only the stiles that it asks for matter.
        Q::Bay(bay) if matches!(finding.rule, Rule::BayRoom | Rule::DeviceWidth | Rule::HoleStile) && beside(bay) => {
            Some(slack.stiles)
        }
        _ => None,
    };
    let mut spare = off.unwrap_or(0.0);
    let mut sizes: SmallVec<[(Q, Way); 3]> = SmallVec::new();
    all(finding, within, |question, way| {
        let way = if lightens { Way::Either } else { way };
        let left = little(question).filter(|_| finding.found.unit == Unit::Mm).zip(off);
        match left.map(|(little, off)| off - little.in_mm()) {
            Some(left) if left > 0.0 => spare = spare.min(left),
            _ if matches!(question, Q::Width | Q::Height | Q::Depth) => sizes.push((question, way)),
            _ => hear(question, way, Dim::mm(0)),
        }
    });
    for (size, way) in sizes {
        hear(size, way, Dim::within(steep(finding, within, size) * spare));
    }
}

/// The same, without asking how far the figure is off.
fn all(finding: &Finding, within: Within<'_>, mut hear: impl FnMut(Question, Way)) {
    use Question as Q;
    let bays = u8::try_from(within.choice.bays.len()).unwrap_or(u8::MAX);
    let hear = &mut hear;
    let about = finding.about.bay();
    match finding.rule {
        Rule::BayShare => {
            hear(Q::Shares, Way::Either);
            hear(Q::Bays, Way::Either);
        }
        Rule::Known | Rule::SizeLimit | Rule::SizeStep => {
            hear(finding.about, way(finding.limit));
            // Without its bay the question is gone.
            if about.is_some() {
                hear(Q::Bays, Way::Either);
            }
        }
        Rule::FitOutCount => {
            hear(Q::Bays, Way::Either);
            // Leaves are counted from the left.
            (1..=about.unwrap_or(0)).for_each(|bay| hear(Q::Bay(bay), Way::Either));
        }
        // A bay is narrow between its uprights or, if it is not, between its stiles.
        Rule::BayRoom => clear(hear, within, about, Way::Up, finding.allowed == Figure::length(LEAST_ROOM)),
        Rule::RowRoom => {
            row(hear, about, Way::Up);
            hear(Q::Finish, Way::Either);
        }
        Rule::DepthRoom => deep(hear, Way::Up),
        Rule::SheetFit => finding.parts.iter().for_each(|part| sheet(hear, within, *part)),
        Rule::ShelfSag => {
            clear(hear, within, about, Way::Down, false);
            hear(Q::Bay(about.unwrap_or(0)), Way::Either);
        }
        Rule::TopSag | Rule::BaseSag => clear(hear, within, about, Way::Down, false),
        Rule::ShelfEar => {
            clear(hear, within, about, Way::Down, false);
            deep(hear, Way::Either);
            hear(Q::Bay(about.unwrap_or(0)), Way::Either);
        }
        Rule::ShelfSlot => {
            let right = about.unwrap_or(0);
            row(hear, Some(right), Way::Either);
            hear(Q::Bay(right.saturating_sub(1)), Way::Either);
            hear(Q::Finish, Way::Either);
        }
        Rule::LeafShape => {
            let wide = way(finding.limit);
            clear(hear, within, about, wide, true);
            if finding.found.unit == Unit::Ratio {
                hear(Q::Height, if wide == Way::Up { Way::Down } else { Way::Up });
            }
        }
        Rule::LeafMass | Rule::LeafPivot => {
            clear(hear, within, about, Way::Down, true);
            let way = if finding.rule == Rule::LeafMass { Way::Down } else { Way::Either };
            hear(Q::Height, way);
        }
        Rule::JointFit => {
            hear(Q::Finish, Way::Either);
            if finding.parts.contains(&PanelId::Back) {
                hear(Q::Back, Way::Either);
            }
        }
        Rule::HolePlug => {
            hear(finding.about, Way::Either);
            hear(Q::Place, Way::Either);
            hear(Q::Bays, Way::Either);
        }
        Rule::HoleEdge => {
            clear(hear, within, about, Way::Up, false);
            hear(finding.about, Way::Either);
            hear(Q::Height, Way::Up);
        }
        Rule::HoleShelf => {
            row(hear, about, Way::Either);
            hear(finding.about, Way::Either);
            hear(Q::Finish, Way::Either);
        }
        Rule::DeviceWidth | Rule::HoleStile => {
            clear(hear, within, about, Way::Up, true);
            hear(finding.about, Way::Either);
        }
        Rule::DeviceHeight => {
            row(hear, about, Way::Up);
            hear(finding.about, Way::Either);
            hear(Q::Finish, Way::Either);
        }
        Rule::DeviceDepth => {
            deep(hear, Way::Up);
            hear(finding.about, Way::Either);
            hear(Q::Bays, Way::Either);
        }
        // The rest speaks of the whole unit.
        _ => whole(hear, bays, finding.rule),
    }
}

/// What speaks of the whole unit.
fn whole(hear: &mut impl FnMut(Question, Way), bays: u8, rule: Rule) {
    // What is too heavy has to become smaller; for what bends out or tips, nobody knows.
    let way = if rule == Rule::PartMass { Way::Down } else { Way::Either };
    for size in [Question::Width, Question::Height, Question::Depth] {
        hear(size, way);
    }
    for asked in [Question::Back, Question::Finish, Question::Corners, Question::Bays, Question::Shares] {
        hear(asked, Way::Either);
    }
    for bay in 1..=bays {
        hear(Question::Bay(bay), Way::Either);
        hear(Question::Hole(bay), Way::Either);
    }
}

const fn way(limit: Limit) -> Way {
    match limit {
        Limit::AtLeast => Way::Up,
        Limit::AtMost => Way::Down,
        Limit::OneOf => Way::Either,
    }
}

/// What the clear width of a bay comes from; the opening between stiles from what stands beside it too.
fn clear(hear: &mut impl FnMut(Question, Way), within: Within<'_>, about: Option<u8>, way: Way, opening: bool) {
    hear(Question::Width, way);
    hear(Question::Bays, Way::Either);
    hear(Question::Finish, Way::Either);
    hear(Question::Shares, way);
    if opening {
        stiles(hear, within, about.unwrap_or(0), way);
    }
}

/// Whose fit-out the stiles at the sides of a bay come from.
fn stiles(hear: &mut impl FnMut(Question, Way), within: Within<'_>, here: u8, way: Way) {
    let fill = |bay: u8| within.choice.bays.get(usize::from(bay).wrapping_sub(1)).map(|chosen| chosen.fill);
    let has_stiles = |bay: &u8| fill(*bay).is_some_and(|fill| fill != Fill::Open);
    // Where a stile is wider than the upright behind it, one more makes no opening wider.
    let narrows = way == Way::Up && within.layout.is_some_and(|layout| within.build.stile_mm >= layout.body);
    let around = here.saturating_sub(1)..=here.saturating_add(1);
    if has_stiles(&here) {
        // It has them at both sides, whatever its neighbours hold.
        hear(Question::Bay(here), Way::Either);
    } else {
        let matters = |bay: &u8| fill(*bay).is_some() && (!narrows || has_stiles(bay));
        around.filter(matters).for_each(|bay| hear(Question::Bay(bay), Way::Either));
    }
}

/// What the height of a bay's rows comes from.
fn row(hear: &mut impl FnMut(Question, Way), about: Option<u8>, way: Way) {
    hear(Question::Height, way);
    if let Some(bay) = about {
        hear(Question::Bay(bay), Way::Either);
        hear(Question::Bays, Way::Either);
    }
}

/// What the clear depth comes from.
fn deep(hear: &mut impl FnMut(Question, Way), way: Way) {
    hear(Question::Depth, way);
    hear(Question::Back, Way::Either);
    hear(Question::Finish, Way::Either);
}

/// What the blank of a part comes from.
fn sheet(hear: &mut impl FnMut(Question, Way), within: Within<'_>, part: PanelId) {
    match part {
        PanelId::BaseLower | PanelId::BaseUpper | PanelId::Top => {
            hear(Question::Width, Way::Down);
            hear(Question::Depth, Way::Down);
        }
        PanelId::Back => {
            hear(Question::Width, Way::Down);
            hear(Question::Height, Way::Down);
            hear(Question::Back, Way::Either);
            hear(Question::Finish, Way::Either);
        }
        PanelId::Upright(_) | PanelId::Stile(_) => {
            hear(Question::Height, Way::Down);
            hear(Question::Depth, Way::Down);
            hear(Question::Finish, Way::Either);
            hear(Question::Bays, Way::Either);
            (1..=u8::MAX).zip(&within.choice.bays).for_each(|(bay, _)| hear(Question::Bay(bay), Way::Either));
        }
        PanelId::Shelf { bay, .. } | PanelId::Leaf(bay) => {
            clear(hear, within, Some(bay), Way::Down, true);
            deep(hear, Way::Down);
            hear(Question::Height, Way::Down);
        }
    }
}
