//! The order desk: a worker that writes and reads orders, loaded when somebody needs it.

use leptos::prelude::Callable;
use leptos::prelude::Callback;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker};

/// What the desk answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// What was asked for.
    Good(String, String),
    /// Why not.
    Bad(String),
}

/// Asks the desk; `heard` hears its answer, once. The desk is closed after that.
pub fn ask(question: Vec<String>, heard: Callback<Answer>) {
    let failed = "The order desk could not be loaded. Is there a connection?";
    let Ok(worker) = Worker::new("slotwright-orders_loader.js") else {
        return heard.run(Answer::Bad(failed.into()));
    };
    let desk = worker.clone();
    let answered = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let said: Vec<String> =
            js_sys::Array::from(&event.data()).iter().map(|text| text.as_string().unwrap_or_default()).collect();
        match &said[..] {
            [ready] if ready == "ready" => {
                let question: js_sys::Array = question.iter().map(|text| JsValue::from_str(text)).collect();
                let _ = desk.post_message(&question);
            }
            [word, first, second] if word == "ok" => {
                desk.terminate();
                heard.run(Answer::Good(first.clone(), second.clone()));
            }
            said => {
                desk.terminate();
                heard.run(Answer::Bad(said.last().cloned().unwrap_or_default()));
            }
        }
    });
    worker.set_onmessage(Some(answered.as_ref().unchecked_ref()));
    let broken = Closure::<dyn FnMut()>::new(move || heard.run(Answer::Bad(failed.into())));
    worker.set_onerror(Some(broken.as_ref().unchecked_ref()));
    // Both live as long as the worker, one for each order: a few bytes each.
    answered.forget();
    broken.forget();
}
