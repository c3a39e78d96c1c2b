//! Names of parts, questions and what bays hold, as they stand within sentences and alone.

use super::LOCALE;
use super::count::{number_of, number_of_first};
use crate::cabinet::panel::{Edge, End, PanelId};
use crate::choice::question::Question;
use crate::choice::{Fill, Hung};
use crate::solver::kept::Given;
use crate::units::quantity::Dim;

/// A part, without article.
pub(in crate::words) fn part(id: PanelId) -> String {
    match id {
        PanelId::PlinthFront => "front plinth board".into(),
        PanelId::PlinthRear => "rear plinth board".into(),
        PanelId::Bearer(number) => format!("bearer {number}"),
        PanelId::BaseLower => "lower base plate".into(),
        PanelId::BaseUpper => "upper base plate".into(),
        PanelId::Upright(number) => format!("upright {number}"),
        PanelId::Back => "back".into(),
        PanelId::Shelf { bay, row } => format!("shelf {row} of bay {bay}"),
        PanelId::Stile(number) => format!("stile {number}"),
        PanelId::Stop(bay) => format!("door stop of bay {bay}"),
        PanelId::Leaf(bay) => format!("door of bay {bay}"),
        PanelId::Stave { end: End::Left, number } => format!("stave {number} of the left end"),
        PanelId::Stave { end: End::Right, number } => format!("stave {number} of the right end"),
        PanelId::Top => "top".into(),
    }
}

/// The first of some parts, without article.
pub(super) fn parts(parts: &[PanelId]) -> String {
    parts.first().map_or_else(|| "part".into(), |first| part(*first))
}

/// The first of some parts at the beginning of a sentence: what has a number needs no article.
pub(super) fn the_parts(parts: &[PanelId]) -> String {
    let [first, others @ ..] = parts else { return "A part".into() };
    let first = match *first {
        PanelId::Bearer(number) => format!("Bearer {number}"),
        PanelId::Upright(number) => format!("Upright {number}"),
        PanelId::Shelf { bay, row } => format!("Shelf {row} of bay {bay}"),
        PanelId::Stile(number) => format!("Stile {number}"),
        PanelId::Stave { end: End::Left, number } => format!("Stave {number} of the left end"),
        PanelId::Stave { end: End::Right, number } => format!("Stave {number} of the right end"),
        PanelId::PlinthFront
        | PanelId::PlinthRear
        | PanelId::BaseLower
        | PanelId::BaseUpper
        | PanelId::Back
        | PanelId::Stop(_)
        | PanelId::Leaf(_)
        | PanelId::Top => {
            format!("The {}", part(*first))
        }
    };
    if others.is_empty() { first } else { format!("{first} and others") }
}

/// A part within a sentence: what has a number needs no article.
fn the_part(id: PanelId) -> String {
    match id {
        PanelId::Bearer(_)
        | PanelId::Upright(_)
        | PanelId::Shelf { .. }
        | PanelId::Stile(_)
        | PanelId::Stave { .. } => part(id),
        PanelId::PlinthFront
        | PanelId::PlinthRear
        | PanelId::BaseLower
        | PanelId::BaseUpper
        | PanelId::Back
        | PanelId::Stop(_)
        | PanelId::Leaf(_)
        | PanelId::Top => {
            format!("the {}", part(id))
        }
    }
}

/// All of some parts, each with its article if it has one.
pub(super) fn all_parts(parts: &[PanelId]) -> String {
    if parts.is_empty() {
        return "no part".into();
    }
    LOCALE.list(parts.iter().map(|id| the_part(*id)))
}

/// Edges of a part, as it stands in the unit.
pub(in crate::words) fn edges(id: PanelId, edges: &[Edge]) -> String {
    if edges.len() == Edge::ALL.len() {
        return "all four".into();
    }
    // What is at the front or to the left is named first.
    let named = [Edge::Left, Edge::Right, Edge::Bottom, Edge::Top].into_iter().filter(|at| edges.contains(at));
    LOCALE.list(named.map(|at| edge(id, at).into()))
}

/// An edge: lying parts have v to the rear, uprights and bearers have u to the rear, all others face the front.
const fn edge(id: PanelId, edge: Edge) -> &'static str {
    let [left, right, bottom, top] = match id {
        PanelId::BaseLower | PanelId::BaseUpper | PanelId::Top | PanelId::Shelf { .. } => {
            ["left", "right", "front", "rear"]
        }
        PanelId::Upright(_) | PanelId::Stop(_) | PanelId::Bearer(_) => ["front", "rear", "bottom", "top"],
        PanelId::PlinthFront
        | PanelId::PlinthRear
        | PanelId::Back
        | PanelId::Stile(_)
        | PanelId::Stave { .. }
        | PanelId::Leaf(_) => ["left", "right", "bottom", "top"],
    };
    match edge {
        Edge::Left => left,
        Edge::Right => right,
        Edge::Bottom => bottom,
        Edge::Top => top,
    }
}

/// What a question is about, without article.
pub(in crate::words) fn question(question: Question) -> String {
    match question {
        Question::Place => "place".into(),
        Question::Model => "model".into(),
        Question::Width => "width".into(),
        Question::Height => "height".into(),
        Question::Depth => "depth".into(),
        Question::Bays => "number of bays".into(),
        Question::Bay(number) => format!("bay {number}"),
        Question::Shares => "shares of the width".into(),
        Question::Hole(number) => format!("hole in bay {number}"),
        Question::Device(number) => format!("device in bay {number}"),
        Question::Back => "back".into(),
        Question::Finish => "finish".into(),
        Question::Corners => "corners".into(),
        Question::Plinth => "plinth".into(),
        Question::Bow => "bow of the ends".into(),
        Question::Bowed => "bowed ends".into(),
    }
}

/// What some questions are about, each with its article if it has one, and what was given.
pub(in crate::words) fn kept(questions: &[Question], given: &[Given]) -> String {
    let asked = questions.iter().map(|asked| match asked {
        // A bay has a number instead.
        Question::Bay(_) => question(*asked),
        Question::Place
        | Question::Model
        | Question::Width
        | Question::Height
        | Question::Depth
        | Question::Bays
        | Question::Shares
        | Question::Hole(_)
        | Question::Device(_)
        | Question::Back
        | Question::Finish
        | Question::Corners
        | Question::Plinth
        | Question::Bow
        | Question::Bowed => format!("the {}", question(*asked)),
    });
    let given = given.iter().map(|given| match given {
        Given::Wall => "the wall".into(),
        Given::Screen => "the screen".into(),
        Given::Budget => "the budget".into(),
        Given::Day => "the day".into(),
    });
    LOCALE.list(asked.chain(given))
}

/// What a bay holds, standing alone.
pub(in crate::words) fn fill(fill: Fill) -> String {
    match fill {
        Fill::Open => "Open".into(),
        Fill::Shelves(count) => number_of_first(count, "shelf", "shelves"),
        Fill::Leaf(Hung::Left) => "Door, hung left".into(),
        Fill::Leaf(Hung::Right) => "Door, hung right".into(),
    }
}

/// What a bay holds, within a sentence.
pub(in crate::words) fn fill_within(fill: Fill) -> String {
    match fill {
        Fill::Open => "open".into(),
        Fill::Shelves(count) => number_of(count, "shelf", "shelves"),
        Fill::Leaf(Hung::Left) => "door, hung left".into(),
        Fill::Leaf(Hung::Right) => "door, hung right".into(),
    }
}

/// Where a hole is in its bay.
pub(in crate::words) fn offset(offset: Dim) -> String {
    match offset.in_tenths() {
        0 => "in the middle".into(),
        tenths @ ..0 => format!("{} left", LOCALE.length(Dim::tenths(tenths.saturating_neg()))),
        1.. => format!("{} right", LOCALE.length(offset)),
    }
}
