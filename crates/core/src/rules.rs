//! The rules that a unit has to keep. One file, one rule or one family of them: what is checked,
//! why, the formula with its source, what it depends on, and the tests. `table` says what there is of each; cards and
//! sentences are in [`crate::words`].

use core::cell::OnceCell;

use self::dependencies::{Context, Dependencies, Direction};
use self::table::CheckLaidOut;
use crate::business::bill::Bill;
use crate::business::built::Built;
use crate::business::job::Job;
use crate::business::material::Material;
use crate::business::price::price;
use crate::business::promise::{Backlog, NoDay, promise};
use crate::cabinet::assembly::Assembly;
use crate::cabinet::blank::{Blank, Blanks, Coated};
use crate::cabinet::case::WeighedCase;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::PanelId;
use crate::choice::Choice;
use crate::choice::question::Question;
use crate::range::{Build, Range};
use crate::rules::finding::{Finding, Severity};
use crate::units::day::Day;
use crate::units::money::Money;
use crate::units::quantity::{Dim, Mass};

pub mod at_once;
pub mod bearing;
pub mod carrying;
pub(crate) mod dependencies;
pub mod device;
pub mod finding;
pub mod fit;
pub mod frame;
pub mod headroom;
pub mod hole;
pub mod id;
pub mod interlock;
pub mod knock;
pub mod known;
pub mod leaf;
pub mod looks;
pub mod order_day;
pub mod place;
pub mod promised;
pub mod room;
pub mod sag;
pub mod sample;
pub mod screen;
pub mod sheet;
pub mod shelf_slot;
pub mod size;
pub mod slender;
mod table;
pub mod tether;
pub mod tip;

pub use crate::rules::id::Rule;
pub(crate) use table::{Kind, Remedies};

impl Rule {
    /// Whether it is of the basics: known names, limits, room. While they are broken nothing else is checked.
    pub fn is_basic(self) -> bool {
        table::ARE_BASICS.of(self)
    }

    /// What is tried against a finding of it that matters so much; `None` if none does.
    pub(crate) fn remedies(self, severity: Severity) -> Option<Remedies> {
        table::SEVERITIES.of(self).iter().find(|(known, _)| *known == severity).map(|(_, remedies)| *remedies)
    }
}

/// What a choice comes to: where everything stands, if it can stand at all, and what the rules say.
#[derive(Clone, Debug)]
pub struct Judged<'a> {
    /// What the choice names; `None` if the range lacks it.
    pub picked: Option<Picked<'a>>,
    /// Where everything stands; `None` if that leaves no room for the parts.
    pub layout: Option<Layout>,
    /// Findings in the order of checking, without remedies.
    pub findings: Vec<Finding>,
    /// The parts, if a rule asked for them.
    pub(crate) cut: Option<WeighedCase>,
    /// Their bill and the sheets that they take, if a rule asked for them.
    pub(crate) work: Option<(Bill, Vec<Material>)>,
}

impl Judged<'_> {
    /// What can be built of it, asked for on a day with a backlog; and why it has no day, if it has none.
    ///
    /// `None` if it leaves no room for the parts.
    pub(crate) fn built(self, choice: &Choice, dated: (Day, &Backlog)) -> Option<(Built, Option<NoDay>)> {
        let (picked, layout) = self.picked.zip(self.layout)?;
        // After advice the parts are there; else they are cut now.
        let cut = self.cut.or_else(|| WeighedCase::of(picked, choice, &layout))?;
        let job = match self.work {
            Some((bill, materials)) => Job { range: picked.range, finish: picked.finish, bill, materials },
            None => Job::of(&cut, picked),
        };
        Some(Built::of(layout, cut, job, dated))
    }

    /// What it costs at least and when it arrives at the earliest, by the area of its parts: nothing is nested for it.
    ///
    /// `None` if it leaves no room for the parts.
    pub(crate) fn at_least(self, choice: &Choice, (today, backlog): (Day, &Backlog)) -> Option<(Money, Option<Day>)> {
        let (picked, layout) = self.picked.zip(self.layout)?;
        let cut = self.cut.or_else(|| WeighedCase::of(picked, choice, &layout))?;
        let job = Job::at_least(&cut, picked);
        let arrives = promise(&job, today, backlog).ok().map(|promise| promise.arrives);
        Some((price(&job).total_minor, arrives))
    }

    /// Whether nothing stops the order.
    pub fn holds(&self) -> bool {
        self.layout.is_some() && self.stops().next().is_none()
    }

    /// The findings that stop the order.
    pub fn stops(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().filter(|finding| finding.severity == Severity::Stops)
    }
}

/// A choice with what the basics look at.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Basics<'a> {
    pub(crate) range: &'a Range,
    pub(crate) choice: &'a Choice,
    /// What the choice names; `None` if the range lacks it.
    pub(crate) picked: Option<Picked<'a>>,
    /// Where everything stands, whatever room that leaves.
    pub(crate) layout: Option<&'a Layout>,
}

/// A choice with all that the rules look at.
///
/// Rules judge the layout and the parts' blanks, so that every answer of every question can be judged while somebody
/// drags a size: parts are cut only where those leave it open, once for all rules.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Subject<'a> {
    pub(crate) picked: Picked<'a>,
    pub(crate) choice: &'a Choice,
    pub(crate) layout: &'a Layout,
    pub(crate) blanks: &'a [Blank],
    pub(crate) coated: Coated,
    cut: &'a OnceCell<Option<WeighedCase>>,
    work: &'a OnceCell<(Bill, Vec<Material>)>,
}

impl<'a> Subject<'a> {
    /// The parts, cut and weighed when the first rule asks for them.
    pub(crate) fn cut(self) -> Option<&'a WeighedCase> {
        self.cut.get_or_init(|| WeighedCase::of(self.picked, self.choice, self.layout)).as_ref()
    }

    /// The bill of the parts and the sheets that they take, nested when the first rule asks for them.
    pub(crate) fn work(self) -> Option<&'a (Bill, Vec<Material>)> {
        let cut = self.cut()?;
        Some(self.work.get_or_init(|| {
            let Job { bill, materials, .. } = Job::of(cut, self.picked);
            (bill, materials)
        }))
    }

    /// The heaviest part and its mass, if that is over `most`. Parts are cut only where their blanks are over it.
    pub(crate) fn heaviest_over(self, most: Mass) -> Option<(PanelId, Mass)> {
        let heavy = |blank: &&Blank| blank.most_mass(self.coated) > most;
        self.blanks.iter().find(heavy)?;
        let cut = self.cut()?;
        let weighed =
            self.blanks.iter().filter(heavy).filter_map(|blank| cut.mass(blank.id).map(|mass| (blank.id, mass)));
        weighed.max_by(|a, b| a.1.total_cmp(&b.1)).filter(|(_, mass)| *mass > most)
    }
}

/// Lays a choice out and checks every rule.
pub fn judge<'a>(range: &'a Range, choice: &Choice) -> Judged<'a> {
    check(range, choice, &[&table::STOPS, &table::ADVICE], Asked::All)
}

/// The same for what can stop an order alone.
pub fn judge_stops<'a>(range: &'a Range, choice: &Choice) -> Judged<'a> {
    check(range, choice, &[&table::STOPS], Asked::All)
}

/// The same for a search by some rules: what comes from all parts together is looked at only where none of these rules stops
/// the order otherwise, since it says less.
pub(crate) fn judge_for_search<'a>(range: &'a Range, choice: &Choice, rules: u64) -> Judged<'a> {
    check(range, choice, &[&table::STOPS], Asked::Search(rules))
}

/// What stops an order first, if anything does: no rule is checked after one that does.
pub fn first_stop(range: &Range, choice: &Choice) -> Option<Finding> {
    check(range, choice, &[&table::STOPS], Asked::First).findings.into_iter().next()
}

/// Whether nothing stops the order of a choice.
pub fn can_be_made(range: &Range, choice: &Choice) -> bool {
    first_stop(range, choice).is_none()
}

/// The proof of assembly of a unit with what it is judged by.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Proof<'a> {
    pub(crate) assembly: &'a Assembly,
    pub(crate) layout: &'a Layout,
    pub(crate) build: &'a Build,
}

/// Checks the proof of assembly of a unit.
pub(crate) fn prove(out: &mut Vec<Finding>, proof: Proof<'_>) {
    table::PROOF.iter().flatten().for_each(|check| check(out, proof));
}

/// Tells each question that a finding depends on, with the way where its answers lie on a line, and how far the
/// finding stays on that way.
pub(crate) fn each_dependency(finding: &Finding, context: Context<'_>, tell: impl FnMut(Question, Direction, Dim)) {
    let mut on = Dependencies::default();
    table::DEPENDENCIES.of(finding.rule)(&mut on, finding, context);
    on.each(finding, tell);
}

/// Which findings are asked for.
#[derive(Clone, Copy)]
enum Asked {
    All,
    First,
    /// What a search by these rules needs.
    Search(u64),
}

impl Asked {
    /// Whether a check need not be made after what was found.
    fn passes_over(self, is_of_whole: bool, found: &[Finding]) -> bool {
        match self {
            Self::All => false,
            Self::First => !found.is_empty(),
            Self::Search(rules) => is_of_whole && found.iter().any(|finding| finding.rule.bit() & rules != 0),
        }
    }
}

fn check<'a>(range: &'a Range, choice: &Choice, stages: &[&[Option<CheckLaidOut>]], asked: Asked) -> Judged<'a> {
    let mut findings = Vec::new();
    let (out, cut, work) = (&mut findings, OnceCell::new(), OnceCell::new());
    let picked = Picked::of(range, choice);
    let mut layout = picked.and_then(|picked| Layout::of(picked, choice));
    for check in table::BASICS.iter().flatten() {
        check(out, Basics { range, choice, picked, layout: layout.as_ref() });
    }
    if let Some((picked, laid)) = picked.zip(layout.as_ref()) {
        if !laid.has_room() {
            layout = None;
        } else if !out.iter().any(|finding| finding.severity == Severity::Stops) {
            // While the basics are wrong, everything that follows from them would only be noise.
            let (blanks, coated) = (Blanks { picked, layout: laid }.all(choice), Coated::of(picked));
            for CheckLaidOut { check, is_of_whole } in stages.iter().copied().flatten().flatten() {
                if !asked.passes_over(*is_of_whole, out) {
                    let (cut, work) = (&cut, &work);
                    check(out, Subject { picked, choice, layout: laid, blanks: &blanks, coated, cut, work });
                }
            }
        }
    }
    debug_assert!(findings.iter().all(|found| found.rule.remedies(found.severity).is_some()), "{findings:?}");
    Judged { picked, layout, findings, cut: cut.into_inner().flatten(), work: work.into_inner() }
}

/// Numbers things from 1, as people do.
pub(crate) fn numbered<T>(things: impl IntoIterator<Item = T>) -> impl Iterator<Item = (u8, T)> {
    (1..=u8::MAX).zip(things)
}

#[cfg(test)]
mod tests;
