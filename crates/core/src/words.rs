//! Texts for people: messages as data, and the one place that turns them into sentences.
//!
//! What is to be said is data with figures: a finding, a change, a step of assembly, a rule, or what
//! `message` has. A catalogue, `english`, says it in whole sentences; figures in them are written by [`format`]. Names
//! from the range stand in sentences as the range writes them. Another language is a variant of [`Locale`] and a folder beside `english`: each
//! function here then asks for it.

pub mod adviser;
pub mod desk;
pub mod did;
pub mod draft;
mod english;
pub mod entry;
pub mod file;
mod finding;
pub mod finishing;
pub mod format;
pub mod help;
pub mod link;
pub mod locale;
mod message;
mod names;
pub mod needed;
pub mod pack;
pub mod page;
pub mod paper;
pub mod picture;
pub mod reader;
pub(crate) mod remark;
mod say;
pub mod sheet;
pub mod shell;
pub mod stage;
pub mod tool;
pub mod workshop;

use crate::cabinet::assembly::{Disturbed, Step, Turn};
use crate::cabinet::panel::{Edge, PanelId};
use crate::choice::Fill;
use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::input::entry::{Expected, Refused};
use crate::input::fault::ReadError;
use crate::range::{Problem, Range, Wrong};
use crate::rules::finding::Finding;
use crate::rules::id::Rule;
use crate::rules::tether::Tethers;
use crate::solver::kept::{Beyond, Given};
use crate::solver::why::{Release, Why};
use crate::units::day::{Day, NotADay};
use crate::units::money::Money;
use crate::units::quantity::{Dim, Length, Mass};
use remark::{Remark, Typo};

use locale::Locale;
use message::{Proposal, Refusal};
use names::Names;

/// In which language everything is said.
const LOCALE: Locale = Locale::English;

/// What a rule is for, shown one step deeper than its sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Card {
    /// What is checked.
    pub what: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// Where formula and limit come from.
    pub source: &'static str,
}

/// A number with at most that many decimals, the trailing zeros left out.
pub fn decimal(value: f64, decimals: u32) -> String {
    LOCALE.decimal(value, decimals)
}

/// A number with that many decimals, the trailing zeros too: what stands in a column.
pub fn fixed(value: f64, decimals: u32) -> String {
    LOCALE.fixed(value, decimals)
}

/// A picked size in millimetres, without its unit.
pub fn size(dim: Dim) -> String {
    LOCALE.size(dim)
}

/// A picked size with its unit.
pub fn length(dim: Dim) -> String {
    LOCALE.length(dim)
}

/// A computed length to a tenth of a millimetre, with its unit.
pub fn distance(length: Length) -> String {
    LOCALE.distance(length)
}

/// A mass in kilograms with at most one decimal.
pub fn mass(mass: Mass) -> String {
    LOCALE.mass(mass)
}

/// A mass in kilograms, rounded to the gram, without its unit.
pub fn kilograms(mass: Mass) -> String {
    LOCALE.kilograms(mass)
}

/// An amount with its hundredths, without its currency.
pub fn amount(amount: Money) -> String {
    LOCALE.amount(amount)
}

/// An amount with its hundredths and its currency.
pub fn money(amount: Money, currency: &str) -> String {
    LOCALE.money(amount, currency)
}

/// A day as people say it on another one: `Fri 18 December`, with its year if that is another one.
pub fn day(day: Day, today: Day) -> String {
    LOCALE.day(day, today)
}

/// A day with its year, whatever day it is today: what is filed is read in other years.
pub fn dated(day: Day) -> String {
    LOCALE.dated(day)
}

/// The sentence of any finding.
pub fn sentence(finding: &Finding) -> String {
    finding::sentence(LOCALE, finding)
}

/// The sentence of a finding that stops the order.
pub fn reason(finding: &Finding) -> String {
    finding::reason(LOCALE, finding)
}

/// The card of a rule.
pub const fn card(rule: Rule) -> Card {
    match LOCALE {
        Locale::English => english::card::card(rule),
    }
}

/// The card of what was given for a visit.
pub const fn given_card() -> Card {
    match LOCALE {
        Locale::English => english::card::given(),
    }
}

/// What a field says of an entry that it does not take: examples of what it reads, or its bounds.
pub fn refused(expected: Expected, refused: Refused) -> String {
    match LOCALE {
        Locale::English => english::entry::refused(expected, refused),
    }
}

/// What a field says of a size that lies between those that are offered, of which the nearest was taken.
pub fn between_sizes(typed: Dim, taken: Dim) -> String {
    match LOCALE {
        Locale::English => english::entry::between_sizes(typed, taken),
    }
}

/// The name of a part.
pub fn part(id: PanelId) -> String {
    match LOCALE {
        Locale::English => english::name::part(id),
    }
}

/// The names of edges of a part, as it stands in the unit: `front and rear`.
pub fn edges(id: PanelId, edges: &[Edge]) -> String {
    match LOCALE {
        Locale::English => english::name::edges(id, edges),
    }
}

/// What a question is about, within a sentence.
pub fn question(question: Question) -> String {
    match LOCALE {
        Locale::English => english::name::question(question),
    }
}

/// What is kept, after «you keep».
pub fn kept(pins: &[Question]) -> String {
    match LOCALE {
        Locale::English => english::name::kept(pins, &[]),
    }
}

/// How a unit goes beyond what was given for a visit; of wall and screen findings tell.
pub fn beyond(beyond: Beyond, currency: &str) -> String {
    match LOCALE {
        Locale::English => english::given::beyond(beyond, currency),
    }
}

/// What to press to let go of what was given: `Let the budget go`.
pub fn let_go(given: Given) -> String {
    match LOCALE {
        Locale::English => english::given::let_go(given),
    }
}

/// What a bay holds.
pub fn fill(fill: Fill) -> String {
    match LOCALE {
        Locale::English => english::name::fill(fill),
    }
}

/// What a bay holds, within a sentence.
pub fn fill_within(fill: Fill) -> String {
    match LOCALE {
        Locale::English => english::name::fill_within(fill),
    }
}

/// Where a hole is in its bay.
pub fn offset(offset: Dim) -> String {
    match LOCALE {
        Locale::English => english::name::offset(offset),
    }
}

/// What a change does, as a thing to do: `Make it 1 400 mm wide`.
pub fn change(change: &Change, range: &Range) -> String {
    match LOCALE {
        Locale::English => english::change::alone(change, Names(range)),
    }
}

/// Changes that are proposed, and what else is done with them.
fn proposal(proposal: Proposal<'_>, range: &Range) -> String {
    match LOCALE {
        Locale::English => english::message::proposal(proposal, Names(range)),
    }
}

/// Why an answer is shut.
fn refusal(refusal: &Refusal<'_>) -> String {
    match LOCALE {
        Locale::English => english::message::refusal(refusal),
    }
}

/// Changes that are done together, within a sentence: `make it 1 400 mm wide and put no device in bay 2`.
pub fn together(changes: &[Change], range: &Range) -> String {
    proposal(Proposal::Within(changes), range)
}

/// The same standing alone: `Make it 1 400 mm wide and put no device in bay 2`.
pub fn to_do(changes: &[Change], range: &Range) -> String {
    proposal(Proposal::Alone(changes), range)
}

/// What to press to take an answer with other changes: `Take this and make it 520 mm deep`.
pub fn take_with(changes: &[Change], range: &Range) -> String {
    proposal(Proposal::TakeWith(changes), range)
}

/// What to press to take a shut answer and let go of what is kept: `Let the depth go: take this and make it 520 mm
/// deep`.
pub fn release(release: &Release, range: &Range) -> String {
    proposal(Proposal::release(release), range)
}

/// What to press to make a change that lets go of what is kept: `Let the width go and make it 1 400 mm wide`.
pub fn letting_go(pin: Question, change: &Change, range: &Range) -> String {
    proposal(Proposal::LetGoAnd { pin, change }, range)
}

/// Why an answer is shut, for the customer; prices are in that currency.
pub fn shut(why: &Why, currency: &str) -> String {
    refusal(&Refusal::of(why, currency))
}

/// Why an answer is shut of which no more was found out.
pub fn given_up(reason: &Finding) -> String {
    refusal(&Refusal::NoWay(reason))
}

/// What an audit says of a place of a range file.
pub fn remark(remark: &Remark) -> String {
    match LOCALE {
        Locale::English => english::remark::remark(remark),
    }
}

/// What a typo in a range file is.
pub(crate) fn typo(typo: Typo<'_>) -> String {
    match LOCALE {
        Locale::English => english::remark::typo(typo),
    }
}

/// What is wrong at a place of a range file.
pub fn wrong(wrong: &Wrong) -> String {
    match LOCALE {
        Locale::English => english::wrong::wrong(wrong),
    }
}

/// The same with the name that was probably meant.
pub(crate) fn suggestion(wrong: &Wrong, meant: &str) -> String {
    match LOCALE {
        Locale::English => english::wrong::suggestion(wrong, meant),
    }
}

/// A problem of a range file with its place: line, column, and the place in the file's own names.
pub fn problem(problem: &Problem) -> String {
    let Problem { line, column, path, wrong: what } = problem;
    let place = if path.is_empty() { String::new() } else { format!("{path}: ") };
    format!("{line}:{column}: {place}{}", wrong(what))
}

/// All problems of a range file, a line each.
pub fn problems(problems: &[Problem]) -> String {
    problems.iter().map(problem).collect::<Vec<_>>().join("\n")
}

/// Why a JSON text is not what was asked for.
pub fn unread(error: &ReadError) -> String {
    match LOCALE {
        Locale::English => english::json::unread(error),
    }
}

/// Why a text is no day.
pub fn no_day(wrong: &NotADay) -> String {
    match LOCALE {
        Locale::English => english::json::day(wrong),
    }
}

/// What to do in a step of assembly: of a unit that is fastened to the wall, or of one that is not.
pub fn step(step: &Step, tethers: Option<Tethers>) -> String {
    match LOCALE {
        Locale::English => english::assembly::step(step, tethers),
    }
}

/// What to do when all parts are in: with a unit that is fastened to the wall, or one that is not.
pub fn last_step(tethered: bool) -> String {
    match LOCALE {
        Locale::English => english::assembly::last_step(tethered),
    }
}

/// Which way round the part of a step goes in, where it goes in by wrong turns as well and nothing else tells that in time; paper says
/// it.
pub fn way_round(step: &Step, wrong: &[Turn]) -> Option<&'static str> {
    match LOCALE {
        Locale::English => english::assembly::way_round(step, wrong),
    }
}

/// What a step weighs and how many people it takes.
pub fn burden(step: &Step) -> String {
    match LOCALE {
        Locale::English => english::assembly::burden(step),
    }
}

/// What comes free, and what to do about it.
pub fn disturbed(disturbed: &Disturbed) -> String {
    match LOCALE {
        Locale::English => english::assembly::disturbed(disturbed),
    }
}

/// The same of all that may be done to a unit: ways of laying it down that let the same parts go are told in one sentence.
pub fn all_disturbed(all: &[Disturbed]) -> Vec<String> {
    match LOCALE {
        Locale::English => english::assembly::all_disturbed(all),
    }
}

/// What everybody who puts a unit together should know.
pub const CAUTIONS: [&str; 2] = match LOCALE {
    Locale::English => english::assembly::CAUTIONS,
};

#[cfg(test)]
mod tests;
