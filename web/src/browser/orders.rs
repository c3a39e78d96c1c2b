//! The order desk: a worker that writes and reads orders, loaded when somebody needs it.

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;

use leptos::prelude::{Callable, Callback, set_timeout};
use slotwright_core::words::page::Label;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::MessageEvent;

use super::worker;
use crate::part::Part;

/// What the desk answered.
#[derive(Clone, Debug)]
pub enum Answer {
    /// A text and what was asked for: a text or the bytes of a file.
    Good(String, JsValue),
    /// Why not.
    Bad(String),
}

/// Longest wait for the desk: it has to be loaded over slow lines too.
const PATIENCE: Duration = Duration::from_secs(30);

/// Asks the desk; `on_answer` gets its answer, once. The desk is closed after that.
pub fn ask(question: Vec<String>, on_answer: Callback<Answer>) {
    let Ok(worker) = worker::start(Part::Orders) else {
        return on_answer.run(Answer::Bad(Label::DeskNotLoaded.text().into()));
    };
    let asked = Rc::new(RefCell::new(Some(question)));
    let open = Rc::new(Cell::new(true));
    let desk = worker.clone();
    let close = move |answer| {
        if open.replace(false) {
            desk.terminate();
            on_answer.run(answer);
        }
    };
    // A question that was not taken yet never reached a desk.
    let waiting = asked.clone();
    let failed = move || {
        let why = if waiting.borrow().is_some() { Label::DeskNotLoaded } else { Label::DeskSilent };
        Answer::Bad(why.text().into())
    };
    let (desk, answer) = (worker.clone(), close.clone());
    let answered = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let said = js_sys::Array::from(&event.data());
        let text = |at| said.get(at).as_string().unwrap_or_default();
        match &*text(0) {
            "ready" => {
                let question = asked.borrow_mut().take().unwrap_or_default();
                let question: js_sys::Array = question.iter().map(|text| JsValue::from_str(text)).collect();
                // A desk that cannot be reached answers nothing, and patience ends.
                let _ = desk.post_message(&question);
            }
            "ok" => answer(Answer::Good(text(1), said.get(2))),
            _ => answer(Answer::Bad(text(1))),
        }
    });
    worker.set_onmessage(Some(answered.as_ref().unchecked_ref()));
    let (refuse, why) = (close.clone(), failed.clone());
    let broken = Closure::<dyn FnMut()>::new(move || refuse(why()));
    worker.set_onerror(Some(broken.as_ref().unchecked_ref()));
    set_timeout(move || close(failed()), PATIENCE);
    // Both live as long as the page, two for each order: a few bytes each, the question is gone.
    answered.forget();
    broken.forget();
}
