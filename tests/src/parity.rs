//! What `tests/parity` compares: the same answers by a native program and by a WebAssembly module.
//!
//! A question is a line of three parts with tabs between them: `options`, `compact` or `solid`; a choice as JSON; and
//! what is kept, as words: pinned questions, `budget=` in minor units, `by=` and `today=` with days. Or it is `paper`,
//! nothing, and the name of a document; or `pack`, a list of choices as JSON, and `today=` with `effort=`.

use serde_json::{Value, json};
use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::question::Question;
use slotwright_core::input::members::{Place, parse};
use slotwright_core::input::seal::canonical;
use slotwright_core::order::derive::{derive, derive_unproven};
use slotwright_core::order::intake::KnownRange;
use slotwright_core::order::spec::{Customer, OrderSpec};
use slotwright_core::range::Range;
use slotwright_core::solver::kept::{Kept, Visit};
use slotwright_core::solver::states::{Reach, State, nearest, reaches, states};
use slotwright_core::solver::why::why_shut;
use slotwright_core::solver::{Answer, Size};
use slotwright_core::units::money::Money;
use slotwright_core::words;
use slotwright_core::words::file::Message;
use slotwright_cutpack::gltf;
use slotwright_cutpack::pack::{EFFORT_SLICE, Nesting, OrderRead, Orders, Settings};

use crate::{demo, paper};

/// The answer to a question; the reason if there is none.
pub fn answer(question: &str) -> Vec<u8> {
    said(question).unwrap_or_else(String::into_bytes)
}

fn said(question: &str) -> Result<Vec<u8>, String> {
    let mut parts = question.split('\t');
    let mut part = || parts.next().ok_or_else(|| format!("three parts are wanted: {question:?}"));
    let (what, choice, words) = (part()?, part()?, part()?);
    if what == "paper" {
        return paper::document(words).map(|written| written.bytes);
    }
    let range = demo().map_err(|problems| words::problems(&problems.0))?;
    if what == "pack" {
        return pack(&range, choice, words);
    }
    let choice =
        parse(choice).and_then(|value| Choice::read(Place::whole(value))).map_err(|error| words::unread(&error))?;
    match what {
        "options" => {
            let (pins, visit) = (pins(words)?, visit(words)?);
            let kept = Kept { pins: &pins, visit: visit.as_ref() };
            Ok(canonical(&options(&range, &choice, kept)).into_bytes())
        }
        "compact" => Ok(compact(&choice)),
        "solid" => solid(&range, &choice, words).ok_or_else(|| "it cannot be made".into()),
        _ => Err(format!("{what:?} cannot be asked")),
    }
}

fn figure<'a>(words: &'a str, name: &str) -> Option<&'a str> {
    words.split_whitespace().find_map(|word| word.strip_prefix(name)?.strip_prefix('='))
}

fn pins(words: &str) -> Result<Vec<Question>, String> {
    let pins = words.split_whitespace().filter(|word| !word.contains('='));
    pins.map(|pin| pin.parse().map_err(|wrong| Message::Question(&wrong).text())).collect()
}

fn visit(words: &str) -> Result<Option<Visit>, String> {
    let Some(today) = figure(words, "today") else { return Ok(None) };
    let day = |text: &str| text.parse().map_err(|wrong| words::no_day(&wrong));
    let minor = figure(words, "budget").map(str::parse).transpose().map_err(|error| format!("{error}"))?;
    let by = figure(words, "by").map(day).transpose()?;
    Ok(Some(Visit { budget: minor.map(Money::minor), by, today: day(today)?, backlog: Backlog::default() }))
}

/// The states of all answers, with the sentences of all that is shut and of what else changes; none if the range lacks
/// the model.
fn options(range: &Range, choice: &Choice, kept: Kept<'_>) -> Option<Value> {
    let answers = states(range, choice, kept)?;
    let sizes = Size::ALL.map(|size| reaches(range, choice, size, kept));
    let shut = answers.all().filter(|answer| matches!(answer.state, State::Shut { .. }));
    let shut_sizes = Size::ALL
        .iter()
        .zip(&sizes)
        .flat_map(|(size, runs)| runs.iter().filter(|run| run.state.reach == Reach::Shut).map(|run| size.to(run.from)));
    let reasons = shut.map(|answer| answer.change.clone()).chain(shut_sizes).map(|change| {
        let why = why_shut(range, choice, &change, kept);
        let sentence = why.as_ref().map(|why| words::shut(why, &range.currency));
        let release = why.as_ref().and_then(|why| why.release.as_ref()).map(|release| words::release(release, range));
        json!({ "change": change, "why": why, "sentence": sentence, "release": release })
    });
    let reasons: Vec<Value> = reasons.collect();
    let shifts = answers.all().filter_map(|Answer { state, .. }| match state {
        State::Shifts { reason, changes } => Some([words::sentence(reason), words::together(changes, range)]),
        State::Open | State::Shut { .. } | State::Unfound { .. } => None,
    });
    let shifts: Vec<[String; 2]> = shifts.collect();
    let nearest = nearest(range, choice, kept);
    Some(json!({ "answers": answers, "sizes": sizes, "reasons": reasons, "shifts": shifts, "nearest": nearest }))
}

/// The compact text, and the choice that is read from it.
fn compact(choice: &Choice) -> Vec<u8> {
    let text = choice.to_compact();
    let read = Choice::of_compact(&text);
    canonical(&json!({ "text": text, "read": read })).into_bytes()
}

/// The unit as a binary glTF file.
fn solid(range: &Range, choice: &Choice, words: &str) -> Option<Vec<u8>> {
    let (today, backlog) = (figure(words, "today")?.parse().ok()?, Backlog::default());
    gltf::glb(&derive_unproven(range, choice, today, &backlog))
}

/// The manifest of the pack of some choices, each ordered on that day: it has the digest of every other file.
fn pack(range: &Range, choices: &str, words: &str) -> Result<Vec<u8>, String> {
    let day = figure(words, "today").ok_or("no day")?;
    let day = day.parse().map_err(|wrong| words::no_day(&wrong))?;
    let effort = figure(words, "effort").and_then(|effort| effort.parse().ok()).ok_or("no effort")?;
    let Ok(Value::Array(choices)) = parse(choices) else { return Err("a list of choices is wanted".into()) };
    let (known, backlog) = ([KnownRange::of(range.clone(), range.clone())], Backlog::default());
    let mut read = Vec::new();
    for (number, choice) in (1..).zip(choices) {
        let choice = Choice::read(Place::whole(choice)).map_err(|error| words::unread(&error))?;
        let derived = derive(range, &choice, day, &backlog);
        let orderable = derived.orderable().ok_or("it cannot be ordered")?;
        let customer = Customer { name: "A. Reed".into(), contact: "-".into(), address: vec!["1 Dyke Lane".into()] };
        let spec = OrderSpec::new(orderable, customer, String::new()).map_err(|bad| bad.message().text())?;
        read.push(OrderRead::of(number, format!("{number}.json"), spec.to_text().as_bytes(), &known));
    }
    let (orders, settings) = (Orders::of(&read), Settings::default());
    let mut nesting = Nesting::begin(&orders, &settings, None).map_err(|none| none.text())?;
    while nesting.spend(effort, EFFORT_SLICE) {}
    let (mut files, _) = nesting.pack().files();
    files.pop().map(|manifest| manifest.bytes).ok_or_else(|| "no manifest".into())
}
