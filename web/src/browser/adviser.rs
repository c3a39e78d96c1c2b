//! The adviser: a worker that finds what else has to change for an answer that does not go alone.

use std::cell::RefCell;

use leptos::prelude::{Callable, Callback};
use slotwright_core::input::bundle;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker};

use super::worker;
use crate::part::Part;

/// The worker, and what it is to be asked when it has answered: only the last question of each kind counts.
#[derive(Default)]
struct Connection {
    worker: Option<Worker>,
    busy: bool,
    /// Whether nobody wants the answer any more that it is busy with.
    unwanted: bool,
    waiting: Vec<Vec<String>>,
}

thread_local! {
    static CONNECTION: RefCell<Connection> = RefCell::default();
}

/// Opens the connection once for a range file's text; `on_answer` gets every answer. Without a worker nobody answers,
/// and the page goes on without advice.
pub fn open(range: String, on_answer: Callback<Vec<String>>) {
    // No adviser is advice about nothing.
    let gone = move || on_answer.run(vec!["findings".into(), String::new()]);
    let Ok(worker) = worker::start(Part::Adviser) else { return gone() };
    let own = worker.clone();
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let texts = bundle::untie(&event.data().as_string().unwrap_or_default());
        if texts.first().is_some_and(|word| word == "ready") {
            CONNECTION.with_borrow_mut(|connection| connection.worker = Some(own.clone()));
            send(&["range".into(), range.clone()]);
        } else {
            let unwanted = CONNECTION.with_borrow_mut(|connection| core::mem::take(&mut connection.unwanted));
            next();
            // What links call the range is no matter of what is kept.
            if !unwanted || texts.first().is_some_and(|word| word == "range") {
                on_answer.run(texts);
            }
        }
    });
    worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // One that fails is asked no more, and what it said last is no advice any more.
    let failed = Closure::<dyn FnMut(web_sys::Event)>::new(move |_| {
        CONNECTION.with_borrow_mut(|connection| connection.worker = None);
        gone();
    });
    worker.set_onerror(Some(failed.as_ref().unchecked_ref()));
    // Both live as long as the page.
    on_message.forget();
    failed.forget();
}

/// Asks; what of the same kind was still waiting is asked no more. What a step did is waited for, and takes no time.
pub fn ask(question: Vec<String>) {
    CONNECTION.with_borrow_mut(|connection| {
        connection.waiting.retain(|waiting| waiting.first() != question.first());
        let at = if question.first().is_some_and(|word| word == "did") { 0 } else { connection.waiting.len() };
        connection.waiting.insert(at, question);
    });
    if CONNECTION.with_borrow(|connection| connection.worker.is_some() && !connection.busy) {
        next();
    }
}

/// What was asked so far is not wanted any more: something else is kept by now.
pub fn forget() {
    CONNECTION.with_borrow_mut(|connection| {
        connection.unwanted = connection.busy;
        connection.waiting.clear();
    });
}

/// Asks what has waited longest.
fn next() {
    let question = CONNECTION.with_borrow_mut(|connection| {
        connection.busy = !connection.waiting.is_empty();
        connection.busy.then(|| connection.waiting.remove(0))
    });
    if let Some(question) = question {
        send(&question);
    }
}

fn send(texts: &[String]) {
    let texts = bundle::tie(texts);
    CONNECTION.with_borrow_mut(|connection| {
        connection.busy = true;
        if let Some(worker) = &connection.worker {
            // A worker that is gone answers nothing; the page goes on without advice.
            let _ = worker.post_message(&JsValue::from_str(&texts));
        }
    });
}
