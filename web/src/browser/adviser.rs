//! The adviser: a worker that finds what else has to change for an answer that does not go alone.

use std::cell::RefCell;

use leptos::prelude::{Callable, Callback};
use slotwright_protocol::adviser::{Answer, Question};
use slotwright_protocol::{Number, READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker};

use super::worker;
use crate::part::Part;

/// The worker, and what it is to be asked when it has answered: only the last question of each kind counts.
#[derive(Default)]
struct Connection {
    worker: Option<Worker>,
    last: Number,
    /// What it is busy with; without a question if nobody wants the answer any more.
    asked: Option<(Number, Option<Question>)>,
    waiting: Vec<Question>,
}

thread_local! {
    static CONNECTION: RefCell<Connection> = RefCell::default();
}

/// Opens the connection once for a range file's text; `on_answer` gets each answer that is still wanted, with its
/// question, and nothing once there is no adviser: the page goes on without advice.
pub fn open(range: String, on_answer: Callback<Option<(Question, Answer)>>) {
    let Ok(worker) = worker::start(Part::Adviser) else { return on_answer.run(None) };
    let own = worker.clone();
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let text = event.data().as_string().unwrap_or_default();
        if text == READY {
            CONNECTION.with_borrow_mut(|connection| {
                connection.worker = Some(own.clone());
                connection.waiting.insert(0, Question::Range(range.clone()));
            });
            next();
        } else if let Some((number, answer)) = untie(&text) {
            let question = answered(number);
            next();
            if let Some(question) = question {
                on_answer.run(Some((question, answer)));
            }
        }
    });
    worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // One that fails is asked no more, and what it said last is no advice any more.
    let failed = Closure::<dyn FnMut(web_sys::Event)>::new(move |_| {
        CONNECTION.with_borrow_mut(|connection| connection.worker = None);
        on_answer.run(None);
    });
    worker.set_onerror(Some(failed.as_ref().unchecked_ref()));
    // Both live as long as the page.
    on_message.forget();
    failed.forget();
}

/// Asks; what of the same kind was still waiting is asked no more. What a step did is waited for, and takes no time.
pub fn ask(question: Question) {
    CONNECTION.with_borrow_mut(|Connection { waiting, .. }| {
        waiting.retain(|earlier| !question.replaces(earlier));
        let first = waiting.iter().position(|waiting| !matches!(waiting, Question::Range(_))).unwrap_or(waiting.len());
        let at = if matches!(question, Question::Did { .. }) { first } else { waiting.len() };
        waiting.insert(at, question);
    });
    if CONNECTION.with_borrow(|connection| connection.asked.is_none()) {
        next();
    }
}

/// Of what was asked so far, this is not wanted any more.
pub fn forget(which: fn(&Question) -> bool) {
    CONNECTION.with_borrow_mut(|Connection { asked, waiting, .. }| {
        waiting.retain(|question| !which(question));
        if let Some((_, question)) = asked
            && question.as_ref().is_some_and(which)
        {
            *question = None;
        }
    });
}

/// The question of that number, if its answer is wanted: a later one of its kind makes it late.
fn answered(number: Number) -> Option<Question> {
    CONNECTION.with_borrow_mut(|Connection { asked, waiting, .. }| {
        let (_, question) = asked.take_if(|(asked, _)| *asked == number)?;
        question.filter(|question| !waiting.iter().any(|later| later.replaces(question)))
    })
}

/// Asks what has waited longest, if there is somebody to ask.
fn next() {
    CONNECTION.with_borrow_mut(|Connection { worker, last, asked, waiting }| {
        if let Some(worker) = worker
            && !waiting.is_empty()
        {
            let question = waiting.remove(0);
            *last = last.next();
            // A worker that is gone answers nothing; the page goes on without advice.
            let _ = worker.post_message(&JsValue::from_str(&tie(*last, &question)));
            *asked = Some((*last, Some(question)));
        }
    });
}
