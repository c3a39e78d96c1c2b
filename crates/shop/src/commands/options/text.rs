//! The states of all answers, for people: question by question, with a sentence for every reason.

use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::rules::judge_stops;
use slotwright_core::solver::states::{Reach, State};
use slotwright_core::solver::{Answer, Size};
use slotwright_core::words;
use slotwright_core::words::tool::{Label, Message};

use super::{OptionsDocument, SizeRun};
use crate::table;

/// A mark for what is chosen, the answer, whether it can be had, and why not or with what.
type Row = [String; 4];

pub(super) fn lines(range: &Range, document: &OptionsDocument) -> Vec<String> {
    let choice = &document.choice;
    let named = |name: Option<&String>, key: &dyn ToString| name.cloned().unwrap_or_else(|| key.to_string());
    let model = named(range.model(&choice.model).map(|model| &model.name), &choice.model);
    let finish = named(range.finish(&choice.finish).map(|finish| &finish.name), &choice.finish);
    let sizes = [choice.width_mm, choice.height_mm, choice.depth_mm].map(words::size).join(" × ");
    let unit = Message::UnitOf { model: &model, range: &range.name, sizes: &sizes, finish: &finish };
    let mut lines = vec![unit.text()];
    lines.extend(verdict(range, document));
    let (answers, mut blocks) = (&document.answers, Vec::new());
    let block = |about: Question, answers: &[Answer<State>]| {
        (about, answers.iter().map(|answer| row(range, document, answer)).collect::<Vec<Row>>())
    };
    let sets = [&document.width, &document.height, &document.depth, &document.bow];
    let offered = |size: Size| size != Size::Bow || !answers.bowed.is_empty();
    for (size, runs) in Size::ALL.into_iter().zip(sets).filter(|(size, _)| offered(*size)) {
        blocks.push((size.question(), runs.iter().map(|run| size_row(range, document, size, run)).collect()));
    }
    blocks.push(block(Question::Bays, &answers.bay_counts));
    for (bay, of_bay) in (1..=u8::MAX).zip(&answers.bays) {
        blocks.push(block(Question::Bay(bay), &of_bay.fills));
        blocks.push(block(Question::Hole(bay), &of_bay.holes));
        blocks.push(block(Question::Device(bay), &of_bay.devices));
    }
    blocks.push(block(Question::Back, &answers.backs));
    blocks.push(block(Question::Finish, &answers.finishes));
    blocks.push(block(Question::Corners, &answers.corners));
    if !answers.plinths.is_empty() {
        blocks.push(block(Question::Plinth, &answers.plinths));
    }
    if !answers.bowed.is_empty() {
        blocks.push(block(Question::Bowed, &answers.bowed));
    }
    for (about, rows) in blocks {
        let name = words::question(about);
        let kept = document.pins.contains(&about).then(|| Message::Kept(&name).text());
        lines.extend([String::new(), kept.unwrap_or(name)]);
        lines.extend(table::lines("  ", &rows));
    }
    lines.extend([String::new(), Label::RowOfSizes.text().into()]);
    lines
}

/// Whether the choice itself can be made, and with what.
fn verdict(range: &Range, document: &OptionsDocument) -> Vec<String> {
    match document.nearest.as_deref() {
        Some([]) => vec![Label::Makeable.text().into()],
        way => {
            let mut lines = vec![Label::NotMakeable.text().into()];
            let stops = judge_stops(range, &document.choice).findings;
            lines.extend(stops.iter().map(|finding| format!("  {}", words::sentence(finding))));
            lines.push(match way {
                Some(changes) => Message::WithThese(&words::together(changes, range)).text(),
                None => Label::NoChanges.text().into(),
            });
            lines
        }
    }
}

fn row(range: &Range, document: &OptionsDocument, answer: &Answer<State>) -> Row {
    let (state, why) = match &answer.state {
        State::Open => (Label::Open, String::new()),
        State::Shifts { reason, changes } => (Label::WithChanges, with(&words::reason(reason), changes, range)),
        State::Shut { reason, .. } => {
            let told = why(range, document, &answer.change);
            (Label::Shut, told.unwrap_or_else(|| words::reason(reason)))
        }
        State::Unfound { reason } => (Label::NotFound, words::given_up(reason)),
    };
    let mark = if answer.taken { "*" } else { " " };
    [mark.into(), words::change(&answer.change, range), state.text().into(), why]
}

fn size_row(range: &Range, document: &OptionsDocument, size: Size, run: &SizeRun) -> Row {
    let (from, to, reached) = (run.run.from, run.run.to, &run.run.state);
    let reason = || reached.reason.as_ref().map(words::reason).unwrap_or_default();
    let is_taken = (from..=to).contains(&size.of(&document.choice));
    let (state, why) = match (reached.reach, &run.changes) {
        (Reach::Open, _) => (Label::Open, String::new()),
        (Reach::Shifts, Some(changes)) => (Label::WithChanges, with(&reason(), changes, range)),
        (Reach::Shifts, None) => (Label::WithChanges, reason()),
        // The present size can be made, though it does not suit wall or screen.
        (Reach::Shut, _) if is_taken && document.nearest.as_ref().is_some_and(Vec::is_empty) => {
            (Label::Unsuited, reason())
        }
        (Reach::Shut, _) => {
            let told = why(range, document, &size.to(from));
            (Label::Shut, told.unwrap_or_else(reason))
        }
        (Reach::Unfound, _) => (Label::NotFound, reached.reason.as_ref().map(words::given_up).unwrap_or_default()),
    };
    let mark = if is_taken { "*" } else { " " };
    let shown =
        if from == to { words::length(from) } else { Message::FromTo(&words::size(from), &words::size(to)).text() };
    [mark.into(), shown, state.text().into(), why]
}

/// What stops it alone, and with what it goes.
fn with(reason: &str, changes: &[Change], range: &Range) -> String {
    Message::AsWell(reason, &words::to_do(changes, range)).text()
}

/// Why an answer is shut, and what to let go for it.
fn why(range: &Range, document: &OptionsDocument, change: &Change) -> Option<String> {
    let why = &document.why.iter().find(|explained| explained.change == *change)?.why;
    let reason = words::shut(why, &range.currency);
    let Some(release) = &why.release else { return Some(reason) };
    Some(Message::ShutUnless(&reason, &words::release(release, range)).text())
}
