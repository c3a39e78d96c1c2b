//! All that is said of every rule, in one table: a new rule is a line here, and its check and what it depends on in
//! a file beside this one.
#![cfg_attr(not(test), expect(clippy::indexing_slicing, reason = "a place for every rule, filled as it is compiled"))]

use super::dependencies::{Context, Dependencies};
use super::{
    Basics, Proof, Rule, Subject, at_once, bearing, carrying, device, fit, frame, headroom, hole, interlock, knock,
    known, leaf, looks, place, room, sag, screen, sheet, shelf_slot, size, slender, tether, tip,
};
use crate::rules::finding::{Finding, Severity};

/// The check of names, limits and room.
pub(super) type CheckBasics = fn(&mut Vec<Finding>, Basics<'_>);
/// The check of what is laid out.
pub(super) type CheckSubject = fn(&mut Vec<Finding>, Subject<'_>);
/// The same where it may be passed over.
#[derive(Clone, Copy)]
pub(super) struct CheckLaidOut {
    pub(super) check: CheckSubject,
    /// Whether what it finds comes from all parts together.
    pub(super) is_of_whole: bool,
}
/// The check of the proof of assembly.
pub(super) type CheckProof = fn(&mut Vec<Finding>, Proof<'_>);
/// Names what a finding depends on.
pub(super) type NameDependencies = fn(&mut Dependencies, &Finding, Context<'_>);

/// What is known of a rule, but for its card and its sentences, which [`crate::words`] has.
struct Entry {
    stage: Stage,
    /// How much it may matter, and what is tried against it then.
    severities: &'static [(Severity, Remedies)],
    dependencies: NameDependencies,
}

/// When a rule is checked, and by what: what is found comes stage by stage.
#[derive(Clone, Copy)]
enum Stage {
    /// Before all others. While one is broken nothing else is checked.
    Basics(Check<CheckBasics>),
    /// Whenever a choice is judged: it can stop the order.
    Stops(Check<CheckSubject>),
    /// The same of what comes from all parts together: it says nothing of any other choice, so a search looks at it only
    /// where nothing else stops a choice.
    StopsWhole(CheckSubject),
    /// Where it is asked what is good to know.
    Advice(Check<CheckSubject>),
    /// At both, by two checks.
    StopsAndAdvice(CheckSubject, CheckSubject),
    /// Where a unit was put together. That is done of all that is built; a fault counts only where
    /// nothing else stops the unit.
    Proof(CheckProof),
    /// With the day and the backlog, or where nothing is built: [`crate::order::derive`] finds it, before the proof or after.
    Order,
}

/// A check finds one rule broken, or a family of them, and stands at the first of these.
#[derive(Clone, Copy)]
enum Check<F> {
    By(F),
    With(Rule),
}

/// What is tried against a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Remedies {
    /// Other answers to the question that it is about, and to those that it hangs together with.
    ByQuestion,
    /// Changes of some kinds. Long and heavy parts want two people, a tether a wall, a cable a wider chase: there are
    /// none where no other answer helps.
    Kinds(&'static [Kind]),
}

/// Kinds of changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    Width,
    /// A smaller width.
    Narrower,
    Height,
    /// A smaller height.
    Lower,
    BayCount,
    /// What the finding's bay holds.
    Fill,
    /// The hole of the finding's bay.
    Hole,
    Back,
    /// No wall any more.
    WallGone,
    /// No screen any more.
    ScreenGone,
    Finish,
    /// The leaf of the finding's bay, or the one left of it, hung on the other side.
    HungApart,
}

use Check::{By, With};
use Remedies::{ByQuestion, Kinds};
use Severity::{Advises, Stops, Warns};

/// The table. The checks of each stage are made in the order of [`Rule::ALL`]; one that finds a family of rules tells all
/// of them where its own stands.
const fn entry(rule: Rule) -> Entry {
    match rule {
        Rule::Known => basics(By(known::check), known::dependencies),
        Rule::SizeLimit => basics(By(size::check), size::limit_dependencies),
        Rule::SizeStep => basics(With(Rule::SizeLimit), size::step_dependencies),
        Rule::FitOutCount => basics(With(Rule::SizeLimit), size::count_dependencies),
        Rule::BayShare => basics(With(Rule::SizeLimit), size::share_dependencies),
        Rule::BayRoom => basics(By(room::check), room::bay_dependencies),
        Rule::RowRoom => basics(With(Rule::BayRoom), room::row_dependencies),
        Rule::DepthRoom => basics(With(Rule::BayRoom), room::depth_dependencies),
        Rule::HookRoom => basics(With(Rule::BayRoom), room::hook_dependencies),
        Rule::BowRoom => basics(With(Rule::BayRoom), room::bow_dependencies),
        Rule::CeilingHeight => stops(By(headroom::check), headroom::dependencies),
        Rule::SheetFit => stops(By(sheet::check), sheet::dependencies),
        Rule::ShelfSag => stops(By(sag::check), sag::shelf_dependencies),
        Rule::TopSag | Rule::BaseSag => stops(With(Rule::ShelfSag), sag::plate_dependencies),
        Rule::ShelfSlot => stops(By(shelf_slot::check), shelf_slot::dependencies),
        Rule::LeafShape => stops(By(leaf::check), leaf::shape_dependencies),
        Rule::LeafMass => stops(With(Rule::LeafShape), leaf::mass_dependencies),
        Rule::HolePlug => stops(By(hole::check), hole::plug_dependencies),
        Rule::HoleEdge => stops(With(Rule::HolePlug), hole::edge_dependencies),
        Rule::HoleStile => stops(With(Rule::HolePlug), hole::stile_dependencies),
        Rule::HoleShelf => stops(With(Rule::HolePlug), hole::shelf_dependencies),
        Rule::DeviceWidth => stops(By(device::check), device::width_dependencies),
        Rule::DeviceHeight => stops(With(Rule::DeviceWidth), device::height_dependencies),
        Rule::DeviceDepth => stops(With(Rule::DeviceWidth), device::depth_dependencies),
        Rule::JointFit => Entry {
            stage: Stage::StopsAndAdvice(fit::check, fit::advise),
            severities: &[(Stops, ByQuestion), (Warns, Kinds(&[Kind::Finish]))],
            dependencies: fit::dependencies,
        },
        Rule::ShelfEar => stops(By(bearing::check), bearing::ear_dependencies),
        Rule::LeafPivot => stops(With(Rule::ShelfEar), bearing::pivot_dependencies),
        Rule::UprightBuckling => stops_whole(frame::check),
        Rule::Knock => stops_whole(knock::check),
        Rule::Slender => stops(By(slender::check), slender::dependencies),
        Rule::PartMass => Entry {
            stage: Stage::StopsAndAdvice(carrying::check, carrying::advise),
            // What two people may lift is there sooner than what one may.
            severities: &[(Stops, ByQuestion), (Warns, Kinds(&[Kind::Back, Kind::Narrower])), (Advises, Kinds(&[]))],
            dependencies: carrying::dependencies,
        },
        Rule::TipOver => stops_whole(tip::check),
        Rule::PartLength => advice(By(carrying::advise_sizes), &[(Advises, Kinds(&[]))]),
        Rule::Package => advice(With(Rule::PartLength), &[(Warns, Kinds(&[Kind::Width]))]),
        Rule::PartMoisture => advice(With(Rule::JointFit), &[(Warns, Kinds(&[Kind::Width]))]),
        Rule::LeafGap => advice(By(leaf::advise), &[(Warns, Kinds(&[]))]),
        Rule::LeafSwing => advice(With(Rule::LeafGap), &[(Advises, Kinds(&[Kind::HungApart]))]),
        // Where the range has a hole that is wide enough, the leaf lacks the room for it.
        Rule::LeafGrip => advice(With(Rule::LeafGap), &[(Warns, Kinds(&[Kind::Width, Kind::BayCount, Kind::Fill]))]),
        Rule::DeviceShut => advice(By(device::advise), &[(Advises, Kinds(&[Kind::Fill]))]),
        Rule::DeviceCable => advice(With(Rule::DeviceShut), &[(Advises, Kinds(&[Kind::Hole]))]),
        Rule::CableBend => advice(By(hole::advise), &[(Warns, Kinds(&[]))]),
        Rule::SheetUse => advice(By(sheet::advise), &[(Advises, Kinds(&[Kind::Narrower, Kind::Lower]))]),
        Rule::FinishEdges => advice(By(looks::check), &[(Warns, Kinds(&[Kind::Finish]))]),
        Rule::FinishSun => advice(With(Rule::FinishEdges), &[(Advises, Kinds(&[Kind::Finish]))]),
        Rule::ScreenWidth => advice(By(place::check), &[(Warns, Kinds(&[Kind::Width, Kind::ScreenGone]))]),
        Rule::WallWidth => advice(With(Rule::ScreenWidth), &[(Warns, Kinds(&[Kind::Width, Kind::WallGone]))]),
        Rule::ViewingHeight => advice(With(Rule::ScreenWidth), &[(Warns, Kinds(&[Kind::Height, Kind::ScreenGone]))]),
        Rule::ScreenFeet => advice(By(screen::check), &[(Warns, Kinds(&[Kind::BayCount, Kind::Width]))]),
        Rule::WallTether => advice(By(tether::check), &[(Warns, Kinds(&[]))]),
        Rule::Interlock => proof(interlock::check),
        Rule::Headroom => proof(headroom::prove),
        Rule::AtOnce => proof(at_once::prove),
        Rule::OrderDay | Rule::PromiseDay | Rule::NoParts => order(),
    }
}

const fn basics(check: Check<CheckBasics>, dependencies: NameDependencies) -> Entry {
    Entry { stage: Stage::Basics(check), severities: &[(Stops, ByQuestion)], dependencies }
}

const fn stops(check: Check<CheckSubject>, dependencies: NameDependencies) -> Entry {
    Entry { stage: Stage::Stops(check), severities: &[(Stops, ByQuestion)], dependencies }
}

const fn stops_whole(check: CheckSubject) -> Entry {
    let dependencies = Dependencies::all_parts;
    Entry { stage: Stage::StopsWhole(check), severities: &[(Stops, ByQuestion)], dependencies }
}

const fn advice(check: Check<CheckSubject>, severities: &'static [(Severity, Remedies)]) -> Entry {
    Entry { stage: Stage::Advice(check), severities, dependencies: Dependencies::everything }
}

const fn proof(check: CheckProof) -> Entry {
    Entry { stage: Stage::Proof(check), severities: &[(Stops, ByQuestion)], dependencies: Dependencies::everything }
}

/// What no other answer helps against.
const fn order() -> Entry {
    Entry { stage: Stage::Order, severities: &[(Stops, Kinds(&[]))], dependencies: Dependencies::everything }
}

/// One part of every entry. It is made when the program is compiled, so that the program holds only the parts that it
/// asks for: the page checks no advice.
pub(super) struct Column<T: 'static>([T; Rule::ALL.len()]);

impl<T: Copy> Column<T> {
    /// What it has for a rule.
    pub(super) const fn of(&self, rule: Rule) -> T {
        self.0[rule as usize]
    }
}

impl<T: Copy> Column<Option<T>> {
    /// For how many rules it has something.
    const fn count(&self) -> usize {
        let (mut number, mut count) = (0, 0);
        while number < self.0.len() {
            count += self.0[number].is_some() as usize;
            number += 1;
        }
        count
    }

    /// What it has, without the gaps between: judging goes through it for every answer that is tried.
    const fn closed_up<const COUNT: usize>(&self) -> [Option<T>; COUNT] {
        let mut all = [None; COUNT];
        let (mut number, mut count) = (0, 0);
        while number < self.0.len() {
            if self.0[number].is_some() {
                all[count] = self.0[number];
                count += 1;
            }
            number += 1;
        }
        all
    }
}

macro_rules! column {
    ($entry:ident => $part:expr) => {{
        let mut number = 0;
        let mut column = [{
            let $entry = entry(Rule::ALL[0]);
            $part
        }; Rule::ALL.len()];
        while number < column.len() {
            let $entry = entry(Rule::ALL[number]);
            column[number] = $part;
            number += 1;
        }
        Column(column)
    }};
}

pub(super) static ARE_BASICS: Column<bool> = column!(entry => matches!(entry.stage, Stage::Basics(_)));
pub(super) static SEVERITIES: Column<&[(Severity, Remedies)]> = column!(entry => entry.severities);
pub(super) static DEPENDENCIES: Column<NameDependencies> = column!(entry => entry.dependencies);
const BASICS_OF: Column<Option<CheckBasics>> = column!(entry => entry.stage.basics());
const STOPS_OF: Column<Option<CheckLaidOut>> = column!(entry => entry.stage.stops());
const ADVICE_OF: Column<Option<CheckLaidOut>> = column!(entry => entry.stage.advice());
const PROOF_OF: Column<Option<CheckProof>> = column!(entry => entry.stage.proof());

/// The checks of each stage, in the order of the rules.
pub(super) static BASICS: [Option<CheckBasics>; BASICS_OF.count()] = BASICS_OF.closed_up();
pub(super) static STOPS: [Option<CheckLaidOut>; STOPS_OF.count()] = STOPS_OF.closed_up();
pub(super) static ADVICE: [Option<CheckLaidOut>; ADVICE_OF.count()] = ADVICE_OF.closed_up();
pub(super) static PROOF: [Option<CheckProof>; PROOF_OF.count()] = PROOF_OF.closed_up();

impl Stage {
    const fn basics(self) -> Option<CheckBasics> {
        match self {
            Self::Basics(By(check)) => Some(check),
            Self::Basics(With(_))
            | Self::Stops(_)
            | Self::StopsWhole(_)
            | Self::Advice(_)
            | Self::StopsAndAdvice(..)
            | Self::Proof(_)
            | Self::Order => None,
        }
    }

    const fn stops(self) -> Option<CheckLaidOut> {
        match self {
            Self::Stops(By(check)) | Self::StopsAndAdvice(check, _) => Some(CheckLaidOut { check, is_of_whole: false }),
            Self::StopsWhole(check) => Some(CheckLaidOut { check, is_of_whole: true }),
            Self::Basics(_) | Self::Stops(With(_)) | Self::Advice(_) | Self::Proof(_) | Self::Order => None,
        }
    }

    const fn advice(self) -> Option<CheckLaidOut> {
        match self {
            Self::Advice(By(check)) | Self::StopsAndAdvice(_, check) => {
                Some(CheckLaidOut { check, is_of_whole: false })
            }
            Self::Basics(_)
            | Self::Stops(_)
            | Self::StopsWhole(_)
            | Self::Advice(With(_))
            | Self::Proof(_)
            | Self::Order => None,
        }
    }

    const fn proof(self) -> Option<CheckProof> {
        match self {
            Self::Proof(check) => Some(check),
            Self::Basics(_)
            | Self::Stops(_)
            | Self::StopsWhole(_)
            | Self::Advice(_)
            | Self::StopsAndAdvice(..)
            | Self::Order => None,
        }
    }

    /// Whether a check that stands at another rule is one of the same stage.
    const fn stands_well(self) -> bool {
        match self {
            Self::Basics(With(first)) => entry(first).stage.basics().is_some(),
            Self::Stops(With(first)) => entry(first).stage.stops().is_some(),
            Self::Advice(With(first)) => entry(first).stage.advice().is_some(),
            Self::Basics(By(_))
            | Self::Stops(By(_))
            | Self::StopsWhole(_)
            | Self::Advice(By(_))
            | Self::StopsAndAdvice(..)
            | Self::Proof(_)
            | Self::Order => true,
        }
    }
}

const _: () = {
    let mut number = 0;
    while number < Rule::ALL.len() {
        assert!(entry(Rule::ALL[number]).stage.stands_well(), "a check stands at a rule of another stage");
        number += 1;
    }
};

#[cfg(test)]
mod tests;
