//! The adviser: a worker that finds what else has to change for an answer that does not go alone.

use std::cell::RefCell;

use leptos::prelude::{Callable, Callback};
use slotwright_core::bundle;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker};

/// The worker, and what it is to be asked when it has answered: only the last question of each kind counts.
#[derive(Default)]
struct Line {
    worker: Option<Worker>,
    busy: bool,
    /// Whether nobody wants the answer any more that it is busy with.
    unwanted: bool,
    waiting: Vec<Vec<String>>,
}

thread_local! {
    static LINE: RefCell<Line> = RefCell::default();
}

/// Opens the line once for a range file's text; `heard` hears every answer. Without a worker nobody answers,
/// and the page goes on without advice.
pub fn open(range: String, heard: Callback<Vec<String>>) {
    // What says nothing says notes about nothing.
    let gone = move || heard.run(vec!["notes".into(), String::new()]);
    let Ok(worker) = Worker::new("slotwright-ways_loader.js") else { return gone() };
    let own = worker.clone();
    let told = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let texts = bundle::untie(&event.data().as_string().unwrap_or_default());
        if texts.first().is_some_and(|word| word == "ready") {
            LINE.with_borrow_mut(|line| line.worker = Some(own.clone()));
            send(&["range".into(), range.clone()]);
        } else {
            let unwanted = LINE.with_borrow_mut(|line| core::mem::take(&mut line.unwanted));
            next();
            if !unwanted {
                heard.run(texts);
            }
        }
    });
    worker.set_onmessage(Some(told.as_ref().unchecked_ref()));
    // One that fails is asked no more, and what it said last is no advice any more.
    let failed = Closure::<dyn FnMut(web_sys::Event)>::new(move |_| {
        LINE.with_borrow_mut(|line| line.worker = None);
        gone();
    });
    worker.set_onerror(Some(failed.as_ref().unchecked_ref()));
    // Both live as long as the page.
    told.forget();
    failed.forget();
}

/// Asks; what of the same kind was still waiting is asked no more.
pub fn ask(question: Vec<String>) {
    LINE.with_borrow_mut(|line| {
        line.waiting.retain(|waiting| waiting.first() != question.first());
        line.waiting.push(question);
    });
    if LINE.with_borrow(|line| line.worker.is_some() && !line.busy) {
        next();
    }
}

/// What was asked so far is not wanted any more: something else is kept by now.
pub fn forget() {
    LINE.with_borrow_mut(|line| {
        line.unwanted = line.busy;
        line.waiting.clear();
    });
}

/// Asks what has waited longest.
fn next() {
    let question = LINE.with_borrow_mut(|line| {
        line.busy = !line.waiting.is_empty();
        line.busy.then(|| line.waiting.remove(0))
    });
    if let Some(question) = question {
        send(&question);
    }
}

fn send(texts: &[String]) {
    let texts = bundle::tie(texts);
    LINE.with_borrow_mut(|line| {
        line.busy = true;
        if let Some(worker) = &line.worker {
            // A worker that is gone answers nothing; the page goes on without advice.
            let _ = worker.post_message(&JsValue::from_str(&texts));
        }
    });
}
