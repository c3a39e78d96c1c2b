//! What is said aloud of the unit as a whole.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::question::Question;
use slotwright_core::rules::finding::{Finding, Severity};
use slotwright_core::words;
use slotwright_core::words::page::Message;
use slotwright_protocol::adviser::{Advice, Cause};

use crate::browser::speech;
use crate::debounce::debounce;
use crate::state::Desk;
use crate::tally::{TallyText, spoken};

/// A screen reader hears of a change when the person has paused for so long.
const PAUSE: Duration = Duration::from_millis(700);

/// A notice, and what it is about: while that stays it is the same one, whatever figures are in its sentence.
#[derive(Clone)]
struct Line {
    cause: Cause,
    about: Question,
    sentence: String,
}

impl Line {
    fn is_of(&self, other: &Self) -> bool {
        (self.cause, self.about) == (other.cause, other.about)
    }
}

/// How it stands with the unit.
pub fn now(desk: Desk, text: Memo<TallyText>) -> String {
    let wrong = desk.unread.first_of_unit().map(|field| desk.wrong(field)).unwrap_or_default();
    text.with(
        |text| {
            if wrong.is_empty() { spoken(text) } else { Message::SpokenUnread(&text.state_note, &wrong).text() }
        },
    )
}

/// What stops the order, then what else is good to know.
fn notices(desk: Desk) -> Vec<Line> {
    let stop = |finding: &Finding| {
        let sentence = words::reason(finding);
        Line { cause: Cause::Rule(finding.rule), about: finding.about, sentence }
    };
    let hint = |Advice { cause, about, sentence, .. }: &Advice| {
        let sentence = sentence.clone();
        Line { cause: *cause, about: *about, sentence }
    };
    let mut notices: Vec<Line> = desk.read(|snapshot, _| snapshot.findings.iter().map(stop).collect());
    desk.advice(|all| notices.extend(all.iter().filter(|advice| advice.severity != Severity::Stops).map(hint)));
    notices
}

/// Says what a step did, once, with what it brought or else what came of it; what is only found out later goes alone. The
/// first reading is the page itself.
pub fn follow(desk: Desk, text: Memo<TallyText>) {
    let last = StoredValue::new((0, untrack(move || now(desk, text)), Vec::<Line>::new()));
    let speak = move |(told, did, now, notices): (u32, String, String, Vec<Line>)| {
        if untrack(move || desk.is_advice_old() && !desk.is_alone()) {
            // Once there is newer advice, that comes here again.
            return;
        }
        let (before, known, old) = last.get_value();
        let brought = notices.iter().find(|notice| !old.iter().any(|old| old.is_of(notice)));
        let fresh = !did.is_empty() && before != told;
        if fresh {
            let more = brought.map(|told| &told.sentence).or(Some(&now).filter(|now| **now != known));
            let said = core::iter::once(&did).chain(more).map(String::as_str);
            speech::say(&said.collect::<Vec<_>>().join("\n"));
        } else if now != known {
            speech::say(&now);
        }
        last.set_value((if fresh { told } else { before }, now, notices));
    };
    let line = move || {
        let [what, effect, _] = desk.did();
        if effect.is_empty() { what } else { Message::SpokenStep(&what, &effect).text() }
    };
    debounce(PAUSE, move || (desk.last_step.told.get(), line(), now(desk, text), notices(desk)), Callback::new(speak));
}
