//! The one pure function in the middle: everything that follows from a range, a choice, a day and
//! a backlog.

use crate::business::built::Built;
use crate::business::price::Price;
use crate::business::promise::{Backlog, Promise};
use crate::cabinet::assembly::Assembly;
use crate::cabinet::layout::Picked;
use crate::choice::Choice;
use crate::input::seal::Digest;
use crate::order::parts::Parts;
use crate::range::Range;
use crate::rules::finding::{Finding, Severity};
use crate::rules::{Judged, Proof, judge, judge_stops, order_day, promised, prove, tether};
use crate::solver::kept::Visit;
use crate::solver::remedy;
use crate::units::day::Day;
use crate::units::quantity::Mass;

/// Everything that is known about a choice.
#[derive(Clone, Debug)]
pub struct Derived<'a> {
    /// The range it was derived with.
    pub range: &'a Range,
    /// What was picked.
    pub choice: &'a Choice,
    /// The day of asking.
    pub today: Day,
    /// Work that was booked on that day.
    pub backlog: &'a Backlog,
    /// What the rules say, in the order of checking.
    pub findings: Vec<Finding>,
    /// What can be built of it, if anything.
    pub built: Option<Built>,
    /// How it goes together, and the proof that it holds; `None` if nothing is built, or nobody asked.
    pub assembly: Option<Assembly>,
}

/// A unit that nothing stops and that is proven to hold: only this becomes an order spec.
#[derive(Clone, Copy, Debug)]
pub struct Orderable<'a> {
    derived: &'a Derived<'a>,
    built: &'a Built,
    promise: &'a Promise,
}

/// Derives everything from a choice; any choice, however absurd, gives findings.
pub fn derive<'a>(range: &'a Range, choice: &'a Choice, today: Day, backlog: &'a Backlog) -> Derived<'a> {
    let mut judged = judge(range, choice);
    // What has no day has no other answer that was tried for it: a way out is judged without one.
    remedy::add(range, choice, None, &mut judged.findings);
    let mut derived = from_judged(judged, range, choice, today, backlog);
    if let Some((picked, built)) = Picked::of(range, choice).zip(derived.built.as_ref()) {
        let assembly = Assembly::of(picked, &built.cut.case);
        let proof = Proof { assembly: &assembly, layout: &built.layout, build: &range.build };
        prove(&mut derived.findings, proof);
        derived.assembly = Some(assembly);
    }
    // No other answer makes an earlier day of it.
    order_day::check(&mut derived.findings, range, today);
    derived
}

/// What the rules say of a choice, with remedies that break nothing that was given for a visit; all but the proof of
/// assembly.
pub fn advise(range: &Range, choice: &Choice, visit: Option<&Visit>) -> Vec<Finding> {
    let mut findings = judge(range, choice).findings;
    remedy::add(range, choice, visit, &mut findings);
    findings
}

/// Derives all that has to be there while somebody chooses: everything but advice and remedies, which may come
/// a little later, and the proof of assembly, which no valid unit fails. Nothing can be ordered of it.
pub fn derive_unproven<'a>(range: &'a Range, choice: &'a Choice, today: Day, backlog: &'a Backlog) -> Derived<'a> {
    let mut derived = from_judged(judge_stops(range, choice), range, choice, today, backlog);
    order_day::check(&mut derived.findings, range, today);
    derived
}

fn from_judged<'a>(
    mut judged: Judged<'a>,
    range: &'a Range,
    choice: &'a Choice,
    today: Day,
    backlog: &'a Backlog,
) -> Derived<'a> {
    let mut findings = core::mem::take(&mut judged.findings);
    let built = judged.built(choice, (today, backlog)).map(|(built, no_day)| {
        if let Some(none) = no_day {
            promised::no_day(&mut findings, none);
        }
        built
    });
    if built.is_none() {
        promised::no_parts(&mut findings);
    }
    Derived { range, choice, today, backlog, findings, built, assembly: None }
}

impl<'a> Derived<'a> {
    /// The findings that stop the order.
    pub fn stops(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().filter(|finding| finding.severity == Severity::Stops)
    }

    /// Whether nothing stops the order, as far as was looked.
    pub fn is_free(&self) -> bool {
        self.built.is_some() && self.stops().next().is_none()
    }

    /// Whether the unit has to be fastened to the wall; not while nothing is built.
    pub fn is_tethered(&self) -> bool {
        let made = Picked::of(self.range, self.choice).zip(self.built.as_ref());
        made.is_some_and(|(picked, built)| tether::is_asked(picked, self.choice, &built.layout, &built.cut))
    }

    /// The unit as something that can be ordered; `None` while anything stops it or its proof is not there.
    pub fn orderable(&'a self) -> Option<Orderable<'a>> {
        let built = self.built.as_ref()?;
        let promise = built.promise.as_ref()?;
        let proven = self.assembly.as_ref().is_some_and(Assembly::is_proven);
        (proven && self.is_free()).then_some(Orderable { derived: self, built, promise })
    }
}

impl<'a> Orderable<'a> {
    /// The range it was derived with.
    pub fn range(self) -> &'a Range {
        self.derived.range
    }

    /// What was picked.
    pub fn choice(self) -> &'a Choice {
        self.derived.choice
    }

    /// The day of asking.
    pub fn today(self) -> Day {
        self.derived.today
    }

    /// Work that was booked on that day.
    pub fn backlog(self) -> &'a Backlog {
        self.derived.backlog
    }

    /// Mass of the whole.
    pub fn mass(self) -> Mass {
        self.built.whole.mass
    }

    /// What it costs.
    pub fn price(self) -> &'a Price {
        &self.built.price
    }

    /// When it can be there.
    pub fn promise(self) -> &'a Promise {
        self.promise
    }

    /// Digest of its parts.
    pub fn parts_digest(self) -> Digest {
        Parts::of(self.built).digest()
    }
}

#[cfg(test)]
mod tests;
